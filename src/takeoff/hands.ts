import type { HeadShape } from '../head/head';
import { SHAPES } from '../head/shapes';

/** Of a head with a high side: how many finished heads have it at the right, as drawn, and how many at the left. */
export interface Hands {
  readonly right: number;
  readonly left: number;
}

/** What the list says of them; `unsaid` where it doesn't, or in words that may be meant either way. */
export type HandsOf = Hands | 'unsaid' | null;

/** Said of a row whose head is high at one side, where its hand is not told: the price is the same, the pieces are not. */
export const SIDE_UNSAID =
  'Which side is high is not said: write in Remarks how many are high at the left, and how many at the right.';

interface Source {
  readonly head: HeadShape;
  readonly quantity: number;
  readonly sides: number;
  readonly remarks: string | null;
}

const HIGH = /\b(?:high(?:er)?|tall(?:er)?|peak|crown)\b/i;
const HIGH_AT = /\b(left|right)\b(?! leg)/i;
const HAND = /\b(?:([lr])\.?h\b\.?|(left|right)[ -]hand(?:ed)?\b)/i;
/** One, two and so on, as remarks write small counts. */
const NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six'];
const NUMBER = new RegExp(`\\b(?:${NUMBERS.join('|')})\\b`, 'gi');
/** `1 left, 1 right`: of which hand is not said, but of each as many. */
const BARE = /^\(?\d{0,3}\)? *(left|right)\.?$/i;
const COUNT = /(?:^\(?(\d{1,3})\)?(?![\d/"'.])|(?:^|[\s:(])(\d{1,3})\)? (?=left|right))/i;
const MIRRORED = /\b(?:pairs?|paired|mirrored|opposite hands?|both hands|handed pairs?)\b/i;

/**
 * Left and right of a raked head, told by its remarks: `2 high side left, 1 high side right`; `high at left`; `LH and RH` or a pair
 * are half of each. Which side of a left-hand unit is high is no settled custom: `LH` alone stays unsaid. Cased on both sides of the
 * wall, each opening has one of each, as the wall is seen from either side. Null: a head without a high side.
 */
export function handsOf({ head, quantity, sides, remarks }: Source): HandsOf {
  if (!SHAPES[head].highSide) return null;
  if (sides === 2) return { right: quantity, left: quantity };
  const text = (remarks ?? '').replace(NUMBER, (word) => String(1 + NUMBERS.indexOf(word.toLowerCase())));
  const parts = text.split(/[;,/&+\n]|\band\b/i).map((part) => part.trim());
  const high = HIGH.test(text) ? countOf(parts, (part) => HIGH_AT.exec(part)?.[1]?.toLowerCase(), quantity) : null;
  if (high !== null) return high;
  const hands = countOf(parts, handOf, quantity);
  if (hands !== null) return hands.left === hands.right ? hands : 'unsaid';
  return MIRRORED.test(text) && quantity % 2 === 0 ? { right: quantity / 2, left: quantity / 2 } : 'unsaid';
}

function handOf(part: string): string | undefined {
  const found = HAND.exec(part);
  const [, letter, word] = found ?? [undefined, undefined, BARE.exec(part)?.[1]];
  return letter === undefined ? word?.toLowerCase() : letter.toLowerCase() === 'l' ? 'left' : 'right';
}

/** The parts that name a side, with their counts; without counts one side is all, and both are half of each. Null: they don't come to the quantity. */
function countOf(
  parts: readonly string[],
  sideOf: (part: string) => string | undefined,
  quantity: number,
): Hands | null {
  const named = parts.flatMap((part) => {
    const side = sideOf(part);
    const found = COUNT.exec(part);
    const count = found?.[1] ?? found?.[2];
    return side === undefined ? [] : [{ side, count: count === undefined ? null : Number(count) }];
  });
  const sides = new Set(named.map(({ side }) => side));
  const each = quantity / sides.size;
  const sum = (side: string) => named.reduce((total, one) => total + (one.side === side ? (one.count ?? each) : 0), 0);
  const counts = { right: sum('right'), left: sum('left') };
  // Of a whole number in all, one side is whole where the other is.
  return named.length > 0 && Number.isInteger(counts.left) && counts.right + counts.left === quantity ? counts : null;
}

/** In words beside the drawing, which has the high side at the right. */
export function handsText(hands: Hands | 'unsaid'): string {
  if (hands === 'unsaid')
    return 'how many have the high side left is not said: drawn with it right; of a high side left the cuts and legs change sides';
  const { right, left } = hands;
  if (left === 0) return `${right} high side right, as drawn`;
  const mirrored = `${left} high side left: cuts and legs change sides`;
  return right === 0 ? mirrored : `${right} high side right, as drawn; ${mirrored}`;
}
