/** One kind of ring of a head: radius and degrees of the opening's own edge, degrees of the finished arc, how many make the head. */
export interface PlainRing {
  readonly radius: string;
  readonly angle: string;
  readonly finished: string;
  readonly count: string;
}

/** Straight pieces of a head itself: how many are alike and their longer edge, and that of a level one between two slopes. */
export interface PlainStraights {
  readonly count: string;
  readonly long: string;
  readonly level: string;
}

/** All that the plain workbook's formulas know of a head shape; `heads.ts` has one for each. */
export interface PlainHead {
  /** Length at an offset: `s` the span, `h` the rise, `d` the offset. */
  readonly length: (s: string, h: string, d: string, ends: string, haunch: string) => string;
  /** Whether the rise is one that the shape can't have; null where it has none of its own to judge. */
  readonly misfit: string | null;
  /** Whether there is no such head although every input is there; null: there always is. */
  readonly fails: string | null;
  readonly crown: PlainRing | null;
  readonly haunch: PlainRing | null;
  /** A leg that the head is mitered to: its cut in degrees off square, the head's off its radial line, its farther upper corner above the spring line. */
  readonly leg: { readonly miter: string; readonly headMiter: string; readonly top: string };
  /** The same corner of the leg at its high side; null where it has none. */
  readonly highLegTop: string | null;
  readonly straights: PlainStraights;
  /** Joints between its own pieces. */
  readonly joints: string;
}
