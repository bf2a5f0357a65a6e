import { circleOf, type ArcCircle } from '../arc';
import { insideOffset } from '../insideOffset';
import { positive } from '../require';
import { ok, type Result } from '../result';
import { circularHead, exactArc } from './circular';
import type { Ends, Head } from './head';

/**
 * A head of one arc through both spring points and the crown, of any rise: above half the span the center lies above the
 * spring line and the curve bulges past the jambs.
 *
 * With a = span/2, R the radius and k = R − rise the depth of the center below the spring line (negative above it), the
 * curve at offset d stops, either side of the crown, at an angle of
 * - radial: 2·atan(rise/a), the opening's own;
 * - level: acos(k/(R+d)), where it crosses the spring line;
 * - legs: asin((a+d)/(R+d)), where it meets the vertical a+d; with the center above the spring line, π less that, for
 *   there the curve runs on down past the center's height to reach its leg.
 * For a half round the three agree. Outside an arc below a half round radial < legs < level; above a half round
 * level < legs < radial; inside the edge each order is reversed.
 *
 * Example: span 36, rise 6, 3-11/16 outside: 43.3559 radial, 47.1244 legs, 52.4070 level.
 */
export function segmentalHead(span: number, rise: number): Result<Head> {
  const refusal = positive('span', span) ?? positive('rise', rise);
  if (refusal) return refusal;
  const edge = { half: span / 2, rise, ...circleOf(span, rise) };
  return ok(
    circularHead({ shape: 'segmental', span, rise, radius: edge.radius }, (offset, ends) => {
      const stops = halfAngle(edge, offset, ends);
      if (!stops.ok) return stops;
      const start = Math.PI / 2 + stops.value;
      return ok([exactArc(edge.radius + offset, 2 * stops.value, { x: 0, y: -edge.depth }, start)]);
    }),
  );
}

interface ArcEdge extends ArcCircle {
  readonly half: number;
  readonly rise: number;
}

/**
 * Height above the spring line of the point where the curve at `offset` meets its leg: the root √((R+d)² − (a+d)²) of the
 * height above the arc's center is (a − rise)·√((a + rise)² + 4·rise·d) / (2·rise), with the sign it has above a half round.
 */
export function legTop(span: number, rise: number, offset: number): number {
  const edge = { half: span / 2, rise, ...circleOf(span, rise) };
  return legHeightFromCenter(edge, offset) - edge.depth;
}

function legHeightFromCenter({ half, rise }: ArcEdge, offset: number): number {
  return ((half - rise) * Math.sqrt((half + rise) ** 2 + 4 * rise * offset)) / (2 * rise);
}

function halfAngle(edge: ArcEdge, offset: number, ends: Ends): Result<number> {
  const { half, rise, radius, depth } = edge;
  switch (ends) {
    case 'radial':
      return insideOffset(offset, radius, "where the arc's center is") ?? ok(2 * Math.atan2(rise, half));
    case 'level': {
      const below = (half * half) / rise;
      return (
        insideOffset(offset, Math.min(rise, below), 'where the curve no longer reaches the spring line') ??
        ok(Math.atan2(Math.sqrt((rise + offset) * (below + offset)), depth))
      );
    }
    case 'legs':
      return (
        insideOffset(offset, half, 'where the legs would meet') ??
        ok(Math.atan2(half + offset, legHeightFromCenter(edge, offset)))
      );
  }
}
