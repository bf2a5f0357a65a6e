import type { Ring } from '../blank/ring';
import { sectorWidth } from '../blank/width';

/** Pieces of wood that the openings need, alike in everything. Lengths are in the workbook's unit. */
export interface WoodPart {
  /** What they are for, in the user's words: the openings' marks. */
  readonly for: string;
  readonly species: string;
  /** Finished thickness; the boards must be at least as thick when dressed. */
  readonly thickness: number;
  /** How many, at least 1. */
  readonly count: number;
  readonly shape: StraightShape | SegmentShape;
}

/** A leg, a straight head or a test piece. */
export interface StraightShape {
  readonly kind: 'straight';
  readonly length: number;
  readonly width: number;
}

/** A segment of a glued-up ring: a trapezoid whose curve is sawn after the glue-up. The ring's radii have the margins in them. */
export interface SegmentShape {
  readonly kind: 'mitered';
  readonly ring: Ring;
  /** Half of one segment's angle, radians, less than 90°. */
  readonly half: number;
}

export function partWidth(shape: WoodPart['shape']): number {
  return shape.kind === 'straight' ? shape.width : sectorWidth(shape.ring, shape.half);
}

/** Length of board that one part takes by itself: a segment's along its outside edge. */
export function partLength(shape: WoodPart['shape']): number {
  return shape.kind === 'straight' ? shape.length : 2 * shape.ring.outside * Math.tan(shape.half);
}

/** Face of one part: of a segment, the trapezoid's. */
export function partArea(shape: WoodPart['shape']): number {
  const long = partLength(shape);
  const short = shape.kind === 'straight' ? long : 2 * shape.ring.inside * Math.sin(shape.half);
  return (partWidth(shape) * (long + short)) / 2;
}
