import { nestedAcross } from '../blank/nest';
import type { Ring } from '../blank/ring';
import { flippedRow, halfTurnRow, rowsAcross, strips } from '../blank/rows';
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

/** A leg or a straight head. */
export interface StraightShape {
  readonly kind: 'straight';
  readonly length: number;
  readonly width: number;
}

/**
 * A segment of a glued-up ring: `mitered`, a trapezoid whose curve is sawn after the glue-up, or `sawn` to the curve before it.
 * The ring's radii have the margins in them.
 */
export interface SegmentShape {
  readonly kind: 'mitered' | 'sawn';
  readonly ring: Ring;
  /** Half of one segment's angle, radians, less than 90°. */
  readonly half: number;
}

/** One way to lay equal parts on boards of one width. */
export interface Layout {
  readonly way: 'straight' | 'nested' | 'half-turn' | 'flipped';
  /** Parts above one another on the width of the board. */
  readonly across: number;
  /** Length of board that one takes. */
  readonly alone: number;
  /** Length that each further one in the same row takes, its saw cut included. */
  readonly step: number;
}

export function partWidth(shape: WoodPart['shape']): number {
  return shape.kind === 'straight' ? shape.width : sectorWidth(shape.ring, shape.half);
}

/** Length of board that one part takes by itself. */
export function partLength(shape: WoodPart['shape']): number {
  if (shape.kind === 'straight') return shape.length;
  return 2 * shape.ring.outside * (shape.kind === 'mitered' ? Math.tan(shape.half) : Math.sin(shape.half));
}

/** Every way to lay the part on a board of that width; none where the board is too narrow. */
export function layouts({ shape }: WoodPart, boardWidth: number, kerf: number): Layout[] {
  const alone = partLength(shape);
  if (shape.kind === 'straight') {
    const across = strips(shape.width, boardWidth, kerf);
    return across === 0 ? [] : [{ way: 'straight', across, alone, step: alone + kerf }];
  }
  const { ring, half } = shape;
  const rows = rowsAcross(ring, half, boardWidth, kerf);
  if (rows === 0) return [];
  if (shape.kind === 'mitered') {
    const row = flippedRow(ring, half, kerf);
    return row === null ? [] : [{ way: 'flipped', across: rows, ...row }];
  }
  const nested = nestedAcross({ of: ring, half }, boardWidth, kerf);
  const found: Layout[] = [{ way: 'nested', across: Math.max(1, nested), alone, step: alone + kerf }];
  const row = halfTurnRow(ring, half, kerf);
  if (row !== null) found.push({ way: 'half-turn', across: rows, ...row });
  return found;
}
