import type { Cell } from '../sheet';

const LINE_HEIGHT = 15;
const TITLE_HEIGHT = 24;
/** Highest row that Excel takes. */
const MOST_HEIGHT = 409;

/**
 * Spreadsheet programs don't agree on growing a row to its wrapped text, so its height is written, in points; null: the
 * usual one.
 */
export function rowHeight(
  cells: readonly (Cell | null)[],
  widths: readonly number[],
  hidden: ReadonlySet<number>,
): number | null {
  let most = 1;
  for (let column = 0; column < cells.length; column++) {
    const cell = cells[column];
    if (!cell) continue;
    if (cell.style === 'title') return TITLE_HEIGHT;
    if ((cell.wrap || cell.style === 'heading') && typeof cell.value === 'string' && !hidden.has(column)) {
      most = Math.max(most, linesOf(cell.value, (widths[column] ?? 10) - 2));
    }
  }
  return most === 1 ? null : Math.min(MOST_HEIGHT, most * LINE_HEIGHT);
}

function linesOf(text: string, width: number): number {
  if (text.length <= width) return 1;
  let lines = 1;
  let left = width;
  for (const word of text.split(' ')) {
    if (word.length > left && left < width) {
      lines++;
      left = width;
    }
    lines += Math.max(0, Math.ceil(word.length / width) - 1);
    left -= word.length + 1;
  }
  return lines;
}
