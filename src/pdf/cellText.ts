import { UNKNOWN } from './characters';
import type { IsHeading } from './found';
import { wordLines, type Word } from './words';

/** What a cell says, and what is in doubt about it. */
export interface CellText {
  readonly text: string;
  readonly flags: readonly string[];
}

export interface CellPlace {
  readonly left: number;
  readonly right: number;
  /** Named in a flag: "column 3". */
  readonly name: string;
}

/**
 * The words of a cell, line by line. `open`: no rules close it, so that a second line may be another row's, unless stripes or
 * rules part the rows.
 */
export function cellText(
  words: readonly Word[],
  place: CellPlace,
  isHeading: IsHeading,
  open: boolean,
  parted = false,
): CellText {
  const lines = wordLines(words);
  const flags = new Set<string>();
  let text = '';
  lines.forEach((line, index) => {
    const own = line.map((word) => word.text).join(' ');
    const before = lines[index - 1];
    if (open && !parted && /\d$/.test(text) && /^\d+\/\d+/.test(own) && !isOneFigure(text, own))
      flags.add(`a fraction stands under a whole number in ${place.name}`);
    text = before === undefined ? own : join(text, own, before, line, place, isHeading, open, flags);
    line.forEach((word, at) => {
      const previous = line[at - 1];
      if (word.overlaps || (previous && previous.right - word.left > 0.25 * word.size))
        flags.add(`letters lie over one another in ${place.name}`);
      if (word.letters.some(({ clipped }) => clipped)) flags.add(`a word is cut off at the edge of ${place.name}`);
      if (word.text.includes(UNKNOWN)) flags.add(`a letter of ${place.name} can't be told: its font keeps it secret`);
    });
  });
  return { text, flags: [...flags] };
}

/** Feet and inches that lack their closing mark, and a fraction that has one: each goes on with the other. */
function isOneFigure(upper: string, lower: string): boolean {
  return /\d'[- ]?\d+$/.test(upper) && /^\d+\/\d+"$/.test(lower);
}

const LEAST_INSET = 1;

function join(
  text: string,
  own: string,
  before: readonly Word[],
  line: readonly Word[],
  place: CellPlace,
  isHeading: IsHeading,
  open: boolean,
  flags: Set<string>,
): string {
  if (/[\p{L}\d][-/]$/u.test(text)) return text + own;
  if (/^[/]/.test(own)) return text + own;
  if (!/[\p{L}\d]$/u.test(text) || !/^[\p{L}\d]/u.test(own)) return `${text} ${own}`;
  const whole = text + own;
  const apart = `${text} ${own}`;
  if (before.length === 1 && isHeading(whole) !== isHeading(apart)) return isHeading(whole) ? whole : apart;
  const isFigure = /\d/.test(text.at(-1)!) && /^\d+(?!\d*\/)/.test(own);
  // A word is broken only where it has the line to itself and the next letter would not have fitted on it. Without rules
  // nobody knows what would have fitted; a figure cut in two is another figure, a word cut in two is understood by nobody.
  const next = line[0]!.letters[0]!;
  const room = place.right - place.left - (before.at(-1)!.right - before[0]!.left) - 2 * LEAST_INSET;
  const isBroken = before.length === 1 && (open ? isFigure : room < next.width + (isFigure ? 0.75 : 0.2) * next.size);
  if (isBroken) flags.add(`a word may be cut in two in ${place.name}`);
  return apart;
}
