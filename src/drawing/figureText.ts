import { lengthText } from '../lengthText';
import { roundTo } from '../rounding';
import type { Unit } from '../unit';

/** A radius with its decimal figure beside the fraction, for setting a trammel: `17.9688 (17 31/32)`; or `456.41 mm`. */
export function radiusText(radius: number, unit: Unit): string {
  if (unit === 'mm') return `${roundTo(2, radius)} mm`;
  const decimal = String(roundTo(4, radius));
  const fraction = lengthText(radius, unit, 32);
  return fraction === decimal ? fraction : `${decimal} (${fraction})`;
}

/** Degrees to a hundredth with the sign: `18.43°`. */
export function degreesText(degrees: number): string {
  return `${roundTo(2, degrees)}°`;
}
