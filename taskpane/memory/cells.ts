import { isFormula } from '../../src/formulaText';

/** What a cell of the workbook in memory holds. */
export interface MemoryCell {
  readonly value: string | number | boolean | null;
  /** `=…`, or '' for a constant. */
  readonly formula: string;
}
/** The rows of a sheet; null: an empty cell. */
export type Grid = (MemoryCell | null)[][];

/** What stands in a cell once this was typed into it. */
export function constant(typed: string | number | boolean | null): MemoryCell | null {
  if (typed === null || typed === '') return null;
  return isFormula(typed) ? { value: null, formula: typed } : { value: typed, formula: '' };
}

export function filled(cell: MemoryCell | null): boolean {
  return cell !== null && (cell.formula !== '' || (cell.value !== null && cell.value !== ''));
}

export function put(grid: Grid, row: number, column: number, cell: MemoryCell | null): void {
  while (grid.length <= row) grid.push([]);
  const cells = grid[row]!;
  while (cells.length <= column) cells.push(null);
  cells[column] = cell;
}
