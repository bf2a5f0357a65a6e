import { describe, expect, it } from 'vitest';
import { allCuts } from '../../src/boards/allCuts';
import { allFills } from '../../src/boards/fills';
import { Filler } from '../../src/boards/filling';
import type { WoodOrder } from '../../src/boards/order';
import { planWood } from '../../src/boards/plan';
import { problemOf, type Problem } from '../../src/boards/problem';
import { areasOf } from '../../src/boards/search';
import { worthOf } from '../../src/boards/proper';
import { tightPlan } from '../../src/boards/tight';
import { Effort } from '../../src/stock/effort';
import { random } from '../random';
import { leastCost } from './bruteForce';
import { randomOrder } from './orders';

const nothing = () => undefined;

function smallOrders(seeds: number): WoodOrder[] {
  return Array.from({ length: seeds }, (_, seed) => {
    const of = random(500 + seed);
    return randomOrder(of, of.whole(1, 4), 2);
  }).filter(({ parts }) => parts.reduce((sum, { count }) => sum + count, 0) <= 6);
}

/** Worths by the wood in the pieces, and what no board can hold more than: its whole width and length. */
function byArea(problem: Problem) {
  const worths = areasOf(problem);
  const { kinds, classes, boards } = problem;
  const rate = Math.max(...worths.map((worth, at) => worth / (kinds[at]!.step * classes[kinds[at]!.class]!.width)));
  // Rows overhang by at most their class's `over`, lanes by a saw cut: what is too much here only makes the search longer.
  const prices = boards.map(({ width, room }) => Math.ceil(rate * (width + problem.kerf) * room * 1.01));
  return { worths, prices };
}

describe('a look through all plans of certain boards', () => {
  it('finds a plan exactly where there is one: against every placing of up to six pieces', () => {
    let none = 0;
    for (const order of smallOrders(30)) {
      const { problem } = problemOf(order);
      const least = Math.round(leastCost(order) * 100);
      const made = planWood(order, { effort: new Effort(5e7) });
      if (!made.ok || Math.round(made.value.cost * 100) !== least) continue;
      const counts = problem.boards.map(({ place }) =>
        made.value.boards.reduce((sum, { board, count }) => sum + (board === place ? count : 0), 0),
      );
      const pricing = byArea(problem);
      const plan = tightPlan(problem, counts, pricing, {}, { ends: new Set() }, new Effort(1e9));
      expect(plan).not.toBe('none');
      expect(plan).not.toBeNull();
      for (const [kind, wanted] of problem.demand.entries()) {
        const of = (cut: { pieces: readonly number[]; counts: readonly number[] }) =>
          cut.counts[cut.pieces.indexOf(kind)] ?? 0;
        expect((plan as Exclude<typeof plan, 'none' | null>).reduce((sum, cut) => sum + of(cut), 0)).toBe(wanted);
      }
      // One board less costs less than the least possible.
      for (const board of counts.keys()) {
        if (counts[board] === 0) continue;
        const fewer = counts.map((count, at) => (at === board ? count - 1 : count));
        expect(tightPlan(problem, fewer, pricing, {}, { ends: new Set() }, new Effort(1e9))).toBe('none');
        none++;
      }
    }
    expect(none).toBeGreaterThan(10);
  });

  it('has every cut among those it looks through that the quick filling of boards finds', () => {
    for (const order of smallOrders(12)) {
      const { problem } = problemOf(order);
      const worths = areasOf(problem);
      const fills = allFills(problem, nothing)!;
      const prices = problem.boards.map(() => 0.5);
      const quick = new Filler(problem, 'plan').some({ worths, wanted: problem.demand, prices }, 5, new Effort(1e9));
      expect(quick.length).toBeGreaterThan(0);
      for (const cut of quick) {
        const least = problem.boards.map((_, board) => (board === cut.board ? worthOf(cut, worths) : Infinity));
        const cuts = allCuts(problem, fills, worths, least, nothing)!;
        const key = `${cut.pieces.join()}:${cut.counts.join()}`;
        expect(cuts.map(({ pieces, counts }) => `${pieces.join()}:${counts.join()}`)).toContain(key);
        for (const each of cuts) expect(worthOf(each, worths)).toBeGreaterThanOrEqual(worthOf(cut, worths));
      }
    }
  });
});
