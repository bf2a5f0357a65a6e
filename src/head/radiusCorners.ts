import { insideOffset } from '../insideOffset';
import { figure, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import type { Head } from './head';
import { arcPiece, headOfPieces, straightPiece, UPRIGHT } from './pieces';
import { riseMissing, sameLength, type Shape } from './shape';

/**
 * A level head with two quarter-round corners of radius r, its rise: length span − 2r + π·(r + offset), the same for all ends,
 * for it springs plumb. Twice the radius is at most the span, where it is a half round.
 *
 * Example: span 36, radius 6: 42.8496; 3-11/16 outside 54.4342.
 */
function radiusCornersHead(span: number, rise: number): Result<Head> {
  const refusal = positive('span', span) ?? positive('rise', rise);
  if (refusal) return refusal;
  const half = span / 2;
  if (rise > half && !sameLength(rise, half)) {
    return refuse(
      `rise of radius corners, their radius, must be no more than half the span, ${figure(half)}; got ${figure(rise)}`,
    );
  }
  const flat = Math.max(0, half - rise);
  return ok(
    headOfPieces(
      { shape: 'radius corners', span, rise, radius: rise, springs: [UPRIGHT, UPRIGHT] },
      (offset) => {
        const tooFarIn = insideOffset(offset, rise, "where the corners' centers are");
        if (tooFarIn) return tooFarIn;
        const y = rise + offset;
        return ok([
          arcPiece(rise + offset, Math.PI / 2, { x: -flat, y: 0 }, Math.PI),
          ...(flat > 0 ? [straightPiece({ x: -flat, y }, { x: flat, y }, 2 * flat)] : []),
          arcPiece(rise + offset, Math.PI / 2, { x: flat, y: 0 }, Math.PI / 2),
        ]);
      },
      {
        ends: (offset) =>
          ok([
            { x: -half - offset, y: 0, normal: { x: -1, y: 0 } },
            { x: half + offset, y: 0, normal: { x: 1, y: 0 } },
          ]),
      },
    ),
  );
}

export const RADIUS_CORNERS: Shape = {
  name: 'radius corners',
  rings: 'crown',
  spellings:
    'radiuscorners radiuscorner radiusedcorners radiusedcorner roundedcorners roundedcorner roundcorners roundcorner easedcorners easedcorner eased softcorners radcorners radcorner flatradiuscorners flatwithradiuscorners flattopradiuscorners flattopwithradiuscorners flattopw/radiuscorners squarewithradiuscorners radiuscornerflat',
  rise: {
    means: 'radius of the corners',
    needs: 'Needs a rise: the radius of the corners, more than 0, no more than half the span.',
    fits: (span, rise) => rise > 0 && rise <= (span / 2) * (1 + 1e-9),
    ofSpan: null,
    ofRadius: (_span, radius) => radius,
    leastRadius: () => ({ least: 0, words: 'nothing over' }),
    asked: 'radius of the corners',
    misfit: (span, rise, tolerance, say) =>
      rise > span / 2 + tolerance
        ? `Corners can have a radius of at most half the width ${say(span)}; theirs is given as ${say(rise)}.`
        : null,
  },
  haunch: null,
  closed: false,
  highSide: false,
  plumb: true,
  words: {
    length: 'The straight between the corners and two quarters of a circle of the radius there',
    radius: () => 'The radius of the corners itself.',
    angle: 'A quarter of a circle.',
  },
  make: (span, rise) => (rise === null ? riseMissing('radius corners') : radiusCornersHead(span, rise)),
  example: { span: 40, rise: 10, ends: 'radial', leg: 12, segments: [2, 2] },
};
