import type { Cell, CellStyle } from '../sheet';
import { CHECK_COLUMNS, type CheckKey } from './columns';

export type Value = string | number | null;

/** What stands in a cell of a line's row. */
export interface Content<Held extends Value = Value> {
  readonly value: Held;
  /** A template as in `columns.ts`. */
  readonly formula?: string;
  readonly style: CellStyle;
}

export function figure<Held extends Value>(value: Held, formula: string): Content<Held> {
  return { value, formula, style: 'figure' };
}

export function written<Held extends Value>(value: Held): Content<Held> {
  return { value, style: 'fixed' };
}

export type Row = (Cell | null)[];

/** Cells by column key in an otherwise empty row. */
export function rowOf(cells: Partial<Record<CheckKey, Cell>>): Row {
  return CHECK_COLUMNS.map(({ key }) => cells[key] ?? null);
}
