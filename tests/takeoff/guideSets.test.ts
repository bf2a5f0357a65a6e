import { describe, expect, it } from 'vitest';
import type { OnHand } from '../../src/onHand';
import { defaultStandards, withSettings, type SettingKey, type Standards } from '../../src/standards';
import { guideSetsOf, reachOf, strayOf } from '../../src/takeoff/guideSets';
import { partsOf } from '../../src/takeoff/parts';
import { planSetups } from '../../src/takeoff/setups';
import { sharersOf, takeoff } from '../../src/takeoff/takeoff';
import { random } from '../random';
import { expectNear, valueOf } from '../value';
import { opening, randomOpenings } from './openings';

function shop(changes: Partial<Record<SettingKey, unknown>>, onHand: readonly OnHand[] = []): Standards {
  return { ...valueOf(withSettings(defaultStandards(), { bedLine: 5, deepestCut: 0.375, ...changes })), onHand };
}

/** Half rounds of these inside radii, reveal 3/16. */
function halfRounds(...radii: number[]) {
  return radii.map((radius, at) =>
    opening({ row: at + 2, mark: `W${at + 1}`, head: 'half round', span: 2 * (radius - 3 / 16) }),
  );
}

function sets(radii: number[], standards: Standards): (number | null)[] {
  return planSetups(takeoff(halfRounds(...radii), standards)).setups.map(({ insideRadius }) => insideRadius);
}

describe('how far a radius may be from that of its guides', () => {
  it('is what the sagitta over the length of the guides leaves of the clearance', () => {
    const standards = shop({ guideTolerance: 24 });
    const { margin, bedLine, clearance } = standards;
    const { up, down } = reachOf(30, standards);
    // By the other formula of the sagitta, r − √(r² − b²).
    const sagitta = (inside: number) => inside - margin - Math.sqrt((inside - margin) ** 2 - bedLine ** 2);
    expectNear(sagitta(30) - sagitta(30 + up), clearance, 1e-10);
    expectNear(sagitta(30 - down) - sagitta(30), clearance, 1e-10);
    expect([up.toFixed(2), down.toFixed(2)]).toEqual(['2.34', '2.02']);
    expectNear(strayOf(30 + up, 30, standards), clearance, 1e-10);
  });

  it("is no more than the shop's tolerance, and nothing where that is 0 or the guides reach round their circle", () => {
    expect(reachOf(30, shop({ guideTolerance: 0.5 }))).toEqual({ up: 0.5, down: 0.5 });
    expect(reachOf(30, shop({}))).toEqual({ up: 0, down: 0 });
    expect(reachOf(5, shop({ guideTolerance: 3 }))).toEqual({ up: 0, down: 0 });
    expect(reachOf(5.25, shop({ guideTolerance: 3 }))).toEqual({ up: 0, down: 0 });
  });
});

