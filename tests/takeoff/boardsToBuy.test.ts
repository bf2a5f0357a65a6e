import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { planBoards, type BoardNeeds } from '../../src/takeoff/boards';
import { partsForWaste } from '../../src/takeoff/woodPlanning';
import { boardsToBuy } from '../../src/takeoff/boardsToBuy';
import { partsOf } from '../../src/takeoff/parts';
import { takeoff } from '../../src/takeoff/takeoff';
import { partArea, type WoodPart } from '../../src/takeoff/woodParts';
import { opening } from './openings';

const OPENINGS = ['Poplar', 'Red oak'].flatMap((species, kind) =>
  [24, 36, 60].map((span, at) =>
    opening({
      row: 3 * kind + at + 2,
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
  it('are those of the plans, wood by wood, and cost what the plans cost', () => {
    const standards = defaultStandards();
    const needs = planBoards(partsOf(takeoff(OPENINGS, standards)), standards, { work: 5e6 });
    const buys = boardsToBuy(needs, standards);
    for (const plan of needs.plans) {
      const own = buys.filter((buy) => buy.plan === plan);
      expect(own.reduce((sum, { cost }) => sum + cost, 0)).toBeCloseTo(plan.cost, 6);
      expect(own.reduce((sum, { bought }) => sum + bought, 0)).toBe(
        plan.boards.reduce((sum, { count }) => sum + count, 0),
      );
    }
  });
});

it('they stand by species, thickness, width and length, without those of which none is bought', () => {
  const [board] = defaultStandards().stock;
  const size = (width: number, length: number) => ({ ...board!, width, length });
  const sale = [size(7.25, 96), size(5.5, 144), size(5.5, 96), size(7.25, 144), size(9.25, 96)];
  const boards = [0, 1, 2, 3, 2].map((at) => ({ board: at, count: 1 }));
  const plan = (species: string, thickness: number) => ({ species, thickness, sale, boards });
  const plans = [plan('Walnut', 1), plan('Ash', 1.75), plan('Ash', 0.8125)] as unknown as BoardNeeds['plans'];
  for (const order of [plans, [...plans].reverse(), [plans[1]!, plans[2]!, plans[0]!]]) {
    const buys = boardsToBuy({ plans: order, problems: [] } as unknown as BoardNeeds, defaultStandards());
    const said = buys.map(({ plan: its, board: { width, length }, bought }) => [
      ...[its.species, its.thickness, width, length, bought],
    ]);
    const each = [
      [5.5, 96, 2],
      [5.5, 144, 1],
      [7.25, 96, 1],
      [7.25, 144, 1],
    ];
    const woods = [['Ash', 0.8125], ['Ash', 1.75], ['Walnut', 1]]; // prettier-ignore
    expect(said).toEqual(woods.flatMap((wood) => each.map((one) => [...wood, ...one])));
  }
});

describe('the pieces for defects and waste', () => {
  const part = (count: number, length: number): WoodPart => ({
    for: 'A',
    species: 'Poplar',
    thickness: 0.75,
    count,
    shape: { kind: 'straight', length, width: 4 },
  });

  it('are of the largest parts first, as soon as wood is owed', () => {
    // 0.15 of a piece is owed by the first of the ten large ones, which then pays 0.85 ahead: the next is owed by the seventh.
    expect(partsForWaste([part(2, 10), part(10, 60)], 0.15)).toEqual([0, 2]);
    expect(partsForWaste([part(2, 10), part(10, 60)], 0)).toEqual([0, 0]);
    expect(partsForWaste([part(4, 10)], 1)).toEqual([4]);
  });

  it('come to the share allowed for, and less than one piece more', () => {
    for (const waste of [0.05, 0.15, 0.4, 1.7]) {
      const parts = [part(13, 61), part(7, 42), part(29, 18), part(3, 9)];
      const extra = partsForWaste(parts, waste);
      const area = (of: (at: number) => number) =>
        parts.reduce((sum, one, at) => sum + of(at) * partArea(one.shape), 0);
      const over = area((at) => extra[at]!) - waste * area((at) => parts[at]!.count);
      expect(over).toBeGreaterThan(-1e-6);
      expect(over).toBeLessThan(61 * 4);
    }
  });
});
