/** Published figures that more than one test compares with. */

/** Span, rise and radius, r = (c² + 4h²)/8h in whole numbers: The Building Trades Pocketbook (c. 1899) has the formula. */
export const CIRCLE_SEGMENTS: readonly (readonly [span: number, rise: number, radius: number])[] = [
  [8, 2, 5],
  [24, 4, 20],
  [36, 6, 30],
  [60, 10, 50],
  [72, 12, 60],
  [36, 9, 22.5],
  [40, 10, 25],
  [36, 18, 18],
  [48, 6, 51],
  [36, 9 / 16, 288.28125],
  [144, 1, 2592.5],
  [36, 24, 18.75],
];

/**
 * E(m), a quarter of the ellipse of half axes 1 and √(1 − m), to nine places: M. Abramowitz and I. Stegun, Handbook of
 * Mathematical Functions, table 17.1 (from 0.5 on worked out to 30 digits).
 */
export const COMPLETE_E: readonly (readonly [m: number, e: number])[] = [
  [0, 1.570796327],
  [0.05, 1.550973352],
  [0.1, 1.530757637],
  [0.15, 1.510121832],
  [0.2, 1.489035058],
  [0.25, 1.467462209],
  [0.3, 1.445363064],
  [0.35, 1.422691133],
  [0.4, 1.399392139],
  [0.5, 1.350643881],
  [0.6, 1.298428035],
  [0.7, 1.241670568],
  [0.8, 1.178489924],
  [0.9, 1.104774733],
];
