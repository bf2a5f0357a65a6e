import { raised } from './characters';
import type { Letter, Rule } from './marks';
import { wordsOf, type Word } from './words';
import { pushTo } from '../pushTo';

/** Figures smaller than this part of the type beside them belong to a fraction. */
const SMALL = 0.85;

/**
 * Fractions set as small figures, over a bar or beside a stroke, as one letter each ("1/2") on the baseline of the number
 * before them; other small raised figures become raised characters, so that they join no number.
 */
export function withFractions(letters: readonly Letter[], rules: readonly Rule[]): Letter[] {
  const figures = wordsOf(
    letters.filter(({ text }) => /^[\d/]$/.test(text)),
    [],
  ).flatMap(bySize);
  if (figures.length === 0) return [...letters];
  const used = new Set<Letter>();
  const made: Letter[] = [];
  const near = nearby(figures);
  const neighbors = nearbyLetters(letters);
  const bars = rules.filter(({ horizontal, from, to }) => horizontal && to - from < 40);
  for (const upper of figures) {
    if (!/^\d+$/.test(upper.text) || used.has(upper.letters[0]!)) continue;
    const whole = hostOf(upper, neighbors);
    const host = whole !== null && upper.size < whole.size * SMALL ? whole : null;
    const lower = near(upper).find((other) => isUnder(upper, other) && !used.has(other.letters[0]!));
    const slash = letters.length > 0 ? slashAfter(upper, neighbors) : null;
    // Of tight rows the figure below is near as well: the stroke's own stands nearest to its line.
    const beside =
      slash &&
      near(upper)
        .filter((other) => isBeside(upper, slash, other) && !used.has(other.letters[0]!))
        .sort((one, other) => Math.abs(one.y - slash.y) - Math.abs(other.y - slash.y))[0];
    if (slash && beside && (host !== null || upper.y < beside.y - 0.15 * upper.size)) {
      const parts = [...upper.letters, slash, ...beside.letters];
      parts.forEach((letter) => used.add(letter));
      made.push(fraction(`${upper.text}/${beside.text}`, parts, host?.y ?? beside.y, host?.size ?? slash.size));
    } else if (
      lower &&
      (barBetween(upper, lower, bars) || (host !== null && host.y > upper.y && host.y < lower.y + 0.1))
    ) {
      const parts = [...upper.letters, ...lower.letters];
      parts.forEach((letter) => used.add(letter));
      const middle = (upper.y + lower.y) / 2;
      made.push(fraction(`${upper.text}/${lower.text}`, parts, host?.y ?? middle, host?.size ?? upper.size * 1.2));
    } else if (host !== null && upper.y < host.y - 0.2 * host.size) {
      upper.letters.forEach((letter) => {
        used.add(letter);
        made.push({ ...letter, text: raised(letter.text), y: host.y, size: host.size });
      });
    }
  }
  return [...letters.filter((letter) => !used.has(letter)), ...made];
}

/** A word may hold figures of two sizes: 42 and the small ones beside it. */
function bySize(word: Word): Word[] {
  const parts: Letter[][] = [];
  for (const letter of word.letters) {
    const last = parts.at(-1)?.at(-1);
    const same =
      last && Math.abs(last.size - letter.size) < 0.1 * last.size && (last.text === '/') === (letter.text === '/');
    if (same) parts.at(-1)!.push(letter);
    else parts.push([letter]);
  }
  return parts.map((part) => ({
    ...word,
    letters: part,
    text: part.map(({ text }) => text).join(''),
    left: part[0]!.x,
    right: part.at(-1)!.x + part.at(-1)!.width,
    size: part[0]!.size,
    y: part[0]!.y,
  }));
}

function fraction(text: string, parts: readonly Letter[], y: number, size: number): Letter {
  const x = Math.min(...parts.map((part) => part.x));
  const right = Math.max(...parts.map((part) => part.x + part.width));
  const [{ turn, blank }] = parts as readonly [Letter];
  return { text, x, y, width: right - x, size, turn, blank, clipped: parts.some(({ clipped }) => clipped) };
}

