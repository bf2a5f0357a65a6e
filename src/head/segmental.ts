import { circleOf, type ArcCircle } from '../arc';
import { insideOffset } from '../insideOffset';
import { positive } from '../require';
import { ok, type Result } from '../result';
import type { ArcEnds, Head, HeadEnd, Spring } from './head';
import { arcPiece, headOfPieces } from './pieces';
import { riseMissing, type Shape } from './shape';

/** The circle of a segmental head, with the half span and the rise it goes through. */
export interface ArcEdge extends ArcCircle {
  readonly half: number;
  readonly rise: number;
}

export function arcEdge(half: number, rise: number): ArcEdge {
  return { half, rise, ...circleOf(2 * half, rise) };
}

/** Where the edge's circle meets a leg. */
export function springOf({ half, rise }: ArcEdge): Spring {
  return { less: (half - rise) ** 2 / (2 * rise), more: (half + rise) ** 2 / (2 * rise), below: rise > half };
}

/**
 * One arc through both spring points and the crown, for every rise, also above a half round (a horseshoe, its width taken at
 * the spring line). With R the radius, a half the span and d the offset the length is (R+d)·4·atan(2·rise/span) on radial
 * lines; 2(R+d)·acos((R−rise)/(R+d)) cut level on the spring line; 2(R+d)·asin((a+d)/(R+d)) mitered to legs, above a half
 * round π − asin(…) in its place.
 *
 * Example: span 36, rise 6, 3-11/16 outside: 43.3559 radial, 47.1244 legs, 52.4070 level.
 */
function segmentalHead(span: number, rise: number): Result<Head> {
  const refusal = positive('span', span) ?? positive('rise', rise);
  if (refusal) return refusal;
  const edge = arcEdge(span / 2, rise);
  const spring = springOf(edge);
  const arcsAt = (offset: number, ends: ArcEnds) => {
    const stops = halfAngle(edge, offset, ends);
    if (!stops.ok) return stops;
    const start = Math.PI / 2 + stops.value;
    return ok([arcPiece(edge.radius + offset, 2 * stops.value, { x: 0, y: -edge.depth }, start)]);
  };
  const endsAt = (offset: number, ends: ArcEnds): Result<readonly [HeadEnd, HeadEnd]> => {
    const stops = halfAngle(edge, offset, ends);
    if (!stops.ok) return stops;
    const [x, y] = [Math.sin(stops.value), Math.cos(stops.value)];
    const at = endPoint(edge, offset, ends, stops.value);
    return ok([
      { x: -at.x, y: at.y, normal: { x: -x, y } },
      { ...at, normal: { x, y } },
    ]);
  };
  return ok(
    headOfPieces({ shape: 'segmental', span, rise, radius: edge.radius, springs: [spring, spring] }, arcsAt, {
      ends: endsAt,
    }),
  );
}

/** Where the right half of the edge's curve ends: worked out from the leg or the spring line, which the angle meets to rounding. */
export function endPoint(edge: ArcEdge, offset: number, ends: ArcEnds, angle: number): { x: number; y: number } {
  const radius = edge.radius + offset;
  if (ends === 'legs') return { x: edge.half + offset, y: legHeightFromCenter(edge, offset) - edge.depth };
  if (ends === 'level') return { x: radius * Math.sin(angle), y: 0 };
  const part = offset / edge.radius;
  return { x: edge.half * (1 + part), y: edge.depth * part };
}

/**
 * Height above the spring line of the point where the curve at `offset` meets its leg: the root √((R+d)² − (a+d)²) of the
 * height above the arc's center is (a − rise)·√((a + rise)² + 4·rise·d) / (2·rise), with the sign it has above a half round.
 */
export function legTop(span: number, rise: number, offset: number): number {
  const edge = arcEdge(span / 2, rise);
  return legHeightFromCenter(edge, offset) - edge.depth;
}

function legHeightFromCenter({ half, rise }: ArcEdge, offset: number): number {
  return ((half - rise) * Math.sqrt((half + rise) ** 2 + 4 * rise * offset)) / (2 * rise);
}

/** Angle, in radians, from the crown to where the curve at `offset` stops. */
export function halfAngle(edge: ArcEdge, offset: number, ends: ArcEnds): Result<number> {
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

export const SEGMENTAL: Shape = {
  name: 'segmental',
  rings: 'crown',
  spellings:
    'segmental segment seg segm segarch eyebrow eyebrowarch brow archtop arched arch segmentalarch camber cambered radius radiustop radtop radhead radarch circlesegment partcircle horseshoeatspring horseshoewidthatspring',
  rise: {
    means: 'height of the crown above the spring line',
    needs: 'Needs a rise: more than 0.',
    fits: (_span, rise) => rise > 0,
    ofSpan: null,
    ofRadius: (span, radius) => radius - Math.sqrt((radius - span / 2) * (radius + span / 2)),
    radius: (span, rise) => circleOf(span, rise).radius,
  },
  haunch: null,
  closed: false,
  highSide: false,
  plumb: false,
  words: {
    length: 'Radius there times the angle',
    radius: (say, span, rise) =>
      `Half the span squared and the rise squared, over twice the rise: (${say(span / 2)}² + ${say(rise)}²) ÷ (2 × ${say(rise)}).`,
    angle: (say, span, rise) =>
      `Four times the angle whose tangent is twice the rise over the span, 2 × ${say(rise)} ÷ ${say(span)}.`,
  },
  make: (span, rise) => (rise === null ? riseMissing('segmental') : segmentalHead(span, rise)),
  example: { span: 36, rise: 8, ends: 'legs', leg: 12, segments: [3] },
};
