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

/** Whole worths stay below this, so that sums over one board are exact. */
const LARGEST_WORTH = 1e9;

/** Duals rounded down to whole worths, and the most a board of each kind can hold of them, in whole numbers. */
export function proofFrom(duals: ArrayLike<number>, { sizes, boards }: Cutting, filler: Filler): Proof {
  const dearest = Math.max(...boards.map((board) => board.price));
  const worths = sizes.map((_, at) => Math.floor((duals[at]! / dearest) * LARGEST_WORTH));
  const most = filler.fill(worths, 1).map((found) => Math.ceil(found?.upper ?? 0));
  return { worths, most };
}
