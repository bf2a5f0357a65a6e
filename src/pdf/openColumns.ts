import type { IsHeading } from './found';
import { recut } from './distribute';
import { PHRASE_GAP, type Line } from './lines';
import { headingPieces } from './openHeadings';
import { joins, type Phrase, type Word } from './words';

export interface Column {
  left: number;
  right: number;
}

/** Words that the lines leave no gap between, one above another. */
interface Strip extends Column {
  /** What the headings over it say. */
  name: string;
  /** Words of the lowest line of headings over it. */
  headings: readonly Word[];
}

/** Two words beside one another on a line, in strips beside one another. */
type Pair = readonly [Word, Word];

/** Columns: where the lines with several phrases leave a gap open, and the gap parts more than two words of one text. */
export function columnsOf(head: readonly Line[], body: readonly Line[], size: number, isHeading: IsHeading): Column[] {
  const first = columnsBy(head, body, size, isHeading);
  // Columns set close together are one phrase until they are known.
  return columnsBy(
    head,
    body.map((line) => ({ ...line, phrases: line.phrases.flatMap((phrase) => recut(phrase, first)) })),
    size,
    isHeading,
  );
}

function columnsBy(head: readonly Line[], body: readonly Line[], size: number, isHeading: IsHeading): Column[] {
  const most = Math.max(...body.map(({ phrases }) => phrases.length));
  const strong = body.filter(({ phrases }) => phrases.length >= Math.max(2, 0.5 * most));
  const lines = (strong.length > 0 ? strong : body).map(wordsIn);
  const pieces = head.map(({ phrases }) => phrases.flatMap((phrase) => headingPieces(phrase, isHeading)));
  const strips = stripsOf(lines, size);
  nameStrips(strips, pieces, isHeading);
  const pairs = pairsOf(lines, strips);
  const columns: Column[] = [];
  strips.forEach((strip, index) => {
    const before = strips[index - 1];
    if (before && !isParted(before, strip, pairs[index - 1]!, isHeading)) columns.at(-1)!.right = strip.right;
    else columns.push({ left: strip.left, right: strip.right });
  });
  withHeadings(columns, pieces);
  // A column that only wrapped lines reach is still one.
  const weak = body.filter((line) => !strong.includes(line));
  for (const line of weak)
    for (const phrase of line.phrases) {
      const under = touched(columns, phrase);
      if (under.length === 0) columns.push({ left: phrase.left, right: phrase.right });
      if (under.length === 1 && line.phrases.length > 1) widen(under[0]!, phrase);
    }
  return columns.sort((one, other) => one.left - other.left);
}

function wordsIn({ phrases }: Line): Word[] {
  return phrases.flatMap(({ words }) => words).sort((one, other) => one.left - other.left);
}

function touched<T extends Column>(columns: readonly T[], { left, right }: Column): T[] {
  return columns.filter((column) => column.left < right && column.right > left);
}

function stripsOf(lines: readonly (readonly Word[])[], size: number): Strip[] {
  const strips: Strip[] = [];
  for (const { left, right } of lines.flat().sort((one, other) => one.left - other.left)) {
    const last = strips.at(-1);
    if (last && left - last.right < 0.1 * size) last.right = Math.max(last.right, right);
    else strips.push({ left, right, name: '', headings: [] });
  }
  return strips;
}

/** Names strips by the headings over them; a heading over none names the nearest beside it that has no other. */
function nameStrips(strips: readonly Strip[], head: readonly (readonly Phrase[])[], isHeading: IsHeading): void {
  const lines = new Map<Strip, string[]>(strips.map((strip) => [strip, []]));
  const loose: Phrase[] = [];
  for (const line of head) {
    for (const phrase of line) if (touched(strips, phrase).length === 0) loose.push(phrase);
    const words = line.flatMap((phrase) => phrase.words);
    for (const strip of strips) {
      const own = words.filter(({ left, right }) => strip.left < right && strip.right > left);
      if (own.length === 0) continue;
      lines.get(strip)!.push(own.map(({ text }) => text).join(' '));
      strip.headings = own;
    }
  }
  for (const phrase of loose) {
    const beside = nearestWithout(strips, phrase, (strip) => lines.get(strip)!.length > 0);
    if (beside) lines.get(beside)!.push(phrase.text);
  }
  for (const [strip, texts] of lines) {
    const whole = texts.map((_, index) => texts.slice(index).join(' '));
    strip.name = whole.find((text) => isHeading(text)) ?? whole[0] ?? '';
  }
}

/** Of the columns next to a place at either side, the nearest that has no heading. */
function nearestWithout<T extends Column>(
  columns: readonly T[],
  { left, right }: Column,
  isNamed: (column: T) => boolean,
): T | undefined {
  const before = columns.filter((column) => column.right <= left).at(-1);
  const after = columns.find((column) => column.left >= right);
  return [before, after]
    .filter((column): column is T => column !== undefined && !isNamed(column))
    .sort((one, other) => distance(one, left, right) - distance(other, left, right))[0];
}

