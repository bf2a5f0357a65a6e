import { degrees } from './angle';
import { insideOffset } from './insideOffset';
import { figure, finite, positive } from './require';
import { ok, refuse, type Refusal, type Result } from './result';

// The circular arc over a span. Formulas: Machinery's Handbook, "Segments of a Circle". Each is arranged so that nothing
// nearly equal is subtracted: a flat arc (span 144, rise 1/16) keeps all its digits, and so does one near a half round.

/** A radius may be far longer than any length: that of a nearly straight arc. */
const LONGEST_RADIUS = 1e15;
/** A radius or rise read from a drawing may miss its limit by rounding alone. */
const ROUNDING = 1e-12;
/** More rows than this would bury the sheet. */
export const MOST_ORDINATES = 10_000;

function spanAndRise(span: number, rise: number): Refusal | null {
  return positive('span', span) ?? positive('rise', rise);
}

/**
 * Radius of the arc through both spring points and the crown: (span²/4 + rise²) / (2·rise). Same unit as the
 * arguments; span and rise more than 0. `arcRadius(36, 6)` is 30.
 */
export function arcRadius(span: number, rise: number): Result<number> {
  return spanAndRise(span, rise) ?? ok(circleOf(span, rise).radius);
}

/** The circle of an arc. */
export interface ArcCircle {
  readonly radius: number;
  /** Of the center below the spring line; less than 0 where it lies above. */
  readonly depth: number;
}

/** For a span and a rise known to be more than 0. */
export function circleOf(span: number, rise: number): ArcCircle {
  const half = span / 2;
  return { radius: (half * half) / (2 * rise) + rise / 2, depth: ((half - rise) * (half + rise)) / (2 * rise) };
}

/**
 * The lesser rise of an arc of this span and radius: radius − √(radius² − span²/4). Refused where the radius is less
 * than half the span (by more than rounding). `arcRise(36, 30)` is 6.
 */
export function arcRise(span: number, radius: number): Result<number> {
  const refusal = positive('span', span) ?? positive('radius', radius, LONGEST_RADIUS);
  if (refusal) return refusal;
  const half = span / 2;
  if (radius < half * (1 - ROUNDING)) {
    return refuse(`radius must be at least half the span, ${figure(half)}; got ${figure(radius)}`);
  }
  if (radius <= half) return ok(half);
  return ok((half * half) / (radius + Math.sqrt((radius - half) * (radius + half))));
}

/**
 * Span of an arc of this rise and radius: 2·√(rise·(2·radius − rise)), 0 for the full circle. Refused where the rise
 * is more than twice the radius. `arcSpan(6, 30)` is 36.
 */
export function arcSpan(rise: number, radius: number): Result<number> {
  const refusal = positive('rise', rise) ?? positive('radius', radius, LONGEST_RADIUS);
  if (refusal) return refusal;
  const diameter = 2 * radius;
  if (rise > diameter * (1 + ROUNDING)) {
    return refuse(`rise must be at most twice the radius, ${figure(diameter)}; got ${figure(rise)}`);
  }
  return ok(rise >= diameter ? 0 : 2 * Math.sqrt(rise * (diameter - rise)));
}

/**
 * Degrees the arc subtends: 4·atan(2·rise/span), right for every rise, also above a half round.
 * `arcAngle(36, 18)` is 180.
 */
export function arcAngle(span: number, rise: number): Result<number> {
  return spanAndRise(span, rise) ?? ok(degrees(4 * Math.atan2(2 * rise, span)));
}

/**
 * Length of the arc at `offset` outside the opening's edge (negative: inside), its ends on the radial lines of the
 * opening: (radius + offset)·angle. Refused where an inside offset reaches the center. `arcLength(36, 18)` is 18·π.
 */
export function arcLength(span: number, rise: number, offset = 0): Result<number> {
  const refusal = spanAndRise(span, rise) ?? finite('offset', offset);
  if (refusal) return refusal;
  const { radius } = circleOf(span, rise);
  return (
    insideOffset(offset, radius, "where the arc's center is") ?? ok((radius + offset) * 4 * Math.atan2(2 * rise, span))
  );
}

/**
 * Rows of [distance from the center line, height above the spring line] for laying out the curve: from 0 by `step`,
 * the last row exactly at span/2. Where the rise is more than half the span the curve passes span/2 twice; the height
 * is that of the upper crossing. At most 10,000 rows. `arcOrdinates(36, 6, 9)` is [0, 6], [9, 4.618…], [18, 0].
 */
export function arcOrdinates(span: number, rise: number, step: number): Result<[number, number][]> {
  const refusal = spanAndRise(span, rise) ?? positive('step', step);
  if (refusal) return refusal;
  const half = span / 2;
  // A step that divides the half span but for rounding must not give two rows in one place.
  const steps = Math.max(1, Math.ceil(half / step - 1e-9));
  if (steps + 1 > MOST_ORDINATES) {
    return refuse(
      `step must be at least ${figure(half / (MOST_ORDINATES - 1))}, for at most 10,000 rows; got ${figure(step)}`,
    );
  }
  const circle = circleOf(span, rise);
  const rows: [number, number][] = [];
  for (let row = 0; row < steps; row++) rows.push([row * step, heightAt(row * step, half, circle)]);
  rows.push([half, heightAt(half, half, circle)]);
  return ok(rows);
}

/** Height of the arc above the spring line at x from the center line, upper crossing. */
function heightAt(x: number, half: number, { radius, depth }: ArcCircle): number {
  const upright = Math.sqrt(Math.max(0, (radius - x) * (radius + x)));
  // At the spring point, and its mirror above the center: worked out, a half round's foot would miss 0 by a root of rounding.
  if (x === half) return Math.max(0, -2 * depth);
  return depth < 0 ? upright - depth : ((half - x) * (half + x)) / (upright + depth);
}
