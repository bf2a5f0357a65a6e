import { insideOffset } from '../insideOffset';
import { figure, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import type { ArcEnds, Head, HeadEnd } from './head';
import { arcPiece, headOfPieces, UPRIGHT } from './pieces';
import { arcEdge, endPoint, halfAngle, springOf } from './segmental';
import { fixedRise, riseMissing, sameLength, type Shape } from './shape';

/**
 * One unit of a pair: the left half of a segmental arc of twice the span, from the spring point to its crown over the right
 * jamb, where the curve is level. The low side stops as a segmental head does. The high side stops plumb at the jamb line, and
 * with legs runs on to its own: with R = (span² + rise²)/(2·rise) and d the offset by (R+d)·asin(d/(R+d)).
 *
 * Example: span 18, rise 6, 3-11/16 outside: 21.6779 radial; 23.5622 + 3.6949 with legs.
 */
function oneSidedHead(shape: 'quarter round' | 'half segmental', span: number, rise: number): Result<Head> {
  const edge = arcEdge(span, rise);
  const { radius, depth } = edge;
  const jamb = span / 2;
  /** Beyond the crown, up to where the leg's edge stands: asin(d/(R+d)). */
  const beyond = (offset: number, ends: ArcEnds): Result<number> => {
    if (ends !== 'legs') return ok(0);
    return (
      insideOffset(offset, radius / 2, 'where the high leg passes the curve') ??
      ok(Math.atan2(offset, Math.sqrt(radius * (radius + 2 * offset))))
    );
  };
  const arcsAt = (offset: number, ends: ArcEnds) => {
    const low = halfAngle(edge, offset, ends);
    if (!low.ok) return low;
    const high = beyond(offset, ends);
    if (!high.ok) return high;
    return ok([arcPiece(radius + offset, low.value + high.value, { x: jamb, y: -depth }, Math.PI / 2 + low.value)]);
  };
  const endsAt = (offset: number, ends: ArcEnds): Result<readonly [HeadEnd, HeadEnd]> => {
    const low = halfAngle(edge, offset, ends);
    if (!low.ok) return low;
    const high = beyond(offset, ends);
    if (!high.ok) return high;
    const at = endPoint(edge, offset, ends, low.value);
    const height = ends === 'legs' ? Math.sqrt(radius * (radius + 2 * offset)) : radius + offset;
    return ok([
      { x: jamb - at.x, y: at.y, normal: { x: -Math.sin(low.value), y: Math.cos(low.value) } },
      {
        x: jamb + (ends === 'legs' ? offset : 0),
        y: height - depth,
        normal: { x: Math.sin(high.value), y: Math.cos(high.value) },
      },
    ]);
  };
  const low = rise === span ? UPRIGHT : springOf(edge);
  const springs = [low, { less: radius, more: radius, below: false }] as const;
  return ok(headOfPieces({ shape, span, rise, radius, springs }, arcsAt, { ends: endsAt }));
}

/** A quarter of a circle whose radius is the span; the rise may be left out. Example: span 24: 12·π = 37.6991. */
function quarterRoundHead(span: number, rise: number | null): Result<Head> {
  const refusal = positive('span', span) ?? fixedRise('quarter round', rise, span, 'the span');
  return refusal ?? oneSidedHead('quarter round', span, span);
}

function halfSegmentalHead(span: number, rise: number): Result<Head> {
  const refusal = positive('span', span) ?? positive('rise', rise);
  if (refusal) return refusal;
  if (rise > span && !sameLength(rise, span)) {
    return refuse(`rise of a half segmental head must be no more than the span, ${figure(span)}; got ${figure(rise)}`);
  }
  return oneSidedHead('half segmental', span, Math.min(rise, span));
}

export const QUARTER_ROUND: Shape = {
  name: 'quarter round',
  rings: 'crown',
  spellings:
    'quarterround quarterrd quarterrnd quarter qr qtrround qtrrd qtrrnd qtr 1/4round 1/4rd 1/4rnd 1/4r qrnd qround 1/4circle quartercircle qtrcircle quadrant',
  rise: {
    means: 'height of the high side, which is the span',
    needs: null,
    fits: () => true,
    ofSpan: (span) => span,
    spanOfRadius: { of: (radius) => radius, said: () => 'the radius of the quarter round' },
  },
  haunch: null,
  closed: false,
  highSide: true,
  plumb: true,
  words: {
    length: 'A quarter of a circle of the radius there',
    radius: () => 'The span itself.',
    angle: 'A quarter of a circle.',
  },
  make: quarterRoundHead,
  example: { span: 24, rise: null, ends: 'legs', leg: 12, segments: [2] },
};

export const HALF_SEGMENTAL: Shape = {
  name: 'half segmental',
  rings: 'crown',
  spellings:
    'halfsegmental halfsegment halfseg 1/2segmental 1/2segment 1/2seg halfeyebrow 1/2eyebrow halfarch 1/2arch rakedsegmental rakedarch rakedeyebrow segmentalhalf eyebrowhalf',
  rise: {
    means: 'height of the high end above the spring line',
    needs: 'Needs a rise: more than 0, no more than the span.',
    fits: (span, rise) => rise > 0 && rise <= span * (1 + 1e-9),
    ofSpan: null,
    ofRadius: (span, radius) => radius - Math.sqrt(Math.max(0, (radius - span) * (radius + span))),
    leastRadius: (span) => ({ least: span, words: 'the width' }),
    radius: (span, rise) => (span * span + rise * rise) / (2 * rise),
  },
  haunch: null,
  closed: false,
  highSide: true,
  plumb: false,
  words: {
    length: 'Radius there times the angle from the spring point to the crown',
    radius: (say, span, rise) =>
      `The span squared and the rise squared, over twice the rise: (${say(span)}² + ${say(rise)}²) ÷ (2 × ${say(rise)}).`,
    angle: 'From the spring point to the crown over the high jamb.',
  },
  make: (span, rise) => (rise === null ? riseMissing('half segmental') : halfSegmentalHead(span, rise)),
  example: { span: 24, rise: 9, ends: 'legs', leg: 12, segments: [2] },
};
