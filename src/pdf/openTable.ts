import type { FoundRow, FoundTable, IsHeading } from './found';
import type { Band, Rule } from './marks';
import { columnsLike, columnsOf, type Column, type Line } from './openColumns';
import { assembled, type OpenTable } from './openRows';
import { median } from './splitRows';
import { phrasesOf, wordLines, type Phrase, type Word } from './words';

/** What parts the texts of two columns, in ems. */
const PHRASE_GAP = 0.42;
/** Fewer headings than this name no schedule. */
const FEWEST_HEADINGS = 3;
/** Lines of headings over one another. */
const MOST_HEADING_LINES = 4;

/** Where headings stand: lines `first` to `last`. */
interface Heading {
  readonly first: number;
  readonly last: number;
  readonly left: number;
  readonly right: number;
  readonly count: number;
}

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

/** The lines that name the most columns together; the upper ones where several do. */
function bestHeading(lines: readonly Line[], isHeading: IsHeading): Heading | null {
  let best: Heading | null = null;
  lines.forEach((line, last) => {
    for (let first = last; first >= 0 && first > last - MOST_HEADING_LINES; first -= 1) {
      if (first < last && lines[first + 1]!.y - lines[first]!.y > 2.2 * line.size) break;
      const stacks = stacksOf(lines.slice(first, last + 1));
      const named = stacks.filter(({ text }) => text.length < 60 && isHeading(text));
      if (named.length < FEWEST_HEADINGS || named.length <= (best?.count ?? 0)) continue;
      best = {
        first,
        last,
        left: Math.min(...named.map((stack) => stack.left)),
        right: Math.max(...named.map((stack) => stack.right)),
        count: named.length,
      };
    }
  });
  return best;
}

interface Stack {
  text: string;
  left: number;
  right: number;
}

