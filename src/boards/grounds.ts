import type { Proof } from './bound';
import type { Grounds, PartPricing, WoodOrder } from './order';
import type { Problem } from './problem';

/** Why no plan costs less than its bound, in the problem's own kinds of pieces and boards. */
export interface Reasons {
  readonly proofs: readonly Proof[];
  readonly lookedThrough: readonly { readonly counts: readonly number[]; readonly proof: Proof }[];
}

export const NO_GROUNDS: Grounds = { pricings: [], lookedThrough: [] };

/** The same in parts and boards of the order. Parts in no problem are worth nothing, boards in none hold nothing. */
export function groundsOf({ proofs, lookedThrough }: Reasons, { kinds, boards }: Problem, order: WoodOrder): Grounds {
  const byBoard = (values: readonly number[]) => {
    const all = order.boards.map(() => 0);
    boards.forEach(({ place }, at) => (all[place] = values[at]!));
    return all;
  };
  const pricing = ({ worths, most }: Proof): PartPricing => {
    const ofParts = order.parts.map(() => 0);
    kinds.forEach(({ parts }, kind) => parts.forEach((part) => (ofParts[part] = worths[kind]!)));
    return { worths: ofParts, most: byBoard(most) };
  };
  return {
    pricings: proofs.map(pricing),
    lookedThrough: lookedThrough.map(({ counts, proof }) => ({ counts: byBoard(counts), pricing: pricing(proof) })),
  };
}
