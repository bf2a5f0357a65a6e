import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcAngle, arcLength, arcOrdinates, arcRadius, arcRise, arcSpan, MOST_ORDINATES } from '../src/arc';
import { CASES, exact, exactAngle, expectExact, PI } from './exact';
import { CIRCLE_SEGMENTS } from './published';
import { random } from './random';
import { expectNear, refusalOf, valueOf } from './value';

describe('published figures of circular segments', () => {
  it('gives radius 102 for a span of 96 and a rise of 12 (carpentry tip by C. W. Davis)', () => {
    expect(valueOf(arcRadius(96, 12))).toBe(102);
  });

  it('gives the matheass.eu example "Circular sections": chord 21, rise 6', () => {
    expect(valueOf(arcRadius(21, 6))).toBe(12.1875);
    expect(valueOf(arcAngle(21, 6))).toBeCloseTo(118.97953, 5);
    expect(valueOf(arcLength(21, 6))).toBeCloseTo(25.308373, 6);
  });

  it('gives the matheass.eu example "Circular sections": arc 1 of 45°', () => {
    expect(valueOf(arcRadius(0.97449536, 0.096919589))).toBeCloseTo(1.2732395, 6);
    expect(valueOf(arcAngle(0.97449536, 0.096919589))).toBeCloseTo(45, 5);
    expect(valueOf(arcLength(0.97449536, 0.096919589))).toBeCloseTo(1, 7);
  });

  // The table by angle that follows Machinery's Handbook's formulas, its entries from memory; radius 1.
  it.each([
    [60, 1, 0.13397, 1.0472],
    [90, 1.41421, 0.29289, 1.5708],
    [120, 1.73205, 0.5, 2.0944],
  ])('agrees with the radius-1 table for %d degrees', (degrees, span, rise, length) => {
    expect(valueOf(arcAngle(span, rise))).toBeCloseTo(degrees, 2);
    expect(valueOf(arcLength(span, rise))).toBeCloseTo(length, 4);
    expect(valueOf(arcRise(span, 1))).toBeCloseTo(rise, 4);
    expect(valueOf(arcSpan(rise, 1))).toBeCloseTo(span, 4);
  });
});

describe('radius', () => {
  it.each(CIRCLE_SEGMENTS)('of span %d and rise %d is %d', (span, rise, radius) => {
    expect(valueOf(arcRadius(span, rise))).toBe(radius);
  });

  it('of a rise above half the span comes with an angle above 180° and the longer arc', () => {
    expectNear(valueOf(arcAngle(36, 24)), 212.520409416624, 1e-14);
    expectNear(valueOf(arcLength(36, 24)), 69.5471413501209, 1e-14);
  });
});

describe('the arc, against 64-digit arithmetic on random sizes', () => {
  const sizes = (seed: number) => {
    const from = random(seed);
    return Array.from({ length: CASES }, () => ({ span: from.size(0.1, 10_000), rise: from.size(1e-4, 10_000) }));
  };

  it('has its radius to 1e-15 and its angle and length to 1e-14', () => {
    for (const { span, rise } of sizes(1)) {
      const s = exact(span);
      const h = exact(rise);
      const radius = s.times(s).div(4).plus(h.times(h)).div(h.times(2));
      const angle = exactAngle(h.times(2), s).times(4);
      expectExact(valueOf(arcRadius(span, rise)), radius, 1e-15, { span, rise });
      expectExact(valueOf(arcAngle(span, rise)), angle.times(180).div(PI), 1e-14, { span, rise });
      const offset = rise / 7;
      const length = radius.plus(exact(offset)).times(angle);
      expectExact(valueOf(arcLength(span, rise, offset)), length, 1e-14, { span, rise, offset });
    }
  });

  it('has its rise to 1e-14, however flat and however near a half round', () => {
    const from = random(2);
    for (let at = 0; at < CASES; at++) {
      const span = from.size(0.1, 10_000);
      const radius = (span / 2) * (1 + from.size(1e-12, 1e9));
      const half = exact(span).div(2);
      const rise = exact(radius).minus(exact(radius).pow(2).minus(half.pow(2)).sqrt());
      expectExact(valueOf(arcRise(span, radius)), rise, 1e-14, { span, radius });
    }
  });

  it('has its span to 1e-14, however near the full circle', () => {
    const from = random(3);
    for (let at = 0; at < CASES; at++) {
      const radius = from.size(0.1, 10_000);
      const rise = from.pick([radius * from.size(1e-6, 1.99), 2 * radius * (1 - from.size(1e-13, 0.1))]);
      const span = exact(rise)
        .times(exact(radius).times(2).minus(exact(rise)))
        .sqrt()
        .times(2);
      expectExact(valueOf(arcSpan(rise, radius)), span, 1e-14, { radius, rise });
    }
  });

  it('has its ordinates to 1e-14, however flat', () => {
    const from = random(4);
    for (let at = 0; at < CASES / 10; at++) {
      const span = from.size(1, 1000);
      const rise = span * from.size(1e-6, 0.5);
      const s = exact(span);
      const radius = s.times(s).div(4).plus(exact(rise).pow(2)).div(exact(rise).times(2));
      for (const [x, height] of valueOf(arcOrdinates(span, rise, span / 9)).slice(0, -1)) {
        const exactHeight = radius.pow(2).minus(exact(x).pow(2)).sqrt().minus(radius).plus(exact(rise));
        expectExact(height, exactHeight, 1e-14, { span, rise, x });
      }
    }
  });
});

