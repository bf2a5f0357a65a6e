import { describe, expect, it } from 'vitest';
import { cutText, plainLength } from '../../src/stock/cuttext';

describe('the cuts of a board in words', () => {
  it('lists how many of each length', () => {
    expect(cutText([[24.5, 3], [17, 1]])).toBe('3 × 24 1/2, 1 × 17'); // prettier-ignore
  });

  it('writes lengths as the caller wants them', () => {
    expect(cutText([[914.4, 2]], (length) => `${length} mm`)).toBe('2 × 914.4 mm');
  });

  it.each([
    [17, '17'],
    [0.5, '1/2'],
    [24 + 1 / 64, '24 1/64'],
    [24.0625, '24 1/16'],
    [24.3, '24.3'],
    [10 / 3, '3.3333'],
  ])('writes %d as %s', (length, text) => expect(plainLength(length)).toBe(text));
});
