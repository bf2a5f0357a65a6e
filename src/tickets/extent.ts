import { polar } from '../angle';
import { isArc, leftEnd, rightEnd } from '../head/pieces';
import type { Piece, Point } from '../head/head';

/** How wide and how high something is, seen from the front. */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

/** The smallest upright rectangle round these pieces and points; an arc reaches beyond its ends where it passes a highest or outermost point. */
export function extentOf(pieces: readonly Piece[], more: readonly Point[] = []): Extent {
  const points: Point[] = [...more];
  for (const piece of pieces) {
    points.push(leftEnd(piece), rightEnd(piece));
    if (!isArc(piece)) continue;
    for (const direction of [0, 90, 180, 270]) {
      const past = (((piece.start - direction) % 360) + 360) % 360;
      if (past <= piece.degrees + 1e-9) points.push(polar(piece.center, piece.radius, direction));
    }
  }
  const span = (of: (point: Point) => number) => Math.max(...points.map(of)) - Math.min(...points.map(of));
  return { width: span(({ x }) => x), height: span(({ y }) => y) };
}
