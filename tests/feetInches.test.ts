import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDimension } from '../src/dimension';
import { bare } from '../src/unit';
import { feetInches, shopInches } from '../src/feetInches';
import { expectNear, refusalOf, valueOf } from './value';

describe('feet and inches are written', () => {
  it.each<[number, string]>([
    [42.5, '3\'-6 1/2"'],
    [36, '3\'-0"'],
    [11 + 31 / 32, '1\'-0"'],
    [11.96, '0\'-11 15/16"'],
    [35.99, '3\'-0"'],
    [6.5, '0\'-6 1/2"'],
    [0, '0\'-0"'],
    [-0.01, '0\'-0"'],
    [-42.5, '-3\'-6 1/2"'],
    [-(11 + 31 / 32), '-1\'-0"'],
    [0.25, '0\'-0 1/4"'],
    [-1, '-0\'-1"'],
    [1e12, '83333333333\'-4"'],
    [-1e12, '-83333333333\'-4"'],
  ])('%d as %s', (inches, text) => {
    expect(valueOf(feetInches(inches))).toBe(text);
  });

  it('a tie goes away from zero', () => {
    expect(valueOf(feetInches(1 / 32))).toBe('0\'-0 1/16"');
    expect(valueOf(feetInches(-1 / 32))).toBe('-0\'-0 1/16"');
    expect(valueOf(feetInches(3 / 32))).toBe('0\'-0 1/8"');
  });

  it.each([
    [1, '3\'-7"'],
    [2, '3\'-6 1/2"'],
    [8, '3\'-6 5/8"'],
    [64, '3\'-6 41/64"'],
    [10, '3\'-6 3/5"'],
  ])('to the nearest 1/%d', (denominator, text) => {
    expect(valueOf(feetInches(42.64, denominator))).toBe(text);
  });

  it.each([
    [35.4375, '35 7/16'],
    [0.4375, '7/16'],
    [12, '12'],
    [0, '0'],
    [-0.5, '-1/2'],
    [23.99, '24'],
  ])('or %d as on a tape: %s', (inches, text) => {
    expect(valueOf(shopInches(inches))).toBe(text);
  });

  it('refuses a denominator that is not whole, and what is no number', () => {
    expect(refusalOf(feetInches(1, 0))).toBe('denominator must be a whole number from 1 to 128; got 0');
    expect(refusalOf(feetInches(1, 2.5))).toBe('denominator must be a whole number from 1 to 128; got 2.5');
    expect(refusalOf(feetInches(NaN))).toBe('inches must be a number between -1e12 and 1e12; got NaN');
    expect(refusalOf(shopInches(Infinity))).toContain('got Infinity');
    expect(refusalOf(feetInches(1e12 + 1))).toContain('got 1000000000000');
  });

  it('what is written is read back, within half of the finest fraction', () => {
    const denominator = fc.constantFrom(1, 2, 4, 8, 16, 32, 64, 128);
    fc.assert(
      fc.property(fc.double({ min: -10_000, max: 10_000, noNaN: true }), denominator, (inches, finest) => {
        for (const text of [valueOf(feetInches(inches, finest)), valueOf(shopInches(inches, finest))]) {
          const back = bare(valueOf(readDimension(text)));
          expect(Math.abs(back - inches)).toBeLessThanOrEqual(0.5 / finest + 1e-9);
          expectNear(Math.abs(back * finest), Math.round(Math.abs(back * finest)), 1e-15);
        }
      }),
      { numRuns: 1_000 },
    );
  });
});
