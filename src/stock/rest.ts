import type { Cutting, Pattern, Run } from './cutting';

/** A part of a problem: the pieces still wanted of it, and the boards still to be had. */
export interface Rest {
  readonly cutting: Cutting;
  /** Index in the whole problem of each size here, and back (−1: none left). */
  readonly whole: readonly number[];
  readonly here: readonly number[];
}

/** All of a problem. */
export function allOf(cutting: Cutting): Rest {
  const all = cutting.sizes.map((_, at) => at);
  return { cutting, whole: all, here: all };
}

/** The part of `rest` in which so many pieces of each of its sizes are wanted; null where no piece is. */
export function partOf(rest: Rest, wanted: ArrayLike<number>, had: readonly number[]): Rest | null {
  const { sizes, boards } = rest.cutting;
  const kept = sizes.map((_, at) => at).filter((at) => wanted[at]! > 0.5);
  if (kept.length === 0) return null;
  const within = new Array<number>(sizes.length).fill(-1);
  kept.forEach((at, row) => (within[at] = row));
  return {
    cutting: {
      sizes: kept.map((at) => sizes[at]!),
      demand: kept.map((at) => Math.round(wanted[at]!)),
      boards: boards.map((board, k) => ({ ...board, limit: had[k]! })),
    },
    whole: kept.map((at) => rest.whole[at]!),
    here: rest.here.map((at) => (at < 0 ? -1 : within[at]!)),
  };
}

/** A pattern of the whole problem, over the sizes of the rest; null where it needs one that isn't left. */
export function toHere(pattern: Pattern, rest: Rest): Pattern | null {
  const pieces = pattern.pieces.map((piece) => rest.here[piece]!);
  return pieces.includes(-1) ? null : { ...pattern, pieces };
}

export function patternToWhole(pattern: Pattern, rest: Rest): Pattern {
  return { ...pattern, pieces: pattern.pieces.map((piece) => rest.whole[piece]!) };
}

export function toWhole(run: Run, rest: Rest): Run {
  return { ...run, pattern: patternToWhole(run.pattern, rest) };
}
