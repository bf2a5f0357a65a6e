import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { miter } from '../../src/head/joints';
import { CASES, exact, exactAngle, expectExact, PI } from '../exact';
import { random } from '../random';
import { refusalOf, valueOf } from '../value';

describe('the miter between a leg and an arched head', () => {
  it('is 25.7 degrees for 36 × 6, face 3-1/2, reveal 3/16, as its docstring says', () => {
    expect(valueOf(miter(36, 6, 3.5, 3 / 16)).toFixed(1)).toBe('25.7');
  });

  it('has to 1e-12 the slope from corner to corner, each found where its arc meets the edge of the leg', () => {
    const from = random(61);
    for (let at = 0; at < CASES; at++) {
      const span = from.size(4, 400);
      const rise = (span / 2) * from.pick([from.size(1e-3, 0.999), from.between(1.001, 3)]);
      const face = from.between(0.5, 12);
      const reveal = from.between(0, 2);
      const a = exact(span).div(2);
      const h = exact(rise);
      const radius = a.pow(2).plus(h.pow(2)).div(h.times(2));
      // Height above the arc's center where the circle of radius R + d stands a + d from the center line.
      const height = (offset: typeof a) => {
        const size = radius.plus(offset).pow(2).minus(a.plus(offset).pow(2)).sqrt();
        return rise < span / 2 ? size : size.neg();
      };
      const rose = height(exact(reveal).plus(exact(face))).minus(height(exact(reveal)));
      const angle = exactAngle(rose, exact(face)).times(180).div(PI);
      expectExact(valueOf(miter(span, rise, face, reveal)), angle, 1e-12, { span, rise, face, reveal });
    }
  });

  it('is 0 at a half round, positive below it, negative above it, near 45 for a flat arc', () => {
    expect(valueOf(miter(36, 18, 3.5, 0.25))).toBe(0);
    expect(valueOf(miter(36, 17, 3.5, 0.25))).toBeGreaterThan(0);
    expect(valueOf(miter(36, 19, 3.5, 0.25))).toBeLessThan(0);
    expect(valueOf(miter(36, 0.001, 3.5, 0.25))).toBeCloseTo(45, 1);
  });

  it('falls as the rise grows', () => {
    const share = fc.double({ min: 0.01, max: 2, noNaN: true });
    fc.assert(
      fc.property(share, share, (one, other) => {
        fc.pre(Math.abs(one - other) > 1e-6);
        const [low, high] = [Math.min(one, other) * 18, Math.max(one, other) * 18];
        expect(valueOf(miter(36, high, 3.5, 0.25))).toBeLessThan(valueOf(miter(36, low, 3.5, 0.25)));
      }),
    );
  });

  it('needs no reveal, and refuses what is no size in one sentence', () => {
    expect(miter(36, 6, 3.5)).toEqual(miter(36, 6, 3.5, 0));
    expect(refusalOf(miter(36, 6, 0, 0))).toBe('face must be more than 0; got 0');
    expect(refusalOf(miter(36, 6, 3, -18))).toBe('reveal must be more than -18, where the legs would meet; got -18');
  });
});
