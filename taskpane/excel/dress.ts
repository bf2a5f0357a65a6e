import { rangeAddress } from '../../src/workbook/address';
import type { CellStyle, Sheet, Validation } from '../../src/workbook/sheet';
import { TYPED_OVER_LOOK, typedOverRule } from '../../src/workbook/sharedFormulas';
import { addressLists, areasBy, columnsAddress } from './areas';
import { bytesOf } from './cells';
import { applyLook } from './looks';
import { printSetUp } from './printSetUp';

/** Longest message that Excel shows beside a cell. */
const LONGEST_MESSAGE = 255;

/**
 * About how many bytes a request grows by for one property set on one range, beside the range's address: what office.js
 * writes to name the range, to keep hold of it, and the property. A look sets several.
 */
const BYTES_OF_ONE = 600;
const BYTES_OF_LOOK = 8_000;

/**
 * Everything of a sheet but its cells' content: looks, formats, widths, checks, filter, print set-up. Done step by step;
 * each step says about how many bytes it adds to the request, so that the request can be sent before it is too large.
 */
export function* dress(target: Excel.Worksheet, sheet: Sheet): Generator<number> {
  for (const [style, ranges] of areasBy(sheet, (cell) => cell.style ?? null)) {
    for (const list of addressLists(ranges)) {
      applyLook(style as CellStyle, once(target.getRanges(list)).format as never);
      yield BYTES_OF_LOOK + list.length;
    }
  }
  for (const [, ranges] of areasBy(sheet, (cell) => (cell.wrap ? 'wrap' : null))) {
    for (const list of addressLists(ranges)) {
      once(target.getRanges(list)).format.wrapText = true;
      yield BYTES_OF_ONE + list.length;
    }
  }
  for (const [, ranges] of areasBy(sheet, (cell) => cell.align ?? null)) {
    for (const list of addressLists(ranges)) {
      once(target.getRanges(list)).format.horizontalAlignment = 'Right';
      yield BYTES_OF_ONE + list.length;
    }
  }
  yield* formats(target, sheet);
  columns(target, sheet);
  yield BYTES_OF_ONE * sheet.widths.length;
  for (const validation of sheet.validations ?? []) {
    check(target, validation);
    yield BYTES_OF_ONE * 4;
  }
  for (const range of sheet.figures ?? []) {
    showTypedOver(target, range);
    yield BYTES_OF_ONE * 4;
  }
  yield* comments(target, sheet);
  // Before the sheet is locked: on a locked one Excel sets no filter.
  if (sheet.autoFilter !== undefined) target.autoFilter.apply(target.getRange(sheet.autoFilter));
  printSetUp(target, sheet);
  yield BYTES_OF_ONE * (20 + (sheet.pageBreaks?.length ?? 0));
}

/** A range that is used once: Excel need not be asked to keep hold of it, which is half of what a request says of it. */
function once<R extends Excel.Range | Excel.RangeAreas>(range: R): R {
  range.untrack();
  return range;
}

/**
 * A column whose format changes from row to row is sent as an array of them; where it stays over many rows, and in neighboring
 * columns, one format for the whole rectangle is shorter.
 */
function* formats(target: Excel.Worksheet, sheet: Sheet): Generator<number> {
  const rows = sheet.rows.length;
  const width = Math.max(0, ...sheet.rows.map((row) => row.length));
  const changing = new Set<number>();
  for (let column = 0; column < width; column++) {
    const list = sheet.rows.map((cells) => cells[column]?.format ?? 'General');
    const changes = list.filter((format, row) => format !== list[row - 1]).length;
    if (changes * BYTES_OF_ONE > bytesOf(list)) changing.add(column);
  }
  for (const column of changing) {
    const range = once(target.getRangeByIndexes(0, column, rows, 1));
    range.numberFormat = sheet.rows.map((cells) => [cells[column]?.format ?? 'General']);
    yield BYTES_OF_ONE + rows * 12;
  }
  const steady = {
    ...sheet,
    rows: sheet.rows.map((cells) => cells.map((cell, at) => (changing.has(at) ? null : cell))),
  };
  for (const [format, ranges] of areasBy(steady, (cell) => cell.format ?? null)) {
    for (const range of ranges) {
      // One value for a whole range: Excel fills it in everywhere.
      once(target.getRange(rangeAddress(range))).numberFormat = format as never;
      yield BYTES_OF_ONE;
    }
  }
}

function columns(target: Excel.Worksheet, sheet: Sheet): void {
  for (const [column, width] of sheet.widths.entries()) {
    once(target.getRange(columnsAddress(column, column))).format.columnWidth = points(width);
  }
  // Hidden rather than grouped: Excel won't unfold a group on a protected sheet, but shows hidden columns there when asked.
  for (const { first, last } of sheet.folded ?? [])
    once(target.getRange(columnsAddress(first, last))).columnHidden = true;
}

/** A width in characters as Excel's points: 7 pixels a character and 5 beside them, 3/4 of a point a pixel. */
function points(characters: number): number {
  return (characters * 7 + 5) * 0.75;
}

function check(target: Excel.Worksheet, { range, rule, message }: Validation): void {
  const { dataValidation } = once(target.getRange(range));
  if (rule.kind === 'list') dataValidation.rule = { list: { inCellDropDown: true, source: rule.choices.join(',') } };
  else {
    const between = { formula1: rule.min, formula2: rule.max, operator: 'Between' as const };
    dataValidation.rule = rule.whole ? { wholeNumber: between } : { decimal: between };
  }
  dataValidation.ignoreBlanks = false;
  dataValidation.errorAlert = { showAlert: true, style: 'Stop', title: 'Archwright', message: shown(message) };
}

/** A figure whose formula is gone stands out, whoever typed over it. */
function showTypedOver(target: Excel.Worksheet, range: string): void {
  const { custom } = once(target.getRange(range)).conditionalFormats.add('Custom');
  custom.rule.formula = `=${typedOverRule(range)}`;
  custom.format.fill.color = TYPED_OVER_LOOK.fill;
  custom.format.font.color = TYPED_OVER_LOOK.ink;
}

/** Shown while the cell is selected, which every Excel this add-in runs in can do. */
function* comments(target: Excel.Worksheet, sheet: Sheet): Generator<number> {
  for (const [comment, ranges] of areasBy(sheet, (cell) => cell.comment ?? null)) {
    for (const range of ranges) {
      const prompt = { showPrompt: true, title: '', message: shown(comment) };
      once(target.getRange(rangeAddress(range))).dataValidation.prompt = prompt;
      yield BYTES_OF_ONE + LONGEST_MESSAGE;
    }
  }
}

function shown(message: string): string {
  return message.length <= LONGEST_MESSAGE ? message : message.slice(0, LONGEST_MESSAGE - 1) + '…';
}
