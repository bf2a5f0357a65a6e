import type { ICellData, IWorksheetData, Nullable, Worksheet } from '@univerjs/core';
import { readDimension } from '../../src/dimension';
import type { Unit } from '../../src/unit';
import { readAddress, readRange } from '../../src/workbook/address';
import type { Validation } from '../../src/workbook/sheet';
import { cellData, cellFormula, plainValue, type Engine } from './engine';
import type { CellNotes, SheetRules } from './worksheet';

/** Before the grid's own number reading, which takes "1/2" for a date. */
const FIRST = 1000;
const FRACTION = /^([+-])?(?:(\d+)\s+)?(\d+)\/(\d+)$/;
const FRACTION_FORMAT = '# ??/??';

interface At {
  readonly worksheet: Worksheet;
  readonly row: number;
  readonly col: number;
}

/**
 * What is typed into a cell: a fraction is a number and never a date; an input that holds a figure takes dimension text;
 * a value outside its limits is refused with the sentence that says them; a locked cell is not opened.
 */
export function watchTyping(engine: Engine, announce: (sentence: string) => void): void {
  const { library, injector, api } = engine;
  const { AFTER_CELL_EDIT, VALIDATE_CELL, SheetInterceptorService } = library.sheets;
  const { writeCellInterceptor } = injector.get(SheetInterceptorService);

  writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    priority: FIRST,
    handler: (typed, at, next) => {
      const read = readTyped(engine, typed, at);
      return read ?? next(typed);
    },
  });
  writeCellInterceptor.intercept(VALIDATE_CELL, {
    priority: FIRST,
    handler: (valid, at, next) => {
      const sentence = refusal(engine, at);
      if (sentence === null) return next(valid) ?? valid;
      announce(sentence);
      return Promise.resolve(false);
    },
  });

  const lockedAt = (worksheet: Nullable<Worksheet>, row: number, column: number) =>
    worksheet && rulesOf(worksheet.getConfig())?.locked && !notesAt(worksheet, row, column)?.input;
  const LOCKED = 'This cell follows from others and is locked; change a bordered input cell instead.';
  api.addEvent('BeforeSheetEditStart' as never, (event: { row: number; column: number; cancel?: boolean }) => {
    if (!lockedAt(engine.workbook.getActiveSheet(), event.row, event.column)) return;
    event.cancel = true;
    announce(LOCKED);
  });
  injector.get(library.core.ICommandService).beforeCommandExecuted((command) => {
    if (command.id !== library.sheets.ClearSelectionContentCommand.id) return;
    const worksheet = engine.workbook.getActiveSheet();
    const ranges = injector.get(library.sheets.SheetsSelectionsService).getCurrentSelections();
    for (const { range } of ranges) {
      for (let row = range.startRow; row <= range.endRow; row++) {
        for (let column = range.startColumn; column <= range.endColumn; column++) {
          if (!lockedAt(worksheet, row, column)) continue;
          announce(LOCKED);
          throw new library.core.CanceledError();
        }
      }
    }
  });
}

/** The cell as it should be stored; null leaves it to the grid. */
export function readTyped(engine: Engine, typed: Nullable<ICellData>, at: At): ICellData | null {
  if (!typed || typed.f || typed.si) return null;
  const text = typedText(typed);
  if (text === null || (text.trim() !== '' && !Number.isNaN(Number(text)))) return null;
  const { CellValueType } = engine.library.core;
  const number = (v: number): ICellData => ({ ...typed, p: null, v, t: CellValueType.NUMBER });

  const style = at.worksheet.getComposedCellStyle(at.row, at.col);
  const hasFormat = Boolean(style.n?.pattern);
  const input = notesAt(at.worksheet, at.row, at.col)?.input === true;
  if (input && hasFormat) {
    const unit = workbookUnit(engine);
    const length = readDimension(text, { bare: unit, answer: unit });
    if (length.ok) return number(length.value);
  }
  const fraction = fractionValue(text);
  // A mark such as "1/2" in an input that holds text is a name, not a figure and not a date.
  if (fraction === null) return null;
  if (input && !hasFormat) return { ...typed, p: null, v: text.trim(), t: CellValueType.FORCE_STRING };
  if (hasFormat) return number(fraction);
  return { ...number(fraction), s: { ...style, n: { pattern: FRACTION_FORMAT } } };
}

function typedText(typed: ICellData): string | null {
  const text = typed.p?.body?.dataStream.replace(/\r?\n$/, '') ?? typed.v;
  return typeof text === 'string' ? text : null;
}

function fractionValue(text: string): number | null {
  const match = FRACTION.exec(text.trim());
  if (!match || Number(match[4]) === 0) return null;
  const size = Number(match[2] ?? 0) + Number(match[3]) / Number(match[4]);
  return match[1] === '-' ? -size : size;
}

function workbookUnit(engine: Engine): Unit {
  const { IDefinedNamesService } = engine.library.engineFormula;
  const name = engine.injector.get(IDefinedNamesService).getValueByName(engine.workbook.getUnitId(), 'Shop_unit');
  const [sheetName, address] = (name?.formulaOrRefString ?? '').split('!');
  const sheet = engine.workbook.getSheetBySheetName((sheetName ?? '').replace(/^'(.*)'$/, '$1'));
  const place = readAddress(address ?? '');
  if (!sheet || !place.ok) return 'in';
  const unit = plainValue(engine.library, cellData(engine, sheet, place.value.row, place.value.column));
  return unit === 'mm' ? 'mm' : 'in';
}

/** Why the cell may not hold what was just typed; null where it may. */
function refusal(engine: Engine, { worksheet, row, col }: At): string | null {
  const rules = rulesOf(worksheet.getConfig())?.validations ?? [];
  const rule = rules.find(({ range }) => {
    const area = readRange(range);
    if (!area.ok) return false;
    const { first, last } = area.value;
    return row >= first.row && row <= last.row && col >= first.column && col <= last.column;
  });
  // A formula's answer is not known yet, and a blank means the shop's standard.
  if (!rule || cellFormula(engine, worksheet, row, col) !== '') return null;
  const value = plainValue(engine.library, cellData(engine, worksheet, row, col));
  return value === null || isAllowed(rule.rule, value) ? null : rule.message;
}

function isAllowed(rule: Validation['rule'], value: string | number | boolean): boolean {
  if (rule.kind === 'list') return rule.choices.includes(String(value));
  if (typeof value !== 'number') return false;
  return value >= rule.min && value <= rule.max && (!rule.whole || Number.isInteger(value));
}

export function rulesOf(config: IWorksheetData): SheetRules | undefined {
  return config.custom?.['rules'] as SheetRules | undefined;
}

export function notesAt(worksheet: Worksheet, row: number, column: number): CellNotes | undefined {
  return worksheet.getCellRaw(row, column)?.custom as CellNotes | undefined;
}
