import { inches, inWorkbook, type Unit } from '../unit';

/** Longer than this a trammel is no longer practical. From memory. */
const LONGEST_TRAMMEL = inches(120, 'in');

/**
 * Whether a ring and the guide boards that it runs between are laid out by ordinates instead of a trammel: ring and boards alike, by
 * the blank's outside radius, the longest that is swung for the ring itself. `longest`: what the shop swings; default 10 ft.
 * Example: an outside radius of 121 in.
 */
export function beyondTrammel(blankOutside: number, unit: Unit, longest = inWorkbook(LONGEST_TRAMMEL, unit)): boolean {
  return blankOutside > longest;
}
