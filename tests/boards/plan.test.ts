import { describe, expect, it } from 'vitest';
import type { WoodOrder, WoodPlan } from '../../src/boards/order';
import { planWood } from '../../src/boards/plan';
import { Effort } from '../../src/stock/effort';
import { random } from '../random';
import { leastCost } from './bruteForce';
import { faultsOf } from './geometry';
import { boards, randomOrder, segment, straight } from './orders';

function planned(order: WoodOrder, work = 5e7): WoodPlan {
  const plan = planWood(order, { effort: new Effort(work) });
  if (!plan.ok) throw new Error(plan.message);
  expect(faultsOf(plan.value, order)).toEqual([]);
  return plan.value;
}

describe('a plan for a whole wood', () => {
  it('can be sawn as it stands, whatever the parts', () => {
    for (let seed = 1; seed <= 25; seed++) {
      const of = random(seed);
      planned(randomOrder(of, of.whole(1, 12), of.whole(1, 20)), 2e6);
    }
  });

  it('costs the least when it is proven, and its bound is never more: against every placing of up to seven pieces', () => {
    let proven = 0;
    for (let seed = 100; seed < 130; seed++) {
      const of = random(seed);
      const order = randomOrder(of, of.whole(1, 4), 2);
      if (order.parts.reduce((sum, { count }) => sum + count, 0) > 7) continue;
      const least = leastCost(order);
      const { cost, lowerBound, proven: said } = planned(order);
      expect(lowerBound).toBeLessThanOrEqual(least + 1e-9);
      if (said) {
        expect(cost).toBeCloseTo(least, 9);
        proven++;
      } else expect(cost).toBeGreaterThanOrEqual(least - 1e-9);
    }
    expect(proven).toBeGreaterThanOrEqual(20);
  });

  it('buys one board where one holds everything', () => {
    // One segmental arch 36 × 6, casing 3-1/2 with a quarter inch of margin: two segments and a test piece.
    const order: WoodOrder = {
      parts: [segment(30, 3.5, 77, 2, 2), straight(24, 4, 1)],
      boards: boards(),
      kerf: 0.125,
      trim: 0.5,
    };
    expect(planned(order)).toMatchObject({ cost: 18.85, lowerBound: 18.85, proven: true });
  });

  it('lays segments of one width and angle in one row whatever their lengths, every second one flipped', () => {
    const half = Math.PI / 10;
    const long = { kind: 'segment', inside: 30, outside: 34, half, count: 2 } as const;
    const width = 34 - 30 * Math.cos(half);
    const inside = 20;
    const short = { kind: 'segment', inside, outside: width + inside * Math.cos(half), half, count: 2 } as const;
    const order: WoodOrder = {
      parts: [long, short],
      boards: [{ width: 6, length: 78, price: 10, limit: null }],
      kerf: 0.125,
      trim: 0.5,
    };
    const plan = planned(order);
    expect(plan.cost).toBe(10);
    const [row] = plan.boards[0]!.sections[0]!.lanes[0]!.rows;
    expect(row!.pieces.map(({ flipped }) => flipped)).toEqual([false, true, false, true]);
  });

  it('crosscuts once and rips one of the two sections', () => {
    const order: WoodOrder = {
      parts: [straight(60, 5, 1), straight(30, 2.5, 2)],
      boards: [{ width: 5.5, length: 92, price: 10, limit: null }],
      kerf: 0.125,
      trim: 0.5,
    };
    const plan = planned(order);
    expect(plan.boards.map(({ count, sections }) => [count, sections.map(({ lanes }) => lanes.length)])).toEqual([
      [1, [2, 1]],
    ]);
  });

  it('takes the boards on hand, no more of them than there are', () => {
    const order = randomOrder(random(5), 6, 12, {
      boards: boards(3.9).map((board, at) => ({ ...board, limit: at === 3 ? 2 : null })),
    });
    planned(order);
  });

  it('says which pieces the boards on hand leave unmade', () => {
    const order: WoodOrder = {
      parts: [straight(90, 4, 5)],
      boards: [{ width: 4.5, length: 96, price: 10, limit: 3 }],
      kerf: 0.125,
      trim: 0.5,
    };
    expect(planned(order)).toMatchObject({ cost: 30, proven: false, short: [{ part: 0, count: 2 }] });
  });

  it('leaves out parts that no board holds, and says which', () => {
    const order: WoodOrder = {
      parts: [straight(200, 4, 1), straight(90, 4, 1), straight(20, 12, 1)],
      boards: boards(),
      kerf: 0.125,
      trim: 0.5,
    };
    expect(planned(order).tooLarge).toEqual([0, 2]);
  });

  it('fits pieces that fill a board exactly', () => {
    const order: WoodOrder = {
      parts: [straight(95 / 3, 4, 6)],
      boards: [{ width: 8, length: 95, price: 10, limit: null }],
      kerf: 0,
      trim: 0,
    };
    expect(planned(order)).toMatchObject({ cost: 10, proven: true });
  });

  it('is the same plan every time, and dearer with less effort at most', () => {
    const order = randomOrder(random(77), 14, 12);
    const one = planned(order, 1e7);
    expect(planned(order, 1e7)).toEqual(one);
    expect(planned(order, 1e4).cost).toBeGreaterThanOrEqual(one.cost);
  });

  it('stops when it is told to, with a plan and a bound', () => {
    const order = randomOrder(random(78), 20, 20);
    let asked = 0;
    const plan = planWood(order, { effort: new Effort(1e12, () => ++asked > 40) });
    expect(plan.ok && faultsOf(plan.value, order)).toEqual([]);
    expect(plan.ok && plan.value.interrupted).toBe(true);
  });

  it.each([
    [{ kerf: -1 }, 'kerf must be a length of 0 or more; got -1'],
    [{ parts: [straight(0, 4, 1)] }, 'part 1: length must be more than 0; got 0'],
    [{ parts: [straight(20, 4, 1.5)] }, 'part 1: count must be a whole number from 1 to 1000000; got 1.5'],
    [
      { boards: [{ width: 4, length: 96, price: 0.001, limit: null }] },
      'board 1: price must be whole cents from 0.01 to 100000; got 0.001',
    ],
  ])('refuses %o', (wrong, message) => {
    const order = { ...randomOrder(random(1), 2, 2), ...wrong } as WoodOrder;
    expect(planWood(order, { effort: new Effort(1e6) })).toEqual({ ok: false, message });
  });
});
