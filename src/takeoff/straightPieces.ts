import { legLength, type Curve } from './curve';

/** Pieces of straight molding alike. */
export interface StraightPieces {
  /** With the end allowances. */
  readonly length: number;
  readonly count: number;
}

/**
 * The straight molding of one opening, each piece by its longer edge: what is straight in the head, and the legs. `leg` runs
 * from its foot to the spring line, 0: none; `otherLeg` is the right one's where it differs.
 */
export function straightPieces(
  curve: Curve,
  leg: number,
  otherLeg: number | null | undefined,
  endAllowance: number,
): StraightPieces[] {
  const lengths = curve.straights.map(({ inside, outside }) => Math.max(inside, outside));
  for (const top of curve.legs) {
    const own = top.side === 'right' ? (otherLeg ?? leg) : leg;
    if (own > 0) lengths.push(legLength(own, top));
  }
  const pieces: { length: number; count: number }[] = [];
  for (const long of lengths) {
    const length = long + 2 * endAllowance;
    const alike = pieces.find((piece) => Math.abs(piece.length - length) <= 1e-9 * length);
    if (alike) alike.count += 1;
    else pieces.push({ length, count: 1 });
  }
  return pieces;
}
