import type { Cell } from './sheet';
import { inLines } from './textLines';

/** Columns of the Tickets sheet, in characters: every station has its own headings over them. */
export const WIDTHS = [5, 10, 16, 20, 11, 10, 10, 10, 10, 10, 52];
/** Characters of a line from the second column on. */
export const LINE_WIDE = 140;
/** Rows on a printed page under the repeated title. */
export const PAGE_ROWS = 48;
/** A station's headings, which take two lines, and the blank row below it. */
export const ROWS_AROUND = 3;

export type Rows = (Cell | null)[][];

/** A station's rows in parts that fit on a page each, broken before a row that begins with a number. */
export function inPages(body: Rows, high: number): Rows[] {
  if (body.length === 0) return [[[null, text('Nothing at this station.')]]];
  const pages: Rows[] = [];
  let rest = body;
  while (rest.length > high) {
    let end = high;
    while (end > 0 && !rest[end]?.[0]?.value) end -= 1;
    // One opening's rows that fill more than a page go on wherever the page ends.
    if (end === 0) end = high;
    pages.push(rest.slice(0, end));
    rest = rest.slice(end);
  }
  return [...pages, rest];
}

/** Cells of one row, and last one that takes all the columns that are left; each in as many lines as it needs: nothing is clipped on paper. */
export function table(cells: readonly string[], last: string): Rows {
  const left = WIDTHS.slice(cells.length).reduce((sum, width) => sum + width, 0);
  const columns = [...cells.map((cell, at) => lines(cell, WIDTHS[at]! + 1)), lines(last, left)];
  const high = Math.max(1, ...columns.map((each) => each.length));
  return Array.from({ length: high }, (_, at) =>
    columns.map((each) => (each[at] === undefined ? null : text(each[at]))),
  );
}

/** Text in lines of so many characters; a word that is longer is broken. */
function lines(said: string, wide: number): string[] {
  return said === ''
    ? []
    : inLines(said, wide).flatMap((line) => line.match(new RegExp(`.{1,${wide}}`, 'gu')) ?? [line]);
}

export function text(value: string, style: Cell['style'] = 'text'): Cell {
  return { value, style, format: '@' };
}
