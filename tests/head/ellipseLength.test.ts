import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { halfEllipseLength } from '../../src/head/oval';
import { exact, expectExact, PI } from '../exact';
import { integrate } from '../integrate';
import { COMPLETE_E } from '../published';
import { random } from '../random';
import { expectNear } from '../value';

/** E(m), the parameter m being k²: a quarter of the ellipse of half axes 1 and √(1 − m) (DLMF 19.30). */
const completeE = (m: number) => halfEllipseLength(1, Math.sqrt(1 - m)) / 2;

describe('the complete elliptic integral of the second kind behind the length of an ellipse', () => {
  it.each(COMPLETE_E)('E(%d) is %d to nine places (A&S table 17.1)', (m, value) => {
    expect(completeE(m)).toBeCloseTo(value, 9);
  });

  it('the integration used as a check below reproduces A&S table 17.6, E(20° | 0.1) = 0.348372822', () => {
    const incomplete = integrate((x) => Math.sqrt(1 - 0.1 * Math.sin(x) ** 2), 0, Math.PI / 9);
    expectNear(incomplete, 0.348372822, 1.5e-9);
  });
});

describe('half the perimeter of an ellipse', () => {
  // Worked out to 30 digits apart from this program.
  it.each([
    [36, 24, 95.1926375357435],
    [36, 12, 80.1893593233315],
    [18, 12, 47.5963187678718],
    [36, 18, 87.1960339849291],
    [48, 16, 106.919145764442],
    [1, 0.5, 4.84422411027384 / 2],
    [5, 3, 25.5269988633981 / 2],
    [24, 10, 111.391898742169 / 2],
  ])('of half axes %d and %d is %d', (a, b, length) => {
    expectNear(halfEllipseLength(a, b), length, 1e-14);
    expectNear(halfEllipseLength(b, a), length, 1e-14);
  });

  it('agrees to 1e-15 with the series in ((a − b)/(a + b))², summed in 64-digit arithmetic', () => {
    // DLMF 19.5 gives the hypergeometric form: π/2·(a + b)·Σ binomial(1/2, n)²·hⁿ for half the perimeter.
    const from = random(41);
    for (let at = 0; at < 200; at++) {
      const a = from.size(1, 500);
      const b = a * from.between(0.15, 1);
      const h = exact(a)
        .minus(exact(b))
        .div(exact(a).plus(exact(b)))
        .pow(2);
      let term = exact(1);
      let binomial = exact(1);
      let sum = exact(1);
      for (let n = 1; term.toNumber() > 1e-25; n++) {
        binomial = binomial.times(exact(1.5 - n)).div(exact(n));
        term = binomial.pow(2).times(h.pow(n));
        sum = sum.plus(term);
      }
      expectExact(
        halfEllipseLength(a, b),
        sum
          .times(exact(a).plus(exact(b)))
          .times(PI)
          .div(2),
        1e-15,
        { a, b },
      );
    }
  });

  it('agrees with numeric integration of the curve, flat ones too', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 50, noNaN: true }), (b) => {
        const byHand = integrate((t) => Math.hypot(Math.sin(t), b * Math.cos(t)), 0, Math.PI / 2) * 2;
        expectNear(halfEllipseLength(1, b), byHand, 1e-12);
      }),
      { numRuns: 40 },
    );
  });

  it('goes to twice the half span as the ellipse flattens, keeping its digits', () => {
    // 2·(1 + (b²/2)·(ln(4/b) − 1/2)) + terms in b⁴: the expansion of E near m = 1, DLMF 19.12.2.
    for (const b of [1e-4, 1e-6, 1e-9]) {
      expectNear(halfEllipseLength(1, b), 2 * (1 + (b * b * (Math.log(4 / b) - 0.5)) / 2), 1e-14);
    }
  });
});
