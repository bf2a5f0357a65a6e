import { columnLetters, readRange, type CellRange } from '../../src/workbook/address';
import { ExcelError } from './wire';

export type Entry = string | number | boolean;

/** A sheet as the fake keeps it. */
export interface FakeSheet {
  readonly id: string;
  name: string;
  visibility: string;
  protected: boolean;
  /** Asked for before the lock is lifted; '' where there is none. */
  password: string;
  frozen: { readonly rows: number; readonly columns: number };
  /** Formula or constant by address; an apostrophe in front of a text is taken off, as Excel does. */
  cells: Map<string, Entry>;
  /** What formulas give, where a test says so. */
  results: Map<string, unknown>;
  formats: Map<string, string>;
  /** Rows, from 0, that a filter or the user hides. */
  hiddenRows: Set<number>;
  /** The range that has filter buttons. */
  filter: string | null;
  /** Names that the sheet alone knows. */
  names: Map<string, string>;
  /** Everything else that was set: "A1:C1 format.font.bold" → true. */
  looks: Map<string, unknown>;
}

let made = 0;

export function newSheet(name: string): FakeSheet {
  return {
    id: `{sheet-${made++}}`,
    name,
    visibility: 'Visible',
    protected: false,
    password: '',
    frozen: { rows: 0, columns: 0 },
    cells: new Map(),
    results: new Map(),
    formats: new Map(),
    hiddenRows: new Set(),
    filter: null,
    names: new Map(),
    looks: new Map(),
  };
}

export const LAST_ROW = 1_048_575;
export const LAST_COLUMN = 16_383;
export const WHOLE: CellRange = { first: { row: 0, column: 0 }, last: { row: LAST_ROW, column: LAST_COLUMN } };

/** A range from its address: cells, or whole columns. */
export function rangeOf(address: string): CellRange {
  const columns = /^\$?([A-Z]+):\$?([A-Z]+)$/.exec(address);
  const read = readRange(columns ? `${columns[1]}1:${columns[2]}${LAST_ROW + 1}` : address);
  if (!read.ok) throw new ExcelError('InvalidArgument');
  return read.value;
}

export function addressAt(row: number, column: number): string {
  return `${columnLetters(column)}${row + 1}`;
}

/** The cells of a range that is not too large to be asked for. */
export function grid<T>({ first, last }: CellRange, at: (address: string, row: number, column: number) => T): T[][] {
  const rows: T[][] = [];
  for (let row = first.row; row <= last.row; row++) {
    const cells: T[] = [];
    for (let column = first.column; column <= last.column; column++)
      cells.push(at(addressAt(row, column), row, column));
    rows.push(cells);
  }
  return rows;
}

export function sizeOf({ first, last }: CellRange): { rows: number; columns: number } {
  return { rows: last.row - first.row + 1, columns: last.column - first.column + 1 };
}

/** Where anything stands; formats count only where values alone are not asked for. */
export function usedRange(sheet: FakeSheet, valuesOnly: boolean): CellRange | null {
  const filled = [...sheet.cells.keys(), ...(valuesOnly ? [] : sheet.formats.keys())];
  if (filled.length === 0) return null;
  let range: CellRange | null = null;
  for (const address of filled) range = around(range, rangeOf(address).first);
  return range;
}

function around(range: CellRange | null, { row, column }: { row: number; column: number }): CellRange {
  if (range === null) return { first: { row, column }, last: { row, column } };
  const { first, last } = range;
  return {
    first: { row: Math.min(first.row, row), column: Math.min(first.column, column) },
    last: { row: Math.max(last.row, row), column: Math.max(last.column, column) },
  };
}

/** Excel's current region: grown until a blank row and a blank column stand on every side. */
export function surroundingRegion(sheet: FakeSheet, start: CellRange): CellRange {
  const places = [...sheet.cells.keys()].map((address) => rangeOf(address).first);
  let region = start;
  for (;;) {
    const { first, last } = region;
    const touching = places.filter(
      ({ row, column }) =>
        row >= first.row - 1 && row <= last.row + 1 && column >= first.column - 1 && column <= last.column + 1,
    );
    const grown = touching.reduce<CellRange>(around, region);
    if (JSON.stringify(grown) === JSON.stringify(region)) return region;
    region = grown;
  }
}

export function inside(range: CellRange, used: CellRange | null): CellRange | null {
  if (used === null) return null;
  const first = {
    row: Math.max(range.first.row, used.first.row),
    column: Math.max(range.first.column, used.first.column),
  };
  const last = { row: Math.min(range.last.row, used.last.row), column: Math.min(range.last.column, used.last.column) };
  return first.row > last.row || first.column > last.column ? null : { first, last };
}

/** A locked sheet takes no cells, looks or filters. */
export function changeable(sheet: FakeSheet): FakeSheet {
  if (sheet.protected) throw new ExcelError('AccessDenied');
  return sheet;
}

/** A formula as it stands so many rows and columns further on: references without `$` move along. */
export function moved(entry: Entry, down: number, right: number): Entry {
  if (typeof entry !== 'string' || !entry.startsWith('=')) return entry;
  return entry.replace(
    /"[^"]*"|(?<![\w.$])(\$?)([A-Z]{1,3})(\$?)(\d+)(?![\w.(])/g,
    (all, fixedColumn?: string, letters?: string, fixedRow?: string, row?: string) => {
      if (letters === undefined) return all;
      const at = rangeOf(`${letters}1`).first.column + (fixedColumn === '$' ? 0 : right);
      return `${fixedColumn}${columnLetters(at)}${fixedRow}${Number(row) + (fixedRow === '$' ? 0 : down)}`;
    },
  );
}
