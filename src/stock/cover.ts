import type { Cutting, Pattern, Run } from './cutting';
import type { Effort } from './effort';
import { HALF_A_WORTH } from './proof';
import { spareOf, type Pricing } from './pricing';

/** More patterns than this, or more steps to list them, are left to the dives. */
const MOST_PATTERNS = 4_000;
const MOST_STEPS = 100_000;
/** Work of looking at one pattern or size while deciding. */
const A_LOOK = 20;
/** Work of one step of listing patterns. */
const A_STEP = 60;

/**
 * Looks through all plans that cost at most `aim` (exact cover). All boards together can lose no more than aim − worth of all
 * pieces, so only patterns that lose less come into question (reduced-cost fixing), and the size that the fewest of them can
 * make is decided first. `'none'`: there is no such plan, for certain, since all is counted in whole numbers. Null: too many patterns come into question, or `patience` of them were tried.
 */
export function coverTightly(
  cutting: Cutting,
  aim: number,
  pricing: Pricing,
  patience: number,
  effort: Effort,
): Run[] | 'none' | null {
  const { sizes, demand, boards } = cutting;
  const spare = spareOf(aim, pricing, cutting);
  if (spare === null) return null;
  if (spare < 0) return 'none';
  const listed = tightPatterns(cutting, pricing, spare, effort);
  if (listed === null) return null;
  const left = [...demand];
  const had = boards.map((board) => board.limit);
  const chosen: Pattern[] = [];
  const limited = had.some((count) => count < Infinity);
  // By what is left to make, a letter each (a plan has fewer than 65,536 pieces), and to be had.
  const failed = new Map<string, number>();
  let tries = 0;

  /** True: the plan is whole. False: it can't be. Null: out of patience. */
  const decide = (possible: readonly Tight[], spareLeft: number, money: number): boolean | null => {
    effort.spend(A_LOOK * (possible.length + sizes.length));
    const makers = new Int32Array(sizes.length);
    for (const { pattern } of possible) for (const piece of pattern.pieces) makers[piece]!++;
    let scarce = -1;
    for (let piece = 0; piece < sizes.length; piece++) {
      if (left[piece]! > 0 && (scarce < 0 || makers[piece]! < makers[scarce]!)) scarce = piece;
    }
    if (scarce < 0) return true;
    // Boards alike in another order come to the same rest: with no more money it can't be made either.
    const rest = String.fromCharCode(...left) + (limited ? had.join() : '');
    if ((failed.get(rest) ?? -1) >= money) return false;
    const passed: Tight[] = [];
    for (const tight of possible) {
      const { pattern, loss } = tight;
      if (!pattern.pieces.includes(scarce)) continue;
      if (++tries > patience || effort.ended) return null;
      const price = boards[pattern.board]!.price;
      take(pattern, 1);
      const done = decide(stillPossible(possible, spareLeft - loss, money - price), spareLeft - loss, money - price);
      if (done !== false) return done;
      take(pattern, -1);
      // Every plan with this pattern has been looked through.
      tight.passed = true;
      passed.push(tight);
    }
    for (const tight of passed) tight.passed = false;
    failed.set(rest, money);
    return false;
  };
  const take = (pattern: Pattern, boardsTaken: 1 | -1) => {
    for (let at = 0; at < pattern.pieces.length; at++) left[pattern.pieces[at]!]! -= boardsTaken * pattern.counts[at]!;
    had[pattern.board]! -= boardsTaken;
    if (boardsTaken === 1) chosen.push(pattern);
    else chosen.pop();
  };
  /** Of patterns in the order of their loss. */
  const stillPossible = (patterns: readonly Tight[], spareLeft: number, money: number): Tight[] => {
    const still: Tight[] = [];
    let looked = 0;
    for (const tight of patterns) {
      if (tight.loss > spareLeft) break;
      looked++;
      const { pattern } = tight;
      if (tight.passed || boards[pattern.board]!.price > money || had[pattern.board]! <= 0) continue;
      if (fits(pattern, left)) still.push(tight);
    }
    effort.spend(A_LOOK * looked);
    return still;
  };
  const done = decide(listed, spare, aim);
  if (done === null) return null;
  return done ? chosen.map((pattern) => ({ pattern, times: 1 })) : 'none';
}

/** A pattern and what it loses. */
interface Tight {
  readonly pattern: Pattern;
  readonly loss: number;
  /** All plans with it have been looked through. */
  passed: boolean;
}

function fits(pattern: Pattern, left: readonly number[]): boolean {
  for (let at = 0; at < pattern.pieces.length; at++) if (pattern.counts[at]! > left[pattern.pieces[at]!]!) return false;
  return true;
}

/** All patterns that lose no more than `spare`, the least first; null where there are too many. */
function tightPatterns(
  { sizes, demand, boards }: Cutting,
  { worths, scale, scarcity }: Pricing,
  spare: number,
  effort: Effort,
): Tight[] | null {
  const order = sizes.map((_, at) => at).sort((a, b) => worths[b]! / sizes[b]! - worths[a]! / sizes[a]!);
  const found: Tight[] = [];
  const taken: { piece: number; count: number }[] = [];
  let steps = 0;
  let listed = true;
  const extend = (board: number, from: number, left: number, loss: number): boolean => {
    if (++steps > MOST_STEPS) return false;
    // Less than no loss: the board leaves more than a plan may, and the worths don't count such boards.
    if (loss >= 0 && loss <= spare && taken.length > 0) {
      const inOrder = [...taken].sort((a, b) => a.piece - b.piece);
      const pattern = { board, pieces: inOrder.map((one) => one.piece), counts: inOrder.map((one) => one.count) };
      found.push({ pattern, loss, passed: false });
      if (found.length > MOST_PATTERNS) return false;
    }
    for (let at = from; at < order.length; at++) {
      const piece = order[at]!;
      // The rest of the room at this piece's rate still leaves too great a loss: so do all later pieces. Losses are whole and
      // this one is a fraction: half a worth is more than it can be off.
      if (loss - (left * worths[piece]!) / sizes[piece]! > spare + HALF_A_WORTH) break;
      for (let count = Math.min(demand[piece]!, Math.floor(left / sizes[piece]!)); count >= 1; count--) {
        taken.push({ piece, count });
        const goOn = extend(board, at + 1, left - count * sizes[piece]!, loss - count * worths[piece]!);
        taken.pop();
        if (!goOn) return false;
      }
    }
    return true;
  };
  for (const [board, { room, price, limit }] of boards.entries()) {
    if (limit > 0 && !extend(board, 0, room, scale * price + scarcity[board]!)) listed = false;
    if (!listed) break;
  }
  effort.spend(A_STEP * steps);
  if (!listed) return null;
  return found.sort((a, b) => a.loss - b.loss);
}
