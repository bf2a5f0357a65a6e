import { insideOffset } from '../insideOffset';
import { figure, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import type { Head } from './head';
import { arcPiece, headOfPieces, UPRIGHT } from './pieces';
import { isHalfSpan, riseMissing, sameLength, type Shape } from './shape';

/**
 * Two arcs that meet in a point on the center line, their centers on the spring line (so that all three ends give one
 * length). Each side of the curve at an offset runs on to the center line: with a = span/2 and R = (a² + rise²)/span the
 * length is 2·(R+d)·acos((R−a)/(R+d)), more than the opening's own angle would give. The rise is at least half the span.
 *
 * Example: span 36, rise 18·√3 (equilateral), 3-1/2 outside: 86.7137.
 */
function pointedHead(span: number, rise: number): Result<Head> {
  const refusal = positive('span', span) ?? positive('rise', rise);
  if (refusal) return refusal;
  const half = span / 2;
  if (rise < half && !sameLength(rise, half)) {
    return refuse(`rise of a pointed head must be at least half the span, ${figure(half)}; got ${figure(rise)}`);
  }
  const radius = half / 2 + (rise * rise) / span;
  /** Of each center beyond the center line; the far side of the circle stands rise²/a from the spring point. */
  const beyond = Math.max(0, ((rise - half) * (rise + half)) / span);
  const far = (rise * rise) / half;
  return ok(
    headOfPieces({ shape: 'pointed', span, rise, radius, springs: [UPRIGHT, UPRIGHT] }, (offset) => {
      const tooFarIn = insideOffset(offset, half, 'where the sides meet on the spring line');
      if (tooFarIn) return tooFarIn;
      const angle = Math.atan2(Math.sqrt((half + offset) * (far + offset)), beyond);
      return ok([
        arcPiece(radius + offset, angle, { x: beyond, y: 0 }, Math.PI),
        arcPiece(radius + offset, angle, { x: -beyond, y: 0 }, angle),
      ]);
    }),
  );
}

export const POINTED: Shape = {
  name: 'pointed',
  rings: 'crown',
  spellings:
    'pointed point gothic goth lancet droparch droppointed dropgothic droppedpointed lancetarch equilateral equilateralpointed equilateralgothic pointedarch gothicarch',
  rise: {
    means: 'height of the crown above the spring line',
    needs: 'Needs a rise: more than half the span, which would be a half round.',
    fits: (span, rise) => rise > span / 2 && !isHalfSpan(span, rise),
    ofSpan: null,
    ofRadius: (span, radius) => Math.sqrt((span / 2) * (2 * radius - span / 2)),
    radius: (span, rise) => ((span * span) / 4 + rise * rise) / span,
    misfit: (span, rise, tolerance, say) => {
      if (rise < span / 2 - tolerance)
        return `A pointed head rises at least half the width ${say(span)}; its rise is given as ${say(rise)}.`;
      return rise > 3 * span ? `A rise of ${say(rise)} over a width of ${say(span)} can't be right.` : null;
    },
  },
  haunch: null,
  closed: false,
  highSide: false,
  plumb: true,
  words: {
    length: 'Two arcs that run on to the center line',
    radius: (say, span, rise) =>
      `Half the span squared and the rise squared, over the span: (${say(span / 2)}² + ${say(rise)}²) ÷ ${say(span)}.`,
    angle: 'From the spring point to the crown, seen from the center of that side.',
  },
  make: (span, rise) => (rise === null ? riseMissing('pointed') : pointedHead(span, rise)),
  example: { span: 36, rise: 30, ends: 'radial', leg: 12, segments: [2, 2] },
};

/** The rise of an equilateral head, struck from both spring points with the span (M. H. Bloxam): √3/2 of it. */
export function equilateralRise(span: number): number {
  return (Math.sqrt(3) / 2) * span;
}
