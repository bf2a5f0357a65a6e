import type { CellPosition, CellRange } from '../src/workbook/address';

/**
 * The filled block around a cell, grown until the rows and columns just beyond it, corners included, are blank: what Excel
 * calls the current region. Null where neither the cell nor one that touches it is filled. `end` is the first row and
 * column beyond everything filled.
 */
export function filledRegion(
  start: CellPosition,
  filled: (row: number, column: number) => boolean,
  end: { readonly rows: number; readonly columns: number },
): CellRange | null {
  let [top, left, bottom, right] = [start.row, start.column, start.row, start.column];
  const any = (firstRow: number, lastRow: number, firstColumn: number, lastColumn: number) => {
    for (let row = Math.max(0, firstRow); row <= Math.min(lastRow, end.rows - 1); row++) {
      for (let column = Math.max(0, firstColumn); column <= Math.min(lastColumn, end.columns - 1); column++) {
        if (filled(row, column)) return true;
      }
    }
    return false;
  };
  for (;;) {
    const above = any(top - 1, top - 1, left - 1, right + 1);
    const below = any(bottom + 1, bottom + 1, left - 1, right + 1);
    const before = any(top - 1, bottom + 1, left - 1, left - 1);
    const after = any(top - 1, bottom + 1, right + 1, right + 1);
    if (!above && !below && !before && !after) break;
    top -= above ? 1 : 0;
    bottom += below ? 1 : 0;
    left -= before ? 1 : 0;
    right += after ? 1 : 0;
  }
  if (!any(top, bottom, left, right)) return null;
  return { first: { row: top, column: left }, last: { row: bottom, column: right } };
}
