import { MAIN, MORE } from '../../takeoff/row';
import { columnLetters } from '../address';
import type { Cell } from '../sheet';
import { TAKEOFF_COLUMNS, type CellsOfRow, type ColumnKey } from './columns';

/** Rows above the openings: title, summary, groups, units, headings. The headings stand last, so that the rows can be sorted. */
export const TAKEOFF_HEAD_ROWS = 5;

export const LETTERS = Object.fromEntries(TAKEOFF_COLUMNS.map(({ key }, at) => [key, columnLetters(at)])) as Readonly<
  Record<ColumnKey, string>
>;

/** Where the openings stand on the sheet, from 1. */
export interface Body {
  readonly first: number;
  readonly last: number;
}

export function bodyOf(openings: number): Body {
  return { first: TAKEOFF_HEAD_ROWS + 1, last: TAKEOFF_HEAD_ROWS + Math.max(1, openings) };
}

/** A column's cells as an absolute range: `$A$6:$A$30`. */
export function columnRange(key: ColumnKey, body: Body): string {
  return `$${LETTERS[key]}$${body.first}:$${LETTERS[key]}$${body.last}`;
}

/** The same for formulas on other sheets: `Takeoff!$A$6:$A$30`. */
export function takeoffRange(key: ColumnKey, openings: number): string {
  return `Takeoff!${columnRange(key, bodyOf(openings))}`;
}

const MAIN_LETTERS = [LETTERS[MAIN[0]], LETTERS[MAIN[MAIN.length - 1]!]] as const;
const MORE_LETTERS = [LETTERS[MORE[0]], LETTERS[MORE[MORE.length - 1]!]] as const;

/** A block of inputs of all openings, for formulas on other sheets. */
export function takeoffBlock(block: 'main' | 'more', openings: number): string {
  const [from, to] = block === 'main' ? MAIN_LETTERS : MORE_LETTERS;
  const { first, last } = bodyOf(openings);
  return `Takeoff!$${from}$${first}:$${to}$${last}`;
}

/** The addresses of a row's cells. */
export function cellsOfRow(row: number): CellsOfRow {
  const block = ([from, to]: readonly [string, string]) => `${from}${row}:${to}${row}`;
  return new Proxy({} as CellsOfRow, {
    get: (_target, key: ColumnKey | 'main' | 'more') =>
      key === 'main' ? block(MAIN_LETTERS) : key === 'more' ? block(MORE_LETTERS) : LETTERS[key] + String(row),
  });
}

/** A row of cells, each under one of the columns. */
export function rowWith(cells: Partial<Record<ColumnKey, Cell>>): (Cell | null)[] {
  return TAKEOFF_COLUMNS.map(({ key }) => cells[key] ?? null);
}
