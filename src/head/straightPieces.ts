import { insideOffset } from '../insideOffset';
import { figure, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import type { ArcEnds, Head, Piece, Point } from './head';
import { headOfPieces, straightPiece } from './pieces';
import { fixedRise, riseMissing, sameLength, type Shape } from './shape';

/** A straight piece of the opening's edge: where it begins, and its slope in radians. */
interface Side {
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
  readonly slope: number;
}

function sidesOf(corners: readonly Point[]): Side[] {
  return corners.slice(1).map((to, at) => {
    const from = corners[at]!;
    return {
      from,
      to,
      length: Math.hypot(to.x - from.x, to.y - from.y),
      slope: Math.atan2(to.y - from.y, to.x - from.x),
    };
  });
}

/** How much longer a piece gets at a mitered corner for each unit of offset: tan of half the turn. */
function mitered(turn: number): number {
  return Math.tan(turn / 2);
}

/** The pieces at an offset, each its own length and offset·(what it gains at either end). */
function piecesAt(sides: readonly Side[], gains: readonly number[], offset: number): Result<readonly Piece[]> {
  const pieces: Piece[] = [];
  for (const [at, { from, to, length, slope }] of sides.entries()) {
    const [left, right] = [gains[at]!, gains[at + 1]!];
    if (left + right > 0) {
      const refusal = insideOffset(offset, length / (left + right), 'where a straight piece has no length left');
      if (refusal) return refusal;
    }
    const [cos, sin] = [Math.cos(slope), Math.sin(slope)];
    const [out, back, on] = [{ x: -sin * offset, y: cos * offset }, left * offset, right * offset];
    pieces.push(
      straightPiece(
        { x: from.x + out.x - back * cos, y: from.y + out.y - back * sin },
        { x: to.x + out.x + on * cos, y: to.y + out.y + on * sin },
        length + back + on,
      ),
    );
  }
  return ok(pieces);
}

interface Sloping {
  readonly shape: Head['shape'];
  readonly span: number;
  readonly rise: number;
  readonly haunch?: number;
  /** From the left spring point to the right end. */
  readonly corners: readonly Point[];
  readonly highSide?: boolean;
}

/**
 * A head of straight pieces: where two meet, each is mitered at half the turn δ and is offset·tan(δ/2) longer; a leg is a piece
 * that stands upright. Level, an end is offset·cot(slope) longer; radial means square, and adds nothing.
 */
function slopingHead({ corners, highSide = false, ...edge }: Sloping): Head {
  const sides = sidesOf(corners);
  const first = sides[0]!.slope;
  const last = sides[sides.length - 1]!.slope;
  const inner = sides.slice(1).map(({ slope }, at) => mitered(sides[at]!.slope - slope));
  const end = (ends: ArcEnds, slope: number, high: boolean) => {
    if (ends === 'legs') return mitered(high ? Math.PI / 2 + slope : Math.PI / 2 - slope);
    return ends === 'level' && !high ? 1 / Math.tan(slope) : 0;
  };
  return headOfPieces({ ...edge, radius: null }, (offset, ends) => {
    const gains = [end(ends, first, false), ...inner, end(ends, highSide ? last : -last, highSide)];
    return piecesAt(sides, gains, offset);
  });
}

/** Two slopes that meet in a ridge. Example: span 36, ridge 12: 43.2666 both; 3-11/16 outside, legs: 52.1303. */
function gableHead(span: number, rise: number): Result<Head> {
  const half = span / 2;
  return (
    positive('span', span) ??
    positive('rise', rise) ??
    ok(
      slopingHead({
        shape: 'gable',
        span,
        rise,
        corners: [
          { x: -half, y: 0 },
          { x: 0, y: rise },
          { x: half, y: 0 },
        ],
      }),
    )
  );
}

/** A level head whose corners are cut off, `rise` down and `haunch` along (left out: at 45°). */
function clippedCornersHead(span: number, rise: number, haunch: number | null): Result<Head> {
  const along = haunch ?? rise;
  const refusal = positive('span', span) ?? positive('rise', rise) ?? positive('haunch', along);
  if (refusal) return refusal;
  const half = span / 2;
  if (along >= half || sameLength(along, half)) {
    const name =
      haunch === null ? 'rise of clipped corners, cut at 45°,' : 'haunch, the length of the corner along the span,';
    return refuse(`${name} must be less than half the span, ${figure(half)}; got ${figure(along)}`);
  }
  return ok(
    slopingHead({
      shape: 'clipped corners',
      span,
      rise,
      haunch: along,
      corners: [
        { x: -half, y: 0 },
        { x: along - half, y: rise },
        { x: half - along, y: rise },
        { x: half, y: 0 },
      ],
    }),
  );
}

/** One slope from the spring point at the left up to the high side at the right. */
function shedHead(span: number, rise: number): Result<Head> {
  const half = span / 2;
  return (
    positive('span', span) ??
    positive('rise', rise) ??
    ok(
      slopingHead({
        shape: 'shed',
        span,
        rise,
        highSide: true,
        corners: [
          { x: -half, y: 0 },
          { x: half, y: rise },
        ],
      }),
    )
  );
}

/**
 * A regular octagon all round, span wide and high, standing on the spring line: eight pieces of (span + 2·offset)·(√2 − 1),
 * mitered at 22.5°. The rise may be left out; where given it must be the span. Example: span 20: pieces of 8.2843.
 */
function octagonHead(span: number, rise: number | null): Result<Head> {
  const refusal = positive('span', span) ?? fixedRise('octagon', rise, span, 'the span');
  if (refusal) return refusal;
  const half = span / 2;
  const side = half * (Math.SQRT2 - 1);
  const corner = (x: number, y: number): Point => ({ x, y: half + y });
  const corners = [
    corner(-side, -half),
    corner(-half, -side),
    corner(-half, side),
    corner(-side, half),
    corner(side, half),
    corner(half, side),
    corner(half, -side),
    corner(side, -half),
    corner(-side, -half),
  ];
  const sides = sidesOf(corners);
  const gains = corners.map(() => mitered(Math.PI / 4));
  return ok(
    headOfPieces({ shape: 'octagon', span, rise: span, radius: null }, (offset) => piecesAt(sides, gains, offset), {
      closed: true,
    }),
  );
}

const PIECES = { haunch: null, closed: false, highSide: false, plumb: false } as const;
const words = (length: string) => ({ length, radius: null, angle: '' });
const UP_TO_THRICE: NonNullable<Shape['rise']['misfit']> = (span, rise, _tolerance, say) =>
  rise > 3 * span ? `A rise of ${say(rise)} over a width of ${say(span)} can't be right.` : null;

export const GABLE: Shape = {
  name: 'gable',
  rings: 'none',
  spellings: 'gable gabled gabletop peak peaked triangle triangular aframe twoslope doubleslope',
  rise: {
    means: 'height of the ridge above the spring line',
    needs: 'Needs a rise: the height of the ridge above the spring line, more than 0.',
    fits: (_span, rise) => rise > 0,
    ofSpan: null,
    misfit: UP_TO_THRICE,
  },
  ...PIECES,
  words: words('Both slopes, with what their miters add'),
  make: (span, rise) => (rise === null ? riseMissing('gable') : gableHead(span, rise)),
  example: { span: 36, rise: 14, ends: 'legs', leg: 12, segments: [] },
};

export const CLIPPED_CORNERS: Shape = {
  name: 'clipped corners',
  rings: 'none',
  spellings:
    'clippedcorners clippedcorner clipcorners clipcorner clipped cornersclipped chamferedcorners chamferedcorner cutcorners dogeared dogear flatwithclippedcorners flattopclippedcorners flattopwithclippedcorners',
  rise: {
    means: 'height of the corners',
    needs: 'Needs a rise: the height of the corners, more than 0.',
    fits: (_span, rise) => rise > 0,
    ofSpan: null,
  },
  ...PIECES,
  haunch: 'length of the corners along the span',
  words: words('The level piece and both corners, with what their miters add'),
  make: (span, rise, haunch) =>
    rise === null ? riseMissing('clipped corners') : clippedCornersHead(span, rise, haunch),
  example: { span: 36, rise: 9, ends: 'legs', leg: 12, segments: [] },
};

export const SHED: Shape = {
  name: 'shed',
  rings: 'none',
  spellings:
    'shed shedtop sheds slope sloped sloping slopedtop slant slanted slanting rake rakehead rakedhead rakedtop',
  rise: {
    means: 'height of the high end above the spring line',
    needs: 'Needs a rise: the height of the high end above the spring line, more than 0.',
    fits: (_span, rise) => rise > 0,
    ofSpan: null,
    misfit: UP_TO_THRICE,
  },
  ...PIECES,
  highSide: true,
  words: words('The slope, with what its miters add'),
  make: (span, rise) => (rise === null ? riseMissing('shed') : shedHead(span, rise)),
  example: { span: 30, rise: 12, ends: 'legs', leg: 12, segments: [] },
};

export const OCTAGON: Shape = {
  name: 'octagon',
  rings: 'none',
  spellings: 'octagon octagonal oct octagonwindow eightsided 8sided',
  rise: { means: 'its height, which is the span', needs: null, fits: () => true, ofSpan: (span) => span },
  ...PIECES,
  closed: true,
  words: words('Eight pieces, each the width there times √2 − 1'),
  make: octagonHead,
  example: { span: 30, rise: null, ends: 'radial', leg: 0, segments: [] },
};
