/**
 * What is drawn on a page, as plain values. Lengths are points (1/72 inch), x to the right and y downward from the page's
 * top left corner as it is shown.
 */
export interface PageMarks {
  readonly width: number;
  readonly height: number;
  readonly letters: readonly Letter[];
  readonly rules: readonly Rule[];
  readonly bands: readonly Band[];
  readonly seen: Seen;
}

/** One letter, or what its writer drew as one: a ligature, a fraction character. */
export interface Letter {
  readonly text: string;
  /** Where it starts on its baseline. */
  readonly x: number;
  readonly y: number;
  /** Along the baseline. */
  readonly width: number;
  /** Height of the type; an em. */
  readonly size: number;
  /** Quarter turns to the right by which it is turned. */
  readonly turn: number;
  /** Part of it lies outside what the page shows there. */
  readonly clipped: boolean;
  /** Width of a blank in its font, in ems, where all letters of the font are as wide; else 0. */
  readonly blank: number;
}

/** A straight line along an edge of the page, however it was drawn. */
export interface Rule {
  readonly horizontal: boolean;
  /** y of a horizontal one, x of a vertical one. */
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/** An upright rectangle, as drawn or as all that is shown. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A filled rectangle too thick for a rule: a zebra stripe, a shaded heading. */
export interface Band extends Box {
  readonly color: string;
}

/** What the page holds besides: from it follows why a page can't be read. */
export interface Seen {
  /** Letters drawn invisibly, as behind a scanned picture. */
  readonly invisible: number;
  /** Letters at an angle that is no quarter turn. */
  readonly skewed: number;
  /** Letters whose font doesn't say which characters they are. */
  readonly unknown: number;
  readonly pictures: number;
  /** Curved or slanted pieces of paths, as of letters drawn as lines. */
  readonly curves: number;
  /** It has more letters than are read: none were. */
  readonly crowded: boolean;
}

/** Four coefficients and a shift: x' = a·x + c·y + e, y' = b·x + d·y + f. */
export type Matrix = readonly [number, number, number, number, number, number];

/** Six figures of any list as a matrix. */
export function matrixOf(figures: ArrayLike<unknown>): Matrix {
  return [0, 1, 2, 3, 4, 5].map((index) => Number(figures[index])) as unknown as Matrix;
}

/** `inner` first, then `outer`. */
export function times(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer;
  const [g, h, i, j, k, l] = inner;
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

export function moved([a, b, c, d, e, f]: Matrix, x: number, y: number): readonly [number, number] {
  return [a * x + c * y + e, b * x + d * y + f];
}

/** A page's size, in points. */
type Size = Pick<PageMarks, 'width' | 'height'>;

/** Where a point of a page lies once the page is turned by as many quarters to the left. */
function turnedPoint({ width, height }: Size, turn: number, x: number, y: number): readonly [number, number] {
  if (turn === 0) return [x, y];
  return turn === 1 ? [y, width - x] : turn === 2 ? [width - x, height - y] : [height - y, x];
}

/** The same of an upright rectangle. */
export function turnedBox(size: Size, turn: number, { left, top, right, bottom }: Box): Box {
  const one = turnedPoint(size, turn, left, top);
  const other = turnedPoint(size, turn, right, bottom);
  return {
    left: Math.min(one[0], other[0]),
    top: Math.min(one[1], other[1]),
    right: Math.max(one[0], other[0]),
    bottom: Math.max(one[1], other[1]),
  };
}

/** The page turned so that letters with this `turn` stand upright; only they are kept. */
export function upright(marks: PageMarks, turn: number): PageMarks {
  const letters = marks.letters.filter((letter) => letter.turn === turn);
  if (turn === 0) return { ...marks, letters };
  const { width, height } = marks;
  const swaps = turn !== 2;
  return {
    ...marks,
    width: swaps ? height : width,
    height: swaps ? width : height,
    letters: letters.map((letter) => {
      const [x, y] = turnedPoint(marks, turn, letter.x, letter.y);
      return { ...letter, x, y, turn: 0 };
    }),
    rules: marks.rules.map(({ horizontal, at, from, to }) => {
      const line = horizontal
        ? { left: from, right: to, top: at, bottom: at }
        : { left: at, right: at, top: from, bottom: to };
      const { left, right, top, bottom } = turnedBox(marks, turn, line);
      return horizontal !== swaps
        ? { horizontal: true, at: top, from: left, to: right }
        : { horizontal: false, at: left, from: top, to: bottom };
    }),
    bands: marks.bands.map((band) => ({ ...turnedBox(marks, turn, band), color: band.color })),
  };
}
