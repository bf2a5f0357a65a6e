import { lengthText } from '../lengthText';
import type { Unit } from '../unit';

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
