import { insideOffset } from '../insideOffset';
import { figure, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import { circularHead, exactArc } from './circular';
import type { Head } from './head';
import { sameLength } from './sameLength';

/**
 * A basket-handle head by the bisector construction: two haunch arcs and a crown arc, tangent where they join and upright
 * at the spring points, so that the three ends give one length. With a = span/2, b = rise, c = √(a²+b²) the haunch radius
 * is (c² − (a−b)·c)/2a and the crown radius (c² + (a−b)·c)/2b; each haunch turns through atan(a/b). A rise of exactly half
 * the span gives a half round; more is refused.
 *
 * Example: span 72, rise 24: radii 18.7889 and 49.8167, length 95.5159.
 */
export function threeCenteredHead(span: number, rise: number): Result<Head> {
  const refusal = positive('span', span) ?? positive('rise', rise);
  if (refusal) return refusal;
  const half = span / 2;
  if (rise > half && !sameLength(rise, half)) {
    return refuse(
      `rise of a three-centered head must be no more than half the span, ${figure(half)}; got ${figure(rise)}`,
    );
  }
  const slant = Math.hypot(half, rise);
  const difference = half - rise;
  // (c² − (a−b)c)/2a with c² − (a−b)² = 2ab divided out, so that a flat head keeps its digits.
  const haunch = (slant * rise) / (slant + difference);
  const crown = (slant * (slant + difference)) / (2 * rise);
  const haunchAngle = Math.atan2(half, rise);
  const crownAngle = 2 * Math.atan2(rise, half);
  return ok(
    circularHead({ shape: 'three-centered', span, rise, radius: null }, (offset) => {
      const tooFarIn = insideOffset(offset, haunch, 'the haunch radius');
      if (tooFarIn) return tooFarIn;
      const side = half - haunch;
      return ok([
        exactArc(haunch + offset, haunchAngle, { x: -side, y: 0 }, Math.PI),
        exactArc(crown + offset, crownAngle, { x: 0, y: rise - crown }, Math.PI - haunchAngle),
        exactArc(haunch + offset, haunchAngle, { x: side, y: 0 }, haunchAngle),
      ]);
    }),
  );
}
