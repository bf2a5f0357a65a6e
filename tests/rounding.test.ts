import fc from 'fast-check';
import { expect, it } from 'vitest';
import { addUp, roundTo, toCents } from '../src/rounding';

it('an exact half goes away from zero, judged on the decimal figure and not on its binary neighbor', () => {
  expect(toCents(1.005)).toBe(1.01);
  expect(toCents(-1.005)).toBe(-1.01);
  expect(toCents(2.675)).toBe(2.68);
  expect(roundTo(3, 442.9125)).toBe(442.913);
  expect(toCents(1.0049999)).toBe(1);
  // Held as 72112.02499999999418…: of its hundredfold, 16 digits still end in …499999999.
  expect(toCents(72112.025)).toBe(72112.03);
});

it('money is added up in whole cents', () => {
  expect(addUp([0.1, 0.2])).toBe(0.3);
  expect(addUp([1234.56, -1000, 0.015])).toBe(234.58);
  expect(addUp([])).toBe(0);
});

it('whole cents stay as they are', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1e9, max: 1e9 }), (cents) => {
      expect(toCents(cents / 100)).toBeCloseTo(cents / 100, 9);
    }),
  );
});
