import { degrees } from '../angle';
import type { Arc, Piece, Point } from '../head/head';
import { isArc, leftEnd, normalAt, rightEnd } from '../head/pieces';

/** How one end of a piece is sawn: degrees off the radial line (of a straight piece: off square), positive where the outside is longer. */
export interface EndCut {
  /** Marked at the inside corner, and at the outside one: on a curve the two differ, for one straight cut. */
  readonly inside: number;
  readonly outside: number;
}

/**
 * The cut at one end of a piece, the straight line from its inside corner to its outside one, given the same piece along the
 * casing's inside edge and along its outside edge.
 */
export function endCut(low: Piece, high: Piece, end: 'left' | 'right'): EndCut {
  const corner = end === 'left' ? leftEnd : rightEnd;
  const [from, to] = [corner(low), corner(high)];
  const cut = { x: to.x - from.x, y: to.y - from.y };
  return { inside: off(cut, outward(low, from, end), end), outside: off(cut, outward(high, to, end), end) };
}

function outward(piece: Piece, at: Point, end: 'left' | 'right'): Point {
  if (!isArc(piece)) return normalAt(piece, end);
  const { center } = piece satisfies Arc;
  return { x: at.x - center.x, y: at.y - center.y };
}

/** From the outward line to the cut, counterclockwise at the left end: leaning outward is positive at both. */
function off(cut: Point, normal: Point, end: 'left' | 'right'): number {
  const across = normal.x * cut.y - normal.y * cut.x;
  const along = normal.x * cut.x + normal.y * cut.y;
  const angle = degrees(Math.atan2(across, along));
  const signed = end === 'left' ? angle : 0 - angle;
  return Math.abs(signed) < 1e-9 ? 0 : signed;
}
