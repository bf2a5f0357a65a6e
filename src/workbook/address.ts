import { ok, refuse, type Result } from '../result';

/** A cell by row and column, both from 0. */
export interface CellPosition {
  readonly row: number;
  readonly column: number;
}

/** A rectangle of cells; the last row and column belong to it. */
export interface CellRange {
  readonly first: CellPosition;
  readonly last: CellPosition;
}

/** Most rows and columns that an .xlsx sheet can hold. */
export const MOST_ROWS = 1_048_576;
export const MOST_COLUMNS = 16_384;

/** Column letters: 0 → A, 25 → Z, 26 → AA. */
export function columnLetters(column: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  return column < 26 ? letter : columnLetters(Math.floor(column / 26) - 1) + letter;
}

/** The letters of a sheet's columns by their keys, from the left. */
export function lettersOf<Key extends string>(keys: readonly Key[]): Readonly<Record<Key, string>> {
  return Object.fromEntries(keys.map((key, at) => [key, columnLetters(at)])) as Record<Key, string>;
}

/** A1 address of a cell: row 11, column 1 → B12. */
export function addressOf(position: CellPosition): string {
  return columnLetters(position.column) + String(position.row + 1);
}

/** A1 address of a rectangle: A1:C4, or A1 where it is a single cell. */
export function rangeAddress(range: CellRange): string {
  const first = addressOf(range.first);
  const last = addressOf(range.last);
  return first === last ? first : `${first}:${last}`;
}

/** Reads an A1 address such as B12 or $B$12, without a sheet. */
export function readAddress(text: string): Result<CellPosition> {
  const match = /^\$?([A-Z]{1,3})\$?([1-9]\d{0,6})$/i.exec(text.trim());
  if (!match) return refuse(`A cell's address is letters and a number such as B12; got "${text}".`);
  let column = 0;
  for (const letter of match[1]!.toUpperCase()) column = column * 26 + letter.charCodeAt(0) - 64;
  const row = Number(match[2]);
  return column > MOST_COLUMNS || row > MOST_ROWS
    ? refuse(`A sheet ends at XFD1048576; got "${text}".`)
    : ok({ row: row - 1, column: column - 1 });
}

/** Reads an A1 range such as A1:C4, or a single cell, without a sheet; the corners may be given in any order. */
export function readRange(text: string): Result<CellRange> {
  const corners = text.split(':');
  if (corners.length > 2) return refuse(`A range is two addresses such as A1:C4; got "${text}".`);
  const one = readAddress(corners[0]!);
  if (!one.ok) return one;
  const other = readAddress(corners[1] ?? corners[0]!);
  if (!other.ok) return other;
  return ok({
    first: { row: Math.min(one.value.row, other.value.row), column: Math.min(one.value.column, other.value.column) },
    last: { row: Math.max(one.value.row, other.value.row), column: Math.max(one.value.column, other.value.column) },
  });
}

/** A sheet's name as it stands before the `!` of a reference: in apostrophes where it is more than a plain word. */
export function sheetReference(name: string): string {
  return /^[A-Za-z_]\w*$/.test(name) && !readAddress(name).ok ? name : `'${name.replaceAll("'", "''")}'`;
}

/** The sheet and the cells of a reference such as `'Job 12'!$A$1:$B$4`; the sheet is '' where none is named. */
export function splitReference(reference: string): { readonly sheet: string; readonly cells: string } {
  const at = reference.lastIndexOf('!');
  const name = reference.slice(0, Math.max(0, at));
  const sheet = /^'.*'$/.test(name) ? name.slice(1, -1).replaceAll("''", "'") : name;
  return { sheet, cells: reference.slice(at + 1) };
}
