import type { IRange, Worksheet } from '@univerjs/core';
import type { CellPosition } from '../../src/workbook/address';

/** A selection of whole columns or rows reaches only as far as the sheet is used. */
export function clipped(range: IRange, used: { rows: number; columns: number }): IRange | null {
  const startRow = Number.isNaN(range.startRow) ? 0 : range.startRow;
  const startColumn = Number.isNaN(range.startColumn) ? 0 : range.startColumn;
  const endRow = Math.min(Number.isNaN(range.endRow) ? Infinity : range.endRow, used.rows - 1);
  const endColumn = Math.min(Number.isNaN(range.endColumn) ? Infinity : range.endColumn, used.columns - 1);
  return endRow < startRow || endColumn < startColumn ? null : { startRow, startColumn, endRow, endColumn };
}

/** The column so many visible ones to the left: a cell brought to the very edge would hide behind the frozen columns. */
export function visibleBefore(sheet: Worksheet, column: number, many: number): number {
  let left = column;
  for (let seen = 0; left > 0 && seen < many;) {
    left -= 1;
    if (sheet.getColVisible(left)) seen += 1;
  }
  return left;
}

/** Whether a cell lies in a range, its last row and column left out: what is in sight is cut there. */
export function isWithin({ row, column }: CellPosition, range: IRange | null): boolean {
  if (range === null) return false;
  return row >= range.startRow && row < range.endRow && column >= range.startColumn && column < range.endColumn;
}
