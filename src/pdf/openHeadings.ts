import type { IsHeading } from './found';
import type { Line } from './lines';
import { phraseOf, type Phrase, type Word } from './words';

/** Fewer headings than this name no schedule. */
const FEWEST_HEADINGS = 3;
/** Lines of headings over one another. */
const MOST_HEADING_LINES = 4;

const FIGURE = /^\$?\d[\d'",. /-]*$/;

/** Where headings stand: lines `first` to `last`. */
export interface Heading {
  readonly first: number;
  readonly last: number;
  readonly left: number;
  readonly right: number;
  readonly count: number;
  /** The named ones, from left to right. */
  readonly named: readonly Stack[];
}

/** The lines that name the most columns together; the upper ones where several do. */
export function bestHeading(lines: readonly Line[], isHeading: IsHeading): Heading | null {
  let best: Heading | null = null;
  lines.forEach((line, last) => {
    for (let first = last; first >= 0 && first > last - MOST_HEADING_LINES; first -= 1) {
      // A line with a bare figure is a row of the list, whatever its words would make of the headings above it.
      if (first < last && lines[first + 1]!.phrases.some(({ text }) => FIGURE.test(text))) break;
      if (first < last && lines[first + 1]!.y - lines[first]!.y > 2.2 * line.size) break;
      const stacks = stacksOf(lines.slice(first, last + 1), isHeading);
      const named = stacks.filter(({ text }) => text.length < 60 && isHeading(text));
      if (named.length < FEWEST_HEADINGS || named.length <= (best?.count ?? 0)) continue;
      best = {
        first,
        last,
        left: Math.min(...named.map((stack) => stack.left)),
        right: Math.max(...named.map((stack) => stack.right)),
        count: named.length,
        named: [...named].sort((one, other) => one.left - other.left),
      };
    }
  });
  return best;
}

/** A heading has no more words than this. */
const MOST_WORDS = 4;

/** Headings set so close that they look like one phrase, each of its own; words that name nothing stay together between them. */
export function headingPieces(phrase: Phrase, isHeading: IsHeading): Phrase[] {
  const { words } = phrase;
  if (words.length < 2 || isHeading(phrase.text)) return [phrase];
  const pieces: Word[][] = [];
  let known = 0;
  let isOpen = false;
  for (let at = 0; at < words.length;) {
    let length = Math.min(MOST_WORDS, words.length - at);
    const text = () => words.slice(at, at + length).map((word) => word.text).join(' '); // prettier-ignore
    while (length > 0 && !isHeading(text())) length -= 1;
    if (length === 0 && isOpen) pieces.at(-1)!.push(words[at]!);
    else pieces.push(words.slice(at, at + Math.max(1, length)));
    isOpen = length === 0;
    if (length > 0) known += 1;
    at += Math.max(1, length);
  }
  return known < 2 ? [phrase] : pieces.map(phraseOf);
}

/** A heading, its lines as one text. */
export interface Stack {
  text: string;
  left: number;
  right: number;
}

/** Phrases over one another as one heading each; a group over several belongs to each of them. */
function stacksOf(lines: readonly Line[], isHeading: IsHeading): Stack[] {
  let stacks: Stack[] = lines
    .at(-1)!
    .phrases.flatMap((phrase) => headingPieces(phrase, isHeading))
    .map(({ text, left, right }) => ({ text, left, right }));
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

/** Second lines of some headings below the best one belong to them: close below, without a figure, and fewer. */
export function lastHeadingLine(all: readonly Line[], heading: Heading, isHeading: IsHeading): number {
  const best = all[heading.last]!.phrases.flatMap((phrase) => headingPieces(phrase, isHeading));
  const over = (phrase: Phrase) => best.some(({ left, right }) => left < phrase.right && right > phrase.left);
  let last = heading.last;
  while (last + 1 < all.length && last - heading.last < 3) {
    const next = all[last + 1]!;
    const own = next.phrases.filter((phrase) => phrase.right > heading.left && phrase.left < heading.right);
    const isHead =
      own.length > 0 && own.length < best.length && own.every((phrase) => !/\d/.test(phrase.text) && over(phrase));
    // The first line of a cell that wraps upward makes a known heading unknown.
    const stacks = stacksOf(all.slice(heading.first, last + 1), isHeading);
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
