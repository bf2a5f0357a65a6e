import type { ICellData, IWorksheetData, Nullable, Worksheet } from '@univerjs/core';
import { readDimensionIn } from '../../src/dimension';
import type { Unit } from '../../src/unit';
import { addressOf, readAddress, readRange } from '../../src/workbook/address';
import type { Validation } from '../../src/workbook/sheet';
import { cellData, cellFormula, plainValue, type Engine } from './engine';
import { lookOfStyle } from './styles';
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

export interface Answers {
  /** Something was not taken, and why; `at` says where it was typed. */
  readonly refuse: (sentence: string, at: CellPlace) => void;
  /** What stands in the cell now is right. */
  readonly accept: (at: CellPlace) => void;
  /** Whether a formula of ours may be typed over; left out: it may not. */
  readonly askOver?: (address: string) => Promise<boolean>;
}

export interface CellPlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

const LOCKED = 'This cell follows from others and is locked; change a bordered input cell instead.';
const NOT_DELETED = 'Figures that follow from others are not deleted: select the input cells only, or whole rows.';

/**
 * What is typed into a cell: a fraction is a number and never a date; an input that holds a figure takes dimension text;
 * a value outside its limits is refused with the sentence that says them; a formula of ours is typed over only when asked.
 */
export function watchTyping(engine: Engine, answers: Answers): void {
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
      const place = { sheet: at.worksheet.getName(), row: at.row, column: at.col };
      const sentence = refusal(engine, at);
      if (sentence === null) {
        answers.accept(place);
        return next(valid) ?? valid;
      }
      answers.refuse(sentence, place);
      return Promise.resolve(false);
    },
  });

  // Only sheets that were written by us have rules, and figures in them that follow from inputs.
  const guarded = (worksheet: Nullable<Worksheet>, row: number, column: number) => {
    const rules = worksheet ? rulesOf(worksheet.getConfig()) : undefined;
    if (!worksheet || !rules || notesAt(worksheet, row, column)?.input) return false;
    return rules.locked || cellFormula(engine, worksheet, row, column) !== '';
  };
  let allowed = '';
  api.addEvent('BeforeSheetEditStart' as never, (event: { row: number; column: number; cancel?: boolean }) => {
    const worksheet = engine.workbook.getActiveSheet();
    const { row, column } = event;
    if (!worksheet || !guarded(worksheet, row, column)) return;
    const place = { sheet: worksheet.getName(), row, column };
    const key = `${place.sheet}!${row},${column}`;
    if (allowed === key) return;
    event.cancel = true;
    if (!answers.askOver || cellFormula(engine, worksheet, row, column) === '') return answers.refuse(LOCKED, place);
    void answers.askOver(addressOf({ row, column })).then((yes) => {
      if (!yes) return;
      allowed = key;
      (api.getActiveWorkbook() as { startEditing?: () => boolean } | null)?.startEditing?.();
    });
  });
  injector.get(library.core.ICommandService).beforeCommandExecuted((command) => {
    if (command.id !== library.sheets.ClearSelectionContentCommand.id) return;
    const worksheet = engine.workbook.getActiveSheet();
    const ranges = injector.get(library.sheets.SheetsSelectionsService).getCurrentSelections();
    for (const { range } of ranges) {
      for (let row = range.startRow; row <= range.endRow; row++) {
        for (let column = range.startColumn; column <= range.endColumn; column++) {
          if (!worksheet || !guarded(worksheet, row, column)) continue;
          answers.refuse(NOT_DELETED, { sheet: worksheet.getName(), row, column });
          throw new library.core.CanceledError();
        }
      }
    }
  });
}

interface EditingFacade {
  readonly isCellEditing?: () => boolean;
  readonly endEditingAsync?: (save: boolean) => Promise<boolean>;
}

/** Whether a cell or the formula line is being changed. */
export function isEditing({ api }: Engine): boolean {
  return (api.getActiveWorkbook() as EditingFacade | null)?.isCellEditing?.() ?? false;
}

/** What is typed into a cell but not entered yet is entered, as by Enter; a figure that can't be taken says so at its cell. */
export async function endEditing(engine: Engine): Promise<void> {
  if (isEditing(engine)) await (engine.api.getActiveWorkbook() as EditingFacade | null)?.endEditingAsync?.(true);
}

/** The cell as it should be stored; null leaves it to the grid. */
function readTyped(engine: Engine, typed: Nullable<ICellData>, at: At): ICellData | null {
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
    const length = readDimensionIn(text, { bare: unit, answer: unit });
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
  if (cellFormula(engine, worksheet, row, col) !== '') return null;
  const value = plainValue(engine.library, cellData(engine, worksheet, row, col));
  if (value === null) return null;
  if (rule && !isAllowed(rule.rule, value)) return `${rule.message} You typed ${String(value)}; the cell is as it was.`;
  return rule ? null : figureRefusal(engine, worksheet, row, col, value);
}

/** Why an input that holds a figure can't hold this; null where it can, or where it is no such input. */
function figureRefusal(
  engine: Engine,
  worksheet: Worksheet,
  row: number,
  column: number,
  value: string | number | boolean,
): string | null {
  const format = worksheet.getComposedCellStyle(row, column).n?.pattern;
  if (notesAt(worksheet, row, column)?.input !== true || format == null || format === '@') return null;
  const name = headingOver(engine, worksheet, row, column);
  if (typeof value === 'number') {
    return value >= 0 ? null : `${name} must not be less than 0; you typed ${value}. The cell is as it was.`;
  }
  const read = readDimensionIn(String(value), { bare: workbookUnit(engine), answer: workbookUnit(engine) });
  const why = read.ok ? 'that is no figure' : read.message;
  return `${name}: ${why.replace(/\.$/, '')}. The cell is as it was.`;
}

/** The heading of the column that a cell stands in. */
function headingOver(engine: Engine, worksheet: Worksheet, row: number, column: number): string {
  for (let above = row - 1; above >= 0; above--) {
    const style = worksheet.getCellRaw(above, column)?.s;
    const look = typeof style === 'string' ? engine.workbook.getStyles().get(style) : style;
    const text = plainValue(engine.library, cellData(engine, worksheet, above, column));
    if (look && typeof text === 'string' && lookOfStyle(look, text, false).style === 'heading') return text;
  }
  return 'This cell';
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
