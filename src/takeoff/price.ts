import { toCents } from '../rounding';
import type { Standards } from '../standards';
import type { OwnCost } from './ownCost';
import type { Share } from './shares';

/** What an opening costs and is sold for, its whole quantity. Money unless said; nothing is rounded but prices. */
export interface Cost extends OwnCost {
  /** Boards bought for it: its wood and its part of the spare and test pieces', times the wood's factor. */
  readonly material: number;
  /** Its part of knives, guides and set-ups. */
  readonly share: number;
  readonly cost: number;
  /** One opening, in whole cents. */
  readonly unitPrice: number;
  readonly price: number;
  /** Whether a plan of the boards holds its wood; else the wood's factor is 1 and the allowance for waste. */
  readonly planned: boolean;
}

/** What a plan of boards buys for each money of wood, by the wood's name; null: not planned. */
export type WoodFactors = (stock: string) => number | null;

export const NOT_PLANNED: WoodFactors = () => null;

interface Sold {
  readonly quantity: number;
  readonly stock: string;
  readonly priceAgreed: number | null;
}

export function costOf(
  own: OwnCost,
  share: Pick<Share, 'money' | 'wood'>,
  { quantity, stock, priceAgreed }: Sold,
  factors: WoodFactors,
  standards: Standards,
): Cost {
  const factor = factors(stock);
  const material = (own.wood + share.wood) * (factor ?? 1 + standards.waste);
  const cost = material + own.labor + share.money;
  const unitPrice = priceAgreed ?? unitPriceOf(cost, quantity, standards);
  return {
    ...own,
    material,
    share: share.money,
    cost,
    unitPrice,
    price: toCents(unitPrice * quantity),
    planned: factor !== null,
  };
}

/** One of `quantity` openings that cost so much together: in whole cents, and no less than the shop's minimum. */
export function unitPriceOf(cost: number, quantity: number, standards: Standards): number {
  return Math.max(toCents(standards.pieceMinimum), toCents((cost / quantity) * sellingFactor(standards)));
}

/** What cost is multiplied by to be sold. */
export function sellingFactor({ pricing, pricingRate }: Pick<Standards, 'pricing' | 'pricingRate'>): number {
  return pricing === 'markup' ? 1 + pricingRate : 1 / (1 - pricingRate);
}
