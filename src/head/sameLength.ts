/**
 * Whether two given lengths are one and the same, but for the rounding of arithmetic (a size converted from millimeters, a
 * third of a foot): one part in a billion. A sixteenth of an inch is not rounding: it is another opening.
 */
export function sameLength(one: number, other: number): boolean {
  return Math.abs(one - other) <= 1e-9 * Math.max(one, other);
}
