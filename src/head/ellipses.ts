import { insideOffset } from '../insideOffset';
import { figure, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import { arcPiece } from './pieces';
import { ARC_COUNTS, type Arc, type Point } from './head';
import { nearestOval, type NearestOval } from './nearestOval';
import { halfEllipseLength, normalAt, type Ellipse } from './oval';
import { sameLength } from './shape';

/** Parts a half ellipse is drawn in: at 6 ft span each leaves the curve by less than 0.002 in. */
const DRAWN_PARTS = 240;

/** The upper half of an ellipse, center at 0, with its parallel curves and the arcs that stand for it. */
export interface HalfEllipse {
  readonly ellipse: Ellipse;
  /** Of the half's parallel curve: half the perimeter + π·offset (J. Steiner's formula for parallel curves). */
  readonly length: (offset: number) => Result<number>;
  /** Tangent arcs over it, left to right, of least greatest deviation. */
  readonly arcs: (offset: number, count: number | undefined) => Result<readonly Arc[]>;
}

/**
 * A curve at an offset is a parallel curve, not an ellipse; inside, it can be followed only up to the ellipse's tightest
 * radius: b²/a at the spring points of a low one, a²/b at the crown of a tall one.
 */
export function halfEllipse(ellipse: Ellipse): HalfEllipse {
  const { a, b } = ellipse;
  const low = Math.min(a, b);
  const tightest = (low * low) / Math.max(a, b);
  // The search depends on no offset: its answer is kept for the life of the head.
  const found = new Map<number, NearestOval | null>();
  const nearest = (count: number) => {
    const known = found.get(count);
    if (known !== undefined) return known;
    const oval = nearestOval(ellipse, (count + 1) / 2);
    found.set(count, oval);
    return oval;
  };
  const tooFarIn = (offset: number) => insideOffset(offset, tightest, "the ellipse's tightest radius");
  return {
    ellipse,
    length: (offset) => tooFarIn(offset) ?? ok(halfEllipseLength(a, b) + Math.PI * offset),
    arcs: (offset, count = 3) => tooFarIn(offset) ?? ovalArcs(ellipse, offset, count, nearest),
  };
}

function ovalArcs(
  ellipse: Ellipse,
  offset: number,
  count: number,
  nearestOf: (count: number) => NearestOval | null,
): Result<readonly Arc[]> {
  if (!ARC_COUNTS.some((allowed) => allowed === count)) return refuse(`arcs must be 3, 5 or 7; got ${figure(count)}`);
  const { a, b } = ellipse;
  if (sameLength(a, b)) return ok([arcPiece(a + offset, Math.PI, { x: 0, y: 0 }, Math.PI, Math.abs(a - b))]);
  const nearest = nearestOf(count);
  if (!nearest) {
    return refuse(
      `no ${count} arcs follow an ellipse of half axes ${figure(a)} and ${figure(b)}; one may be at most 10,000 times the other`,
    );
  }
  const { oval, deviation } = nearest;
  const normals = oval.breaks.map((t) => normalAt(ellipse, t));
  const turns = normals.map(({ x, y }) => Math.atan2(y, x));
  // The quarter was reckoned on the right of the center line; the left is its mirror image, the crown arc spans both.
  const right = oval.pieces.slice(0, -1).map((piece, at): Arc => {
    const turn = turns[at]! - (at === 0 ? 0 : turns[at - 1]!);
    return arcPiece(piece.radius + offset, turn, { x: piece.x, y: piece.y }, turns[at]!, deviation);
  });
  const left = right.map((arc): Arc => ({
    ...arc,
    center: { x: -arc.center.x, y: arc.center.y },
    start: 180 - arc.start + arc.degrees,
  }));
  const crownPiece = oval.pieces[oval.pieces.length - 1]!;
  const last = normals[normals.length - 1]!;
  const crown = arcPiece(
    crownPiece.radius + offset,
    2 * Math.atan2(last.x, last.y),
    { x: 0, y: crownPiece.y },
    Math.PI - turns[turns.length - 1]!,
    deviation,
  );
  return ok([...left, crown, ...right.reverse()]);
}

/** The same piece elsewhere. */
export function moved(arc: Arc, x: number, y: number): Arc {
  return { ...arc, center: { x: arc.center.x + x, y: arc.center.y + y } };
}

/** The point of the parallel curve at an angle of the ellipse, 180° at the left spring point, 90° at the crown. */
export function parallelPoint({ a, b }: Ellipse, offset: number, angle: number): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const normal = Math.hypot(b * cos, a * sin);
  return { x: a * cos + (offset * b * cos) / normal, y: b * sin + (offset * a * sin) / normal };
}

/** Points along the parallel curve, clockwise from one angle to another. */
export function parallelPoints(ellipse: Ellipse, offset: number, from: number, to: number): Point[] {
  const parts = Math.max(2, Math.ceil((DRAWN_PARTS * (from - to)) / Math.PI));
  return Array.from({ length: parts + 1 }, (_, part) =>
    parallelPoint(ellipse, offset, from - ((from - to) * part) / parts),
  );
}

/** A rise that makes a circle of the ellipse, and its span, refused where they are no sizes. */
export function ellipseSizes(span: number, rise: number) {
  return positive('span', span) ?? positive('rise', rise);
}
