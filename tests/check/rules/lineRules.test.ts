import { describe, expect, it } from 'vitest';
import { given, words } from '../../../src/check/rules/expression';
import {
  amountRule,
  curveRule,
  EXTENSION_RULE,
  priceRule,
  quantityRule,
  type CountedBy,
  type LineFigures,
} from '../../../src/check/rules/lineRules';

const NONE: LineFigures = {
  place: 1,
  quantity: null,
  radius: null,
  length: null,
  unitPrice: null,
  extension: null,
  unit: null,
  ourQuantity: null,
  ourRadius: null,
  ourLength: null,
  ourPrice: null,
  together: null,
  lacks: 'given',
};
const counted = (quantity: number | null, ourQuantity: number | null, by: CountedBy = 'itself', together = quantity) =>
  quantityRule(by).of({ ...NONE, quantity, ourQuantity, together });

describe('a count of pieces', () => {
  it('agrees, or is named by the mistake that gives it, or by how many it is off', () => {
    expect([4, 2, 8, 1, 3, 5].map((quoted) => counted(quoted, 4))).toEqual([
      'agrees',
      'one piece counted for a pair',
      'a pair counted for one piece',
      'quantity of one',
      '1 too few',
      '1 too many',
    ]);
    expect(counted(1, 2)).toBe('one piece counted for a pair or quantity of one');
  });
  it('is of all lines that share an opening, and the first of them says it', () => {
    expect(counted(1, 3, 'the sum', 2)).toBe('1 too few');
    expect(counted(1, 3, 'with the first', 2)).toBe('');
    expect(counted(1, 3, 'with the first', 3)).toBe('agrees');
  });
  it('can’t be told where either side has none', () => {
    expect(counted(null, 4)).toBe("can't tell: no quantity given");
    expect(counted(2, null)).toBe("can't tell: no quantity in the takeoff");
    expect(quantityRule('itself').of({ ...NONE, place: null })).toBe("can't tell: no such mark in the takeoff");
  });
});

describe('a length or radius', () => {
  const rule = curveRule('length', words('reveal left out'));
  const of = (length: number | null, ourLength: number | null, lacks: LineFigures['lacks'] = 'given') =>
    rule.of({ ...NONE, length, ourLength, lacks, tolerance: 0.125 });
  it('agrees within the tolerance, at its very edge too', () => {
    expect([43, 43.125, 42.875, 43.13].map((quoted) => of(quoted, 43))).toEqual([
      'agrees',
      'agrees',
      'agrees',
      'reveal left out',
    ]);
  });
  it('that stands under a heading that isn’t understood is not called missing', () => {
    expect(of(null, 43, 'read')).toBe("can't tell: no length read");
  });
});

describe('money', () => {
  it('of a line agrees with its own quantity × price to the cent that each piece is rounded by', () => {
    const of = (quantity: number, unitPrice: number, extension: number) =>
      EXTENSION_RULE.of({ quantity, unitPrice, extension, lacks: 'given' });
    expect(of(3, 33.33, 99.99)).toBe('agrees');
    expect(of(3, 33.33, 100)).toBe('agrees');
    expect(of(3, 33.33, 101)).toBe('$1.01 too much');
    expect(of(2, 1200, 1200)).toBe('$1,200.00 too little');
  });
  it('of one piece is compared with ours within the band', () => {
    const of = (quoted: number, ours: number) => priceRule(given(quoted), given(ours), given(0.15)).of({});
    expect([100, 115, 85, 116, 50].map((quoted) => of(quoted, 100))).toEqual([
      'agrees',
      'agrees',
      'agrees',
      '16.0% above our $100.00',
      '50.0% below our $100.00',
    ]);
    expect(of(50, 0)).toBe("can't tell: our own price is 0");
  });
  it('of a sum has the formula of the same rule', () => {
    const rule = amountRule(given(100, 'M9'), given(90, '(SUM(M1:M8))'), given(0.005, '0.005'));
    expect(rule.of({})).toBe('$10.00 too much');
    expect(rule.formula).toBe(
      'IF(ABS((M9-(SUM(M1:M8))))<=0.005,"agrees","$"&FIXED(ABS((M9-(SUM(M1:M8)))),2)&IF(M9<(SUM(M1:M8))," too little"," too much"))',
    );
  });
});
