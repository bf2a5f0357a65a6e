import type { Ends, Head } from '../head/head';
import type { LegTop } from '../head/joints';
import type { Unit } from '../unit';
import type { HeadCurve } from './curve';

/** One opening with its casing, as the takeoff knows it. */
export interface ElevationFigures {
  readonly head: Head;
  readonly reveal: number;
  /** Width of the casing. */
  readonly face: number;
  readonly ends: Ends;
  /** Arcs that stand for half an ellipse; left out: 3. */
  readonly arcs?: number;
  /** How far a straight head that lies over its legs reaches beyond them; left out: 0. */
  readonly overhang?: number;
  /** Straight leg up to the spring line; 0 or left out: none drawn. A long one is shown broken. */
  readonly leg?: number;
  /** The right leg, where it differs. */
  readonly otherLeg?: number;
  /** Segments of each constant-radius piece, left to right; left out: no joints within a piece. */
  readonly segments?: readonly number[];
  readonly mark?: string;
  readonly unit: Unit;
  /** Leaves out the line of words below, for a page that says them beside the picture. */
  readonly wordless?: boolean;
  /** Heights of a letter across the picture: smaller for larger letters. Default 36; a narrow pane wants fewer. */
  readonly lettersAcross?: number;
}

/** Everything the picture's parts share. */
export interface Elevation {
  readonly figures: ElevationFigures;
  readonly opening: HeadCurve;
  /** The legs it may stand on, with the heights of their upper corners. */
  readonly legTops: readonly LegTop[];
  /** Edges of the casing. */
  readonly inside: HeadCurve;
  readonly outside: HeadCurve;
  /** Long-point length of the head, along the outside edge. */
  readonly length: number;
  readonly letters: number;
  /** Leg as drawn, and whether that is less than it is. */
  readonly legShown: number;
  readonly otherLegShown: number;
  readonly broken: boolean;
  /** Lowest edge of jamb and legs. */
  readonly foot: number;
}
