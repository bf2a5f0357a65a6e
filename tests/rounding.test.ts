import fc from 'fast-check';
import { expect, it } from 'vitest';
import { roundTo, toCents } from '../src/rounding';

it('an exact half goes away from zero, judged on the decimal figure and not on its binary neighbor', () => {
  expect(toCents(1.005)).toBe(1.01);
  expect(toCents(-1.005)).toBe(-1.01);
  expect(toCents(2.675)).toBe(2.68);
  expect(roundTo(3, 442.9125)).toBe(442.913);
  expect(toCents(1.0049999)).toBe(1);
});

it('whole cents stay as they are', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1e9, max: 1e9 }), (cents) => {
      expect(toCents(cents / 100)).toBeCloseTo(cents / 100, 9);
    }),
  );
});
