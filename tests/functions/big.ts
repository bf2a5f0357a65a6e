import type { BigNumber } from 'mathjs';
import { exact, PI } from '../exact';

export type { BigNumber };
export { exact as big, PI };
export const ONE = exact(1);

/**
 * The library's own angle functions take milliseconds each, too much for a quarter of a million checks. These take
 * their angle apart into a multiple of 1/64, whose sine and cosine the library gives once, and a rest for a short power
 * series. `big.test.ts` holds them to the library's own.
 */
const STEP = 64;
const known = new Map<number, { sine: BigNumber; cosine: BigNumber }>();

function atStep(step: number): { sine: BigNumber; cosine: BigNumber } {
  const angle = exact(step).div(STEP);
  const found = known.get(step) ?? { sine: angle.sin(), cosine: angle.cos() };
  known.set(step, found);
  return found;
}

/** Terms from `first` on, each the one before times `ratio(n)`, until they no longer count. */
function series(
  first: BigNumber,
  next: (term: BigNumber, n: number) => BigNumber,
  part: (term: BigNumber, n: number) => BigNumber,
) {
  let [sum, term] = [part(first, 0), first];
  for (let n = 1; !term.isZero() && term.abs().gt('1e-72'); n++) {
    term = next(term, n);
    sum = sum.plus(part(term, n));
  }
  return sum;
}

export function sineAndCosine(angle: BigNumber): { sine: BigNumber; cosine: BigNumber } {
  const step = Math.round(angle.toNumber() * STEP);
  const rest = angle.minus(exact(step).div(STEP));
  const squared = rest.times(rest).neg();
  const itself = (term: BigNumber) => term;
  const sine = series(rest, (term, n) => term.times(squared).div(2 * n * (2 * n + 1)), itself);
  const cosine = series(ONE, (term, n) => term.times(squared).div((2 * n - 1) * 2 * n), itself);
  const at = atStep(step);
  return {
    sine: at.sine.times(cosine).plus(at.cosine.times(sine)),
    cosine: at.cosine.times(cosine).minus(at.sine.times(sine)),
  };
}

export function arctangent(value: BigNumber): BigNumber {
  const step = Math.round(Math.atan(value.toNumber()) * STEP);
  const { sine, cosine } = atStep(step);
  const rest = value
    .times(cosine)
    .minus(sine)
    .div(cosine.plus(value.times(sine)));
  const squared = rest.times(rest).neg();
  const sum = series(
    rest,
    (power) => power.times(squared),
    (power, n) => power.div(2 * n + 1),
  );
  return exact(step).div(STEP).plus(sum);
}

export function arcsine(value: BigNumber): BigNumber {
  return arctangent(value.div(ONE.plus(ONE.minus(value.times(value)).sqrt()))).times(2);
}

export function arccosine(value: BigNumber): BigNumber {
  return PI.div(2).minus(arcsine(value));
}
