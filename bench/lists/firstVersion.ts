import { readFileSync } from 'node:fs';
import { valueOf } from '../../tests/value';
import { readBook, type ReadBook } from '../../src/workbook/readBook';
import type { Cell } from '../../src/workbook/sheet';
import { copiedFormula } from '../../src/workbook/formulas/relativeForm';

/** A workbook of the first version with so many openings, and the cell of the first one's span. */
export interface FirstVersion {
  readonly book: ReadBook;
  readonly span: string;
}

/**
 * The file that the first version wrote of five openings, its first opening's row copied down as a spreadsheet copies it; ranges
 * over all openings reach as far. The sheets Stock, Setups and Schedule stay as they were.
 */
export function firstVersion(openings: number): FirstVersion {
  const file = new URL('../../tests/workbook/firstVersion.xlsx', import.meta.url);
  const book = valueOf(readBook(new Uint8Array(readFileSync(file))));
  const takeoff = book.sheets.find(({ name }) => name === 'Takeoff')!;
  const rows = [...takeoff.rows];
  const heads = rows.findIndex((row) => row[0]?.value === 'Source row');
  const first = rows.findIndex((row, at) => at > heads && typeof row[0]?.value === 'number');
  const last = rows.reduce((found, row, at) => (typeof row[0]?.value === 'number' ? at : found), first);
  const below = rows.slice(last + 1);
  const more = openings - (last - first + 1);
  const column = rows[heads]!.findIndex((cell) => cell?.value === 'Span');

  /** `$F$8:$F$12` → `$F$8:$F$107` */
  const whole = new RegExp(`(\\$?[A-Z]+\\$?${first + 1}:\\$?[A-Z]+\\$?)${last + 1}(?!\\d)`, 'g');
  const reaching = (formula: string) => formula.replace(whole, `$1${first + openings}`);
  const copied = (cells: readonly (Cell | null)[], down: number) =>
    cells.map((cell): Cell | null => {
      if (cell?.formula === undefined) return cell;
      return { ...cell, formula: reaching(copiedFormula(cell.formula, down, 0)) };
    });
  const body = Array.from({ length: openings }, (_, at) =>
    copied(rows[first]!, at).map((cell, place) => (place === 0 && cell ? { ...cell, value: at + 2 } : cell)),
  );
  const grown = [
    ...rows.slice(0, first).map((row) => copied(row, 0)),
    ...body,
    ...below.map((row) => copied(row, more)),
  ];
  const sheets = book.sheets.map((sheet) => ({
    ...sheet,
    rows: sheet === takeoff ? grown : [...sheet.rows].map((row) => copied(row, 0)),
  }));
  const letters = String.fromCharCode(65 + column);
  return { book: { ...book, sheets }, span: `${letters}${first + 1}` };
}
