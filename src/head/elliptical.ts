import { insideOffset } from '../insideOffset';
import { figure, positive, finite } from '../require';
import { ok, refuse, type Result } from '../result';
import { exactArc } from './circular';
import { halfEllipseLength } from './ellipseLength';
import type { Arc, Head } from './head';
import { nearestOval, type NearestOval } from './nearestOval';
import { normalAt, type Ellipse } from './oval';
import { sameLength } from './sameLength';

/** How many arcs an ellipse may be made of. */
const OVAL_ARCS = [3, 5, 7] as const;

/**
 * Half an ellipse on the span, of any rise, also more than half the span. The curve stands upright at the spring points, so
 * that the three ends give one length: half the ellipse's perimeter + π·offset (J. Steiner's formula for parallel curves).
 * A curve at an offset is a parallel curve, not an ellipse; inside, it can be followed only up to the ellipse's tightest
 * radius: rise²/(span/2) at the spring points of a low one, (span/2)²/rise at the crown of a tall one.
 *
 * Example: span 72, rise 24: length 95.1926; 3-1/2 outside 106.1882.
 */
export function ellipticalHead(span: number, rise: number): Result<Head> {
  const refusal = positive('span', span) ?? positive('rise', rise);
  if (refusal) return refusal;
  const ellipse = { a: span / 2, b: rise };
  const low = Math.min(ellipse.a, ellipse.b);
  // The search depends on no offset: its answer is kept for the life of the head.
  const found = new Map<number, NearestOval | null>();
  const nearest = (count: number) => {
    const known = found.get(count);
    if (known !== undefined) return known;
    const oval = nearestOval(ellipse, (count + 1) / 2);
    found.set(count, oval);
    return oval;
  };
  const tightest = (low * low) / Math.max(ellipse.a, ellipse.b);
  return ok({
    shape: 'elliptical',
    span,
    rise,
    radius: null,
    length: (offset) =>
      finite('offset', offset) ??
      insideOffset(offset, tightest, "the ellipse's tightest radius") ??
      ok(halfEllipseLength(ellipse.a, ellipse.b) + Math.PI * offset),
    arcs: (offset, _ends, count = 3) =>
      finite('offset', offset) ??
      insideOffset(offset, tightest, "the ellipse's tightest radius") ??
      ovalArcs(ellipse, offset, count, nearest),
  });
}

function ovalArcs(
  ellipse: Ellipse,
  offset: number,
  count: number,
  nearestOf: (count: number) => NearestOval | null,
): Result<readonly Arc[]> {
  if (!OVAL_ARCS.some((allowed) => allowed === count)) return refuse(`arcs must be 3, 5 or 7; got ${figure(count)}`);
  const { a, b } = ellipse;
  if (sameLength(a, b)) {
    const arc = exactArc(a + offset, Math.PI, { x: 0, y: 0 }, Math.PI);
    return ok([{ ...arc, deviation: Math.abs(a - b) }]);
  }
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
    return { ...exactArc(piece.radius + offset, turn, { x: piece.x, y: piece.y }, turns[at]!), deviation };
  });
  const left = right.map((arc): Arc => ({
    ...arc,
    center: { x: -arc.center.x, y: arc.center.y },
    start: 180 - arc.start + arc.degrees,
  }));
  const crownPiece = oval.pieces[oval.pieces.length - 1]!;
  const last = normals[normals.length - 1]!;
  const crown = exactArc(
    crownPiece.radius + offset,
    2 * Math.atan2(last.x, last.y),
    { x: 0, y: crownPiece.y },
    Math.PI - turns[turns.length - 1]!,
  );
  return ok([...left, { ...crown, deviation }, ...right.reverse()]);
}
