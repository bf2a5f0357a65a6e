import type { Result } from '../result';

/** The shapes a head can have, by their trade names. */
export const HEAD_SHAPES = [
  'segmental',
  'half round',
  'quarter round',
  'round',
  'elliptical',
  'three-centered',
  'pointed',
  'straight',
] as const;
export type HeadShape = (typeof HEAD_SHAPES)[number];

/** How the arc stops: on the radial lines of the opening, level on the spring line, or mitered to vertical legs. */
export const ENDS = ['radial', 'level', 'legs'] as const;
export type Ends = (typeof ENDS)[number];

/** A constant-radius piece of the curve, placed: x from the center line, y up from the spring line. */
export interface Arc {
  readonly radius: number;
  /** Degrees subtended. */
  readonly degrees: number;
  readonly length: number;
  /** Greatest distance from the true curve; 0 where the arc is exact. */
  readonly deviation: number;
  readonly center: { readonly x: number; readonly y: number };
  /** Direction of the left end seen from the center, degrees counterclockwise from +x; the arc runs clockwise from it. */
  readonly start: number;
}

/** The curve over one opening. Offsets are outside the opening's edge (negative: inside), in the span's unit. */
export interface Head {
  readonly shape: HeadShape;
  readonly span: number;
  /** Height of the crown above the spring line: 0 for a straight head, the diameter for a round one. */
  readonly rise: number;
  /** The one radius of the opening's edge; null where it has none (straight) or several (elliptical, three-centered). */
  readonly radius: number | null;
  /** Exact length of the parallel curve at `offset`. */
  length(offset: number, ends: Ends): Result<number>;
  /** Its constant-radius pieces, left to right; an ellipse becomes `count` (3, 5, 7) tangent arcs. Empty for a straight head. */
  arcs(offset: number, ends: Ends, count?: number): Result<readonly Arc[]>;
}
