import { insideOffset } from '../insideOffset';
import { degrees } from '../angle';
import { positive, finite } from '../require';
import { ok, type Result } from '../result';

/**
 * Saw setting in degrees off square of the joint between a leg and a head of one arc: that of the straight line from the
 * joint's inside corner, `reveal` outside the opening's edge, to its outside corner, `face` farther out. With a = span/2
 * and d₁ = reveal, d₂ = reveal + face its tangent is 2·(a − rise) / (√((a+rise)² + 4·rise·d₁) + √((a+rise)² + 4·rise·d₂)),
 * the height gained by the legs' ends over the face, divided out. Near 45 for a flat arc, 0 at a half round; below 0
 * above a half round, where the joint falls toward the outside. Refused: span, rise or face not more than 0.
 *
 * Example: span 36, rise 6, face 3-1/2, reveal 3/16: 25.7 degrees.
 */
export function miter(span: number, rise: number, face: number, reveal = 0): Result<number> {
  const refusal =
    positive('span', span) ?? positive('rise', rise) ?? positive('face', face) ?? finite('reveal', reveal);
  if (refusal) return refusal;
  const half = span / 2;
  const insideReach = insideOffset(reveal, half, 'where the legs would meet', 'reveal');
  if (insideReach) return insideReach;
  const corner = (offset: number) => Math.sqrt((half + rise) ** 2 + 4 * rise * offset);
  const tangent = (2 * (half - rise)) / (corner(reveal) + corner(reveal + face));
  return ok(degrees(Math.atan(tangent)));
}
