import { cellText, isBlank } from '../schedule/cell';
import { listed, quote } from '../schedule/figure';
import type { CellValue } from '../schedule/opening';
import { readLength } from '../schedule/readLength';
import type { QuoteColumn } from './headings';
import { readMoney } from './money';
import type { SetAside } from './quote';
import { LENGTHS, RADII } from './meanings';

type Row = readonly CellValue[];

/** True for a cell that holds a number, a length or money and no words. */
export function isFigure(cell: CellValue | undefined): boolean {
  if (typeof cell === 'number') return true;
  if (typeof cell !== 'string' || !/\d/.test(cell)) return false;
  return readMoney(cell).ok || readLength(cell, { name: '', column: null, unit: 'in', zero: true }).ok;
}

/** Headings hold no figures by themselves. */
export function hasFigures(row: Row): boolean {
  return row.some((cell) => typeof cell === 'number' || (typeof cell === 'string' && /^\W*\d/.test(cell)));
}

/** Two figures in a row, marks and counts with them: a line of the quote, whatever its words. */
export function isData(row: Row): boolean {
  return row.filter((cell) => isFigure(cell ?? undefined)).length >= 2;
}

/** A column as a sentence names it: by its heading, or its place where it has none. */
function columnName({ heading, index }: QuoteColumn): string {
  return `column ${heading === '' ? `${index + 1} (no heading)` : quote(heading)}`;
}

/**
 * The columns that nothing is compared by, each with what was done with it instead; `lines` are the rows of the quote's lines.
 * Words of any column are read with the description; figures under a heading that isn't understood are `unread`.
 */
export function setAside(columns: readonly QuoteColumn[], lines: readonly Row[]): readonly SetAside[] {
  return columns.flatMap((column): SetAside[] => {
    const { index, key, instead } = column;
    const cells = lines.map((row) => row[index]).filter((cell) => !isBlank(cell));
    if (cells.length === 0) return [];
    const aside = (done: string, understood = true, unread = false) => [
      { index, name: columnName(column), understood, unread, done },
    ];
    if (instead !== null) return aside(`not used: ${columnName(instead)} is read in its place`);
    const better = inFavorOf(column, columns);
    if (better.length > 0) return aside(`read only where ${listed(better.map(columnName), 'or')} is blank`);
    if (key !== null && key !== 'aside') return [];
    const figures = cells.filter(isFigure).length;
    if (figures * 2 <= cells.length)
      return key === null ? aside('not understood: its words are read with the description', false) : [];
    if (key === 'aside' || countsRows(cells)) return aside('not compared');
    return aside('not understood: its figures are compared with nothing', false, true);
  });
}

/** A line has one length and one radius: those under a lesser heading are read where the better one is blank. */
function inFavorOf({ key }: QuoteColumn, columns: readonly QuoteColumn[]): readonly QuoteColumn[] {
  const kinds = [LENGTHS, RADII]
    .map((kind) => kind.map(([name]) => name))
    .find((kind) => kind.some((name) => name === key));
  if (kinds === undefined) return [];
  const before = kinds.slice(
    0,
    kinds.findIndex((name) => name === key),
  );
  return columns.filter((one) => one.key !== null && before.includes(one.key));
}

/** 1, 2, 3 …: the numbers of the lines. */
function countsRows(cells: readonly (CellValue | undefined)[]): boolean {
  return cells.every((cell, at) => cellText(cell).replace(/\.$/, '') === String(at + 1));
}
