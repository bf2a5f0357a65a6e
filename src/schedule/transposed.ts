import { cellText } from './cell';
import { readHeading } from './headingText';
import type { CellValue } from './opening';

const SEARCHED_COLUMNS = 6;

/** The headings of a table that is turned on its side: one below another in one column; null where none is. */
export function transposedHeadings(rows: readonly (readonly CellValue[])[]): readonly string[] | null {
  for (let column = 0; column < SEARCHED_COLUMNS; column += 1) {
    const found = new Map<string, string>();
    for (const row of rows.slice(0, 60)) {
      const cell = row[column];
      if (typeof cell !== 'string' || cell.length > 60 || row.length - column < 2) continue;
      const meaning = readHeading(cell);
      if (meaning !== null) found.set(meaning.key, cellText(cell));
    }
    if (found.size >= 3) return [...found.values()];
  }
  return null;
}
