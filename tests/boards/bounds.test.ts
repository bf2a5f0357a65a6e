import loadHighs from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { WoodOrder, WoodPlan } from '../../src/boards/order';
import { planWood } from '../../src/boards/plan';
import { Effort } from '../../src/stock/effort';
import { random } from '../random';
import { lookAtBound, wantedOf, type Highs } from './bounds';
import { fitsOne } from './bruteForce';
import { holdsMore, rowClasses } from './fullest';
import { noPlanOf } from './lookedThrough';
import { randomOrder } from './orders';

let highs: Highs;

beforeAll(async () => {
  highs = await loadHighs();
});

function planned(order: WoodOrder): WoodPlan {
  const plan = planWood(order, { effort: new Effort(1e7) });
  if (!plan.ok) throw new Error(plan.message);
  return plan.value;
}

describe('the fullest board', () => {
  it('holds just what trying every set of pieces finds', () => {
    let tried = 0;
    for (let seed = 700; seed < 716; seed++) {
      const of = random(seed);
      const order = randomOrder(of, of.whole(1, 4), 3);
      const pieces = order.parts.flatMap((part, at) => Array.from({ length: part.count }, () => ({ part, at })));
      if (pieces.length > 7) continue;
      const worths = order.parts.map(() => of.whole(1, 1000));
      const wanted = order.parts.map(({ count }) => count);
      for (const board of [order.boards[0]!, order.boards.at(-1)!]) {
        let most = 0;
        for (let set = 1; set < 1 << pieces.length; set++) {
          const its = pieces.filter((_, at) => (set & (1 << at)) !== 0);
          const worth = its.reduce((sum, { at }) => sum + worths[at]!, 0);
          if (worth <= most) continue;
          const fits = fitsOne(
            its.map(({ part }) => part),
            board,
            order,
          );
          if (fits) most = worth;
        }
        const classes = rowClasses(order);
        expect(holdsMore(order, classes, board, worths, wanted, most)).toBe(false);
        if (most > 0) expect(holdsMore(order, classes, board, worths, wanted, most - 1)).toBe(true);
        tried++;
      }
    }
    expect(tried).toBeGreaterThan(10);
  });
});

describe('all plans of some boards', () => {
  it('have one where a plan was made of them, and none with one board less where that plan is the cheapest', () => {
    let without = 0;
    for (let seed = 31; seed <= 36; seed++) {
      const of = random(seed);
      const order = randomOrder(of, of.whole(2, 5), of.whole(2, 5));
      const plan = planned(order);
      const wanted = wantedOf(order, plan);
      const counts = order.boards.map(() => 0);
      for (const { board, count } of plan.boards) counts[board]! += count;
      for (const pricing of plan.grounds.pricings) {
        if (pricing.most.some((most, board) => most === 0 && counts[board]! > 0)) continue;
        expect(noPlanOf(order, wanted, counts, pricing, highs), `seed ${seed}`).toBe(false);
        if (!plan.proven) continue;
        counts.forEach((count, board) => {
          if (count === 0) return;
          const fewer = counts.map((its, at) => (at === board ? its - 1 : its));
          expect(noPlanOf(order, wanted, fewer, pricing, highs), `seed ${seed}, ${fewer.join()}`).toBe(true);
          without++;
        });
      }
    }
    expect(without).toBeGreaterThan(10);
  });
});

describe('the bound of a plan', () => {
  it('stands up to an independent look at its grounds', async () => {
    let pricings = 0;
    for (let seed = 11; seed <= 20; seed++) {
      const of = random(seed);
      const order = randomOrder(of, of.whole(2, 6), of.whole(2, 6));
      const look = await lookAtBound(order, planned(order), highs);
      expect({ seed, ...look }).toMatchObject({ seed, faults: [], untold: [] });
      pricings += look.pricings;
    }
    expect(pricings).toBeGreaterThan(9);
  });

  it('is found out where it is a cent too high, or a board holds more than its grounds say', async () => {
    const order = randomOrder(random(3), 6, 6);
    const plan = planned(order);
    const dearer = await lookAtBound(order, { ...plan, lowerBound: plan.lowerBound + 0.01 }, highs);
    expect(dearer.faults).toEqual([expect.stringMatching(/^boards that keep to all its grounds cost less/)]);
    const tighter = plan.grounds.pricings.map(({ worths, most }) => ({
      worths,
      most: most.map((each) => Math.floor(each * 0.97)),
    }));
    const wrong = await lookAtBound(order, { ...plan, grounds: { ...plan.grounds, pricings: tighter } }, highs);
    expect(wrong.faults.join()).toMatch(/can hold more than/);
  });
});
