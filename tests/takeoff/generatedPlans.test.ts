import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { planBoards } from '../../src/takeoff/boards';
import { partsOf } from '../../src/takeoff/parts';
import { takeoff } from '../../src/takeoff/takeoff';
import { faultsOfWood, woodAlone } from '../boards/wholeWood';
import { generatedJob } from './generatedJob';

const STANDARDS = defaultStandards();

/** A part of what `npm run bench -- boards` plans, with less work for each. */
describe.each([
  [5, [1, 2, 3, 4, 5, 6]],
  [20, [1, 2]],
  [60, [1]],
] as const)('the plans of generated jobs of %i openings', (openings, seeds) => {
  const jobs = seeds.map((seed) => {
    const parts = partsOf(takeoff(generatedJob(openings, seed), STANDARDS));
    const plans = (work: number) => planBoards(parts, STANDARDS, { work });
    return { short: plans(6e6), long: plans(2.4e7) };
  });

  it('can be sawn, hold every piece, and cost what is said', () => {
    for (const { short, long } of jobs)
      for (const { plans, problems } of [short, long]) {
        for (const problem of problems) expect(problem).toMatch(/is larger than every/);
        for (const plan of plans) expect(faultsOfWood(plan, STANDARDS)).toEqual([]);
      }
  });

  it('cost no less than their bounds, nor than those of a longer or a shorter search, nor than the wood in the pieces', () => {
    for (const { short, long } of jobs) {
      expect(short.plans).toHaveLength(long.plans.length);
      short.plans.forEach((plan, at) => {
        const other = long.plans[at]!;
        const cost = Math.min(plan.cost, other.cost);
        for (const { lowerBound, proven } of [plan, other]) {
          expect(lowerBound).toBeLessThanOrEqual(cost + 1e-9);
          if (proven) expect(cost).toBe(lowerBound);
        }
        expect(woodAlone(plan)).toBeLessThanOrEqual(cost);
        // A bound that says nothing would be below the wood alone.
        expect(Math.max(plan.lowerBound, other.lowerBound)).toBeGreaterThan(woodAlone(plan));
      });
    }
  });
});
