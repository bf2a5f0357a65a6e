import { fittingText } from '../../src/workbook/cellText';
import type { Cell, Sheet } from '../../src/workbook/sheet';
import { spilledColumns } from '../../src/workbook/spilled';

/** What Excel's `formulas` property takes: a formula with =, a constant, '' for an empty cell. */
export type Entry = string | number | boolean;

/** Excel on the web refuses a request over 5 MB; this leaves room for everything else in it. */
export const LARGEST_REQUEST = 3_500_000;

export interface Block {
  /** Row of the sheet, from 0, where the block begins. */
  readonly row: number;
  readonly entries: Entry[][];
  /** About how many bytes the block takes in a request. */
  readonly size: number;
}

/** A sheet's cells as rectangles small enough for one request each. */
export function blocksOf(sheet: Sheet): Block[] {
  const width = Math.max(0, ...sheet.rows.map((row) => row.length));
  const blocks: Block[] = [];
  let entries: Entry[][] = [];
  let size = 0;
  let start = 0;
  if (width === 0) return blocks;
  const spilledIn = spilledColumns();
  for (const [row, cells] of sheet.rows.entries()) {
    const spilled = spilledIn(cells, row);
    const line = Array.from({ length: width }, (_, column) =>
      spilled.has(column) ? '' : entryOf(cells[column] ?? null),
    );
    const lineSize = JSON.stringify(line).length * 1.1; // some characters take more than one byte
    if (entries.length > 0 && size + lineSize > LARGEST_REQUEST) {
      blocks.push({ row: start, entries, size });
      [entries, size, start] = [[], 0, row];
    }
    entries.push(line);
    size += lineSize;
  }
  blocks.push({ row: start, entries, size });
  return blocks;
}

function entryOf(cell: Cell | null): Entry {
  if (cell === null) return '';
  return cell.formula === undefined ? constantEntry(cell.value) : '=' + cell.formula;
}

/**
 * Text stays text: Excel would make a date of "36-1/2", a formula of "=1+1" and TRUE of "true" (or of its word in another
 * language). The apostrophe that prevents it is not shown and is not part of the value.
 */
export function constantEntry(value: string | number | boolean | null): Entry {
  if (value === null || value === '') return '';
  return typeof value === 'string' ? "'" + fittingText(value) : value;
}