describe('guide sets', () => {
  it('are one for each radius without a tolerance', () => {
    expect(sets([30, 30.5, 31], shop({}))).toEqual([30, 30.5, 31]);
  });

  it('with a tolerance are the fewest from the smallest up, made for the middle of their radii', () => {
    expect(sets([31, 30, 30.5, 31.5, 40], shop({ guideTolerance: 1 }))).toEqual([30.5, 31.5, 40]);
  });

  it('reach no farther than the tolerance, and are called by their middle to a thousandth', () => {
    const standards = shop({ guideTolerance: 1 });
    expect(sets([30, 31.001], standards)).toEqual([30, 31.001]);
    const named = (...radii: number[]) => planSetups(takeoff(halfRounds(...radii), standards)).setups[0]!;
    expect(named(30.123, 30.5).name).toMatch(/, R 30\.312$/);
    // Alone it has guides of its very own radius.
    expect(named(30.00012).insideRadius).toBeCloseTo(30.00012, 9);
  });

  it('say by how much each opening strays', () => {
    const standards = shop({ guideTolerance: 1 });
    const [setup] = planSetups(takeoff(halfRounds(30, 31), standards)).setups;
    expect(setup!.pieces.map(({ insideRadius }) => insideRadius)).toEqual([30, 31]);
    for (const { strays, insideRadius } of setup!.pieces)
      expectNear(strays, strayOf(insideRadius!, 30.5, standards), 1e-12);
    expect(setup!.pieces[0]!.strays).toBeGreaterThan(0.005);
    expect(setup!.pieces[0]!.strays).toBeLessThan(standards.clearance);
  });

  it('that the shop owns come first, the nearest of them', () => {
    const guides = (insideRadius: number) =>
      ({ kind: 'guides', profile: 'Casing', face: 3.5, thickness: 0.75, insideRadius }) as const;
    const standards = shop({ guideTolerance: 1 }, [guides(30.75), guides(29)]);
    expect(sets([30, 31, 32.1], standards)).toEqual([30.75, 32.1]);
    const { openings } = takeoff(halfRounds(30, 32.1), standards);
    expect(openings.map(({ share }) => share!.guides > 0)).toEqual([false, true]);
  });

  it('of several that the shop owns are the nearest, of two as near the smaller, in whatever order they are listed', () => {
    const guides = (insideRadius: number) =>
      ({ kind: 'guides', profile: 'Casing', face: 3.5, thickness: 0.75, insideRadius }) as const;
    const used = (...radii: number[]) => sets([30], shop({ guideTolerance: 1 }, radii.map(guides)));
    for (const radii of [
      [29.2, 30.7, 30.4, 29.5],
      [30.4, 29.5, 30.7, 29.2],
    ])
      expect([used(...radii), used(...[...radii].reverse())]).toEqual([[30.4], [30.4]]);
    expect([used(29.5, 30.5), used(30.5, 29.5)]).toEqual([[29.5], [29.5]]);
    // Without a tolerance they are those of its own radius, to half a thousandth.
    const made = (radius: number) => takeoff(halfRounds(30), shop({}, [guides(radius)])).openings[0]!.share!.guides;
    expect([30, 29.9995, 30.0005].map(made)).toEqual([0, 0, 0]);
    for (const radius of [29.999, 30.001]) expect(made(radius)).toBeGreaterThan(0);
  });

  it('are never more than openings need by themselves, hold every ring, and are the fewest there are', () => {
    const standards = shop({ guideTolerance: 2 });
    const taken = takeoff(randomOpenings(200, random(3), standards), standards);
    const of = guideSetsOf(sharersOf(taken.openings), standards);
    const byKnife = new Map<string, Set<number>>();
    const made = new Map<string, Set<string>>();
    for (const { own, inputs } of taken.openings)
      for (const plan of own?.rings ?? []) {
        const inside = Math.round(plan.ring.inside * 1000) / 1000;
        const { name, radius } = of(inputs!, plan);
        expect(Math.abs(radius - inside)).toBeLessThanOrEqual(1 + 1e-9);
        const knife = own!.knife.toLowerCase();
        byKnife.set(knife, (byKnife.get(knife) ?? new Set()).add(inside));
        made.set(knife, (made.get(knife) ?? new Set()).add(name.toLowerCase()));
      }
    for (const [knife, radii] of byKnife) {
      // Radii of which no two can share: as many sets are needed at least.
      let needed = 0;
      let last: number | null = null;
      for (const radius of [...radii].sort((a, b) => a - b)) {
        if (last !== null && radius <= last + reachOf(last, standards).up + 1e-9) continue;
        needed++;
        last = radius;
      }
      expect(made.get(knife)!.size).toBe(needed);
    }
  });

  it('take one test piece each', () => {
    const taken = takeoff(halfRounds(30, 30.5, 40), shop({ guideTolerance: 1 }));
    const tests = partsOf(taken).filter((part) => part.for === 'test pieces');
    expect(tests.reduce((sum, { count }) => sum + count, 0)).toBe(2);
  });
});

describe('knives', () => {
  const CASING = { profile: 'casing', face: 3.5, thickness: 0.75, insideRadius: null };

  it('have each their own depth, and with it passes', () => {
    const passes = (onHand: readonly OnHand[]) => takeoff(halfRounds(30), shop({}, onHand)).openings[0]!.own!.passes;
    expect(passes([])).toBe(2);
    expect(passes([{ ...CASING, kind: 'knife', depth: 0.3 }])).toBe(1);
    expect(passes([{ ...CASING, kind: 'new knife', depth: 0.8 }])).toBe(3);
    expect(passes([{ ...CASING, kind: 'knife', depth: 0.8, passes: 2 }])).toBe(2);
    expect(passes([{ ...CASING, kind: 'knife', face: 4, depth: 0.8 }])).toBe(2);
  });

  it('cost nothing where the shop has them, what a new one names, or the usual', () => {
    const charge = (onHand: readonly OnHand[]) => takeoff(halfRounds(30), shop({}, onHand)).openings[0]!.share!.knives;
    expect(charge([])).toBe(110);
    expect(charge([{ ...CASING, kind: 'new knife', charge: 85 }])).toBe(85);
    expect(charge([{ ...CASING, kind: 'new knife' }])).toBe(110);
    expect(
      charge([
        { ...CASING, kind: 'new knife', charge: 85 },
        { ...CASING, kind: 'knife' },
      ]),
    ).toBe(0);
  });
});
