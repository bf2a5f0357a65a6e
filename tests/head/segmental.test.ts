import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ends } from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { legTop } from '../../src/head/segmental';
import { CASES, exact, exactAcos, exactAsin, exactAngle, expectExact, PI } from '../exact';
import { random } from '../random';
import { expectNear, refusalOf, valueOf } from '../value';

const segmental = (span: number, rise: number) => valueOf(makeHead('segmental', span, rise));
const lengthOf = (span: number, rise: number, offset: number, ends: Ends) =>
  valueOf(segmental(span, rise).length(offset, ends));

describe('a segmental head 36 × 6, casing 3-1/2 with a reveal of 3/16', () => {
  // Worked out to 30 digits apart from this program; the convention trap of ends is common practice's, not published.
  it.each([
    [3 / 16, 'radial', 38.8513794433945],
    [3 / 16 + 3.5 / 2, 'radial', 41.103633324171],
    [3 / 16 + 3.5, 'radial', 43.3558872049475],
    [3 / 16, 'level', 39.3486545631571],
    [3 / 16 + 3.5 / 2, 'level', 46.0227345246197],
    [3 / 16 + 3.5, 'level', 52.4070213891136],
  ] as const)('is at offset %d with %s ends %d long', (offset, ends, length) => {
    expectNear(lengthOf(36, 6, offset, ends), length, 1e-14);
  });

  it('gives three different lengths for the three ends, as its docstring says', () => {
    const at = (ends: Ends) => lengthOf(36, 6, 3 + 11 / 16, ends).toFixed(4);
    expect([at('radial'), at('legs'), at('level')]).toEqual(['43.3559', '47.1244', '52.4070']);
  });
});

describe('a segmental head against the formulas of the trade in 64-digit arithmetic', () => {
  it('has its three lengths to 1e-13 on random sizes and offsets, above a half round too', () => {
    const from = random(11);
    for (let at = 0; at < CASES; at++) {
      const span = from.size(1, 500);
      const rise = (span / 2) * from.pick([from.size(1e-3, 1), from.between(1, 3), 1 + from.between(-1e-9, 1e-9)]);
      const a = exact(span).div(2);
      const h = exact(rise);
      const radius = a.pow(2).plus(h.pow(2)).div(h.times(2));
      const offset = from.pick([
        from.between(0, span),
        -from.between(0, 0.9) * Math.min(span / 2, rise, span ** 2 / 4 / rise),
      ]);
      const at0 = radius.plus(exact(offset));
      const about = { span, rise, offset };

      const radial = at0.times(exactAngle(h, a)).times(4);
      expectExact(lengthOf(span, rise, offset, 'radial'), radial, 1e-13, about);

      const level = at0.times(exactAcos(radius.minus(h).div(at0))).times(2);
      expectExact(lengthOf(span, rise, offset, 'level'), level, 1e-13, about);

      const toLeg = exactAsin(a.plus(exact(offset)).div(at0));
      const legs = at0.times(rise > span / 2 ? PI.minus(toLeg) : toLeg).times(2);
      expectExact(lengthOf(span, rise, offset, 'legs'), legs, 1e-13, about);
    }
  });
});

describe('the pieces of a segmental head', () => {
  const ENDS: readonly Ends[] = ['radial', 'level', 'legs'];

  it.each([
    [36, 6],
    [36, 18],
    [36, 30],
  ])('of %d × %d are one arc whose ends stand where the cut is', (span, rise) => {
    const offset = 3.6875;
    for (const ends of ENDS) {
      const arcs = valueOf(segmental(span, rise).arcs(offset, ends));
      expect(arcs).toHaveLength(1);
      const [arc] = arcs;
      const left = (arc!.start * Math.PI) / 180;
      const x = arc!.center.x + arc!.radius * Math.cos(left);
      const y = arc!.center.y + arc!.radius * Math.sin(left);
      expectNear(arc!.radius, span ** 2 / 8 / rise + rise / 2 + offset, 1e-14);
      expectNear(arc!.length, lengthOf(span, rise, offset, ends), 1e-14);
      expect(arc!.deviation).toBe(0);
      if (ends === 'level') expect(y).toBeCloseTo(0, 12);
      if (ends === 'legs') expectNear(x, -(span / 2 + offset), 1e-13);
      // On the radial line: center, spring point and end in one line.
      if (ends === 'radial') expect((-span / 2) * (y - arc!.center.y) + arc!.center.y * x).toBeCloseTo(0, 9);
    }
  });
});

