import type { FoundTable, IsHeading } from './found';
import { withFractions } from './fractions';
import { continuedTable, rowsBelow } from './givenColumns';
import { ruledCells } from './grid';
import { upright, type PageMarks } from './marks';
import { openTables } from './openTable';
import { ruledTable } from './ruledTable';
import { merged } from './rules';
import { once, wordsOf, type Word } from './words';

/** Fewer letters in one direction than this are no table. */
const FEWEST_LETTERS = 20;

/**
 * The tables of a page that read like lists of openings or lines of a quote, as `isHeading` knows their headings. Those of
 * the page before may go on without headings.
 */
export function readPage(
  marks: PageMarks,
  page: number,
  isHeading: IsHeading,
  before: readonly FoundTable[] = [],
): FoundTable[] {
  return [0, 1, 2, 3].flatMap((turn) => {
    const turned = upright(marks, turn);
    if (turned.letters.length < FEWEST_LETTERS && !before.some((table) => table.turn === turn)) return [];
    const rules = merged(turned.rules);
    const letters = withFractions(once(turned.letters), rules);
    const words = wordsOf(letters, rules);
    const used = new Set<Word>();
    const tables: Omit<FoundTable, 'page' | 'turn'>[] = [];
    const earlier = before.filter((table) => table.turn === turn);
    for (const cells of ruledCells(rules)) {
      const found = ruledTable(cells, words, isHeading, earlier.length > 0);
      if (found === null) continue;
      const named = isNamed(found.table.rows, isHeading);
      if (!named && !earlier.some((table) => table.edges.length === found.table.edges.length)) continue;
      found.used.forEach((word) => used.add(word));
      const below = rowsBelow(
        words.filter((word) => !used.has(word)),
        found.table,
        isHeading,
      );
      below.used.forEach((word) => used.add(word));
      tables.push({ ...found.table, rows: [...found.table.rows, ...below.rows], named });
    }
    const left = words.filter((word) => !used.has(word));
    const open = openTables(left, rules, turned.bands, isHeading);
    tables.push(...open);
    for (const table of earlier) {
      if (table.ruled || open.some(({ edges }) => edges.length === table.edges.length)) continue;
      const more = continuedTable(left, table, rules, turned.bands, isHeading);
      if (more !== null) tables.push(more);
    }
    return tables.map((table) => ({ ...table, page, turn }));
  });
}

/** Whether some row, or two together, names three columns. */
function isNamed(rows: FoundTable['rows'], isHeading: IsHeading): boolean {
  return rows.slice(0, 30).some(({ cells }, index) => {
    const next = rows[index + 1]?.cells ?? [];
    const alone = cells.filter((cell) => cell !== '' && isHeading(cell)).length;
    const both = cells.filter((cell, column) => isHeading(`${cell} ${next[column] ?? ''}`.trim())).length;
    return Math.max(alone, both) >= 3;
  });
}
