import { describe, expect, it } from 'vitest';
import { figure, finite, notNegative, positive, quoted, wholeBetween } from '../src/require';

describe('a figure that must be more than 0', () => {
  it.each([36, 1e-9, 1_000_000, 0.001])('may be %d', (value) => {
    expect(positive('span', value)).toBeNull();
  });

  it.each([
    [0, 'span must be more than 0; got 0'],
    [-3, 'span must be more than 0; got -3'],
    [1e-12, 'span must be at least 1e-9; got 1e-12'],
    [-Infinity, 'span must be a number; got -Infinity'],
    [1_000_001, 'span must be no more than 1000000; got 1000001'],
    [NaN, 'span must be a number; got NaN'],
    [Infinity, 'span must be a number; got Infinity'],
  ])('may not be %d', (value, sentence) => {
    expect(positive('span', value)?.message).toBe(sentence);
  });
});

describe('a figure of any sign', () => {
  it.each([0, -3, 3, -1_000_000, 1_000_000])('may be %d', (value) => {
    expect(finite('offset', value)).toBeNull();
  });

  it.each([
    [-1_000_001, 'offset must be no less than -1000000; got -1000001'],
    [NaN, 'offset must be a number; got NaN'],
  ])('may not be %d', (value, sentence) => {
    expect(finite('offset', value)?.message).toBe(sentence);
  });
});

describe('a figure that must be 0 or more', () => {
  it('may be 0, not less, and has an upper limit', () => {
    for (const value of [0, 0.5, 1_000_000]) expect(notNegative('kerf', value)).toBeNull();
    expect(notNegative('kerf', -0.1)?.message).toBe('kerf must be 0 or more; got -0.1');
    expect(notNegative('kerf', 4, 4)).toBeNull();
    expect(notNegative('kerf', 5, 4)?.message).toBe('kerf must be no more than 4; got 5');
  });
});

describe('a count', () => {
  it('must be whole and within its limits', () => {
    for (const value of [1, 3, 5]) expect(wholeBetween('plies', value, 1, 5)).toBeNull();
    for (const value of [0, 6, 2.5]) {
      expect(wholeBetween('plies', value, 1, 5)?.message).toBe(
        `plies must be a whole number from 1 to 5; got ${value}`,
      );
    }
    expect(wholeBetween('plies', NaN, 1, 5)?.message).toBe('plies must be a number; got NaN');
  });
});

describe('a figure in a sentence', () => {
  it('has 12 digits at most and no trailing noise', () => {
    expect([figure(0.1 + 0.2), figure(100 / 3), figure(-3)]).toEqual(['0.3', '33.3333333333', '-3']);
  });
});

describe('text in a sentence', () => {
  it('stands in quotation marks, without the blanks around it, and is cut after 60 characters', () => {
    expect(quoted(' Tudor ')).toBe('"Tudor"');
    expect(quoted('a'.repeat(60))).toBe(`"${'a'.repeat(60)}"`);
    expect(quoted('a'.repeat(61))).toBe(`"${'a'.repeat(60)}…"`);
  });

  it('is called nothing where there is none', () => expect(quoted('  ')).toBe('nothing'));
});
