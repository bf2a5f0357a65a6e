import { expect, test } from 'vitest';
import { sameValue } from './figures';

test('figures that differ in their last digits are one value, alone and within a text', () => {
  expect(sameValue(9.457752403185, 9.45775240318501, 1e-9)).toBe(true);
  expect(sameValue('36|9.457752403185|legs', '36|9.45775240318501|legs', 1e-9)).toBe(true);
  expect(sameValue(4.06436655166654, 4.064366551666541, 1e-12)).toBe(true);
  expect(sameValue(9.4577, 9.4578, 1e-9)).toBe(false);
  expect(sameValue('36|9.4577|legs', '36|9.4578|legs', 1e-9)).toBe(false);
  expect(sameValue('36|9.4577|legs', '36|9.4577|level', 1e-9)).toBe(false);
  expect(sameValue('36', '36|9', 1e-9)).toBe(false);
  expect(sameValue('36', 36, 1e-9)).toBe(false);
});
