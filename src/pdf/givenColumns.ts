import type { FoundRow, FoundTable, IsHeading } from './found';
import { lineOf, PHRASE_GAP, type Line } from './lines';
import type { Band, Rule } from './marks';
import { columnsLike } from './openColumns';
import { bestHeading, lastHeadingLine } from './openHeadings';
import { assembled, type OpenTable } from './openRows';
import { bodyBelow } from './reach';
import { median } from '../median';
import { phrasesOf, wordLines, type Phrase, type Word } from './words';

/** The rows of a table of the page before that goes on without headings; null where nothing keeps to its columns. */
export function continuedTable(
  words: readonly Word[],
  before: Pick<FoundTable, 'edges'>,
  rules: readonly Rule[],
  bands: readonly Band[],
  isHeading: IsHeading,
): OpenTable | null {
  const { edges } = before;
  const [left, right] = [edges[0]!, edges.at(-1)!];
  const within = (phrase: Phrase) => phrase.right > left - phrase.size && phrase.left < right;
  const lines = wordLines(words)
    .map((line) => lineOf(line))
    .map((line) => ({ ...line, phrases: line.phrases.filter(within) }));
  let start = lines.findIndex(({ phrases }) => phrases.length >= Math.max(2, 0.5 * (edges.length - 1)));
  if (start < 0) return null;
  // First lines of wrapped cells stand above the mark.
  while (
    start > 0 &&
    lines[start - 1]!.phrases.length > 0 &&
    lines[start]!.y - lines[start - 1]!.y < 1.5 * lines[start]!.size
  )
    start -= 1;
  const { y, size } = lines[start]!;
  const body = bodyBelow(lines.slice(start), y - size, size);
  const columns = columnsLike(edges, body, size);
  const table = assembled([], body, columns, rules, bands, isHeading);
  const same = columns.length === edges.length - 1;
  return same ? { ...table, edges } : null;
}

/** Rows that stand right below a ruled table, each text in one of its columns: the rules end too early, and these are in doubt. */
export function rowsBelow(
  words: readonly Word[],
  { box, edges, rows }: Pick<FoundTable, 'box' | 'edges' | 'rows'>,
  isHeading: IsHeading,
): { readonly rows: readonly FoundRow[]; readonly used: readonly Word[] } {
  const columns = edges.slice(0, -1).map((left, index) => ({ left, right: edges[index + 1]! }));
  const fits = ({ left, right, size }: Phrase) =>
    columns.some((column) => left > column.left - 0.1 * size && right < column.right + 0.1 * size);
  const reach = 1.3 * median(rows.map(({ top, bottom }) => bottom - top));
  const body: Line[] = [];
  let bottom = box.bottom;
  for (const line of wordLines(
    words.filter(({ y, left, right }) => y > box.bottom && right > box.left && left < box.right),
  ).map((line) => lineOf(line))) {
    if (line.y - bottom > reach + line.size) break;
    if (line.phrases.length < Math.max(2, 0.5 * columns.length) || !line.phrases.every(fits)) break;
    body.push(line);
    bottom = line.y;
  }
  if (body.length === 0) return { rows: [], used: [] };
  const table = assembled([], body, columns, [], [], isHeading);
  return {
    rows: table.rows.map((row) => ({ ...row, flags: [...row.flags, 'it stands below the rules of the table'] })),
    used: body.flatMap(({ phrases }) => phrases.flatMap((phrase) => phrase.words)),
  };
}

/** The table of words in columns that are given: headings by their words, and the rows below them. */
export function tableWithin(
  words: readonly Word[],
  edges: readonly number[],
  rules: readonly Rule[],
  bands: readonly Band[],
  isHeading: IsHeading,
): OpenTable | null {
  const columns = edges.slice(0, -1).map((left, index) => ({ left, right: edges[index + 1]! }));
  const isCut = (x0: number, x1: number) => edges.some((edge) => edge >= x0 - 0.5 && edge <= x1 + 0.5);
  const lines = wordLines(words).map((line): Line => ({
    ...lineOf(line),
    phrases: phrasesOf(line, PHRASE_GAP, isCut),
  }));
  const heading = bestHeading(lines, isHeading);
  const last = heading === null ? -1 : lastHeadingLine(lines, heading, isHeading);
  const body = lines.slice(last + 1);
  if (body.length === 0) return null;
  return { ...assembled(lines.slice(0, last + 1), body, columns, rules, bands, isHeading), named: heading !== null };
}
