import { figure, notNegative, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import { ring } from './ring';

/** Gap between blank and guide on each edge, in inches: a shop that measures in millimeters gives its own. From memory. */
export const GUIDE_CLEARANCE = 1 / 32;

export interface Guides {
  /** Radius of the guide inside the ring. */
  readonly inside: number;
  /** Radius of the guide outside the ring. */
  readonly outside: number;
}

/**
 * Radii of the two curved guides a blank slides between: radius − margin − clearance and
 * radius + face + margin + clearance. With guides cut to the blank's own radii it would bind. Refused: a clearance that
 * leaves the inside guide no radius.
 *
 * Example: radius 18, face 3-1/2: inside guide 17.96875, outside guide 21.53125.
 */
export function guides(radius: number, face: number, margin = 0, clearance = GUIDE_CLEARANCE): Result<Guides> {
  const of = ring(radius, face, margin);
  if (!of.ok) return of;
  const refusal = notNegative('clearance', clearance);
  if (refusal) return refusal;
  if (clearance >= of.value.inside) {
    return refuse(
      `clearance must be less than radius − margin, here ${figure(of.value.inside)}; got ${figure(clearance)}`,
    );
  }
  return ok({ inside: of.value.inside - clearance, outside: of.value.outside + clearance });
}

/** An arc that rises less than this over its guide board, in inches, is sawn as a straight edge. From memory. */
const STRAIGHT_RISE = 1 / 64;

/**
 * Whether a guide arc of this radius is as good as straight over a board that reaches `half` to each side of the center line.
 * `inch`: an inch in the unit of both.
 *
 * Example: 7 in to each side: from a radius of 1568 on.
 */
export function isAsGoodAsStraight(radius: number, half: number, inch: number): boolean {
  return (
    half < radius && (half * half) / (radius + Math.sqrt((radius - half) * (radius + half))) < STRAIGHT_RISE * inch
  );
}

/**
 * The longest straight piece as wide as the blank that still passes between the guides: its inner edge touches the inside guide
 * while its outer corners touch the outside one. With c clear on each side and Ro the blank's outside radius that is
 * 4·√(c·Ro), exactly: the sagitta of the piece over the outside guide is 2c. Refused: an outside radius that is none, a negative
 * clearance.
 *
 * Example: outside radius 33.6875, clearance 1/32: 4.1041.
 */
export function longestStraight(outside: number, clearance: number): Result<number> {
  const refusal = positive('outside radius', outside) ?? notNegative('clearance', clearance);
  return refusal ?? ok(4 * Math.sqrt(clearance * outside));
}
