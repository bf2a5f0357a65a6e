import { isSimple, type Cutting, type Pattern, type Run } from './cutting';
import type { Generated } from './generate';

/** Worths for which no board is worth more than its price and, where its number is limited, what `scarcity` adds to it. */
export interface Pricing {
  readonly worths: ArrayLike<number>;
  /** What one more board of each kind would save; 0 where there are as many as wanted. */
  readonly scarcity: readonly number[];
}

/** More patterns than this, or more steps to list them, are left to the dives. */
const MOST_PATTERNS = 4_000;
const MOST_STEPS = 100_000;

/**
 * Looks through all plans that cost at most `aim` (exact cover). A pattern loses what its board costs over the worth of its
 * pieces; all boards together can lose no more than aim − worth of all pieces, so only patterns that lose less come into
 * question (reduced-cost fixing), and the size that the fewest of them can make is decided first.
 * `'none'`: there is no such plan. Null: too many patterns come into question, or `patience` of them were tried.
 */
export function coverTightly(
  cutting: Cutting,
  aim: number,
  pricing: Pricing,
  patience: number,
  ended: () => boolean,
): Run[] | 'none' | null {
  const { sizes, demand, boards } = cutting;
  let spare = aim * (1 + 1e-9) + 1e-9;
  for (let at = 0; at < sizes.length; at++) spare -= demand[at]! * pricing.worths[at]!;
  boards.forEach(({ limit }, k) => pricing.scarcity[k]! > 0 && (spare += limit * pricing.scarcity[k]!));
  if (spare < 0) return 'none';
  const listed = tightPatterns(cutting, pricing, spare);
  if (listed === null) return null;
  const left = [...demand];
  const had = boards.map((board) => board.limit);
  const chosen: Pattern[] = [];
  const limited = had.some((count) => count < Infinity);
  const failed = new Map<string, number>();
  let tries = 0;

  /** True: the plan is whole. False: it can't be. Null: out of patience. */
  const decide = (possible: readonly Tight[], spareLeft: number, money: number): boolean | null => {
    const makers = new Int32Array(sizes.length);
    for (const { pattern } of possible) for (const piece of pattern.pieces) makers[piece]!++;
    let scarce = -1;
    for (let piece = 0; piece < sizes.length; piece++) {
      if (left[piece]! > 0 && (scarce < 0 || makers[piece]! < makers[scarce]!)) scarce = piece;
    }
    if (scarce < 0) return true;
    // Boards alike in another order come to the same rest: with no more money it can't be made either.
    const rest = `${left.join()}/${limited ? had.join() : ''}`;
    if ((failed.get(rest) ?? -1) >= money) return false;
    let open = possible;
    for (const tight of possible) {
      const { pattern, loss } = tight;
      if (!pattern.pieces.includes(scarce)) continue;
      if (++tries > patience || (tries % 64 === 0 && ended())) return null;
      const price = boards[pattern.board]!.price;
      for (let at = 0; at < pattern.pieces.length; at++) left[pattern.pieces[at]!]! -= pattern.counts[at]!;
      had[pattern.board]!--;
      chosen.push(pattern);
      const done = decide(
        open.filter(
          (other) =>
            other.loss <= spareLeft - loss &&
            boards[other.pattern.board]!.price <= money - price &&
            had[other.pattern.board]! > 0 &&
            fits(other.pattern, left),
        ),
        spareLeft - loss,
        money - price,
      );
      if (done !== false) return done;
      chosen.pop();
      had[pattern.board]!++;
      for (let at = 0; at < pattern.pieces.length; at++) left[pattern.pieces[at]!]! += pattern.counts[at]!;
      // Every plan with this pattern has been looked through.
      open = open.filter((other) => other !== tight);
    }
    failed.set(rest, money);
    return false;
  };
  const done = decide(listed, spare, aim);
  if (done === null) return null;
  return done ? chosen.map((pattern) => ({ pattern, times: 1 })) : 'none';
}

/** A pattern and what it loses. */
interface Tight {
  readonly pattern: Pattern;
  readonly loss: number;
}

function fits(pattern: Pattern, left: readonly number[]): boolean {
  for (let at = 0; at < pattern.pieces.length; at++) if (pattern.counts[at]! > left[pattern.pieces[at]!]!) return false;
  return true;
}

/** All patterns that lose no more than `spare`, the least first; null where there are too many. */
function tightPatterns(
  { sizes, demand, boards }: Cutting,
  { worths, scarcity }: Pricing,
  spare: number,
): Tight[] | null {
  const order = sizes.map((_, at) => at).sort((a, b) => worths[b]! / sizes[b]! - worths[a]! / sizes[a]!);
  const found: Tight[] = [];
  const taken: { piece: number; count: number }[] = [];
  let steps = 0;
  const extend = (board: number, from: number, left: number, loss: number): boolean => {
    if (++steps > MOST_STEPS) return false;
    if (loss <= spare && taken.length > 0) {
      const inOrder = [...taken].sort((a, b) => a.piece - b.piece);
      const pattern = { board, pieces: inOrder.map((one) => one.piece), counts: inOrder.map((one) => one.count) };
      found.push({ pattern, loss: Math.max(0, loss) });
      if (found.length > MOST_PATTERNS) return false;
    }
    for (let at = from; at < order.length; at++) {
      const piece = order[at]!;
      // The rest of the room at this piece's rate still leaves too great a loss: so do all later pieces.
      if (loss - (left * worths[piece]!) / sizes[piece]! > spare) break;
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
    if (limit > 0 && !extend(board, 0, room, price + scarcity[board]!)) return null;
  }
  return found.sort((a, b) => a.loss - b.loss);
}

/** The worths that leave least to lose: those of the best bound or, for one kind of board, the sizes themselves. */
export function pricingOf({ worths, limitDuals, bound }: Generated, cutting: Cutting): Pricing {
  const { sizes, demand, boards } = cutting;
  const { room, price } = boards[0]!;
  if (isSimple(cutting)) {
    const total = sizes.reduce((sum, size, at) => sum + size * demand[at]!, 0);
    if ((total * price) / room >= bound) return { worths: sizes.map((size) => (size * price) / room), scarcity: [0] };
  }
  return { worths, scarcity: limitDuals.map((dual) => Math.max(0, -dual)) };
}
