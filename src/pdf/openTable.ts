import type { IsHeading } from './found';
import { lineOf, type Line } from './lines';
import type { Band, Rule } from './marks';
import { columnsOf, type Column } from './openColumns';
import { bestHeading, lastHeadingLine, type Heading } from './openHeadings';
import { assembled, type OpenTable } from './openRows';
import { bodyBelow, reach } from './reach';
import { wordLines, type Phrase, type Word } from './words';

/** Tables without closed cells: from a line of headings down, columns by the gaps that all lines leave open. */
export function openTables(
  words: readonly Word[],
  rules: readonly Rule[],
  bands: readonly Band[],
  isHeading: IsHeading,
): OpenTable[] {
  const tables: OpenTable[] = [];
  let left = words;
  for (let count = 0; count < 12; count += 1) {
    const lines = wordLines(left).map((line) => lineOf(line));
    const heading = bestHeading(lines, isHeading);
    if (heading === null) break;
    const { table, used } = tableBelow(lines, heading, rules, bands, isHeading);
    if (table !== null) tables.push(table);
    left = left.filter((word) => !used.has(word));
  }
  return tables;
}

function tableBelow(
  all: readonly Line[],
  heading: Heading,
  rules: readonly Rule[],
  bands: readonly Band[],
  isHeading: IsHeading,
): { table: OpenTable | null; used: Set<Word> } {
  const headingWords = (lines: readonly Line[]) =>
    lines.flatMap(({ phrases }) => phrases.flatMap(({ words }) => words));
  const last = lastHeadingLine(all, heading, isHeading);
  const used = new Set(headingWords(all.slice(heading.first, last + 1)));
  const size = all[last]!.size;
  const span = reach(all, heading, size, isHeading);
  const within = (phrase: Phrase) => phrase.right > span.left && phrase.left < span.right;
  const cut = (line: Line): Line => ({ ...line, phrases: line.phrases.filter(within) });
  const body = bodyBelow(all.slice(last + 1).map(cut), all[last]!.y, size);
  if (body.length === 0) return { table: null, used };
  // Groups and first lines of headings above the best line are kept; a title stands further off.
  let first = heading.first;
  let { y } = all[first]!;
  for (let at = first - 1; at >= 0 && heading.first - first < 3; at -= 1) {
    const above = cut(all[at]!);
    const step = y - above.y;
    if (step > (above.phrases.length > 1 ? 2.2 : 1.9) * size) break;
    // A line of a note beside the table stands between.
    if (above.phrases.length === 0) continue;
    first = at;
    y = above.y;
  }
  const head = all
    .slice(first, last + 1)
    .map(cut)
    .filter(({ phrases }) => phrases.length > 0);
  const columns = columnsOf(head, body, size, isHeading);
  if (columns.length < 3) return { table: null, used };
  [...headingWords(head), ...headingWords(body)].forEach((word) => used.add(word));
  const table = withStrangers(assembled(head, body, columns, rules, bands, isHeading), columns, size, isHeading);
  return { table: withLeftOut(table, span.leftOut, isHeading), used };
}

/** What stands beside the headings and may be one puts them in doubt, and with them every row. */
function withLeftOut(table: OpenTable, leftOut: readonly string[], isHeading: IsHeading): OpenTable {
  if (leftOut.length === 0) return table;
  const flags = leftOut.map((text) => `"${text}", beside them, may head one more column`);
  const named = table.rows.map(({ cells }) => cells.filter((cell) => cell !== '' && isHeading(cell)).length);
  const head = named.indexOf(Math.max(...named));
  return {
    ...table,
    rows: table.rows.map((row, index) => (index === head ? { ...row, flags: [...row.flags, ...flags] } : row)),
  };
}

/** Wider than this, in ems, a gap may part the table from a note beside it. */
const FAR = 2.5;
/** A column filled in a smaller part of the rows may be a note that keeps to their lines by chance. */
const SPARSE = 0.4;

/** Rows with something in a sparse column that stands far off, or has no heading, are in doubt: it may be no column at all. */
function withStrangers(table: OpenTable, columns: readonly Column[], size: number, isHeading: IsHeading): OpenTable {
  const head = table.rows.findIndex(({ cells }) => cells.filter((cell) => cell !== '' && isHeading(cell)).length >= 3);
  const body = table.rows.slice(head + 1);
  const strange = columns.flatMap(({ left }, column) => {
    const filled = body.filter(({ cells }) => cells[column] !== '').length;
    const isFar = column > 0 && left - columns[column - 1]!.right > FAR * size;
    const named = table.rows.slice(0, head + 1).some(({ cells }) => cells[column] !== '');
    return filled > 0 && filled < SPARSE * body.length && (isFar || !named) ? [column] : [];
  });
  const rows = table.rows.map((row, index) => {
    const own = index > head ? strange.filter((column) => row.cells[column] !== '') : [];
    const flags = own.map((column) => `column ${column + 1} may be no part of the table`);
    return flags.length === 0 ? row : { ...row, flags: [...row.flags, ...flags] };
  });
  return { ...table, rows };
}
