import { describe, expect, it } from 'vitest';
import { given } from '../../../src/check/rules/expression';
import { lineReason, lineVerdict, reasonOf, verdictOf } from '../../../src/check/rules/verdict';

const verdict = (all: readonly string[], judged = all) => {
  const text = (said: string) => given(said);
  return lineVerdict(all.map(text), judged.map(text)).of({});
};
const reason = (of: string, length: string, price: string) => {
  const each = [
    { text: given(length), label: 'length: ', name: 'length' },
    { text: given(price), label: 'price: ', name: 'price' },
  ];
  return lineReason(given(of), each).of({});
};

describe('the verdict on a line, of what is said of its figures', () => {
  it('is that it differs as soon as one does', () => {
    expect(verdict(['agrees', 'reveal left out', "can't tell: which opening"])).toBe('differs');
  });
  it('is open where something can’t be told, but not where a figure only isn’t given', () => {
    expect(verdict(['agrees', "can't tell: what 5 is of"])).toBe("can't tell");
    expect(verdict(['agrees', "can't tell: no length given", ''])).toBe('agrees');
    expect(verdict(['agrees', "can't tell: no length read"])).toBe("can't tell");
  });
  it('is open where only the quote’s own sums agree, or nothing is given', () => {
    expect(verdict(['agrees'], [])).toBe("can't tell");
    expect(verdict(["can't tell: no length given"])).toBe("can't tell");
  });
  it('is that of each figure by itself', () => {
    expect(['agrees', 'reveal left out', "can't tell: no length given", ''].map(verdictOf)).toEqual([
      'agrees',
      'differs',
      "can't tell",
      "can't tell",
    ]);
  });
});

describe('the reason of a verdict', () => {
  it('names what differs, what is open or what agrees, each under its figure', () => {
    expect(reason('differs', 'reveal left out', "can't tell: no price given")).toBe('length: reveal left out');
    expect(reason('agrees', 'agrees', 'agrees')).toBe('length, price');
    expect(reason("can't tell", 'agrees', "can't tell: no price given")).toBe('price: no price given');
    expect(reasonOf("can't tell: no price given")).toBe('no price given');
  });
});