/** Phrases over one another as one heading each; a group over several belongs to each of them. */
function stacksOf(lines: readonly Line[]): Stack[] {
  let stacks: Stack[] = lines.at(-1)!.phrases.map(({ text, left, right }) => ({ text, left, right }));
  for (const line of [...lines].reverse().slice(1))
    for (const phrase of line.phrases) {
      const below = stacks.filter((stack) => stack.left < phrase.right && stack.right > phrase.left);
      if (below.length === 0) stacks = [...stacks, { text: phrase.text, left: phrase.left, right: phrase.right }];
      for (const stack of below) {
        stack.text = `${phrase.text} ${stack.text}`;
        if (below.length === 1) {
          stack.left = Math.min(stack.left, phrase.left);
          stack.right = Math.max(stack.right, phrase.right);
        }
      }
    }
  return stacks;
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
  while (first > 0 && heading.first - first < 3) {
    const above = cut(all[first - 1]!);
    const step = all[first]!.y - above.y;
    if (above.phrases.length === 0 || step > (above.phrases.length > 1 ? 2.2 : 1.9) * size) break;
    first -= 1;
  }
  const head = all.slice(first, last + 1).map(cut);
  const columns = columnsOf(head, body, size);
  if (columns.length < 3) return { table: null, used };
  [...headingWords(head), ...headingWords(body)].forEach((word) => used.add(word));
  return {
    table: withStrangers(assembled(head, body, columns, rules, bands, isHeading), columns, size, isHeading),
    used,
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

/** Second lines of some headings below the best one belong to them: close below, without a figure, and fewer. */
function lastHeadingLine(all: readonly Line[], heading: Heading, isHeading: IsHeading): number {
  const best = all[heading.last]!;
  const over = (phrase: Phrase) => best.phrases.some(({ left, right }) => left < phrase.right && right > phrase.left);
  let last = heading.last;
  while (last + 1 < all.length && last - heading.last < 3) {
    const next = all[last + 1]!;
    const own = next.phrases.filter((phrase) => phrase.right > heading.left && phrase.left < heading.right);
    const isHead =
      own.length > 0 &&
      own.length < best.phrases.length &&
      own.every((phrase) => !/\d/.test(phrase.text) && over(phrase));
    // The first line of a cell that wraps upward makes a known heading unknown.
    const stacks = stacksOf(all.slice(heading.first, last + 1));
    const spoils = own.some((phrase) =>
      stacks.some(
        ({ text, left, right }) =>
          left < phrase.right && right > phrase.left && isHeading(text) && !isHeading(`${text} ${phrase.text}`),
      ),
    );
    if (!isHead || spoils || next.y - all[last]!.y > 1.5 * next.size) break;
    last += 1;
  }
  return last;
}

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

/** How far the table reaches sideways: from its headings on, over gaps that its rows bridge or whose far side keeps its lines. */
function reach(
  all: readonly Line[],
  heading: Heading,
  size: number,
  isHeading: IsHeading,
): { left: number; right: number } {
  const head = all.slice(heading.first, heading.last + 1);
  const below = all.slice(heading.last + 1).filter((line) => line.y - head[0]!.y < 60 * size);
  let { left, right } = heading;
  const rowLines = () =>
    below.filter((line) => line.phrases.some((phrase) => phrase.right > left && phrase.left < right));
  for (let grown = true; grown;) {
    grown = false;
    const rows = rowLines();
    for (const line of [...head, ...rows.slice(0, 60)])
      for (const phrase of line.phrases) {
        const gap = phrase.left > right ? phrase.left - right : phrase.right < left ? left - phrase.right : 0;
        const isOutside = phrase.left < left || phrase.right > right;
        if (!isOutside || gap > (head.includes(line) ? 9 : 1.5) * size) continue;
        if (gap > 0 && !keepsLines(rows, below, phrase, left, right)) continue;
        if (gap > 2.5 * size && !isHeading(phrase.text) && !isFilled(rows, phrase)) continue;
        left = Math.min(left, phrase.left);
        right = Math.max(right, phrase.right);
        grown = true;
      }
  }
  return { left, right };
}

/** Whether what stands where a phrase does keeps to the lines of the table: a column, not a note beside it. */
function keepsLines(
  rows: readonly Line[],
  below: readonly Line[],
  phrase: Phrase,
  left: number,
  right: number,
): boolean {
  const over = (other: Phrase) => other.left < phrase.right && other.right > phrase.left;
  const there = below.filter((line) => line.phrases.some(over));
  const kept = there.filter((line) => {
    if (!rows.includes(line)) return false;
    const own = line.phrases.filter(({ left: start, right: end }) => end > left && start < right);
    const { y, size } = line.phrases.find(over)!;
    return own.some((each) => Math.abs(each.y - y) <= 0.06 * size);
  });
  return kept.length >= 0.8 * there.length;
}

/** Whether a good part of the rows has something there. */
function isFilled(rows: readonly Line[], phrase: Phrase): boolean {
  const filled = rows.filter((line) =>
    line.phrases.some(({ left, right }) => left < phrase.right && right > phrase.left),
  );
  return filled.length >= 0.4 * rows.length;
}

/** The lines below the headings, down to where a gap far wider than between rows, or nothing, follows. */
function bodyBelow(lines: readonly Line[], from: number, size: number): Line[] {
  const body: Line[] = [];
  const steps: number[] = [];
  let before = from;
  for (const line of lines) {
    if (line.phrases.length === 0) continue;
    const step = line.y - before;
    const usual = steps.length > 1 ? Math.max(...steps) : 3 * size;
    if (body.length > 0 ? step > Math.max(2.6 * size, 1.9 * usual) : step > 5 * size) break;
    if (body.length > 0) steps.push(step);
    body.push(line);
    before = line.y;
  }
  // Text across the columns at the end is a note below the table.
  return body;
}

function lineOf(words: readonly Word[]): Line {
  return {
    y: median(words.map(({ y }) => y)),
    size: median(words.map(({ size }) => size)),
    phrases: phrasesOf(words, PHRASE_GAP, () => false),
  };
}
