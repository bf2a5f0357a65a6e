import { degrees, polar, radians } from '../angle';
import { finite } from '../require';
import { ok, refuse, type Result } from '../result';
import type { Arc, ArcEnds, Ends, Head, HeadEnd, HeadOptions, Piece, Point, Spring, Straight } from './head';

/** An arc of the curve; angles in radians, `start` counterclockwise from +x, the arc running clockwise from it. */
export function arcPiece(radius: number, angle: number, center: Point, start: number, deviation = 0): Arc {
  return {
    kind: 'arc',
    radius,
    degrees: degrees(angle),
    length: radius * angle,
    deviation,
    center,
    start: degrees(start),
  };
}

export function straightPiece(from: Point, to: Point, length = Math.hypot(to.x - from.x, to.y - from.y)): Straight {
  return { kind: 'straight', from, to, length };
}

/** Where a piece begins, at its left, and where it ends. */
export function leftEnd(piece: Piece): Point {
  return piece.kind === 'straight' ? piece.from : polar(piece.center, piece.radius, piece.start);
}

export function rightEnd(piece: Piece): Point {
  return piece.kind === 'straight' ? piece.to : polar(piece.center, piece.radius, piece.start - piece.degrees);
}

export function isArc(piece: Piece): piece is Arc {
  return piece.kind === 'arc';
}

/** The unit normal that points out of the head, where a piece begins or ends. */
export function normalAt(piece: Piece, end: 'left' | 'right'): Point {
  if (piece.kind === 'arc') {
    const direction = radians(end === 'left' ? piece.start : piece.start - piece.degrees);
    return { x: Math.cos(direction), y: Math.sin(direction) };
  }
  const { from, to, length } = piece;
  return { x: (from.y - to.y) / length, y: (to.x - from.x) / length };
}

/** What a straight head's ends come to on an arched or sloping one; there is nothing to stand between legs. */
export function arcEndsOf(ends: Ends): Result<ArcEnds> {
  if (ends === 'between legs') {
    return refuse('ends of an arched or sloping head must be radial, level or legs; got between legs');
  }
  return ok(ARC_ENDS_OF[ends]);
}

const ARC_ENDS_OF = {
  radial: 'radial',
  level: 'level',
  legs: 'legs',
  mitered: 'legs',
  'over legs': 'level',
  square: 'radial',
} as const satisfies Record<Exclude<Ends, 'between legs'>, ArcEnds>;

/** Where a curve stands upright on the spring line. */
export const UPRIGHT: Spring = { less: 0, more: 1, below: false };
const NO_CIRCLES = [null, null] as const;
/** A head that goes all round has no ends. */
const ANY_ENDS = ok<ArcEnds>('radial');

type Edge = Pick<Head, 'shape' | 'span' | 'rise' | 'radius'> & Partial<Pick<Head, 'haunch' | 'top' | 'springs'>>;

/** What a head of pieces that are its curve doesn't get from them. */
interface Own {
  readonly closed?: boolean;
  readonly length?: (offset: number, ends: ArcEnds) => Result<number>;
  readonly ends?: (offset: number, ends: ArcEnds) => Result<readonly [HeadEnd, HeadEnd]>;
  readonly points?: (offset: number, ends: ArcEnds) => readonly Point[];
}

/**
 * A head of arcs and straight pieces: its length is the sum of theirs and it ends where they do, at every offset. A head that
 * the pieces only stand for gives its own `length`, `ends` and `points`.
 */
export function headOfPieces(
  edge: Edge,
  piecesAt: (offset: number, ends: ArcEnds, options: HeadOptions) => Result<readonly Piece[]>,
  own: Own = {},
): Head {
  const { shape, span, rise, radius, haunch = null, top = rise, springs = NO_CIRCLES } = edge;
  const given = <T>(offset: number, ends: Ends, then: (ends: ArcEnds) => Result<T>): Result<T> => {
    const refusal = finite('offset', offset);
    if (refusal) return refusal;
    const stops = own.closed ? ANY_ENDS : arcEndsOf(ends);
    return stops.ok ? then(stops.value) : stops;
  };
  const pieces: Head['pieces'] = (offset, ends, options = {}) =>
    given(offset, ends, (stops) => piecesAt(offset, stops, options));
  const arcs: Head['arcs'] = (offset, ends, options) => {
    const found = pieces(offset, ends, options);
    return found.ok ? ok(found.value.filter(isArc)) : found;
  };
  const length: Head['length'] = (offset, ends, options = {}) =>
    given(offset, ends, (stops) => {
      if (own.length) return own.length(offset, stops);
      const found = piecesAt(offset, stops, options);
      return found.ok ? ok(found.value.reduce((sum, piece) => sum + piece.length, 0)) : found;
    });
  const endsAt: Head['ends'] = (offset, ends, options = {}) =>
    given<readonly [HeadEnd, HeadEnd] | null>(offset, ends, (stops) => {
      if (own.closed) return ok(null);
      if (own.ends) return own.ends(offset, stops);
      const found = piecesAt(offset, stops, options);
      return found.ok ? ok(endsOfPieces(found.value)) : found;
    });
  const points: Head['points'] = (offset, ends) =>
    given(offset, ends, (stops) => {
      if (!own.points) return ok(null);
      // Refused where the curve can't be followed.
      const found = piecesAt(offset, stops, {});
      return found.ok ? ok(own.points(offset, stops)) : found;
    });
  // Field by field: spreading `edge` takes 4 µs more, and a sheet makes thousands of heads.
  return { shape, span, rise, haunch, top, radius, length, pieces, arcs, ends: endsAt, springs, points };
}

function endsOfPieces(pieces: readonly Piece[]): readonly [HeadEnd, HeadEnd] {
  const first = pieces[0]!; // no head is without pieces
  const last = pieces[pieces.length - 1]!;
  return [
    { ...leftEnd(first), normal: normalAt(first, 'left') },
    { ...rightEnd(last), normal: normalAt(last, 'right') },
  ];
}
