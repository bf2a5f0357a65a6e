import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutsPerInch, feedRate, finishGrade, markDepth, runTime } from '../src/machine';
import { ok } from '../src/result';
import { bare, feetPerMinute, inches } from '../src/unit';
import { expectNear, refusalOf, valueOf } from './value';

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Feed in ft/min, circle in inches. */
const cuts = (rpm: number, knives: number, feed: number, feedRadius?: number, edgeRadius?: number) =>
  cutsPerInch(rpm, knives, feetPerMinute(feed, 'in'), feedRadius, edgeRadius);
const depth = (perInch: number, circle: number) => {
  const deep = markDepth(perInch, inches(circle, 'in'));
  return deep.ok ? ok(bare(deep.value)) : deep;
};

describe('knife cuts to the inch', () => {
  it('agree with the worked figures of "Knife marks per inch", FDMC magazine, January 2009', () => {
    expectNear(valueOf(cuts(7000, 2, 12)), 97.222, 5e-6);
    expectNear(valueOf(cuts(7000, 1, 12)), 48.611, 5e-6);
  });

  it('are fewer at the outside edge of a ring and more at the inside, in the ratio of the radii', () => {
    const middle = valueOf(cuts(7000, 1, 12, 19.75, 19.75));
    expectNear(valueOf(cuts(7000, 1, 12, 19.75, 21.5)), (middle * 19.75) / 21.5);
    expectNear(valueOf(cuts(7000, 1, 12, 19.75, 18)), (middle * 19.75) / 18);
    expect(valueOf(cuts(7000, 1, 12, 19.75, 21.5))).toBeLessThan(middle);
    expect(middle).toBe(valueOf(cuts(7000, 1, 12)));
  });

  it('are the feed turned round', () => {
    fc.assert(
      fc.property(size(1, 30000), fc.integer({ min: 1, max: 12 }), size(0.1, 200), (rpm, knives, feed) => {
        expectNear(valueOf(feedRate(valueOf(cuts(rpm, knives, feed)), rpm, knives)), feed, 1e-14);
      }),
    );
  });

  it('refuse a radius without the other, and knives that are not whole', () => {
    expect(refusalOf(cuts(7000, 1, 12, 20))).toBe(
      'edge_radius is missing: give it together with feed_radius, or neither',
    );
    expect(refusalOf(cuts(7000, 1, 12, undefined, 20))).toBe(
      'feed_radius is missing: give it together with edge_radius, or neither',
    );
    expect(refusalOf(cuts(7000, 1.5, 12))).toBe('knives must be a whole number from 1 to 100; got 1.5');
    expect(refusalOf(cuts(7000, 1, 0))).toBe('feed must be more than 0; got 0');
    expect(refusalOf(cuts(-1, 1, 12))).toBe('rpm must be more than 0; got -1');
    expect(refusalOf(feedRate(0, 7000, 1))).toBe('cuts must be more than 0; got 0');
  });
});

describe('the depth of a knife mark', () => {
  it('keeps the 12 digits printed where the plain difference has lost half of them', () => {
    // r − √(r² − p²/4), worked to 30 digits apart from this program and rounded to 12.
    expectNear(valueOf(depth(1 / 0.015, 5)), 1.12500253126e-5, 5e-12);
    expectNear(valueOf(depth(1 / 0.0192, 4)), 2.30401327119e-5, 5e-12);
  });

  it('is p²/8R to within 3 parts in 1,000, and never less, for any mark a shop can see', () => {
    fc.assert(
      fc.property(size(5, 60), size(2, 10), (cuts, diameter) => {
        expectNear(valueOf(depth(cuts, diameter)), 1 / cuts ** 2 / (4 * diameter), 3e-3);
        expect(valueOf(depth(cuts, diameter))).toBeGreaterThan(1 / cuts ** 2 / (4 * diameter));
      }),
    );
  });

  it('is half the cutting circle where marks lie a diameter apart, and refused beyond', () => {
    expect(valueOf(depth(0.25, 4))).toBe(2);
    expect(refusalOf(depth(0.2, 4))).toBe('cuts must be at least 1/diameter, here 0.25; got 0.2');
  });
});

describe('running time', () => {
  it('is the length over the feed for each pass, and the handling', () => {
    // 43.355887 in at 12 ft/min: 0.301083 minutes a pass, worked apart from this program.
    expectNear(valueOf(runTime(43.355887, 12)), 0.301083, 2e-6);
    expectNear(valueOf(runTime(43.355887, 12, 3, 2)), 3 * 0.30108254861111 + 2, 1e-13);
  });

  it('refuses half a pass and less than no handling', () => {
    expect(refusalOf(runTime(10, 12, 1.5))).toBe('passes must be a whole number from 1 to 1000; got 1.5');
    expect(refusalOf(runTime(10, 12, 1, -1))).toBe('handling must be 0 or more; got -1');
    expect(refusalOf(runTime(0, 12))).toBe('length must be more than 0; got 0');
    expect(refusalOf(runTime(10, Infinity))).toBe('feed must be a number; got Infinity');
  });
});

describe('the finish that knife cuts allow', () => {
  it('is Economy from 15 and Custom from 20: Architectural Woodwork Standards (2009), section 8, 4.3.1.1', () => {
    const grades = [1, 14.999, 15, 19.999, 20, 97].map((cuts) => valueOf(finishGrade(cuts)));
    expect(grades).toEqual(['below Economy', 'below Economy', 'Economy', 'Economy', 'Custom', 'Custom']);
    expect(refusalOf(finishGrade(0))).toBe('cuts must be more than 0; got 0');
  });
});
