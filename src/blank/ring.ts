import { radians } from '../angle';
import { figure, notNegative, positive, wholeBetween } from '../require';
import { ok, refuse, type Refusal, type Result } from '../result';

/**
 * The ring a curved molding is cut from: flat, glued up of equal straight-grained segments. Every file of this room
 * works on this one description. Lengths are all in one unit, any unit.
 */
export interface Ring {
  /** Inside radius of the ring: the molding's, less the margin. */
  readonly inside: number;
  /** Outside radius of the ring: the molding's, plus the margin. */
  readonly outside: number;
  /** Width of the ring: face + 2·margin. Kept apart because outside − inside loses digits on a large radius. */
  readonly width: number;
}

/** More segments than this in one ring is taken for a slip of the pen. */
export const MOST_SEGMENTS = 10_000;

/**
 * Two sizes closer than this, relative to the ring's outside radius, are taken as equal, so that a board exactly as
 * wide as a blank takes the blank in spite of rounding. Some thousand times the rounding of the formulas, and a
 * ten-billionth of an inch on a radius of 100 in.
 */
export const EQUAL_WITHIN = 1e-12;

/**
 * @param radius inside radius of the molding, more than 0
 * @param face width of the molding's face, more than 0
 * @param margin oversize left on each edge, 0 or more and less than the radius
 */
export function ring(radius: number, face: number, margin: number): Result<Ring> {
  const refusal = positive('radius', radius) ?? positive('face', face) ?? notNegative('margin', margin);
  if (refusal) return refusal;
  if (margin >= radius) {
    return refuse(`margin must be less than radius, here ${figure(radius)}; got ${figure(margin)}`);
  }
  const outside = radius + face + margin;
  return ok({ inside: radius - margin, outside, width: face + 2 * margin });
}

/** The angle a ring turns through: more than 0, up to the full circle. */
export function ringAngle(angle: number): Refusal | null {
  return positive('angle', angle, 360);
}

/** A ring and half of one segment's angle, in radians: what every size of an equal segment follows from. */
export interface Segment {
  readonly of: Ring;
  readonly half: number;
}

/**
 * @param angle degrees of the whole arc, more than 0 up to 360
 * @param segments whole number from 1 to 10,000
 */
export function segmentOf(
  radius: number,
  face: number,
  margin: number,
  angle: number,
  segments: number,
): Result<Segment> {
  const of = ring(radius, face, margin);
  if (!of.ok) return of;
  const refusal = ringAngle(angle) ?? wholeBetween('segments', segments, 1, MOST_SEGMENTS);
  return refusal ?? ok({ of: of.value, half: halfSegment(angle, segments) });
}

/** Half of one segment's angle, in radians. */
export function halfSegment(angle: number, segments: number): number {
  return radians(angle / segments / 2);
}
