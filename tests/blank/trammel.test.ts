import { describe, expect, it } from 'vitest';
import { beyondTrammel } from '../../src/blank/trammel';

describe('a ring beyond the trammel', () => {
  it.each([
    ['in', 120, false],
    ['in', 120.01, true],
    ['mm', 3048, false],
    ['mm', 3048.1, true],
  ] as const)('is one of more than ten feet, in either unit: %s %d', (unit, outside, beyond) => {
    expect(beyondTrammel(outside, unit)).toBe(beyond);
  });

  it('goes by the longest that is given', () => {
    expect([beyondTrammel(96, 'in', 96), beyondTrammel(96.1, 'in', 96)]).toEqual([false, true]);
  });
});
