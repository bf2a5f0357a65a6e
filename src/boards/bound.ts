import type { Effort } from '../stock/effort';
import { wholeBoundOf } from '../stock/wholeBound';
import type { Filler } from './filling';
import type { Question } from './proper';
import type { Problem } from './problem';

/**
 * A proof in whole numbers: pieces are worth so much each, and no board of a kind, cut by the rules of sawing with no more of a
 * piece than is wanted, holds more than `most`. Whatever boards are bought must hold the worth of all pieces.
 */
export interface Proof {
  readonly worths: readonly number[];
  readonly most: readonly number[];
}

/** Cases looked at for the fullest board of a proof. */
const PATIENCE = 300;

/**
 * What these worths prove. The filler must be one for bounds. First what no board holds for its price, then, as long as the effort
 * lasts, what each kind holds.
 */
export function proofOf(question: Question, filler: Filler, effort: Effort): Proof {
  const { boards } = filler.problem;
  const worths = Array.from(question.worths);
  const prices = boards.map(({ price }) => price);
  const { ratio } = filler.fullest({ ...question, prices }, PATIENCE, effort);
  const most = prices.map((price, at) => {
    const all = Math.floor(ratio * price * (1 + 1e-14));
    if (effort.ended) return all;
    const alone = { ...question, prices: prices.map((_, k) => (k === at ? 1 : Infinity)) };
    return Math.min(all, Math.floor(filler.fullest(alone, PATIENCE, effort).ratio));
  });
  return { worths, most };
}

/** The least cost of whole boards that hold the worth of all pieces, in cents. */
export function boundOf({ worths, most }: Proof, problem: Problem, effort: Effort): number {
  const boards = problem.boards.map(({ price, limit, room }) => ({ price, limit, room }));
  return wholeBoundOf({ worths, most }, { sizes: [], demand: problem.demand, boards }, effort);
}

/** Steps of looking for the cheapest boards. */
const MOST_STEPS = 300_000;
/** Work of one such step, and of each proof in it. */
const A_STEP = 8;
const A_PROOF = 1;

/**
 * The cheapest whole boards, so many of each kind, that hold the worth of all pieces by every one of the proofs, cost less than
 * `below`, and are more of some kind than each of those excluded. `'none'`: there are none. Null: too many to look through.
 */
export function cheapestBoards(
  proofs: readonly Proof[],
  { boards, demand }: Problem,
  below: number,
  excluded: readonly (readonly number[])[],
  effort: Effort,
): number[] | 'none' | null {
  const n = boards.length;
  const order = boards.map((_, at) => at).sort((a, b) => boards[b]!.price - boards[a]!.price);
  const wanted = proofs.map(({ worths }) => worths.reduce((sum, worth, at) => sum + worth * demand[at]!, 0));
  /** By proof: the most worth for a cent among the boards from a place on. */
  const rates = proofs.map(({ most }) => {
    const rate = new Float64Array(n + 1);
    for (let at = n - 1; at >= 0; at--)
      rate[at] = Math.max(rate[at + 1]!, most[order[at]!]! / boards[order[at]!]!.price);
    return rate;
  });
  const p = proofs.length;
  // What is still wanted by each proof, place by place: no list is made in the innermost loop.
  const left = new Float64Array((n + 1) * p);
  left.set(wanted);
  let best = below;
  let found: number[] | null = null;
  const counts = new Array<number>(n).fill(0);
  let steps = 0;
  const choose = (at: number, cost: number): boolean => {
    if (++steps > MOST_STEPS) return false;
    const here = at * p;
    let more = 0;
    for (let each = 0; each < p; each++) {
      const rest = left[here + each]!;
      if (rest <= 0) continue;
      const rate = rates[each]![at]!;
      if (rate <= 0) return true;
      if (rest > more * rate) more = rest / rate;
    }
    // What is still to be paid, in whole cents, a rounding less.
    if (cost + Math.ceil(more * (1 - 1e-12) - 1e-6) >= best) return true;
    if (more === 0 && !excluded.some((other) => other.every((count, board) => counts[board]! <= count))) {
      best = cost;
      found = [...counts];
      return true;
    }
    if (at === n) return true;
    const board = order[at]!;
    const { price, limit } = boards[board]!;
    for (let count = Math.min(limit, Math.ceil((best - cost) / price)); count >= 0; count--) {
      if (cost + count * price >= best) continue;
      counts[board] = count;
      for (let each = 0; each < p; each++)
        left[here + p + each] = left[here + each]! - count * proofs[each]!.most[board]!;
      if (!choose(at + 1, cost + count * price)) return false;
    }
    counts[board] = 0;
    return true;
  };
  const complete = choose(0, 0);
  effort.spend((A_STEP + A_PROOF * p) * steps);
  return complete ? (found ?? 'none') : null;
}
