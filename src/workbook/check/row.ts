import type { Cell } from '../sheet';
import { CHECK_COLUMNS, type CheckKey } from './columns';

export type Row = (Cell | null)[];

/** Cells by column key in an otherwise empty row. */
export function rowOf(cells: Partial<Record<CheckKey, Cell>>): Row {
  return CHECK_COLUMNS.map(({ key }) => cells[key] ?? null);
}
