import type { Result } from '../result';

/** The shapes a head can have, by their trade names; each is described in a file of its own, listed in `shapes.ts`. */
export const HEAD_SHAPES = [
  'segmental',
  'half round',
  'quarter round',
  'round',
  'elliptical',
  'three-centered',
  'pointed',
  'straight',
  'radius corners',
  'full ellipse',
  'half segmental',
  'quarter ellipse',
  'four-centered',
  'gable',
  'clipped corners',
  'shed',
  'octagon',
] as const;
export type HeadShape = (typeof HEAD_SHAPES)[number];

/** How an arched or sloping head stops: on the radial lines of the opening (a straight piece: square), level on the spring line, or mitered to vertical legs. */
export const ARC_ENDS = ['radial', 'level', 'legs'] as const;
export type ArcEnds = (typeof ARC_ENDS)[number];

/** How a straight head stops: mitered to its legs, lying over them, standing between them, or sawn at the opening's own width. */
const STRAIGHT_ENDS = ['mitered', 'over legs', 'between legs', 'square'] as const;
export type StraightEnds = (typeof STRAIGHT_ENDS)[number];

export const ENDS = [...ARC_ENDS, ...STRAIGHT_ENDS] as const;
export type Ends = (typeof ENDS)[number];

/** How many arcs may stand for half an ellipse. */
export const ARC_COUNTS = [3, 5, 7] as const;

/** A place in the front view: x from the center line, y up from the spring line. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A constant-radius piece of the curve, placed. */
export interface Arc {
  readonly kind: 'arc';
  readonly radius: number;
  /** Degrees subtended. */
  readonly degrees: number;
  readonly length: number;
  /** Greatest distance from the true curve; 0 where the arc is exact. */
  readonly deviation: number;
  readonly center: Point;
  /** Direction of the left end seen from the center, degrees counterclockwise from +x; the arc runs clockwise from it. */
  readonly start: number;
}

/** A straight piece of the curve, placed. */
export interface Straight {
  readonly kind: 'straight';
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
}

export type Piece = Arc | Straight;

/** Where a head ends, and which way is out of it there: the unit normal. */
export interface HeadEnd extends Point {
  readonly normal: Point;
}

/**
 * A head's own curve where it meets a leg: a circle of radius R whose center stands p inward of the jamb line, as R − p and
 * R + p, so that neither is the difference of two large figures. `below`: the curve meets the spring line below its center.
 */
export interface Spring {
  readonly less: number;
  readonly more: number;
  readonly below: boolean;
}

/** What an answer may depend on besides the offset and the ends. */
export interface HeadOptions {
  /** Arcs that stand for half an ellipse: 3, 5 or 7. Left out: 3. */
  readonly arcs?: number;
  /** How far beyond the opening a straight head reaches that isn't mitered. Left out: as far as the offset. */
  readonly reach?: number;
}

/** The curve over one opening. Offsets are outside the opening's edge (negative: inside), in the span's unit. */
export interface Head {
  readonly shape: HeadShape;
  readonly span: number;
  /** What it is stands with the shape; 0 for a straight head, the diameter for a round one. */
  readonly rise: number;
  /** Radius of the haunch of a four-centered head, run of a clipped corner; null for the others. */
  readonly haunch: number | null;
  /** Height of the opening's highest point above the spring line. */
  readonly top: number;
  /** The one radius of the opening's edge; null where it has none, or several. */
  readonly radius: number | null;
  /** Exact length of the parallel curve at `offset`. */
  length(offset: number, ends: Ends, options?: HeadOptions): Result<number>;
  /** Its pieces, left to right; an ellipse becomes tangent arcs. A closed head begins at its left below. */
  pieces(offset: number, ends: Ends, options?: HeadOptions): Result<readonly Piece[]>;
  /** The arcs among the pieces: none in a head of straight pieces. */
  arcs(offset: number, ends: Ends, options?: HeadOptions): Result<readonly Arc[]>;
  /** Where the true curve ends at the left and at the right; null for a closed head. */
  ends(offset: number, ends: Ends, options?: HeadOptions): Result<readonly [left: HeadEnd, right: HeadEnd] | null>;
  /** The circles that a mitered leg meets, left and right; null where a straight piece, or no circle, ends there. */
  readonly springs: readonly [Spring | null, Spring | null];
  /** Points along the true curve where the pieces only stand for it; null where they are the curve. */
  points(offset: number, ends: Ends): Result<readonly Point[] | null>;
}
