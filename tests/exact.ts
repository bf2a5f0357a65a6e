import { all, create, type BigNumber } from 'mathjs';
import { expect } from 'vitest';

/** Arithmetic with 64 digits, independent of the program's own: what it gives is right to far more digits than a number holds. */
const math = create(all!, { number: 'BigNumber', precision: 64 });

/** Random cases of each formula; `EXACT_CASES=10000` for a longer look. */
export const CASES = Number(process.env.EXACT_CASES ?? 1_000);

/** A number as it is, to the last bit: its shortest decimal form would be another number 1e-17 away. */
export function exact(value: number): BigNumber {
  return math.bignumber(value.toPrecision(60));
}

export const PI: BigNumber = math.evaluate('pi') as BigNumber;

/**
 * The angle in radians whose tangent is y/x, from 0 to π for y ≥ 0. The number a machine gives serves only as a start:
 * what is missing is found from its 64-digit sine and cosine, and is so small (1e-16) that its own tangent's next term
 * (a third of its cube) is beyond the digits that count.
 */
export function exactAngle(y: BigNumber, x: BigNumber): BigNumber {
  const start = exact(Math.atan2(y.toNumber(), x.toNumber()));
  const sine = math.sin(start) as BigNumber;
  const cosine = math.cos(start) as BigNumber;
  const missing = y
    .times(cosine)
    .minus(x.times(sine))
    .div(x.times(cosine).plus(y.times(sine)));
  return start.plus(missing);
}

export function exactAcos(cosine: BigNumber): BigNumber {
  return exactAngle(exact(1).minus(cosine.times(cosine)).sqrt(), cosine);
}

export function exactAsin(sine: BigNumber): BigNumber {
  return exactAngle(sine, exact(1).minus(sine.times(sine)).sqrt());
}

/** Fails where a number is further than `within` times its size from the 64-digit figure. */
export function expectExact(actual: number, expected: BigNumber, within: number, about: object): void {
  const off = exact(actual).minus(expected).abs().div(expected.abs()).toNumber();
  if (!(off <= within)) {
    expect.fail(
      `got ${actual}, exactly ${expected.toPrecision(20)}, ${off.toExponential(2)} off: ${JSON.stringify(about)}`,
    );
  }
}
