import type { Board, Cutting } from './cutting';
import { greatestCommonDivisor } from './grid';
import type { Proof } from './proof';

/** Longer tables of costs, or more work on them, take too long beside the rest. */
const LARGEST_TABLE = 4_000_000;
const MOST_CELLS = 40_000_000;

/** `boundOf`, raised to the next sum that prices can add up to as far as what divides them all tells. */
export function steppedBoundOf(proof: Proof, cutting: Cutting): number {
  const unit = priceUnit(cutting.boards);
  return Math.ceil(boundOf(proof, cutting) / unit) * unit;
}

/**
 * `boundOf` lets boards be bought in fractions; this is the least cost of whole boards, no more of a kind than can be had, that hold
 * the worth of all pieces (knapsack over the cost: the most worth that each cost can buy). `steppedBoundOf` where the problem is too
 * large for the table.
 */
export function wholeBoundOf(proof: Proof, cutting: Cutting): number {
  const { boards, demand } = cutting;
  const unit = priceUnit(boards);
  const low = steppedBoundOf(proof, cutting) / unit;
  // Of the fractional boards one kind alone needs rounding up.
  const top = low + Math.max(...boards.map((board) => board.price)) / unit;
  const total = proof.worths.reduce((sum, worth, at) => sum + worth * demand[at]!, 0);
  if (boards.length === 1 || top > LARGEST_TABLE || !Number.isSafeInteger(total)) return low * unit;
  const lots = boards.map(({ price, limit }) => lotsOf(limit, Math.floor((top * unit) / price)));
  if (lots.reduce((sum, each) => sum + (each?.length ?? 1), 0) * top > MOST_CELLS) return low * unit;
  const worthFor = new Float64Array(top + 1);
  for (const [at, { price }] of boards.entries()) {
    const step = price / unit;
    const worth = proof.most[at]!;
    for (let cost = step; lots[at] === null && cost <= top; cost++) {
      worthFor[cost] = Math.max(worthFor[cost]!, worthFor[cost - step]! + worth);
    }
    for (const count of lots[at] ?? []) {
      for (let cost = top; cost >= count * step; cost--) {
        worthFor[cost] = Math.max(worthFor[cost]!, worthFor[cost - count * step]! + count * worth);
      }
    }
  }
  let cost = low;
  while (cost < top && worthFor[cost]! < total) cost++;
  return worthFor[cost]! < total ? low * unit : cost * unit;
}

/** Lots of 1, 2, 4, … and a rest: any number up to the limit is a sum of some. Null where there are `enough` or more. */
function lotsOf(limit: number, enough: number): number[] | null {
  if (limit >= enough) return null;
  const lots: number[] = [];
  for (let left = limit, lot = 1; left > 0; left -= lot, lot = Math.min(2 * lot, left)) lots.push(lot);
  return lots;
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
