import type { Standards } from '../standards';
import { NEARLY } from './arcPieces';
import { legLength, type Curve } from './curve';
import type { Inputs } from './inputs';
import { longestBoard } from './wood';

type Shop = Pick<Standards, 'endAllowance' | 'shortestPiece' | 'shortPieces'>;

/** The longest straight piece that the shop carries and that a board of its wood holds, its ends trimmed. */
export function longestPiece(
  { face, wood }: Pick<Inputs, 'face' | 'wood'>,
  { margin, endTrim, largestAcross }: Pick<Standards, 'margin' | 'endTrim' | 'largestAcross'>,
): number {
  return Math.min(largestAcross, longestBoard(face + 2 * margin, wood) - 2 * endTrim);
}

/** How one straight piece is made, by its longer edge. */
export interface StraightBlank {
  /** 2: in halves with a finished splice, because the whole is longer than the shop carries or a board holds. */
  readonly parts: 1 | 2;
  /** Of each part, with the end allowances; no shorter than the rolls hold where the shop says overlong. */
  readonly length: number;
  /** How a part is run that the rolls would not hold by itself; null: as it is. */
  readonly longer: 'overlong' | 'carrier' | null;
  /** Even a half is longer than that. */
  readonly tooLarge: boolean;
}

/** Pieces of straight molding alike. */
export interface StraightPieces extends StraightBlank {
  /** Parts of all of them. */
  readonly count: number;
}

/** A straight piece `long` along its longer edge, as it is sawn from the board; `longest` can be made in one (`longestPiece`). */
export function straightBlank(long: number, longest: number, shop: Shop): StraightBlank {
  const { endAllowance, shortestPiece, shortPieces } = shop;
  const isLarge = (length: number) => length > longest + NEARLY;
  const parts = isLarge(long + 2 * endAllowance) ? 2 : 1;
  const own = long / parts + 2 * endAllowance;
  const isShort = own < shortestPiece - NEARLY;
  return {
    parts,
    length: shortPieces === 'overlong' ? Math.max(own, shortestPiece) : own,
    longer: isShort ? shortPieces : null,
    tooLarge: isLarge(own),
  };
}

/** The length of a leg's longer edge; 0: there is none. `leg` runs from its foot to the spring line; `otherLeg` is the right one's where it differs. */
export function legLong(curve: Curve, side: 'left' | 'right', leg: number, otherLeg: number | null): number {
  const own = side === 'right' ? (otherLeg ?? leg) : leg;
  const top = curve.legs.find((each) => each.side === side);
  return own > 0 && top !== undefined ? legLength(own, top) : 0;
}

/** The straight molding of one opening, each piece by its longer edge: what is straight in the head, and the legs. */
export function straightPieces(curve: Curve, inputs: Inputs, standards: Standards): StraightPieces[] {
  const { leg, otherLeg } = inputs;
  const longest = longestPiece(inputs, standards);
  const legs = (['left', 'right'] as const).map((side) => legLong(curve, side, leg, otherLeg));
  const heads = curve.straights.map(({ inside, outside }) => Math.max(inside, outside));
  const pieces: (StraightBlank & { count: number })[] = [];
  for (const long of [...heads, ...legs.filter((each) => each > 0)]) {
    const made = straightBlank(long, longest, standards);
    const alike = pieces.find(
      ({ parts, length }) => parts === made.parts && Math.abs(length - made.length) <= 1e-9 * length,
    );
    if (alike) alike.count += made.parts;
    else pieces.push({ ...made, count: made.parts });
  }
  return pieces;
}
