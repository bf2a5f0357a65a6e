import type { Ends, Head } from '../head/head';
import type { Unit } from '../unit';
import type { HeadCurve } from './curve';

/** One opening with its casing, as the takeoff knows it. */
export interface ElevationFigures {
  readonly head: Head;
  readonly reveal: number;
  /** Width of the casing. */
  readonly face: number;
  readonly ends: Ends;
  /** Straight leg up to the spring line; 0 or left out: none drawn. A long one is shown broken. */
  readonly leg?: number;
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
  /** Edges of the casing. */
  readonly inside: HeadCurve;
  readonly outside: HeadCurve;
  /** Long-point length of the head, along the outside edge. */
  readonly length: number;
  readonly letters: number;
  /** Leg as drawn, and whether that is less than it is. */
  readonly legShown: number;
  readonly broken: boolean;
  /** Lowest edge of jamb and legs. */
  readonly foot: number;
}
