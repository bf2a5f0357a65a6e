import { degrees, radians } from '../angle';
import type { Standards } from '../standards';
import type { RingKind } from './curve';

/** How one arc of a head is made: in how many pieces, and how many degrees of ring each of them is glued up for. */
export interface ArcPieces {
  /** 2: in halves, because the whole is larger than the shop carries. */
  readonly parts: 1 | 2;
  /** Finished splices between the pieces of one arc: a full circle in halves has two. */
  readonly splices: 0 | 1 | 2;
  /** Degrees of one finished piece. */
  readonly finishedAngle: number;
  /** Degrees its own blank covers: the finished piece with the end allowances. */
  readonly ownAngle: number;
  /** Degrees it is glued up for: more than its own where the rolls would not hold it. */
  readonly blankAngle: number;
  readonly overlong: boolean;
  /** Shorter than the rolls hold and run on a carrier. */
  readonly carried: boolean;
  /** Even its halves are larger than the shop carries. */
  readonly tooLarge: boolean;
}

/** A blank is made overlong up to so many degrees: it has to keep two ends. */
export const MOST_OVERLONG = 350;
/** A piece this much short still passes: it absorbs rounding. */
export const NEARLY = 1e-9;

type Shop = Pick<
  Standards,
  'margin' | 'endAllowance' | 'largestAcross' | 'largestHigh' | 'largestTurn' | 'shortestPiece' | 'shortPieces'
>;

/**
 * An arc whose blank is wider across its ends, deeper, or turns through more than the shop carries is made in halves. A blank
 * shorter along its center than the rolls hold is glued up overlong or runs on a carrier, as the shop chooses.
 */
export function arcPieces(ring: RingKind, face: number, shop: Shop): ArcPieces {
  const { inside, finishedAngle: finished, blankAngle: whole } = ring;
  const center = inside + face / 2;
  const parts = isLarge(ring, whole, finished, face, shop) ? 2 : 1;
  const half = finished / 2;
  const ownAngle = parts === 1 ? whole : Math.min(360, half + degrees((2 * shop.endAllowance) / inside));
  const isShort = (angle: number) => radians(angle) * center < shop.shortestPiece - NEARLY;
  const longer = shop.shortPieces === 'overlong' ? Math.min(MOST_OVERLONG, degrees(shop.shortestPiece / center)) : 0;
  const blankAngle = Math.max(ownAngle, longer);
  return {
    parts,
    splices: parts === 1 ? 0 : whole === 360 && finished === 360 ? 2 : 1,
    finishedAngle: finished / parts,
    ...{ ownAngle, blankAngle },
    overlong: blankAngle > ownAngle,
    carried: shop.shortPieces === 'carrier' && isShort(ownAngle),
    tooLarge: parts === 2 && isLarge(ring, ownAngle, half, face, shop),
  };
}

/** Across the long points and from those to the crown, with the margins; or by what the finished piece turns through. */
function isLarge({ inside }: RingKind, blank: number, finished: number, face: number, shop: Shop): boolean {
  const [low, high] = [inside - shop.margin, inside + face + shop.margin];
  const half = radians(blank / 2);
  const across = 2 * high * Math.sin(Math.min(half, Math.PI / 2));
  const deep = high - Math.min(low * Math.cos(half), high * Math.cos(half));
  return (
    across > shop.largestAcross + NEARLY || deep > shop.largestHigh + NEARLY || finished > shop.largestTurn + NEARLY
  );
}
