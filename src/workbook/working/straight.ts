import { perHead } from './heads';
import { its } from './keys';

/*
 * The straight pieces of an opening in formulas, as `takeoff/straightPieces.ts` has them: each kind by how many there are of it and by
 * the length of its longer edge, which stand in columns of their own.
 */

interface Kind {
  readonly count: string;
  readonly long: string;
}

const KINDS: readonly Kind[] = [
  {
    count: perHead(({ straights }) => straights.count, '0'),
    long: its.headLong,
  },
  ...[its.flatLong, its.leftLegLong, its.rightLegLong].map((long) => ({ count: `IF(${long}>0,1,0)`, long })),
];
const NEARLY = '0.000000001';

const parts = ({ long }: Kind) => `IF(${long}+2*Shop_end_allowance>${its.longestPiece}+${NEARLY},2,1)`;
/** A part before it is made longer for the rolls. */
const own = (kind: Kind) => `(${kind.long}/${parts(kind)}+2*Shop_end_allowance)`;
const length = (kind: Kind) => `IF(Shop_short_pieces="overlong",MAX(${own(kind)},Shop_shortest_piece),${own(kind)})`;
const sum = (of: (kind: Kind) => string) => `(${KINDS.map((kind) => `${kind.count}*${of(kind)}`).join('+')})`;
const any = (of: (kind: Kind) => string) => KINDS.map((kind) => `AND(${kind.long}>0,${of(kind)})`).join(',');

export const STRAIGHT_LENGTH = sum((kind) => `${parts(kind)}*${length(kind)}`);
export const STRAIGHT_COUNT = sum(parts);
export const STRAIGHT_SPLICES = sum((kind) => `(${parts(kind)}-1)`);
/** Parts that are fixed to a carrier. */
export const STRAIGHT_CARRIED = sum(
  (kind) => `${parts(kind)}*IF(AND(Shop_short_pieces="carrier",${own(kind)}<Shop_shortest_piece-${NEARLY}),1,0)`,
);
/** Conditions, to stand in an OR: a part is shorter than the rolls hold; even a half is longer than the shop carries. */
export const STRAIGHT_SHORT = any((kind) => `${length(kind)}<Shop_shortest_piece-${NEARLY}`);
export const STRAIGHT_TOO_LARGE = any((kind) => `${own(kind)}>${its.longestPiece}+${NEARLY}`);
