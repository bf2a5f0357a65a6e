import { isFormula } from '../../src/formulaText';
import type { CellValue, Table } from '../../src/schedule/opening';
import type { CellAt, Selection } from '../host';
import { EMPTY_SELECTION } from '../refusals';
import { readInBlocks, type Rectangle } from './blocks';
import { cellFormula, cellValue } from './cellValue';
import { Refused } from './session';

/** The selected cells; one single cell stands for the filled region around it. */
export async function readSelection(context: Excel.RequestContext): Promise<Selection> {
  const selected = context.workbook.getSelectedRange();
  const region = selected.getSurroundingRegion();
  const { worksheet } = selected;
  selected.load({ rowCount: true, columnCount: true });
  worksheet.load({ name: true });
  await context.sync();
  const single = selected.rowCount === 1 && selected.columnCount === 1;
  // A whole column is a million cells: only what is filled is asked for.
  const range = single ? region : selected.getUsedRangeOrNullObject(true);
  const found = await placeOf(context, range);
  if (found === null) throw new Refused(EMPTY_SELECTION);
  const rows = await cellsAt(context, worksheet, found, 'values');
  if (!rows.some((row) => row.some((value) => value !== null))) throw new Refused(EMPTY_SELECTION);
  const hiddenRows = await hiddenIn(context, range, found);
  return {
    name: worksheet.name,
    firstRow: found.row + 1,
    rows,
    ...(hiddenRows.length > 0 ? { hiddenRows } : {}),
    ...(single ? { single } : {}),
  };
}

/** Rows (from 1) of the range that a filter or the user hides. */
async function hiddenIn(context: Excel.RequestContext, range: Excel.Range, where: Rectangle): Promise<number[]> {
  range.load({ rowHidden: true });
  await context.sync();
  if (range.rowHidden === false) return []; // true: all are hidden; null: some
  const shown = range.getSpecialCellsOrNullObject('Visible');
  shown.load({ address: true });
  await context.sync();
  const visible = new Set<number>();
  if (!shown.isNullObject) {
    shown.areas.load('items/rowIndex,items/rowCount');
    await context.sync();
    for (const { rowIndex, rowCount } of shown.areas.items) {
      for (let row = rowIndex; row < rowIndex + rowCount; row++) visible.add(row + 1);
    }
  }
  const rows = Array.from({ length: where.rows }, (_, at) => where.row + 1 + at);
  return rows.filter((row) => !visible.has(row));
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
  const found = await placeOf(context, used);
  if (sheet.isNullObject) return null;
  if (found === null) return { name, firstRow: 1, rows: [] };
  const left = Array.from({ length: found.column }, () => null);
  const rows = await cellsAt(context, sheet, found, what);
  return { name, firstRow: found.row + 1, rows: rows.map((row) => [...left, ...row]) };
}

/** Whether any cell of the sheet holds something; false too where there is no such sheet. Its cells stay where they are. */
export async function isFilled(context: Excel.RequestContext, name: string): Promise<boolean> {
  const used = context.workbook.worksheets.getItemOrNullObject(name).getUsedRangeOrNullObject(true);
  return (await placeOf(context, used)) !== null;
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
    formula: isFormula(formula) ? formula : '',
    value: value === '' ? null : (value as CellAt['value']),
    // Excel hands over only the code of an error, which is the value; the pane works out the sentence itself.
    error: null,
  };
}

async function placeOf(context: Excel.RequestContext, range: Excel.Range): Promise<Rectangle | null> {
  range.load({ rowIndex: true, columnIndex: true, rowCount: true, columnCount: true });
  await context.sync();
  if (range.isNullObject) return null;
  return { row: range.rowIndex, column: range.columnIndex, rows: range.rowCount, columns: range.columnCount };
}

async function cellsAt(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  where: Rectangle,
  what: 'values' | 'formulas',
): Promise<CellValue[][]> {
  if (what === 'formulas') {
    // A formula is no date, whatever its cell's format.
    const { formulas } = await readInBlocks(context, sheet, where, ['formulas']);
    return formulas.map((row) => row.map(cellFormula));
  }
  const { values, numberFormat } = await readInBlocks(context, sheet, where, ['values', 'numberFormat']);
  return values.map((row, down) => row.map((value, across) => cellValue(value, numberFormat[down]?.[across])));
}
