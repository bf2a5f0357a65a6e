import type { IsHeading } from './found';
import type { Line } from './lines';
import { headingPieces, type Heading } from './openHeadings';
import type { Phrase } from './words';

/** How far a table reaches sideways, and what stands beside its headings and may be a column of it. */
export interface Reach {
  readonly left: number;
  readonly right: number;
  readonly leftOut: readonly string[];
}

interface Span {
  readonly left: number;
  readonly right: number;
}

/** Headings further than this from the others, in ems, must keep their rows to be theirs. */
const FAR = 2.5;
/** A heading further off than this, in ems, is none of the table. */
const FARTHEST = 9;
/** Of the lines below a heading of its own this part stands on lines of the table, less where several do: the others are wrapped. */
const KEPT_BELOW_HEADING = 0.4;
const KEPT_OF_WRAPPED = 0.2;
const SEVERAL = 3;
const KEPT = 0.8;
/** Lines of a text beside the table that happen to stand on lines of it are this near, in ems. */
const LEVEL = 0.06;

/** From its headings on, over gaps that its rows bridge or whose far side keeps its lines. */
export function reach(all: readonly Line[], heading: Heading, size: number, isHeading: IsHeading): Reach {
  const head = all.slice(heading.first, heading.last + 1);
  const below = all.slice(heading.last + 1).filter((line) => line.y - head[0]!.y < 60 * size);
  let { left, right } = ownHeadings(heading, below, size);
  const base = head.at(-1)!.y;
  const isHead = (phrase: Phrase) => Math.abs(phrase.y - base) <= LEVEL * size;
  const isNamed = (phrase: Phrase) => headingPieces(phrase, isHeading).some(({ text }) => isHeading(text));
  for (let grown = true; grown;) {
    grown = false;
    const rows = rowLines(below, left, right);
    for (const line of [...head, ...rows.slice(0, 60)])
      for (const phrase of line.phrases) {
        const gap = phrase.left > right ? phrase.left - right : phrase.right < left ? left - phrase.right : 0;
        const isOutside = phrase.left < left || phrase.right > right;
        if (!isOutside || gap > (head.includes(line) ? FARTHEST : 1.5) * size) continue;
        const isGood = isNamed(phrase) || isFilled(rows, phrase);
        const kept = keptLines(rows, below, phrase, { left, right });
        const isOwn = head.includes(line) && isHead(phrase) && isGood ? isColumn(kept) : kept.part >= KEPT;
        if (gap > 0 && !isOwn) continue;
        if (gap > FAR * size && !isGood) continue;
        left = Math.min(left, phrase.left);
        right = Math.max(right, phrase.right);
        grown = true;
      }
  }
  const rows = rowLines(below, left, right);
  const leftOut = head
    .at(-1)!
    .phrases.filter(
      (phrase) =>
        (phrase.left > right || phrase.right < left) &&
        Math.max(phrase.left - right, left - phrase.right) < FARTHEST * size &&
        isHead(phrase) &&
        keptLines(rows, below, phrase, { left, right }).part < 1 &&
        (isNamed(phrase) || isFilled(rows, phrase)),
    );
  return { left, right, leftOut: leftOut.map(({ text }) => text) };
}

/** The headings without those at either end that stand far off over text that keeps to other lines: the heading of a note beside. */
function ownHeadings({ named, left, right }: Heading, below: readonly Line[], size: number): Span {
  const own = [...named];
  for (let dropped = true; dropped && own.length > 3;) {
    const [last, first] = [own.at(-1)!, own[0]!];
    const inner = { left: own[1]!.left, right: Math.max(...own.slice(0, -1).map((stack) => stack.right)) };
    const isOff = (stack: Span, span: Span) =>
      !isColumn(keptLines(rowLines(below, span.left, span.right), below, stack, span));
    const before = { left: first.left, right: inner.right };
    const after = { left: inner.left, right: last.right };
    if (last.left - inner.right > FAR * size && isOff(last, before)) own.pop();
    else if (inner.left - first.right > FAR * size && isOff(first, after)) own.shift();
    else dropped = false;
  }
  if (own.length === named.length) return { left, right };
  return { left: own[0]!.left, right: Math.max(...own.map((stack) => stack.right)) };
}

function rowLines(below: readonly Line[], left: number, right: number): Line[] {
  return below.filter((line) => line.phrases.some((phrase) => phrase.right > left && phrase.left < right));
}

interface Kept {
  readonly count: number;
  readonly part: number;
}

function isColumn({ count, part }: Kept): boolean {
  return part >= (count >= SEVERAL ? KEPT_OF_WRAPPED : KEPT_BELOW_HEADING);
}

/** How much of the text below a heading stands on lines of the table: a column's does, a note's beside it doesn't. */
function keptLines(rows: readonly Line[], below: readonly Line[], heading: Span, { left, right }: Span): Kept {
  const over = (other: Phrase) => other.left < heading.right && other.right > heading.left;
  const there = below.filter((line) => line.phrases.some(over));
  if (there.length === 0) return { count: 0, part: 1 };
  const kept = there.filter((line) => {
    if (!rows.includes(line)) return false;
    const own = line.phrases.filter(({ left: start, right: end }) => end > left && start < right);
    const { y, size } = line.phrases.find(over)!;
    return own.some((each) => Math.abs(each.y - y) <= LEVEL * size);
  });
  return { count: kept.length, part: kept.length / there.length };
}

/** Whether a good part of the rows has something there. */
function isFilled(rows: readonly Line[], phrase: Span): boolean {
  const filled = rows.filter((line) =>
    line.phrases.some(({ left, right }) => left < phrase.right && right > phrase.left),
  );
  return filled.length >= 0.4 * rows.length;
}

/** The lines below the headings, down to where a gap far wider than between rows, or nothing, follows. */
export function bodyBelow(lines: readonly Line[], from: number, size: number): Line[] {
  const body: Line[] = [];
  const steps: number[] = [];
  let before = from;
  for (const line of lines) {
    if (line.phrases.length === 0) continue;
    const step = line.y - before;
    const usual = steps.length > 1 ? Math.max(...steps) : 3 * size;
    const goesOn = body.length > 0 && step < 9 * size && isRow(line, body);
    if (!goesOn && (body.length > 0 ? step > Math.max(2.6 * size, 1.9 * usual) : step > 5 * size)) break;
    if (body.length > 0) steps.push(step);
    body.push(line);
    before = line.y;
  }
  return body;
}

/** Whether a line past a wider gap has as many texts as the rows before, some of them starting where theirs do. */
function isRow(line: Line, body: readonly Line[]): boolean {
  const rows = body.slice(-6);
  const most = Math.max(...rows.map(({ phrases }) => phrases.length));
  if (line.phrases.length < Math.max(3, 0.6 * most)) return false;
  const starts = rows.flatMap(({ phrases }) => phrases.map(({ left }) => left));
  const same = line.phrases.filter(({ left }) => starts.some((start) => Math.abs(start - left) < 1));
  return same.length >= 0.5 * line.phrases.length;
}
