import type { Letter, Rule } from './marks';

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
    const there = kept.get(key);
    if (there) there.push(letter);
    else kept.set(key, [letter]);
    return true;
  });
}

/** Letters by line, top down, each line from left to right. Baselines within 0.2 em are one line. */
function linesOf(letters: readonly Letter[]): Letter[][] {
  const sorted = [...letters].sort((one, other) => one.y - other.y);
  const lines: { y: number; size: number; letters: Letter[] }[] = [];
  for (const letter of sorted) {
    const last = lines.at(-1);
    if (last && letter.y - last.y <= 0.2 * Math.max(last.size, letter.size)) {
      last.letters.push(letter);
      last.size = Math.max(last.size, letter.size);
    } else lines.push({ y: letter.y, size: letter.size, letters: [letter] });
  }
  return lines.map((line) => line.letters.sort((one, other) => one.x - other.x));
}

/** The words of a page, by line. `rules` part words that they stand between. */
export function wordsOf(letters: readonly Letter[], rules: readonly Rule[]): Word[] {
  const vertical = rules.filter(({ horizontal }) => !horizontal).sort((one, other) => one.at - other.at);
  return linesOf(letters).flatMap((line) => {
    const words: Word[] = [];
    let run: Letter[] = [];
    for (const letter of line) {
      const before = run.at(-1);
      if (before) {
        const end = before.x + before.width;
        const gap = letter.x - end;
        const startsFraction = FRACTION.test(letter.text) && /\d$/.test(before.text);
        const isGap = gap > WORD_GAP * Math.max(before.size, letter.size);
        if (isGap || startsFraction || isParted(vertical, before, letter)) {
          words.push(wordOf(run));
          run = [];
        }
      }
      run.push(letter);
    }
    if (run.length > 0) words.push(wordOf(run));
    return words;
  });
}

/** Whether a rule stands in the gap between two letters. */
function isParted(vertical: readonly Rule[], before: Letter, after: Letter): boolean {
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
  const phrases: Phrase[] = [];
  let run: Word[] = [];
  for (const word of line) {
    const before = run.at(-1);
    if (before && (word.left - before.right > joins(before, word, gap) || isCut(before.right, word.left, word.y))) {
      phrases.push(phraseOf(run));
      run = [];
    }
    run.push(word);
  }
  if (run.length > 0) phrases.push(phraseOf(run));
  return phrases;
}

/** Words by line. */
export function wordLines(words: readonly Word[]): Word[][] {
  const sorted = [...words].sort((one, other) => one.y - other.y);
  const lines: Word[][] = [];
  for (const word of sorted) {
    const last = lines.at(-1)?.[0];
    if (last && word.y - last.y <= 0.25 * Math.max(last.size, word.size)) lines.at(-1)!.push(word);
    else lines.push([word]);
  }
  return lines.map((line) => line.sort((one, other) => one.left - other.left));
}
