import type { Letter, Rule } from './marks';
import { pushTo } from '../pushTo';

/** Letters that hang together on one line, as wide as they are drawn. */
export interface Word {
  readonly letters: readonly Letter[];
  readonly text: string;
  readonly left: number;
  readonly right: number;
  /** Baseline. */
  readonly y: number;
  readonly size: number;
  /** Letters of it lie over one another. */
  readonly overlaps: boolean;
  /** Width of a blank, in points, where its font's letters are all as wide; else 0. */
  readonly blank: number;
}

/** A wider gap parts words, in ems. */
const WORD_GAP = 0.13;
/** Drawn small, and read as one letter. */
const FRACTION = /^\d+\/\d+$/;
/** The same letter again this near is drawn twice to look bold. */
const TWICE = 0.15;

/** Each letter once, however often it was drawn to look bold. */
export function once(letters: readonly Letter[]): Letter[] {
  const kept = new Map<string, Letter[]>();
  return letters.filter((letter) => {
    const [column, row] = [Math.floor(letter.x / 4), Math.floor(letter.y / 4)];
    for (let x = column - 1; x <= column + 1; x += 1)
      for (let y = row - 1; y <= row + 1; y += 1)
        for (const other of kept.get(`${letter.text} ${x} ${y}`) ?? []) {
          const near = TWICE * letter.size;
          if (Math.abs(other.x - letter.x) <= near && Math.abs(other.y - letter.y) <= near) return false;
        }
    const key = `${letter.text} ${column} ${row}`;
    pushTo(kept, key, letter);
    return true;
  });
}

/** Things by line, top down. Baselines within `reach` ems are one line. */
function byLine<T extends { readonly y: number; readonly size: number }>(things: readonly T[], reach: number): T[][] {
  const sorted = [...things].sort((one, other) => one.y - other.y);
  const lines: { y: number; size: number; things: T[] }[] = [];
  for (const thing of sorted) {
    const last = lines.at(-1);
    if (last && thing.y - last.y <= reach * Math.max(last.size, thing.size)) {
      last.things.push(thing);
      last.size = Math.max(last.size, thing.size);
    } else lines.push({ y: thing.y, size: thing.size, things: [thing] });
  }
  return lines.map((line) => line.things);
}

/** Letters by line, each line from left to right. */
function linesOf(letters: readonly Letter[]): Letter[][] {
  return byLine(letters, 0.2).map((line) => line.sort((one, other) => one.x - other.x));
}

/** The words of a page, by line. `rules` part words that they stand between. */
export function wordsOf(letters: readonly Letter[], rules: readonly Rule[]): Word[] {
  const vertical = rules.filter(({ horizontal }) => !horizontal).sort((one, other) => one.at - other.at);
  const isParted = (before: Letter, letter: Letter) => {
    const gap = letter.x - before.x - before.width;
    const startsFraction = FRACTION.test(letter.text) && /\d$/.test(before.text);
    const isGap = gap > WORD_GAP * Math.max(before.size, letter.size);
    return isGap || startsFraction || isRuled(vertical, before, letter);
  };
  return linesOf(letters).flatMap((line) => runsOf(line, isParted).map(wordOf));
}

/** Things of one line in runs: a new one begins wherever two are parted. */
function runsOf<T>(line: readonly T[], isParted: (before: T, thing: T) => boolean): T[][] {
  const runs: T[][] = [];
  line.forEach((thing, index) => {
    if (index === 0 || isParted(line[index - 1]!, thing)) runs.push([thing]);
    else runs.at(-1)!.push(thing);
  });
  return runs;
}

/** Whether a rule stands in the gap between two letters. */
function isRuled(vertical: readonly Rule[], before: Letter, after: Letter): boolean {
  const [end, start] = [before.x + before.width, after.x];
  const slack = 0.06 * before.size;
  if (start - end < -slack) return false;
  let low = 0;
  let high = vertical.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (vertical[middle]!.at < end - slack) low = middle + 1;
    else high = middle;
  }
  const y = before.y - before.size / 3;
  for (let index = low; index < vertical.length && vertical[index]!.at <= start + slack; index += 1)
    if (vertical[index]!.from <= y && vertical[index]!.to >= y) return true;
  return false;
}

function wordOf(letters: readonly Letter[]): Word {
  const [first] = letters;
  let [right, size, overlaps] = [-Infinity, 0, false];
  let before: Letter | null = null;
  for (const letter of letters) {
    right = Math.max(right, letter.x + letter.width);
    size = Math.max(size, letter.size);
    if (before && before.x + before.width - letter.x > 0.45 * Math.min(before.width, letter.width)) overlaps = true;
    before = letter;
  }
  const text = letters.map((letter) => letter.text).join('');
  return { letters, text, left: first!.x, right, y: first!.y, size, overlaps, blank: first!.blank * size };
}

/** Words of one line with gaps no wider than `gap` ems between them, as one. */
export interface Phrase {
  readonly words: readonly Word[];
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly y: number;
  readonly size: number;
}

export function phraseOf(words: readonly Word[]): Phrase {
  return {
    words,
    text: words.map(({ text }) => text).join(' '),
    left: words[0]!.left,
    right: Math.max(...words.map(({ right }) => right)),
    y: words[0]!.y,
    size: Math.max(...words.map(({ size }) => size)),
  };
}

/** Blanks of a font with letters of one width are wide: a wider gap than this many of them parts phrases. */
const BLANKS = 1.2;

/** The widest gap between two words that still belong together, where `gap` ems are the usual one. */
export function joins(before: Word, word: Word, gap: number): number {
  return Math.max(gap * Math.max(before.size, word.size), BLANKS * Math.max(before.blank, word.blank));
}

/** Words of one line, from left to right, as phrases. */
export function phrasesOf(line: readonly Word[], gap: number, isCut: (x0: number, x1: number, y: number) => boolean) {
  const isParted = (before: Word, word: Word) =>
    word.left - before.right > joins(before, word, gap) || isCut(before.right, word.left, word.y);
  return runsOf(line, isParted).map(phraseOf);
}

/** Words by line, each line from left to right. */
export function wordLines(words: readonly Word[]): Word[][] {
  return byLine(words, 0.25).map((line) => line.sort((one, other) => one.left - other.left));
}