describe('the top of a leg', () => {
  it('is where the parallel curve meets the vertical at the same offset, below and above a half round', () => {
    const from = random(12);
    for (let at = 0; at < CASES; at++) {
      const span = from.size(1, 500);
      const rise = (span / 2) * from.pick([from.size(1e-3, 1), from.between(1, 3)]);
      const offset = from.between(0, span);
      const a = exact(span).div(2);
      const h = exact(rise);
      const radius = a.pow(2).plus(h.pow(2)).div(h.times(2));
      const overCenter = radius
        .plus(exact(offset))
        .pow(2)
        .minus(a.plus(exact(offset)).pow(2))
        .sqrt();
      const top = h
        .minus(radius)
        .plus(rise > span / 2 ? overCenter.neg() : overCenter)
        .toNumber();
      expect(Math.abs(legTop(span, rise, offset) - top)).toBeLessThan(1e-13 * radius.toNumber());
    }
  });
});

describe('laws of the three ends', () => {
  const span = fc.double({ min: 1, max: 200, noNaN: true });
  const offset = fc.double({ min: 0.01, max: 20, noNaN: true });
  const lengths = (s: number, r: number, d: number) => ({
    radial: lengthOf(s, r, d, 'radial'),
    legs: lengthOf(s, r, d, 'legs'),
    level: lengthOf(s, r, d, 'level'),
  });

  it('outside an arc below a half round: radial < legs < level', () => {
    fc.assert(
      fc.property(span, fc.double({ min: 0.01, max: 0.98, noNaN: true }), offset, (s, share, d) => {
        const { radial, legs, level } = lengths(s, (share * s) / 2, d);
        expect(radial).toBeLessThan(legs);
        expect(legs).toBeLessThan(level);
      }),
    );
  });

  it('outside an arc above a half round: level < legs < radial', () => {
    fc.assert(
      fc.property(span, fc.double({ min: 1.02, max: 4, noNaN: true }), offset, (s, share, d) => {
        const { radial, legs, level } = lengths(s, (share * s) / 2, d);
        expect(level).toBeLessThan(legs);
        expect(legs).toBeLessThan(radial);
      }),
    );
  });

  it('inside the edge each order is reversed', () => {
    fc.assert(
      fc.property(
        span,
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        fc.double({ min: 0.02, max: 0.9, noNaN: true }),
        (s, share, part) => {
          fc.pre(Math.abs(share - 1) > 0.02);
          const rise = (share * s) / 2;
          const inside = -part * Math.min(s / 2, rise, (s * s) / 4 / rise);
          const { radial, legs, level } = lengths(s, rise, inside);
          if (share < 1) expect([level < legs, legs < radial]).toEqual([true, true]);
          else expect([radial < legs, legs < level]).toEqual([true, true]);
        },
      ),
    );
  });

  it('at the opening’s own edge and at a half round all three agree', () => {
    fc.assert(
      fc.property(span, fc.double({ min: 0.01, max: 4, noNaN: true }), offset, (s, share, d) => {
        const edge = lengths(s, (share * s) / 2, 0);
        expectNear(edge.legs, edge.radial, 1e-13);
        expectNear(edge.level, edge.radial, 1e-13);
        const half = lengths(s, s / 2, d);
        expectNear(half.legs, half.radial, 1e-14);
        expectNear(half.level, half.radial, 1e-14);
      }),
    );
  });

  it('scaling all sizes scales every length', () => {
    fc.assert(
      fc.property(span, fc.double({ min: 0.01, max: 4, noNaN: true }), offset, (s, share, d) => {
        const small = lengths(s, (share * s) / 2, d);
        const large = lengths(3 * s, (3 * share * s) / 2, 3 * d);
        for (const ends of ['radial', 'legs', 'level'] as const) expectNear(large[ends], 3 * small[ends], 1e-13);
      }),
    );
  });
});

describe('a segmental head refuses', () => {
  it.each([
    ['radial', -30, "offset must be more than -30, where the arc's center is; got -30"],
    ['level', -6, 'offset must be more than -6, where the curve no longer reaches the spring line; got -6'],
    ['legs', -18, 'offset must be more than -18, where the legs would meet; got -18'],
    ['legs', NaN, 'offset must be a number; got NaN'],
  ] as const)('%s ends at offset %d', (ends, offset, sentence) => {
    expect(refusalOf(segmental(36, 6).length(offset, ends))).toBe(sentence);
    expect(refusalOf(segmental(36, 6).arcs(offset, ends))).toBe(sentence);
  });

  it('level ends of a high arc where the curve floats above the spring line', () => {
    // Center 5.25 above the spring line, radius 18.75: at -13.5 the circle just touches it.
    expect(refusalOf(segmental(36, 24).length(-13.5, 'level'))).toContain('offset must be more than -13.5');
    expect(lengthOf(36, 24, -13.49, 'level')).toBeGreaterThan(0);
  });

  it('a rise left out, or not more than 0', () => {
    expect(refusalOf(makeHead('segmental', 36, null))).toBe('rise is missing; a segmental head needs it');
    expect(refusalOf(makeHead('segmental', 36, 0))).toBe('rise must be more than 0; got 0');
  });
});