function distance(column: Column, left: number, right: number): number {
  return column.left >= right ? column.left - right : left - column.right;
}

/** By strip: the words of it that have a word of the next strip beside them. */
function pairsOf(lines: readonly (readonly Word[])[], strips: readonly Strip[]): Pair[][] {
  const pairs = strips.map((): Pair[] => []);
  const at = ({ left, right }: Word) =>
    strips.findIndex((strip) => strip.left <= left + 0.01 && strip.right >= right - 0.01);
  for (const line of lines)
    line.slice(1).forEach((word, index) => {
      const before = line[index]!;
      const strip = at(before);
      if (at(word) === strip + 1) pairs[strip]!.push([before, word]);
    });
  return pairs;
}

/** Whether the gap between two strips parts two columns: no gap between words is as wide, or two headings stand over them. */
function isParted(before: Strip, after: Strip, pairs: readonly Pair[], isHeading: IsHeading): boolean {
  if (pairs.length === 0) return true;
  if (pairs.some(([one, other]) => other.left - one.right > joins(one, other, PHRASE_GAP))) return true;
  if (before.name === '' || after.name === '') return false;
  if (before.headings.some((word) => after.headings.includes(word)) || pairs.every(isFraction)) return false;
  const both = isHeading(before.name) && isHeading(after.name);
  const together = isHeading(`${before.name} ${after.name}`);
  if (both && !together) return true;
  return (both || !together) && isAligned(pairs);
}

/** A whole number, and the fraction that goes with it. */
function isFraction([one, other]: Pair): boolean {
  return /\d$/.test(one.text) && /^\d+\/\d+/.test(other.text);
}

/** Fewer lines that end or start at one place are chance. */
const FEWEST_ALIGNED = 3;

/** Whether different texts end at one place before the gap, or start at one place after it, as in columns and not in a text. */
function isAligned(pairs: readonly Pair[]): boolean {
  if (pairs.length < FEWEST_ALIGNED) return false;
  const ends = pairs.map(([one]) => one.right);
  const starts = pairs.map(([, other]) => other.left);
  const spread = (places: readonly number[]) => Math.max(...places) - Math.min(...places);
  const texts = (side: 0 | 1) => new Set(pairs.map((pair) => pair[side].text.toLowerCase())).size;
  return Math.min(spread(ends), spread(starts)) < 0.5 && texts(0) > 1 && texts(1) > 1;
}

/** Headings make a column as wide as they are; one over no column belongs to the nearest without, or has one of its own. */
function withHeadings(columns: Column[], head: readonly (readonly Phrase[])[]): void {
  const named = new Set<Column>();
  const loose: Phrase[] = [];
  for (const phrase of [...head].reverse().flat()) {
    const under = touched(columns, phrase);
    if (under.length === 0) loose.push(phrase);
    if (under.length !== 1) continue;
    named.add(under[0]!);
    widen(under[0]!, phrase);
  }
  for (const phrase of loose) {
    if (touched(columns, phrase).length > 0) continue;
    const beside = nearestWithout(columns, phrase, (column) => named.has(column));
    const own = beside ?? { left: phrase.left, right: phrase.right };
    if (beside) widen(beside, phrase);
    else columns.push(own);
    columns.sort((one, other) => one.left - other.left);
    named.add(own);
  }
}

function widen(column: Column, { left, right }: Column): void {
  column.left = Math.min(column.left, left);
  column.right = Math.max(column.right, right);
}

/** The columns of the page before, as wide as they are here: a longer text may reach further than any did there. */
export function columnsLike(edges: readonly number[], body: readonly Line[], size: number): Column[] {
  const own = columnsOf([], body, size, () => false);
  const middles = edges.slice(0, -1).map((left, index) => (left + edges[index + 1]!) / 2);
  const before = edges.slice(0, -1).map((left, index) => ({ left, right: edges[index + 1]! }));
  const used = new Set<number>();
  const columns = before.map((column, index): Column => {
    const here = own.filter((each) => Math.min(each.right, column.right) - Math.max(each.left, column.left) > 0);
    const [only] = here.filter(
      (each) =>
        !middles.some(
          (middle, other) => other !== index && each.left < middle - 0.1 && each.right > middle && other > index,
        ),
    );
    const at = only === undefined ? -1 : own.indexOf(only);
    if (only === undefined || used.has(at)) return { left: column.left, right: column.left + 0.5 };
    used.add(at);
    return only;
  });
  return columns.every((column, index) => index === 0 || column.left >= columns[index - 1]!.right - 0.5)
    ? columns
    : before;
}
