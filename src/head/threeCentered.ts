import { insideOffset } from '../insideOffset';
import { figure, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import type { Head } from './head';
import { arcPiece, headOfPieces, UPRIGHT } from './pieces';
import { isHalfSpan, riseMissing, sameLength, type Shape } from './shape';

/**
 * A basket-handle head by the bisector construction: two haunch arcs and a crown arc, tangent where they join and upright
 * at the spring points, so that the three ends give one length. With a = span/2, b = rise, c = √(a²+b²) the haunch radius
 * is (c² − (a−b)·c)/2a and the crown radius (c² + (a−b)·c)/2b; each haunch turns through atan(a/b). A rise of exactly half
 * the span gives a half round; more is refused.
 *
 * Example: span 72, rise 24: radii 18.7889 and 49.8167, length 95.5159.
 */
function threeCenteredHead(span: number, rise: number): Result<Head> {
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
    headOfPieces({ shape: 'three-centered', span, rise, radius: null, springs: [UPRIGHT, UPRIGHT] }, (offset) => {
      const tooFarIn = insideOffset(offset, haunch, 'the haunch radius');
      if (tooFarIn) return tooFarIn;
      const side = half - haunch;
      return ok([
        arcPiece(haunch + offset, haunchAngle, { x: -side, y: 0 }, Math.PI),
        arcPiece(crown + offset, crownAngle, { x: 0, y: rise - crown }, Math.PI - haunchAngle),
        arcPiece(haunch + offset, haunchAngle, { x: side, y: 0 }, haunchAngle),
      ]);
    }),
  );
}

export const THREE_CENTERED: Shape = {
  name: 'three-centered',
  rings: 'haunches',
  spellings:
    'threecentered threecenter threecentred threecentre 3centered 3center 3centred 3centre 3ctr 3cent baskethandle basket tc threecenteredarch',
  rise: {
    means: 'height of the crown above the spring line',
    needs: 'Needs a rise: more than 0, less than half the span.',
    fits: (span, rise) => rise > 0 && rise < span / 2 && !isHalfSpan(span, rise),
    ofSpan: null,
    misfit: (span, rise, _tolerance, say) =>
      rise >= span / 2
        ? `A three-centered head rises less than half the width ${say(span)}; its rise is given as ${say(rise)}.`
        : null,
  },
  haunch: null,
  closed: false,
  highSide: false,
  plumb: true,
  words: {
    length: 'The three arcs, one after the other',
    radius: (say, span, rise) =>
      `The bisector construction on half the span ${say(span / 2)} and the rise ${say(rise)}.`,
    angle: 'From one end of the piece to the other, seen from its center.',
  },
  make: (span, rise) => (rise === null ? riseMissing('three-centered') : threeCenteredHead(span, rise)),
  example: { span: 42, rise: 14, ends: 'radial', leg: 12, segments: [2, 2, 2] },
};
