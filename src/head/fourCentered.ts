import { insideOffset } from '../insideOffset';
import { figure, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import type { Head } from './head';
import { arcPiece, headOfPieces, UPRIGHT } from './pieces';
import { riseMissing, type Shape } from './shape';

/** Turn of a haunch whose chord is its radius. */
const HAUNCH_TURN = Math.PI / 3;
const ROOT3 = Math.sqrt(3);
/** The published rule makes the haunch radius this part of the span. */
const RULE = 1 / 4;

/**
 * A depressed pointed head struck from four centers: two haunches on the spring line, then two flatter arcs, tangent to them,
 * that meet in a point on the center line. Span and rise alone don't fix it: the haunch radius r is asked for, the haunch turns
 * through 60° (its chord is its radius). Left out, r is a quarter of the span, where that rule can be: "Ellipse Gothic", The
 * Practical Brick and Tile Book, figure 29.
 *
 * With a = span/2, u = (−cos 60°, sin 60°), v = (a − r, rise): R = (v² + r² − 2r·v·u) / 2(r − v·u); the upper centers stand
 * x = r − a + (R − r)/2 beyond the center line, and the length is 2·[(r+d)·60° + (R+d)·(acos(x/(R+d)) − 60°)].
 *
 * Example: span 36, rise 12, r 9: R 32.1683, length 47.3622; 3-11/16 outside 58.9480.
 */
function fourCenteredHead(span: number, rise: number, haunch: number | null): Result<Head> {
  const refusal =
    positive('span', span) ?? positive('rise', rise) ?? (haunch === null ? null : positive('haunch', haunch));
  if (refusal) return refusal;
  const half = span / 2;
  // Where the sides still meet in a point (the upper centers beyond the center line), and the upper arcs bend outward.
  const least = Math.max(0, ROOT3 * rise - half);
  const most = Math.min(half, ((ROOT3 + 1) * rise - (ROOT3 - 1) * half) / 2);
  if (!(least < most)) {
    return refuse(
      `rise of a four-centered head must be more than ${figure((half * (ROOT3 - 1)) / (ROOT3 + 1))} and less than ` +
        `${figure((2 * half) / ROOT3)} for this span; got ${figure(rise)}`,
    );
  }
  const r = haunch ?? RULE * span;
  if (!(r > least && r < most)) {
    return haunch === null
      ? refuse(
          `haunch is missing; a four-centered head ${figure(span)} wide and ${figure(rise)} high needs its haunch radius, ` +
            `more than ${figure(least)} and less than ${figure(most)}`,
        )
      : refuse(
          `haunch must be more than ${figure(least)} and less than ${figure(most)} for this span and rise; got ${figure(haunch)}`,
        );
  }
  const side = half - r;
  const along = (ROOT3 * rise - side) / 2;
  const crown = (side * side + rise * rise + r * r - 2 * r * along) / (2 * (r - along));
  const x = r - half + (crown - r) / 2;
  const y = -((crown - r) * ROOT3) / 2;
  return ok(
    headOfPieces(
      { shape: 'four-centered', span, rise, haunch: r, radius: null, springs: [UPRIGHT, UPRIGHT] },
      (offset) => {
        const upper = Math.atan2(Math.sqrt((crown + offset - x) * (crown + offset + x)), x) - HAUNCH_TURN;
        const tooFarIn = insideOffset(offset, r, 'the haunch radius');
        if (tooFarIn) return tooFarIn;
        if (!(upper > 0)) {
          return refuse(`offset must leave the upper arcs a length: at ${figure(offset)} the haunches meet`);
        }
        return ok([
          arcPiece(r + offset, HAUNCH_TURN, { x: -side, y: 0 }, Math.PI),
          arcPiece(crown + offset, upper, { x, y }, Math.PI - HAUNCH_TURN),
          arcPiece(crown + offset, upper, { x: -x, y }, HAUNCH_TURN + upper),
          arcPiece(r + offset, HAUNCH_TURN, { x: side, y: 0 }, HAUNCH_TURN),
        ]);
      },
    ),
  );
}

export const FOUR_CENTERED: Shape = {
  name: 'four-centered',
  rings: 'haunches',
  spellings:
    'fourcentered fourcenter fourcentred fourcentre 4centered 4center 4centred 4centre 4ctr tudor tudorarch depressedarch depressedgothic ellipsegothic fourcenteredarch',
  rise: {
    means: 'height of the crown above the spring line',
    needs: 'Needs a rise: more than 0, less than 0.577 of the span.',
    fits: (span, rise) => rise > 0 && rise < span / ROOT3,
    ofSpan: null,
  },
  haunch: 'radius of the haunches',
  closed: false,
  highSide: false,
  plumb: true,
  words: {
    length: 'The four arcs, the upper two run on to the center line',
    radius: (say, span, rise, radius) =>
      `Tangent to the haunches after 60° and through the crown, on half the span ${say(span / 2)} and the rise ${say(rise)}: ${say(radius)}.`,
    angle: 'From one end of the piece to the other, seen from its center.',
  },
  make: (span, rise, haunch) => (rise === null ? riseMissing('four-centered') : fourCenteredHead(span, rise, haunch)),
  example: { span: 42, rise: 16, ends: 'radial', leg: 12, segments: [1, 2, 2, 1] },
};
