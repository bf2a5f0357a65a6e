import type { Board, Cutting } from './cutting';
import { greatestCommonDivisor } from './grid';
import type { Proof } from './proof';

/** `boundOf`, raised to the next sum that prices can add up to as far as what divides them all tells. */
export function steppedBoundOf(proof: Proof, cutting: Cutting): number {
  const unit = priceUnit(cutting.boards);
  return Math.ceil(boundOf(proof, cutting) / unit) * unit;
}

/**
 * Least cost, in whole price units, that the proof leaves possible. At a rate of r worths to a price unit, boards of kind k
 * hold at most most − r·price more than they pay for, and only as many as can be had; so
 * cost ≥ (Σ demand·worth − Σ limit·max(0, most − r·price)) / r for every r at which boards without limit pay for themselves.
 * The best r is one at which some kind just pays for itself.
 */
export function boundOf({ worths, most }: Proof, { demand, boards }: Cutting): number {
  const total = worths.reduce((sum, worth, at) => sum + BigInt(worth) * BigInt(demand[at]!), 0n);
  let best = 0n;
  for (const [at, { price }] of boards.entries()) {
    // r = worth / cost of this kind
    const worth = BigInt(most[at]!);
    const cost = BigInt(price);
    if (worth === 0n) continue;
    let unpaid = 0n;
    const allowed = boards.every((board, other) => {
      const excess = BigInt(most[other]!) * cost - worth * BigInt(board.price);
      if (excess <= 0n) return true;
      if (board.limit === Infinity) return false;
      unpaid += excess * BigInt(board.limit);
      return true;
    });
    if (!allowed) continue;
    const left = total * cost - unpaid;
    const bound = left <= 0n ? 0n : (left + worth - 1n) / worth;
    if (bound > best) best = bound;
  }
  return Number(best);
}

/** What divides all prices, and so every cost. */
export function priceUnit(boards: readonly Board[]): number {
  return boards.reduce((divisor, board) => greatestCommonDivisor(divisor, board.price), 0);
}
