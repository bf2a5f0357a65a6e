import { rangeAddress } from '../../src/workbook/address';
import type { CellStyle, Sheet, Validation } from '../../src/workbook/sheet';
import { addressLists, areasBy, columnsAddress } from './areas';
import { applyLook } from './looks';

/** Longest message that Excel shows beside a cell. */
const LONGEST_MESSAGE = 255;

/** Everything of a sheet but its cells' content: looks, formats, widths, checks, print set-up. */
export function dress(target: Excel.Worksheet, sheet: Sheet): void {
  for (const [style, ranges] of areasBy(sheet, (cell) => cell.style ?? null)) {
    for (const list of addressLists(ranges)) applyLook(style as CellStyle, target.getRanges(list).format as never);
  }
  for (const [, ranges] of areasBy(sheet, (cell) => (cell.wrap ? 'wrap' : null))) {
    for (const list of addressLists(ranges)) target.getRanges(list).format.wrapText = true;
  }
  for (const [, ranges] of areasBy(sheet, (cell) => cell.align ?? null)) {
    for (const list of addressLists(ranges)) target.getRanges(list).format.horizontalAlignment = 'Right';
  }
  for (const [format, ranges] of areasBy(sheet, (cell) => cell.format ?? null)) {
    // One value for a whole range: Excel fills it in everywhere.
    for (const range of ranges) target.getRange(rangeAddress(range)).numberFormat = format as never;
  }
  columns(target, sheet);
  for (const validation of sheet.validations ?? []) check(target, validation);
  comments(target, sheet);
  if (sheet.repeatRows) target.pageLayout.setPrintTitleRows(`$${sheet.repeatRows[0]}:$${sheet.repeatRows[1]}`);
  target.pageLayout.orientation = sheet.landscape ? 'Landscape' : 'Portrait';
  target.pageLayout.zoom = { horizontalFitToPages: sheet.pagesWide ?? 1 };
}

function columns(target: Excel.Worksheet, sheet: Sheet): void {
  for (const [column, width] of sheet.widths.entries()) {
    target.getRange(columnsAddress(column, column)).format.columnWidth = points(width);
  }
  // Hidden rather than grouped: Excel won't unfold a group on a protected sheet, but shows hidden columns there when asked.
  for (const { first, last } of sheet.folded ?? []) target.getRange(columnsAddress(first, last)).columnHidden = true;
}

/** A width in characters as Excel's points: 7 pixels a character and 5 beside them, 3/4 of a point a pixel. */
function points(characters: number): number {
  return (characters * 7 + 5) * 0.75;
}

function check(target: Excel.Worksheet, { range, rule, message }: Validation): void {
  const { dataValidation } = target.getRange(range);
  if (rule.kind === 'list') dataValidation.rule = { list: { inCellDropDown: true, source: rule.choices.join(',') } };
  else {
    const between = { formula1: rule.min, formula2: rule.max, operator: 'Between' as const };
    dataValidation.rule = rule.whole ? { wholeNumber: between } : { decimal: between };
  }
  dataValidation.ignoreBlanks = false;
  dataValidation.errorAlert = { showAlert: true, style: 'Stop', title: 'Archwright', message: shown(message) };
}

/** Shown while the cell is selected, which every Excel this add-in runs in can do. */
function comments(target: Excel.Worksheet, sheet: Sheet): void {
  for (const [comment, ranges] of areasBy(sheet, (cell) => cell.comment ?? null)) {
    for (const range of ranges) {
      const prompt = { showPrompt: true, title: '', message: shown(comment) };
      target.getRange(rangeAddress(range)).dataValidation.prompt = prompt;
    }
  }
}

function shown(message: string): string {
  return message.length <= LONGEST_MESSAGE ? message : message.slice(0, LONGEST_MESSAGE - 1) + '…';
}
