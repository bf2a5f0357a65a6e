import { perInch, type Unit } from '../unit';

/** Longer than this, in inches, a trammel is no longer practical. From memory. */
const LONGEST_TRAMMEL = 120;

/**
 * Whether a ring and the guide boards that it runs between are laid out by ordinates instead of a trammel: ring and boards alike, by
 * the blank's outside radius, the longest that is swung for the ring itself. `longest`: what the shop swings; default 10 ft.
 * Example: an outside radius of 121 in.
 */
export function beyondTrammel(blankOutside: number, unit: Unit, longest = LONGEST_TRAMMEL * perInch(unit)): boolean {
  return blankOutside > longest;
}
