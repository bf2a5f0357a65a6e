import { isSimple, type Cutting } from './cutting';
import type { ScaledProof } from './proof';

/**
 * Whole worths for which no board holds more than it counts: its price and, where its number is limited, what `scarcity` adds.
 * A board loses what it counts over the worth of its pieces, never less than 0. All in whole numbers, so that what they
 * rule out is ruled out for good.
 */
export interface Pricing {
  /** Worth of a piece of each size. */
  readonly worths: readonly number[];
  /** Worths to one price unit. */
  readonly scale: number;
  /** What a board of each kind counts over its price; 0 where there are as many as wanted. */
  readonly scarcity: readonly number[];
}

/** Makes sure of worths that come out a hair too large for boards without limit. */
const HAIR = 1e-12;

export function pricingFrom({ worths, most, scale }: ScaledProof, { boards }: Cutting): Pricing {
  let share = 1;
  for (const [k, { price, limit }] of boards.entries()) {
    if (limit === Infinity && most[k]! > scale * price)
      share = Math.min(share, ((scale * price) / most[k]!) * (1 - HAIR));
  }
  return {
    worths: share === 1 ? worths : worths.map((worth) => Math.floor(worth * share)),
    scale,
    scarcity: boards.map(({ price, limit }, k) => (limit === Infinity ? 0 : Math.max(0, most[k]! - scale * price))),
  };
}

/** The sizes themselves, for one kind of board. */
export function sizesAsWorths({ sizes, boards }: Cutting): Pricing {
  const { room, price } = boards[0]!;
  return { worths: price === 1 ? sizes : sizes.map((size) => size * price), scale: room, scarcity: [0] };
}

/** The worths that leave least to lose: those of the proof or, for one kind of board, the sizes themselves. */
export function tightestPricing(bound: number, proof: ScaledProof, cutting: Cutting): Pricing {
  const { sizes, demand, boards } = cutting;
  if (isSimple(cutting)) {
    const { room, price } = boards[0]!;
    const total = sizes.reduce((sum, size, at) => sum + size * demand[at]!, 0);
    if ((total * price) / room >= bound) return sizesAsWorths(cutting);
  }
  return pricingFrom(proof, cutting);
}

/**
 * What the boards of a plan that costs at most `aim` can lose together. Below 0: there is no such plan. Null where the sums are too
 * large to be exact.
 */
export function spareOf(aim: number, { worths, scale, scarcity }: Pricing, { demand, boards }: Cutting): number | null {
  let most = scale * aim;
  for (const [k, { limit }] of boards.entries()) if (scarcity[k]! > 0) most += limit * scarcity[k]!;
  const least = worths.reduce((sum, worth, at) => sum + worth * demand[at]!, 0);
  return Number.isSafeInteger(most) && Number.isSafeInteger(least) ? most - least : null;
}
