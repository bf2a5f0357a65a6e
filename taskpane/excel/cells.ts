import { fittingText } from '../../src/workbook/cellText';
import type { CellRange } from '../../src/workbook/address';
import { relativeForm } from '../../src/workbook/formulas/relativeForm';
import type { Cell, Sheet } from '../../src/workbook/sheet';
import { spilledColumns } from '../../src/workbook/spilled';

/** What Excel's `formulas` property takes: a formula with =, a constant, '' for an empty cell. */
export type Entry = string | number | boolean;

/** Excel on the web refuses a request over 5 MB; this leaves room for what was estimated too low. */
export const LARGEST_REQUEST = 3_500_000;

/** Formulas that repeat down a column are sent once and copied down in Excel from so many rows on. */
const WORTH_COPYING = 4;

export interface Block {
  /** Row of the sheet, from 0, where the block begins. */
  readonly row: number;
  readonly entries: Entry[][];
  /** About how many bytes the block takes in a request. */
  readonly size: number;
}

/** Copies of the first row's formulas of an area into its other rows. */
export interface Contents {
  readonly blocks: readonly Block[];
  readonly copies: readonly CellRange[];
}

/**
 * A sheet's cells as rectangles small enough for one request each, and the areas whose formulas are to be copied down from
 * their first row: 5,000 rows of formulas are a fiftieth of the bytes then.
 */
export function contentsOf(sheet: Sheet): Contents {
  const copies = repeats(sheet);
  const copied = new Set<string>();
  for (const { first, last } of copies) {
    for (let row = first.row + 1; row <= last.row; row++) {
      for (let column = first.column; column <= last.column; column++) copied.add(`${row} ${column}`);
    }
  }
  return { blocks: blocksOf(entriesOf(sheet, (row, column) => copied.has(`${row} ${column}`))), copies };
}

function entriesOf(sheet: Sheet, leftOut: (row: number, column: number) => boolean): Entry[][] {
  const width = Math.max(0, ...sheet.rows.map((row) => row.length));
  const spilledIn = spilledColumns();
  if (width === 0) return [];
  return sheet.rows.map((cells, row) => {
    const spilled = spilledIn(cells, row);
    return Array.from({ length: width }, (_, column) =>
      spilled.has(column) || leftOut(row, column) ? '' : entryOf(cells[column] ?? null),
    );
  });
}

/** Rows as blocks small enough for one request each. */
export function blocksOf(rows: readonly Entry[][]): Block[] {
  const blocks: Block[] = [];
  let entries: Entry[][] = [];
  let size = 0;
  let start = 0;
  for (const [row, line] of rows.entries()) {
    const lineSize = bytesOf(line);
    if (entries.length > 0 && size + lineSize > LARGEST_REQUEST) {
      blocks.push({ row: start, entries, size });
      [entries, size, start] = [[], 0, row];
    }
    entries.push(line);
    size += lineSize;
  }
  return entries.length === 0 ? blocks : [...blocks, { row: start, entries, size }];
}

/** Where a column's formula says the same in each of many rows; neighboring columns of the same rows together. */
function repeats(sheet: Sheet): CellRange[] {
  const width = Math.max(0, ...sheet.rows.map((row) => row.length));
  const areas: { first: { row: number; column: number }; last: { row: number; column: number } }[] = [];
  for (let column = 0; column < width; column++) {
    for (const { first, last } of runsOf(sheet, column)) {
      const beside = areas.find(
        (area) => area.last.column === column - 1 && area.first.row === first && area.last.row === last,
      );
      if (beside) beside.last.column = column;
      else areas.push({ first: { row: first, column }, last: { row: last, column } });
    }
  }
  return areas;
}

function runsOf(sheet: Sheet, column: number): { first: number; last: number }[] {
  const runs: { first: number; last: number; form: string }[] = [];
  for (const [row, cells] of sheet.rows.entries()) {
    const cell = cells[column];
    if (cell?.formula === undefined || cell.spill) continue;
    const form = relativeForm(cell.formula, row, column);
    const open = runs.at(-1);
    if (open && open.last === row - 1 && open.form === form) open.last = row;
    else runs.push({ first: row, last: row, form });
  }
  return runs.filter(({ first, last }) => last - first + 1 >= WORTH_COPYING);
}

const utf8 = new TextEncoder();

/** Bytes that a value takes in a request. */
export function bytesOf(value: unknown): number {
  return utf8.encode(JSON.stringify(value)).length;
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
