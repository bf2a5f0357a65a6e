import type { Board, Cutting } from './cutting';
import { greatestCommonDivisor } from './grid';
import type { CheckedOrder } from './order';

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

/** The same in the user's terms. */
export interface Certificate {
  /** What the worths prove; less than the plan's bound where `searched`. */
  readonly lowerBound: number;
  /** All plans between the two were looked through one by one, and none was found: there are no worths that show it. */
  readonly searched: boolean;
  /** Worth of one piece of each length, longest first. */
  readonly worths: readonly (readonly [length: number, worth: number])[];
  /** The greatest worth one board can hold, and what it counts in the measure of the plan, in the order of the stock. */
  readonly boards: readonly {
    readonly stock: number;
    readonly most: number;
    readonly price: number;
    readonly limit: number | null;
  }[];
}

export function certificateOf(proof: Proof, order: CheckedOrder, searched: boolean): Certificate {
  const { cutting, lengths, stock, priceSteps } = order;
  return {
    lowerBound: stepUp(boundOf(proof, cutting), cutting) / priceSteps,
    searched,
    worths: lengths.map((length, at) => [length, proof.worths[at]!] as const),
    boards: cutting.boards.map(({ price, limit }, at) => ({
      stock: stock[at]!,
      most: proof.most[at]!,
      price: price / priceSteps,
      limit: limit === Infinity ? null : limit,
    })),
  };
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

/** A cost is a sum of board prices, so a whole multiple of what divides them all: a bound may be raised to the next one. */
export function stepUp(bound: number, { boards }: Cutting): number {
  const unit = priceUnit(boards);
  return Math.ceil(bound / unit) * unit;
}

export function priceUnit(boards: readonly Board[]): number {
  return boards.reduce((divisor, board) => greatestCommonDivisor(divisor, board.price), 0);
}
