import type { Ends, Head } from '../head/head';

/** A casing round a head: what a quoted length or radius is about. Lengths in one unit, whichever. */
export interface Casing {
  readonly head: Head;
  /** Width of the molding. */
  readonly face: number;
  /** How far its inside edge stands back from the opening's edge. */
  readonly reveal: number;
  readonly ends: Ends;
}

/** Offset of the casing's outside edge from the opening's. */
export function outsideOf({ face, reveal }: Casing): number {
  return reveal + face;
}
