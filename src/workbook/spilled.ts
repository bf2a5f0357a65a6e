import type { Cell } from './sheet';

/**
 * Tells, row after row from the top, which columns of a row a formula further up or to the left fills with its array: the
 * cells that a host which calculates must leave empty. The formula's own cell is none of them.
 */
export function spilledColumns(): (cells: readonly (Cell | null)[], row: number) => ReadonlySet<number> {
  let open: { row: number; last: number; first: number; end: number }[] = [];
  return (cells, row) => {
    for (const [column, cell] of cells.entries()) {
      if (!cell?.spill || cell.formula === undefined) continue;
      const { rows, columns } = cell.spill;
      open.push({ row, last: row + rows - 1, first: column, end: column + columns });
    }
    open = open.filter(({ last }) => last >= row);
    const spilled = new Set<number>();
    for (const area of open) {
      for (let column = area.first; column < area.end; column++) {
        if (area.row < row || column > area.first) spilled.add(column);
      }
    }
    return spilled;
  };
}
