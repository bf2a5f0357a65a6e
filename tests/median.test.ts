import { expect, it } from 'vitest';
import { median } from '../src/median';

it('the median is the middle figure by size, of an even count the upper of the two', () => {
  expect(median([2, 10, 9])).toBe(9);
  expect(median([4, 1, 3, 2])).toBe(3);
  expect(median([7])).toBe(7);
  expect(median([])).toBe(0);
});
