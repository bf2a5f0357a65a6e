import { shopInches } from './feetInches';
import { roundTo } from './rounding';
import type { Unit } from './unit';

/**
 * A length as a shop reads it: inches as on a tape to the nearest 1/`denominator`, millimeters to a tenth.
 * Example: 19.6875 → `19 11/16`; 914.4 mm → `914.4`.
 */
export function lengthText(length: number, unit: Unit, denominator = 16): string {
  if (unit === 'mm') return String(roundTo(1, length));
  const inches = shopInches(length, denominator);
  // Beyond a million million inches nobody reads fractions.
  return inches.ok ? inches.value : String(length);
}

/** The same in a sentence: inches are meant where no unit is named. Example: `19 11/16`; `914.4 mm`. */
export function lengthInWords(length: number, unit: Unit, denominator = 16): string {
  return lengthText(length, unit, denominator) + (unit === 'mm' ? ' mm' : '');
}
