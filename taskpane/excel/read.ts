import type { CellValue, Table } from '../../src/schedule/opening';
import type { CellAt } from '../host';
import { EMPTY_SELECTION } from '../refusals';
import { cellValue } from './cellValue';
import { Refused } from './session';

/** The selected cells; one single cell stands for the filled region around it. */
export async function readSelection(context: Excel.RequestContext): Promise<Table> {
  const selected = context.workbook.getSelectedRange();
  const region = selected.getSurroundingRegion();
  selected.load({ rowCount: true, columnCount: true });
  selected.worksheet.load({ name: true });
  await context.sync();
  const single = selected.rowCount === 1 && selected.columnCount === 1;
  // A whole column is a million cells: only what is filled is asked for.
  const range = single ? region : selected.getUsedRangeOrNullObject(true);
  range.load({ values: true, numberFormat: true, rowIndex: true });
  await context.sync();
  const rows = range.isNullObject ? [] : asCells(range.values, range.numberFormat);
  if (!rows.some((row) => row.some((value) => value !== null))) {
    throw new Refused(EMPTY_SELECTION);
  }
  return { name: selected.worksheet.name, firstRow: range.rowIndex + 1, rows };
}

/** A sheet's used range, from column A on so that columns count as the user counts them; null: no such sheet. */
export async function readSheet(
  context: Excel.RequestContext,
  name: string,
  what: 'values' | 'formulas',
): Promise<Table | null> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(name);
  const used = sheet.getUsedRangeOrNullObject(true);
  sheet.load({ name: true });
  used.load({ rowIndex: true, columnIndex: true, numberFormat: true, [what]: true });
  await context.sync();
  if (sheet.isNullObject) return null;
  if (used.isNullObject) return { name, firstRow: 1, rows: [] };
  const left = Array.from({ length: used.columnIndex }, () => null);
  const rows = asCells(used[what], used.numberFormat).map((row) => [...left, ...row]);
  return { name, firstRow: used.rowIndex + 1, rows };
}

export async function readCellAt(context: Excel.RequestContext): Promise<CellAt> {
  const cell = context.workbook.getSelectedRange().getCell(0, 0);
  cell.load({ address: true, rowIndex: true, columnIndex: true, formulas: true, values: true });
  cell.worksheet.load({ name: true });
  await context.sync();
  const formula: unknown = cell.formulas[0]?.[0];
  const value: unknown = cell.values[0]?.[0];
  return {
    sheet: cell.worksheet.name,
    address: cell.address.slice(cell.address.lastIndexOf('!') + 1),
    row: cell.rowIndex,
    column: cell.columnIndex,
    formula: typeof formula === 'string' && formula.startsWith('=') ? formula : '',
    value: value === '' ? null : (value as CellAt['value']),
    // Excel hands over only the code of an error, which is the value; the pane works out the sentence itself.
    error: null,
  };
}

function asCells(values: readonly unknown[][], formats: readonly unknown[][]): CellValue[][] {
  return values.map((row, down) => row.map((value, across) => cellValue(value, formats[down]?.[across])));
}
