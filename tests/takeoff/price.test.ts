import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { costOf, NOT_PLANNED, sellingFactor, unitPriceOf } from '../../src/takeoff/price';
import { takeoff } from '../../src/takeoff/takeoff';
import { expectNear } from '../value';
import { opening } from './openings';

const STANDARDS = {
  ...defaultStandards(),
  waste: 0.15,
  pricing: 'markup',
  pricingRate: 0.35,
  pieceMinimum: 0,
} as const;
const OWN = takeoff([opening({ head: 'half round', span: 36 })], STANDARDS).openings[0]!.ownCost!;

describe('what an opening costs and is sold for', () => {
  const sold = (priceAgreed: number | null, factors = NOT_PLANNED) =>
    costOf(
      { ...OWN, wood: 10, labor: 5 },
      { money: 3, wood: 2 },
      { quantity: 2, stock: 'Ash 1', priceAgreed },
      factors,
      STANDARDS,
    );

  // (10 + 2) · 1.15 = 13.8; with labor and share 21.8; half of it, marked up: 14.715, in cents 14.72 (a half goes up).
  it('not planned, has its wood with the allowance for waste', () => {
    const cost = sold(null);
    expectNear(cost.material, 13.8, 1e-14);
    expectNear(cost.cost, 21.8, 1e-14);
    expect(cost).toMatchObject({ share: 3, unitPrice: 14.72, price: 29.44, planned: false });
  });

  it('planned, has its wood by what the plan buys for it', () => {
    expect(sold(null, (stock) => (stock === 'Ash 1' ? 1.5 : null))).toMatchObject({
      ...{ material: 18, cost: 26, unitPrice: 17.55, price: 35.1, planned: true },
    });
  });

  it('is sold at the price agreed, whatever it costs', () => {
    expect(sold(20)).toMatchObject({ unitPrice: 20, price: 40 });
  });

  it('is sold for no less than the minimum of an opening', () => {
    const shop = { ...STANDARDS, pieceMinimum: 50 };
    expect([unitPriceOf(100, 4, shop), unitPriceOf(400, 4, shop)]).toEqual([50, 135]);
  });

  it('is marked up on cost, or by a margin of the price', () => {
    expect(sellingFactor({ pricing: 'markup', pricingRate: 0.25 })).toBe(1.25);
    expect(sellingFactor({ pricing: 'margin', pricingRate: 0.2 })).toBe(1.25);
  });
});