/** The larger letter that a small figure stands beside. */
function hostOf(word: Word, near: (x: number, y: number) => Letter[]): Letter | null {
  const hosts = near(word.left, word.y).filter(
    (letter) =>
      letter.size > word.size / SMALL &&
      letter.text !== '/' &&
      letter.x < word.left &&
      word.left - letter.x - letter.width < 0.5 * letter.size &&
      word.y > letter.y - letter.size &&
      word.y < letter.y + 0.45 * letter.size,
  );
  return hosts.sort((one, other) => other.x - one.x)[0] ?? null;
}

/** The stroke after an upper figure, whatever its size. */
function slashAfter(word: Word, near: (x: number, y: number) => Letter[]): Letter | null {
  return (
    near(word.right, word.y).find(
      (letter) =>
        letter.text === '/' &&
        Math.abs(letter.x - word.right) < 0.3 * letter.size &&
        letter.y >= word.y - 0.1 * letter.size &&
        letter.y - word.y < 0.7 * letter.size,
    ) ?? null
  );
}

function isBeside(upper: Word, slash: Letter, other: Word): boolean {
  const gap = other.left - slash.x - slash.width;
  return (
    /^\d+$/.test(other.text) &&
    Math.abs(gap) < 0.3 * slash.size &&
    other.y >= upper.y - 0.05 * upper.size &&
    other.y - upper.y < 1.4 * upper.size &&
    Math.abs(other.size - upper.size) < 0.25 * upper.size
  );
}

function isUnder(upper: Word, lower: Word): boolean {
  const down = lower.y - upper.y;
  const apart = Math.abs((upper.left + upper.right) / 2 - (lower.left + lower.right) / 2);
  return (
    /^\d+$/.test(lower.text) &&
    Math.abs(lower.size - upper.size) < 0.2 * upper.size &&
    down > 0.6 * upper.size &&
    down < 1.7 * upper.size &&
    apart < 0.35 * upper.size
  );
}

/** A short rule between two figures, about as wide as they are. */
function barBetween(upper: Word, lower: Word, bars: readonly Rule[]): boolean {
  const [left, right] = [Math.min(upper.left, lower.left), Math.max(upper.right, lower.right)];
  return bars.some(
    ({ at, from, to }) =>
      at > upper.y - 0.1 * upper.size &&
      at < lower.y - 0.5 * lower.size &&
      from <= left + 0.3 * upper.size &&
      to >= right - 0.3 * upper.size &&
      to - from < (right - left) * 2.2 + 1,
  );
}

const STEP = 16;

function nearby(words: readonly Word[]): (word: Word) => Word[] {
  const grid = gridOf(words, (word) => [word.left, word.y]);
  return (word) => grid(word.left, word.y).filter((other) => other !== word);
}

function nearbyLetters(letters: readonly Letter[]): (x: number, y: number) => Letter[] {
  return gridOf(letters, ({ x, y }) => [x, y]);
}

function gridOf<T>(
  things: readonly T[],
  place: (thing: T) => readonly [number, number],
): (x: number, y: number) => T[] {
  const cells = new Map<number, T[]>();
  const cell = (value: number) => Math.floor(value / STEP);
  // A page has far fewer columns and rows of them.
  const keyOf = (column: number, row: number) => column * 1e6 + row;
  for (const thing of things) {
    const [x, y] = place(thing);
    const key = keyOf(cell(x), cell(y));
    pushTo(cells, key, thing);
  }
  return (x, y) => {
    const found: T[] = [];
    for (let column = cell(x) - 2; column <= cell(x) + 2; column += 1)
      for (let row = cell(y) - 2; row <= cell(y) + 2; row += 1) found.push(...(cells.get(keyOf(column, row)) ?? []));
    return found;
  };
}
