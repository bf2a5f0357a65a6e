import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PLY_RATIO, plies } from '../../src/blank/plies';
import { refusalOf, valueOf } from '../value';

describe('plies of a bent lamination', () => {
  it('are bent to t/R of 1/100 by default, 1/125 for softwoods: National Design Specification, curvature factor', () => {
    expect(PLY_RATIO).toBe(100);
    expect(valueOf(plies(30, 0.75))).toEqual({ count: 3, thickness: 0.25 });
    expect(valueOf(plies(30, 0.75, 125))).toEqual({ count: 4, thickness: 0.1875 });
    expect(valueOf(plies(100, 1))).toEqual({ count: 1, thickness: 1 });
  });

  it('are the fewest no thicker than radius/ratio', () => {
    const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(size(1, 1000), size(0.1, 10), size(20, 300), (radius, thickness, ratio) => {
        const { count, thickness: ply } = valueOf(plies(radius, thickness, ratio));
        expect(count * ply).toBeCloseTo(thickness, 12);
        expect(ply).toBeLessThanOrEqual((radius / ratio) * (1 + 1e-11));
        if (count > 1) expect(thickness / (count - 1)).toBeGreaterThan(radius / ratio);
      }),
    );
  });

  it('take a ply exactly at the limit whatever the rounding', () => {
    for (let count = 1; count <= 200; count++) {
      expect(valueOf(plies(0.1 * 100, 0.1 * count)).count).toBe(count);
    }
  });

  it('may be 10,000', () => {
    expect(valueOf(plies(2, 200)).count).toBe(10_000);
    expect(refusalOf(plies(2, 200.01))).toContain('here 200; got 200.01');
  });

  it('refuse more than 10,000, and sizes that are none', () => {
    expect(refusalOf(plies(1, 200))).toBe(
      'thickness must be no more than 10000 plies of radius/ratio, here 100; got 200',
    );
    expect(refusalOf(plies(0, 1))).toBe('radius must be more than 0; got 0');
    expect(refusalOf(plies(30, 1, -1))).toBe('ratio must be more than 0; got -1');
  });
});
