import type { FoundTable, IsHeading } from './found';
import { continuedTable, rowsBelow } from './givenColumns';
import { ruledCells } from './grid';
import type { PageMarks } from './marks';
import { hasEdgesOf, hasRowsOf, mayBelong, openBeside } from './moreColumns';
import { openTables } from './openTable';
import type { OpenTable } from './openRows';
import { pageText } from './pageText';
import { ruledTable } from './ruledTable';
import { turnedTexts, turnedWithin, type TurnedText } from './turnedText';
import type { Word } from './words';

/** Fewer letters in one direction than this are no table. */
const FEWEST_LETTERS = 20;

/**
 * The tables of a page that read like lists of openings or lines of a quote, as `isHeading` knows their headings. Those of
 * earlier pages may go on without headings, downward or with more columns.
 */
export function readPage(
  marks: PageMarks,
  page: number,
  isHeading: IsHeading,
  earlier: readonly FoundTable[] = [],
): FoundTable[] {
  const text = pageText(marks);
  return [0, 1, 2, 3].flatMap((turn) => {
    const letters = marks.letters.filter((letter) => letter.turn === turn);
    const alike = earlier.filter((table) => table.turn === turn);
    const before = alike.filter((table) => table.page === page - 1);
    if (letters.length < FEWEST_LETTERS && before.length === 0) return [];
    const { page: shown, rules, words } = text(turn);
    let texts: readonly TurnedText[] | undefined;
    const across = () => (texts ??= turnedTexts(text, turn));
    const used = new Set<Word>();
    const tables: OpenTable[] = [];
    for (const cells of ruledCells(rules)) {
      const near = alike.filter((table) => mayBelong(cells, table));
      const found = ruledTable(cells, words, across, isHeading, before.length > 0 || near.length > 0);
      if (found === null) continue;
      const named = isNamed(found.table.rows, isHeading);
      const goesOn =
        before.some((table) => table.edges.length === found.table.edges.length) ||
        near.some((table) => hasRowsOf(found.table, table) || hasEdgesOf(found.table, table));
      if (!named && !goesOn) continue;
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
    const open = openTables(left, rules, shown.bands, isHeading);
    tables.push(...open);
    for (const table of before) {
      if (table.ruled || open.some(({ edges }) => edges.length === table.edges.length)) continue;
      const more = continuedTable(left, table, rules, shown.bands, isHeading);
      if (more !== null) tables.push(more);
    }
    if (tables.length === 0)
      for (const table of alike) {
        const more = table.ruled ? null : openBeside(left, table, isHeading);
        if (more !== null) tables.push(more);
      }
    // What stands at a quarter turn within a table that no rules close is in none of its cells.
    const strange = ({ ruled, box }: OpenTable) => (ruled ? [] : turnedWithin(across(), box));
    return tables.map((table) => ({ ...table, unplaced: [...table.unplaced, ...strange(table)], page, turn }));
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
