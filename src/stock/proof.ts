import type { Cutting } from './cutting';
import type { Filler } from './filler';

/**
 * A lower bound that anyone can check with whole numbers alone. Each piece is given a worth; however a board of kind k is cut,
 * its pieces are worth at most `most[k]`. Boards that must hold all the pieces' worth can't cost less than the bound.
 */
export interface Proof {
  /** Worth of a piece of each size of the cutting problem, whole, 0 or more. */
  readonly worths: readonly number[];
  /** The greatest worth one board of each kind can hold, whole. */
  readonly most: readonly number[];
}

export interface ScaledProof extends Proof {
  /** Worths to one price unit, whole. */
  readonly scale: number;
}

/** The dearest board's price in whole worths, at most. */
const LARGEST_PRICE = 1e9;
/** No board holds more whole worths than this, so that sums over one board are exact and bounds of them off by far less than 1. */
const LARGEST_HELD = 2 ** 50;
/** Whole worths differ by 1 or more: searching for half of that, rounding can't hide a better filling. */
export const HALF_A_WORTH = 0.5;

/**
 * Duals rounded down to whole worths, and the most a board of each kind can hold of them, in whole numbers. With `waste`, only
 * fillings that leave no more of the room than that count.
 */
export function proofFrom(
  duals: ArrayLike<number>,
  { sizes, boards }: Cutting,
  filler: Filler,
  waste: readonly number[] | null = null,
): ScaledProof {
  const dearest = Math.max(...boards.map((board) => board.price));
  const longest = Math.max(...boards.map((board) => board.room));
  const held = longest * sizes.reduce((most, size, at) => Math.max(most, duals[at]! / size), 0);
  const scale = Math.floor(Math.min(LARGEST_PRICE / dearest, LARGEST_HELD / held));
  const worths = sizes.map((_, at) => Math.floor(duals[at]! * scale));
  const most = filler.fill(worths, HALF_A_WORTH, waste).map((found) => Math.ceil(found?.upper ?? 0));
  return { worths, most, scale };
}
