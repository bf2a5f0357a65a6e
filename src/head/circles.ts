import { insideOffset } from '../insideOffset';
import { positive } from '../require';
import { ok, type Result } from '../result';
import type { Head } from './head';
import { arcPiece, headOfPieces, UPRIGHT } from './pieces';
import { fixedRise, isHalfSpan, type Shape } from './shape';

/**
 * Half a circle on the span: length π·(span/2 + offset), the same for all three ends. The rise may be left out; where it is
 * given it must be half the span but for rounding, for any other rise makes the head a segmental one.
 *
 * Example: span 36: 18·π = 56.5487.
 */
function halfRoundHead(span: number, rise: number | null): Result<Head> {
  const radius = span / 2;
  const refusal = positive('span', span) ?? fixedRise('half round', rise, radius, 'half the span');
  if (refusal) return refusal;
  return ok(
    headOfPieces(
      { shape: 'half round', span, rise: radius, radius, springs: [UPRIGHT, UPRIGHT] },
      (offset) =>
        insideOffset(offset, radius, "where the arc's center is") ??
        ok([arcPiece(radius + offset, Math.PI, { x: 0, y: 0 }, Math.PI)]),
      {
        ends: (offset) =>
          ok([
            { x: -radius - offset, y: 0, normal: { x: -1, y: 0 } },
            { x: radius + offset, y: 0, normal: { x: 1, y: 0 } },
          ]),
      },
    ),
  );
}

/**
 * A full circle of diameter span, standing on the spring line: length π·(span + 2·offset); it has no ends, so that `ends`
 * changes nothing. It begins at its lowest point. The rise may be left out; where given it must be the span.
 *
 * Example: span 36: 36·π = 113.0973.
 */
function roundHead(span: number, rise: number | null): Result<Head> {
  const radius = span / 2;
  const refusal = positive('span', span) ?? fixedRise('round', rise, span, 'the span');
  if (refusal) return refusal;
  return ok(
    headOfPieces(
      { shape: 'round', span, rise: span, radius },
      (offset) =>
        insideOffset(offset, radius, "where the circle's center is") ??
        ok([arcPiece(radius + offset, 2 * Math.PI, { x: 0, y: radius }, (3 * Math.PI) / 2)]),
      { closed: true },
    ),
  );
}

const diameter = (said: string) => `twice the radius ${said}`;
const halfSpanWords = (say: (length: number) => string, span: number) => `Half the span: ${say(span)} ÷ 2.`;

export const HALF_ROUND: Shape = {
  name: 'half round',
  rings: 'crown',
  spellings:
    'halfround halfrd halfrnd hr hfrd 1/2round 1/2rd 1/2rnd 1/2circle 1/2cir 1/2r hrnd hround semicircle semicircular semicirc halfcircle halfcir halfcirc fullarch roundtop roundhead roundarch roundarched rdtop rdhead rdarch rndtop rndhead rndarch circletop circlehead fullradius roman romanarch halfroundtop',
  rise: {
    means: 'half the span',
    needs: 'A half round rises half its span: correct the span, the rise or the head.',
    fits: isHalfSpan,
    ofSpan: (span) => span / 2,
    ofRadius: (span, radius) => radius - Math.sqrt((radius - span / 2) * (radius + span / 2)),
    radius: (span, rise) => (span * span) / 8 / rise + rise / 2,
    spanOfRadius: { of: (radius) => 2 * radius, said: diameter },
  },
  haunch: null,
  closed: false,
  highSide: false,
  plumb: true,
  words: {
    length: 'Half a circle of the radius there',
    radius: halfSpanWords,
    angle: 'Half a circle.',
  },
  make: halfRoundHead,
  example: { span: 36, rise: null, ends: 'radial', leg: 12, segments: [4] },
};

export const ROUND: Shape = {
  name: 'round',
  rings: 'crown',
  spellings: 'round rd rnd circle circular cir fullcircle fullround fullrd oculus bullseye bullseyewindow',
  rise: {
    means: 'its height, which is the span',
    needs: null,
    fits: () => true,
    ofSpan: (span) => span,
    spanOfRadius: { of: (radius) => 2 * radius, said: diameter },
  },
  haunch: null,
  closed: true,
  highSide: false,
  plumb: true,
  words: { length: 'A full circle of the radius there', radius: halfSpanWords, angle: 'A full circle.' },
  make: roundHead,
  example: { span: 30, rise: null, ends: 'radial', leg: 0, segments: [6] },
};
