import { figure, wholeBetween } from './require';
import { ok, refuse, type Result } from './result';

/**
 * Text in feet and inches to the nearest 1/denominator of an inch, a fraction reduced, a full foot carried: 42.5 is
 * `3'-6 1/2"`, 11 31/32 is `1'-0"`, 6.5 is `0'-6 1/2"`. A tie goes away from zero (1/32 in sixteenths is 1/16). The
 * denominator is a whole number from 1 to 128, the inches within 1e12 either way.
 */
export function feetInches(inches: number, denominator = 16): Result<string> {
  const rounded = toFraction(inches, denominator);
  if (!rounded.ok) return rounded;
  const { negative, whole, fraction } = rounded.value;
  const feet = Math.floor(whole / 12);
  return ok(`${negative ? '-' : ''}${feet}'-${whole - feet * 12}${fraction && ` ${fraction}`}"`);
}

/**
 * Inches as on a tape, without a mark: 35.4375 is `35 7/16`, 0.5 is `1/2`, -3 is `-3`; rounded as in `feetInches`.
 */
export function shopInches(inches: number, denominator = 16): Result<string> {
  const rounded = toFraction(inches, denominator);
  if (!rounded.ok) return rounded;
  const { negative, whole, fraction } = rounded.value;
  const size = whole === 0 && fraction ? fraction : `${whole}${fraction && ` ${fraction}`}`;
  return ok(`${negative ? '-' : ''}${size}`);
}

function toFraction(inches: number, denominator: number) {
  const refusal = wholeBetween('denominator', denominator, 1, 128);
  if (refusal) return refusal;
  if (!Number.isFinite(inches) || Math.abs(inches) > 1e12) {
    return refuse(`inches must be a number between -1e12 and 1e12; got ${figure(inches)}`);
  }
  const size = Math.abs(inches);
  const wholeInches = Math.floor(size);
  const parts = Math.round((size - wholeInches) * denominator);
  const whole = parts === denominator ? wholeInches + 1 : wholeInches;
  const over = parts === denominator ? 0 : parts;
  const shared = greatestCommonDivisor(over, denominator);
  const fraction = over === 0 ? '' : `${over / shared}/${denominator / shared}`;
  return ok({ negative: inches < 0 && (whole > 0 || over > 0), whole, fraction });
}

function greatestCommonDivisor(one: number, other: number): number {
  return other === 0 ? one : greatestCommonDivisor(other, one % other);
}
