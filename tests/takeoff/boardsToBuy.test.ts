import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { planBoards } from '../../src/takeoff/boards';
import { boardsToBuy } from '../../src/takeoff/boardsToBuy';
import { partsOf } from '../../src/takeoff/parts';
import { takeoff } from '../../src/takeoff/takeoff';
import { opening } from './openings';

const OPENINGS = ['Poplar', 'Red oak'].flatMap((species, kind) =>
  [24, 36, 60, 96].map((span, at) =>
    opening({
      row: 4 * kind + at + 2,
      mark: `${species} ${span}`,
      head: 'half round',
      span,
      rise: span / 2,
      species,
      quantity: 3,
    }),
  ),
);

describe('the boards to buy', () => {
  it.each([0, 0.15, 0.5, 1])('a waste of %s is added to all boards of a wood together, in whole boards', (waste) => {
    const standards = { ...defaultStandards(), waste };
    const needs = planBoards(partsOf(takeoff(OPENINGS, standards)), standards);
    const sizes = boardsToBuy(needs, standards);
    expect(sizes.length).toBeGreaterThan(3);
    for (const species of ['Poplar', 'Red oak']) {
      const own = sizes.filter(({ plan }) => plan.species === species);
      const planned = own.reduce((sum, size) => sum + size.planned, 0);
      expect(planned).toBe(
        needs.plans.filter((plan) => plan.species === species).reduce((sum, plan) => sum + plan.boards, 0),
      );
      // Whole hundredths, so that the expected count is exact.
      expect(own.reduce((sum, size) => sum + size.bought, 0)).toBe(Math.ceil((planned * (100 + waste * 100)) / 100));
    }
    for (const { planned, bought, price, cost } of sizes) {
      expect(bought).toBeGreaterThanOrEqual(planned);
      expect(cost).toBeCloseTo(bought * price, 6);
    }
  });
});
