import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { partsOf } from '../../src/takeoff/parts';
import { planSetups } from '../../src/takeoff/setups';
import { takeoff } from '../../src/takeoff/takeoff';
import { random } from '../random';
import { expectNear } from '../value';
import { opening, randomOpenings } from './openings';

const STANDARDS = defaultStandards();
const JOB = [
  opening({ row: 2, mark: 'A', head: 'half round', span: 48 }),
  opening({ row: 3, mark: 'B', head: 'half round', span: 36, quantity: 2 }),
  opening({ row: 4, mark: 'C', head: 'half round', span: 48, face: 2.25 }),
  opening({ row: 5, mark: 'D', head: 'half round', span: 36 }),
  opening({ row: 6, mark: 'E', head: 'straight', span: 40, quantity: 3 }),
];

describe('set-ups', () => {
  it('go by knife, then straight work, then from the tightest radius out', () => {
    expect(planSetups(takeoff(JOB, STANDARDS)).setups.map(({ name }) => name)).toEqual([
      '2.25 x 0.75 Casing, R 24.188',
      '3.5 x 0.75 Casing, straight',
      '3.5 x 0.75 Casing, R 18.188',
      '3.5 x 0.75 Casing, R 24.188',
    ]);
  });

  it('change each knife once and each guide set once, and say what the order saves', () => {
    // Two knives of 15 and four guide sets of 25; in the schedule's order the second knife comes between two set-ups of the first.
    const plan = planSetups(takeoff(JOB, STANDARDS));
    expect(plan).toMatchObject({ setupMinutes: 2 * 15 + 4 * 25, savedMinutes: 15 + 25 });
    expect(plan.setups.map(({ changeMinutes }) => changeMinutes)).toEqual([40, 40, 25, 25]);
  });

  it('run every piece of the takeoff once, in the minutes the takeoff counts', () => {
    const taken = takeoff(randomOpenings(150, random(12)), STANDARDS);
    const plan = planSetups(taken);
    const pieces = plan.setups.flatMap((setup) => setup.pieces).reduce((sum, piece) => sum + piece.count, 0);
    const counted = taken.openings.reduce((sum, { own, inputs }) => {
      const each = own ? own.rings.reduce((all, { ring }) => all + ring.count, own.straight?.count ?? 0) : 0;
      return sum + each * (inputs?.quantity ?? 0);
    }, 0);
    expectNear(pieces, counted, 1e-12);
    expectNear(plan.runMinutes, taken.totals.runMinutes, 1e-10);
  });

  it('of one guide set share one pair of guides whatever the spelling of the profile', () => {
    const two = [JOB[1]!, { ...JOB[3]!, profile: 'CASING' }];
    expect(planSetups(takeoff(two, STANDARDS)).setups).toHaveLength(1);
  });
});

describe('the parts to be cut', () => {
  it('are the segments of every ring, the straight pieces and one test piece for each set-up', () => {
    const taken = takeoff(JOB, STANDARDS);
    const parts = partsOf(taken);
    const segments = parts.filter(({ shape }) => shape.kind !== 'straight').reduce((sum, part) => sum + part.count, 0);
    const wanted = taken.openings.reduce(
      (sum, { own, inputs }) => sum + (own?.crown ? own.crown.blank.chosen.segments * inputs!.quantity : 0),
      0,
    );
    expect(segments).toBe(wanted);
    const tests = parts.filter((part) => part.for === 'test pieces').reduce((sum, part) => sum + part.count, 0);
    expect(tests).toBe(planSetups(taken).setups.length);
    expect(parts.find((part) => part.for === 'E')).toMatchObject({ count: 3, species: 'Poplar' });
  });

  it('count alike pieces of several openings together, under their marks', () => {
    expect(partsOf(takeoff(JOB, STANDARDS)).map((part) => part.for)).toContain('B, D');
  });
});