describe('laws of the arc', () => {
  const length = fc.double({ min: 0.01, max: 1000, noNaN: true });

  it('the rise of an arc’s radius is its rise again, up to the half round', () => {
    fc.assert(
      fc.property(length, fc.double({ min: 1e-6, max: 0.49, noNaN: true }), (span, share) => {
        const rise = span * share;
        expectNear(valueOf(arcRise(span, valueOf(arcRadius(span, rise)))), rise, 1e-11);
      }),
    );
  });

  it('above the half round it is the lesser rise, span²/4 divided by the greater', () => {
    fc.assert(
      fc.property(length, fc.double({ min: 0.51, max: 20, noNaN: true }), (span, share) => {
        const rise = span * share;
        expectNear(valueOf(arcRise(span, valueOf(arcRadius(span, rise)))), (span * span) / 4 / rise, 1e-11);
      }),
    );
  });

  it('the span of an arc’s rise and radius is its span again', () => {
    fc.assert(
      fc.property(length, fc.double({ min: 1e-6, max: 20, noNaN: true }), (span, share) => {
        const rise = span * share;
        expectNear(valueOf(arcSpan(rise, valueOf(arcRadius(span, rise)))), span, 1e-9);
      }),
    );
  });

  it('scaling span, rise and offset scales radius and length and leaves the angle', () => {
    fc.assert(
      fc.property(length, length, fc.double({ min: 0.1, max: 30, noNaN: true }), (span, rise, factor) => {
        expectNear(valueOf(arcRadius(span * factor, rise * factor)), factor * valueOf(arcRadius(span, rise)), 1e-14);
        expectNear(valueOf(arcAngle(span * factor, rise * factor)), valueOf(arcAngle(span, rise)), 1e-14);
        expectNear(
          valueOf(arcLength(span * factor, rise * factor, factor)),
          factor * valueOf(arcLength(span, rise, 1)),
          1e-14,
        );
      }),
    );
  });

  it('an offset left out is an offset of 0', () => {
    expect(arcLength(36, 6)).toEqual(arcLength(36, 6, 0));
  });
});

