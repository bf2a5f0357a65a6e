import { ok, type Result } from '../result';
import { ellipseSizes, halfEllipse, moved, parallelPoints } from './ellipses';
import type { Arc, Head } from './head';
import { arcPiece, headOfPieces, UPRIGHT } from './pieces';
import { isHalfSpan, riseMissing, sameLength, type Say, type Shape } from './shape';

/**
 * Half an ellipse on the span, of any rise, also more than half the span. The curve stands upright at the spring points, so
 * that the three ends give one length: half the ellipse's perimeter + π·offset.
 *
 * Example: span 72, rise 24: length 95.1926; 3-1/2 outside 106.1882.
 */
function ellipticalHead(span: number, rise: number): Result<Head> {
  const refusal = ellipseSizes(span, rise);
  if (refusal) return refusal;
  const half = halfEllipse({ a: span / 2, b: rise });
  return ok(
    headOfPieces(
      { shape: 'elliptical', span, rise, radius: null, springs: [UPRIGHT, UPRIGHT] },
      (offset, _ends, { arcs }) => half.arcs(offset, arcs),
      {
        length: half.length,
        ends: (offset) =>
          ok([
            { x: -span / 2 - offset, y: 0, normal: { x: -1, y: 0 } },
            { x: span / 2 + offset, y: 0, normal: { x: 1, y: 0 } },
          ]),
        points: (offset) => {
          const points = parallelPoints(half.ellipse, offset, Math.PI, 0);
          // Exact ends: cos and sin of a half turn are off by rounding.
          return [{ x: -span / 2 - offset, y: 0 }, ...points.slice(1, -1), { x: span / 2 + offset, y: 0 }];
        },
      },
    ),
  );
}

/**
 * A whole ellipse, span wide and rise high, standing on the spring line: length 4·a·E(1 − b²/a²) + 2π·offset. No ends, no legs.
 * Its arcs are those of the half above and the half below, joined across the middle: four for `arcs` 3, then 8 and 12.
 *
 * Example: 36 × 24: length 95.1926; 3-11/16 outside 118.3619.
 */
function fullEllipseHead(span: number, rise: number): Result<Head> {
  const refusal = ellipseSizes(span, rise);
  if (refusal) return refusal;
  const b = rise / 2;
  const half = halfEllipse({ a: span / 2, b });
  return ok(
    headOfPieces(
      { shape: 'full ellipse', span, rise, radius: null },
      (offset, _ends, { arcs }) => {
        const upper = half.arcs(offset, arcs);
        return upper.ok ? ok(allRound(upper.value).map((arc) => moved(arc, 0, b))) : upper;
      },
      {
        closed: true,
        length: (offset) => {
          const length = half.length(offset);
          return length.ok ? ok(2 * length.value) : length;
        },
        points: (offset) =>
          parallelPoints(half.ellipse, offset, Math.PI, -Math.PI).map(({ x, y }) => ({ x, y: y + b })),
      },
    ),
  );
}

/** The upper half's arcs and their mirror images below, clockwise from the left; what meets across the middle is one arc. */
function allRound(upper: readonly Arc[]): Arc[] {
  const [only] = upper;
  if (only && upper.length === 1) {
    return [arcPiece(only.radius, 2 * Math.PI, only.center, Math.PI * 1.5, only.deviation)];
  }
  const across = (arc: Arc, middle: number): Arc => ({
    ...arc,
    degrees: 2 * arc.degrees,
    length: 2 * arc.length,
    start: middle + arc.degrees,
  });
  const inner = upper.slice(1, -1);
  const below = inner.map((arc): Arc => ({
    ...arc,
    center: { x: arc.center.x, y: -arc.center.y },
    start: arc.degrees - arc.start,
  }));
  return [across(upper[0]!, 180), ...inner, across(upper[upper.length - 1]!, 0), ...below.reverse()];
}

const OF_ARCS = {
  radius: (say: Say, _span: number, _rise: number, radius: number) =>
    `The arc that, with its neighbors, strays least from the true ellipse: ${say(radius)}.`,
  angle: 'From one end of the piece to the other, seen from its center.',
};

export const ELLIPTICAL: Shape = {
  name: 'elliptical',
  rings: 'fitted',
  spellings:
    'elliptical elliptic ellipse ellip ell halfellipse semiellipse semielliptical halfelliptical 1/2ellipse 1/2elliptical',
  rise: {
    means: 'height of the crown above the spring line',
    needs: 'Needs a rise: more than 0, and not half the span, which is a half round.',
    fits: (span, rise) => rise > 0 && !isHalfSpan(span, rise),
    ofSpan: null,
  },
  haunch: null,
  closed: false,
  highSide: false,
  plumb: true,
  words: { length: 'Half the ellipse and half a circle of the distance from it', ...OF_ARCS },
  make: (span, rise) => (rise === null ? riseMissing('elliptical') : ellipticalHead(span, rise)),
  example: { span: 42, rise: 14, ends: 'radial', leg: 12, segments: [2, 2, 2] },
};

export const FULL_ELLIPSE: Shape = {
  name: 'full ellipse',
  rings: 'fitted',
  spellings: 'fullellipse fullelliptical fulloval oval ovals wholeellipse',
  rise: {
    means: 'its whole height',
    needs: 'Needs a rise: the whole height, more than 0, and not the span, which is a full circle.',
    fits: (span, rise) => rise > 0 && !sameLength(rise, span),
    ofSpan: null,
    asked: 'whole height',
    misfit: (span, rise, _tolerance, say) =>
      rise > 3 * span ? `A height of ${say(rise)} over a width of ${say(span)} can't be right.` : null,
  },
  haunch: null,
  closed: true,
  highSide: false,
  plumb: true,
  words: { length: 'The whole ellipse and a full circle of the distance from it', ...OF_ARCS },
  make: (span, rise) => (rise === null ? riseMissing('full ellipse') : fullEllipseHead(span, rise)),
  example: { span: 36, rise: 24, ends: 'radial', leg: 0, segments: [2, 2, 2, 2] },
};
