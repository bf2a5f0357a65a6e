import type { Proof } from './certificate';
import type { Cutting } from './cutting';
import type { Filler } from './filler';

/** Whole worths stay below this, so that sums over one board are exact. */
const LARGEST_WORTH = 1e9;

/** Duals rounded down to whole worths, and the most a board of each kind can hold of them, in whole numbers. */
export function proofFrom(duals: ArrayLike<number>, { sizes, boards }: Cutting, filler: Filler): Proof {
  const dearest = Math.max(...boards.map((board) => board.price));
  const worths = sizes.map((_, at) => Math.floor((duals[at]! / dearest) * LARGEST_WORTH));
  const most = filler.fill(worths, 1).map((found) => Math.ceil(found?.upper ?? 0));
  return { worths, most };
}
