import type { FoundTable } from './found';

/** The parts of one table, page after page. */
export type TableParts = readonly FoundTable[];

/** Column edges of two pages are the same within this, in points. */
const SAME_EDGE = 4;
/** Rows at the top of a table among which its headings are looked for. */
const HEADING_ROWS = 4;

/** Tables that go on over pages, put together: the same headings on the next page, or the same columns. */
export function overPages(tables: readonly FoundTable[]): TableParts[] {
  const whole: FoundTable[][] = [];
  for (const table of tables) {
    const before = whole.find((parts) => goesOn(parts.at(-1)!, table));
    if (before) before.push(continued(before.at(-1)!, table));
    else whole.push([table]);
  }
  return whole;
}

function goesOn(before: FoundTable, after: FoundTable): boolean {
  if (after.page !== before.page + 1 || after.turn !== before.turn) return false;
  if (after.edges.length !== before.edges.length) return false;
  const sameEdges = after.edges.every((edge, index) => Math.abs(edge - before.edges[index]!) <= SAME_EDGE);
  return repeatsHeadings(before, after) || (sameEdges && after.named === false);
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
