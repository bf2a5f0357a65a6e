import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { benchMinutes, LABOR_KINDS, minutesOf, type LaborMinutes } from '../../src/takeoff/labor';
import { takeoff } from '../../src/takeoff/takeoff';
import { expectNear } from '../value';
import { opening } from './openings';

const STANDARDS = defaultStandards();
const rowOf = (given: Parameters<typeof opening>[0]) => takeoff([opening(given)], STANDARDS).openings[0]!;

describe('what an opening takes by itself', () => {
  it('is thrice as much for three of it', () => {
    const of = (quantity: number) =>
      rowOf({ head: 'three-centered', span: 48, rise: 14, ends: 'legs', leg: 60, quantity }).ownCost!;
    const [one, three] = [of(1), of(3)];
    for (const figure of ['joints', 'boardFeet', 'runMinutes', 'laborMinutes', 'wood', 'labor'] as const) {
      expect(one[figure]).toBeGreaterThan(0);
      expectNear(three[figure], 3 * one[figure], 1e-12);
    }
    for (const kind of LABOR_KINDS) expect(three.minutes[kind]).toBeCloseTo(3 * one.minutes[kind], 9);
  });

  it('is the wood of its rings and of its straight pieces together', () => {
    const { own, ownCost } = rowOf({ head: 'half round', span: 36, ends: 'legs', leg: 60 });
    const [ring] = own!.rings;
    expect(own!.straight!.boardFeet).toBeGreaterThan(0);
    expectNear(ownCost!.boardFeet, ring!.blank.chosen.boardFeet + own!.straight!.boardFeet, 1e-12);
  });

  it('has two end cuts to each arc, a full circle none', () => {
    expect(rowOf({ head: 'half round', span: 36 }).ownCost!.minutes.endCuts).toBe(2 * STANDARDS.endCutMinutes);
    expect(rowOf({ head: 'round', span: 30 }).ownCost!.minutes.endCuts).toBe(0);
  });

  it('are the joints of each ring and those where its arcs meet, each glued in the minutes of one', () => {
    const { own, ownCost } = rowOf({ head: 'three-centered', span: 48, rise: 14 });
    const [crown, haunch] = own!.rings.map(({ blank }) => blank.chosen.segments - 1);
    // Three arcs meet in two places; the haunch is there twice.
    expect(ownCost!.joints).toBe(crown! + 2 * haunch! + 2);
    expectNear(ownCost!.minutes.gluing, ownCost!.joints * STANDARDS.jointMinutes, 1e-12);
  });
});

it('the minutes of an opening are those of each kind of work, at the bench all but the running', () => {
  const minutes = Object.fromEntries(LABOR_KINDS.map((kind, at) => [kind, 2 ** at])) as LaborMinutes;
  expect(minutesOf(minutes)).toBe(2 ** LABOR_KINDS.length - 1);
  expect(benchMinutes(minutes)).toBe(2 ** LABOR_KINDS.length - 1 - minutes.running);
});
