import { describe, expect, it } from 'vitest';
import { random } from '../random';
import { arccosine, arcsine, arctangent, big, sineAndCosine, type BigNumber } from './big';

describe('the 64-digit angle functions of these tests', () => {
  it("agree with the library's own to 60 digits", () => {
    const any = random(5);
    const alike = (one: BigNumber, other: BigNumber) =>
      expect(
        one.minus(other).abs().lte(other.abs().plus(1e-3).times('1e-60')),
        `${one.toString()} and ${other.toString()}`,
      ).toBe(true);
    for (let trial = 0; trial < 60; trial++) {
      const angle = big(any.between(-3.2, 3.2));
      alike(sineAndCosine(angle).sine, angle.sin());
      alike(sineAndCosine(angle).cosine, angle.cos());
      const tangent = big(any.size(1e-4, 1e4));
      alike(arctangent(tangent), tangent.atan());
      const ratio = big(any.between(-0.999, 0.999));
      alike(arcsine(ratio), ratio.asin());
      alike(arccosine(ratio), ratio.acos());
    }
  });
});
