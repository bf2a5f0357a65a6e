import { shopInches } from '../feetInches';
import type { Unit } from '../unit';

/**
 * A length as a shop reads it: inches as on a tape to the nearest 1/`denominator`, millimeters to a tenth.
 * Example: 19.6875 → `19 11/16`; 914.4 mm → `914.4`.
 */
export function lengthText(length: number, unit: Unit, denominator = 16): string {
  if (unit === 'mm') return String(Math.round(length * 10) / 10);
  const inches = shopInches(length, denominator);
  // Beyond a million million inches there are no fractions left to write.
  return inches.ok ? inches.value : String(length);
}

/** A radius with its decimal figure beside the fraction, for setting a trammel: `17.9688 (17 31/32)`. */
export function radiusText(radius: number, unit: Unit): string {
  const decimal = String(Math.round(radius * 1e4) / 1e4);
  if (unit === 'mm') return `${Math.round(radius * 100) / 100} mm`;
  const fraction = lengthText(radius, unit, 32);
  return fraction === decimal ? fraction : `${decimal} (${fraction})`;
}

/** Degrees to a hundredth with the sign: `18.43°`. */
export function degreesText(degrees: number): string {
  return `${Math.round(degrees * 100) / 100}°`;
}
