import { figure, positive } from '../require';
import { refuse, type Refusal, type Result } from '../result';
import type { Ends, Head, HeadShape } from './head';

/** A length as its reader sees it. */
export type Say = (length: number) => string;

/** What a shape's rise is, and which rises it can have. */
export interface RiseRule {
  /** In a sentence: "height of the crown above the spring line". */
  readonly means: string;
  /** The sentence that asks for it, or for another one; null where the shape has none of its own to judge. */
  readonly needs: string | null;
  /** Whether the shape can have it, in a takeoff: a rise that would make it another shape is none. */
  readonly fits: (span: number, rise: number) => boolean;
  /** The rise that follows from the span; null where it must be given. */
  readonly ofSpan: ((span: number) => number) | null;
  /** The rise of a curve of this radius over the span, where that follows; for a radius of at least half the span. */
  readonly ofRadius?: (span: number, radius: number) => number;
  /** The least radius that `ofRadius` can take, in words before the width; left out: half the span. */
  readonly leastRadius?: (span: number) => { readonly least: number; readonly words: string };
  /** What a reader of schedules asks for where it isn't the height of a crown: "radius of the corners". */
  readonly asked?: string;
  /** The radius of the curve, where it has one that the span doesn't give. */
  readonly radius?: (span: number, rise: number) => number;
  /** The span of a head of this radius, where that follows. */
  readonly spanOfRadius?: { readonly of: (radius: number) => number; readonly said: (radius: string) => string };
  /** What a reader of schedules says against a rise that the shape can't have; null where it will do. */
  readonly misfit?: (span: number, rise: number, tolerance: number, say: Say) => string | null;
}

/** How a takeoff explains a shape's figures. */
export interface ShapeWords {
  /** How its length comes about, before ", measured … outside the opening". */
  readonly length: string;
  /** How the radius of a piece comes about; null where no piece has one. */
  readonly radius: ((say: Say, span: number, rise: number, radius: number) => string) | null;
  /** What a piece's angle is. */
  readonly angle: string | ((say: Say, span: number, rise: number) => string);
}

/** Everything the rest of the program asks of a shape. */
export interface Shape {
  readonly name: HeadShape;
  /** What is run for it: no ring, one kind of ring, a crown and haunches, or such rings fitted to an ellipse. */
  readonly rings: 'none' | 'crown' | 'haunches' | 'fitted';
  /** Spellings the trade uses, written without spaces, hyphens and other marks. */
  readonly spellings: string;
  readonly rise: RiseRule;
  /** What the second figure, `haunch`, is for this shape; null where it takes none. */
  readonly haunch: string | null;
  /** All round: no ends, no legs. */
  readonly closed: boolean;
  /** Its right end stands higher than the spring line, at the crown. */
  readonly highSide: boolean;
  /** Stands upright on the spring line, so that its ends are alike however they are called. */
  readonly plumb: boolean;
  readonly words: ShapeWords;
  /** The head; `rise` may be null where `rise.ofSpan` gives it. */
  readonly make: (span: number, rise: number | null, haunch: number | null) => Result<Head>;
  /** One that shows the shape well, for pictures. */
  readonly example: {
    readonly span: number;
    readonly rise: number | null;
    readonly haunch?: number;
    readonly ends: Ends;
    readonly leg: number;
    /** Segments of each arc. */
    readonly segments: readonly number[];
  };
}

/** The sentence for a rise that is left out where it is needed. */
export function riseMissing(shape: HeadShape): Refusal {
  return refuse(`rise is missing; a ${shape} head needs it`);
}

/**
 * Whether two given lengths are one and the same, but for the rounding of arithmetic (a size converted from millimeters, a
 * third of a foot): one part in a billion. A sixteenth of an inch is not rounding: it is another opening.
 */
export function sameLength(one: number, other: number): boolean {
  return Math.abs(one - other) <= 1e-9 * Math.max(one, other);
}

/**
 * Of a head that has its rise from its span: null where the given rise is left out or is that one but for rounding, else the
 * refusal. `own` says in words what its rise is.
 */
export function fixedRise(shape: HeadShape, given: number | null, rise: number, own: string): Refusal | null {
  if (given === null) return null;
  const refusal = positive('rise', given);
  if (refusal !== null || sameLength(given, rise)) return refusal;
  return refuse(`rise of a ${shape} must be ${own}, ${figure(rise)}, or left out; got ${figure(given)}`);
}

/** Whether a rise is half the span but for rounding: a half round then, whatever else it is called. */
export function isHalfSpan(span: number, rise: number): boolean {
  return Math.abs(rise - span / 2) <= 1e-9 * span;
}