describe('ordinates', () => {
  it('run from the crown to the spring point, the last row exactly at half the span', () => {
    const rows = valueOf(arcOrdinates(36, 6, 9));
    expect(rows.map(([x]) => x)).toEqual([0, 9, 18]);
    expect(rows[0]).toEqual([0, 6]);
    expectNear(rows[1]![1], Math.sqrt(30 ** 2 - 9 ** 2) - 24, 1e-14);
    expect(rows[2]).toEqual([18, 0]);
  });

  it('end at half the span also where the step does not divide it, or is longer', () => {
    expect(valueOf(arcOrdinates(36, 6, 7)).map(([x]) => x)).toEqual([0, 7, 14, 18]);
    expect(valueOf(arcOrdinates(36, 6, 50)).map(([x]) => x)).toEqual([0, 18]);
  });

  it('give no row twice where the step divides half the span but for rounding', () => {
    // 2.1 / 0.3 comes out as 7.000000000000001, 0.3 / 0.1 as 2.9999999999999996.
    const rows = valueOf(arcOrdinates(4.2, 0.1, 0.3));
    expect(rows).toHaveLength(8);
    expect(rows[6]![0]).toBeCloseTo(1.8, 12);
    expect(rows[7]![0]).toBe(2.1);
    expect(valueOf(arcOrdinates(0.6, 0.1, 0.1))).toHaveLength(4);
    // A step that really leaves a rest has a row for it, however small the rest.
    expect(valueOf(arcOrdinates(36, 6, 18 / 3.0005))).toHaveLength(5);
  });

  it('keep their digits a hair from the spring point of an arc that is nearly a half round', () => {
    const step = 18 * (1 - 1e-7);
    const height = valueOf(arcOrdinates(36, 17.5, step))[1]![1];
    const [x, half, rise] = [exact(step), exact(18), exact(17.5)];
    const radius = half.times(half).plus(rise.times(rise)).div(rise.times(2));
    const upright = radius.times(radius).minus(x.times(x)).sqrt();
    // What the rounding of the radius leaves: (radius − x) is a two-thousandth of it.
    expectExact(height, upright.minus(radius.minus(rise)), 1e-12, { step });
  });

  it('above a half round give the upper crossing at half the span', () => {
    const rows = valueOf(arcOrdinates(36, 24, 18));
    expect(rows[0]).toEqual([0, 24]);
    expectNear(rows[1]![1], 2 * (24 - 18.75), 1e-14);
  });

  it('refuse a step that would give more than 10,000 rows, and give 10,000', () => {
    expect(valueOf(arcOrdinates(36, 6, 18 / 9_999)).length).toBe(MOST_ORDINATES);
    expect(refusalOf(arcOrdinates(36, 6, 18 / 10_000))).toContain('for at most 10,000 rows');
    expect(refusalOf(arcOrdinates(36, 6, 0.001))).toBe(
      'step must be at least 0.001800180018, for at most 10,000 rows; got 0.001',
    );
  });
});

describe('the arc refuses', () => {
  it.each([
    [arcRadius(36, -3), 'rise must be more than 0; got -3'],
    [arcRadius(0, 6), 'span must be more than 0; got 0'],
    [arcRadius(NaN, 6), 'span must be a number; got NaN'],
    [arcRadius(36, Infinity), 'rise must be a number; got Infinity'],
    [arcRadius(1e300, 6), 'span must be no more than 1000000; got 1e+300'],
    [arcRadius(36, 1e-300), 'rise must be at least 1e-9; got 1e-300'],
    [arcRise(36, 17), 'radius must be at least half the span, 18; got 17'],
    [arcSpan(61, 30), 'rise must be at most twice the radius, 60; got 61'],
    [arcLength(36, 6, -30), "offset must be more than -30, where the arc's center is; got -30"],
    [arcOrdinates(36, 6, 0), 'step must be more than 0; got 0'],
  ])('with one sentence: %#', (result, sentence) => {
    expect(refusalOf(result)).toBe(sentence);
  });

  it('nothing that misses its limit by rounding alone', () => {
    expect(valueOf(arcRise(36, 18 * (1 - 1e-13)))).toBe(18);
    expect(valueOf(arcSpan(60 * (1 + 1e-13), 30))).toBe(0);
    // The limit of rounding itself is still taken, a thousand times as much is not.
    expect(valueOf(arcRise(36, 18 * (1 - 1e-12)))).toBe(18);
    expect(valueOf(arcSpan(60 * (1 + 1e-12), 30))).toBe(0);
    expect(refusalOf(arcRise(36, 18 * (1 - 1e-9)))).toContain('radius must be at least half the span');
    expect(refusalOf(arcSpan(60 * (1 + 1e-9), 30))).toContain('rise must be at most twice the radius');
  });
});
