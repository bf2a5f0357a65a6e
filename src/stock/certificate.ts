import type { CheckedOrder } from './order';
import type { Found } from './search';

/** A proof in the user's terms. */
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

export function certificateOf({ proof, proved, bound }: Found, order: CheckedOrder): Certificate {
  const { cutting, lengths, stock, priceSteps } = order;
  return {
    lowerBound: Math.min(proved, bound) / priceSteps,
    searched: bound > proved,
    worths: lengths.map((length, at) => [length, proof.worths[at]!] as const),
    boards: cutting.boards.map(({ price, limit }, at) => ({
      stock: stock[at]!,
      most: proof.most[at]!,
      price: price / priceSteps,
      limit: limit === Infinity ? null : limit,
    })),
  };
}
