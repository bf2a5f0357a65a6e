import type { FoundTable } from './found';
import { hasEdgesOf, hasRowsOf, lastPage } from './moreColumns';

/** The parts of one table, page after page. */
export type TableParts = readonly FoundTable[];

/** Rows at the top of a table among which its headings are looked for. */
const HEADING_ROWS = 4;

/**
 * Tables that go on over pages, put together: the same headings on the next page, or the same columns; and columns that had
 * no room on their page, beside the rows at whose heights they stand.
 */
export function overPages(tables: readonly FoundTable[]): TableParts[] {
  const whole: FoundTable[][] = [];
  for (const table of tables) {
    const before = whole.find((parts) => goesOn(parts.at(-1)!, table));
    const widened = before ? null : besides(whole, table);
    if (before) before.push(continued(before.at(-1)!, table));
    else if (widened) widened.parts[widened.at] = { ...widened.part, beside: [...widened.part.beside, table] };
    else whole.push([table]);
  }
  return whole;
}

/** The part of a table that has rows at the heights of `table`'s and no headings there: of several, the first with the fewest columns on other pages. */
function besides(whole: readonly FoundTable[][], table: FoundTable) {
  if (table.named) return null;
  const all = whole.flatMap((parts) => (parts[0]!.named ? parts.map((part, at) => ({ parts, part, at })) : []));
  const fitting = all.filter(
    ({ part }) => part.page < table.page && part.turn === table.turn && hasRowsOf(table, part),
  );
  const fewest = Math.min(...fitting.map(({ part }) => part.beside.length));
  return fitting.find(({ part }) => part.beside.length === fewest) ?? null;
}

function goesOn(before: FoundTable, after: FoundTable): boolean {
  if (after.page !== lastPage(before) + 1 || after.turn !== before.turn) return false;
  if (after.edges.length !== before.edges.length) return false;
  return repeatsHeadings(before, after) || (hasEdgesOf(after, before) && after.named === false);
}

function repeatsHeadings(before: FoundTable, after: FoundTable): boolean {
  return headingCount(before, after) > 0;
}

/** A first row without a mark goes on with the last row of the page before: both are in doubt. */
function continued(before: FoundTable, after: FoundTable): FoundTable {
  const headings = repeatsHeadings(before, after) ? headingCount(before, after) : 0;
  const first = after.rows[headings];
  if (first === undefined || first.cells[0] !== '') return after;
  const flag = `it has no mark and may go on from the last row of page ${before.page}`;
  return {
    ...after,
    rows: after.rows.map((row, index) => (index === headings ? { ...row, flags: [...row.flags, flag] } : row)),
  };
}

/** How many rows at the top of the next page repeat headings of the page before; a group above them counts with them. */
function headingCount(before: FoundTable, after: FoundTable): number {
  const texts = new Set(
    before.rows
      .slice(0, HEADING_ROWS)
      .filter(({ cells }) => cells.filter((cell) => cell !== '').length >= 3)
      .map(({ cells }) => cells.join('\t')),
  );
  return after.rows
    .slice(0, HEADING_ROWS)
    .reduce((count, { cells }, index) => (texts.has(cells.join('\t')) ? index + 1 : count), 0);
}
