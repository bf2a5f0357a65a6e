import { describe, expect, it } from 'vitest';
import { guides, isAsGoodAsStraight, longestStraight } from '../../src/blank/guides';
import { refusalOf, valueOf } from '../value';

describe('the guides a blank slides between', () => {
  it('stand off each edge of the blank by the clearance, 1/32 unless said', () => {
    expect(valueOf(guides(18, 3.5))).toEqual({ inside: 17.96875, outside: 21.53125 });
    expect(valueOf(guides(18, 3.5, 0.25, 0.0625))).toEqual({ inside: 17.6875, outside: 21.8125 });
    expect(valueOf(guides(18, 3.5, 0.25, 0))).toEqual({ inside: 17.75, outside: 21.75 });
  });

  it('leave twice the clearance in all', () => {
    const { inside, outside } = valueOf(guides(450, 90, 6, 0.8));
    expect(outside - inside).toBeCloseTo(90 + 12 + 1.6, 10);
  });

  it('refuse a clearance that leaves no inside guide, or is negative', () => {
    expect(refusalOf(guides(2, 3.5, 1, 1))).toBe('clearance must be less than radius − margin, here 1; got 1');
    expect(refusalOf(guides(0.3, 3.5, 0.1, 0.5))).toBe(
      'clearance must be less than radius − margin, here 0.2; got 0.5',
    );
    expect(refusalOf(guides(2, 3.5, 0, -0.1))).toBe('clearance must be 0 or more; got -0.1');
  });
});

describe('a guide that is as good as straight', () => {
  // Sagitta s over a chord of 2h: r = (h² + s²)/(2s); h 7 and s 1/64 give 1568.0078125.
  it('is one that rises less than 1/64 in over its board, in either unit', () => {
    const at = (radius: number) => [
      isAsGoodAsStraight(radius, 7, 1),
      isAsGoodAsStraight(radius * 25.4, 7 * 25.4, 25.4),
    ];
    expect(at(1568)).toEqual([false, false]);
    expect(isAsGoodAsStraight(1568.0078125, 7, 1)).toBe(false);
    expect(at(1568.01)).toEqual([true, true]);
    expect(at(30)).toEqual([false, false]);
  });

  it('is none that turns a quarter or more to each side, however small', () => {
    expect(isAsGoodAsStraight(0.01, 0.01, 1)).toBe(false);
    expect(isAsGoodAsStraight(5, 7, 1)).toBe(false);
  });
});

describe('the longest straight piece that passes between curved guides', () => {
  it.each([
    // Worked out independently here, to 12 digits: 4·√(c·Ro).
    [21.6875, 1 / 32, 3.29298496808],
    [33.6875, 1 / 32, 4.10411378985],
    [100, 1 / 32, 7.07106781187],
    [33.6875, 1 / 16, 5.80409338312],
  ])('at an outside radius of %d with %d clear is %d', (outside, clear, longest) => {
    expect(valueOf(longestStraight(outside, clear))).toBeCloseTo(longest, 10);
  });

  it('touches the inside guide with its edge and the outside one with its corners', () => {
    const [outside, clear, width] = [33.9375, 1 / 32, 4];
    const half = valueOf(longestStraight(outside, clear)) / 2;
    const inner = outside - width - clear;
    expect(Math.hypot(half, inner + width)).toBeCloseTo(outside + clear, 10);
  });

  it('is refused for no radius and a negative clearance', () => {
    expect(refusalOf(longestStraight(0, 0.1))).toContain('outside radius must be more than 0');
    expect(refusalOf(longestStraight(10, -1))).toContain('clearance must be 0 or more');
  });
});
