import type { Board, Cutting, Pattern } from './cutting';
import type { Effort } from './effort';
import type { Filled, Filler } from './filler';
import type { Master } from './master';

/** Where generating patterns ended. */
export interface Generated {
  /** Cost of the fractional plan. */
  readonly value: number;
  /** No plan for this problem costs less (but for rounding; the proof in whole numbers is made from `worths`). */
  readonly bound: number;
  /** Duals of the sizes at which `bound` was found. */
  readonly worths: Float64Array;
  readonly limitDuals: readonly number[];
}

export interface GenerateControl {
  readonly effort: Effort;
  /** Enough: the fractional plan costs no more than this. */
  readonly goal?: number;
  /** Enough: no plan below this cost exists. */
  readonly hopeless?: number;
  /** Enough: value and bound lie between the same whole multiples of this. */
  readonly unit?: number;
  /** Enough: value and bound are within this share of each other; left out: 1e-7. */
  readonly closeness?: number;
  /** Most of each board's room a pattern may leave. */
  readonly waste?: readonly number[] | null;
}

/** Simplex steps between two fillings: going all the way to the optimum each time takes twice the steps in all. */
const STEPS_A_ROUND = 8;

/**
 * Gilmore and Gomory's column generation: the master's duals are the worths of the pieces, and the fillings worth more than
 * their board costs are the patterns that can better the plan. Worths are taken between the present duals and those of the best
 * bound so far (Wentges 1997), which saves rounds; Farley's bound (1990) ends the work early.
 */
export function generatePatterns(
  master: Master,
  cutting: Cutting,
  filler: Filler,
  control: GenerateControl,
): Generated {
  const { effort, goal = -Infinity, hopeless = Infinity, unit = 0, closeness = 1e-7 } = control;
  const { sizes, boards } = cutting;
  let best: Generated = {
    value: Infinity,
    bound: -Infinity,
    worths: new Float64Array(sizes.length),
    limitDuals: boards.map(() => 0),
  };
  let weight = 0;
  let steps = Infinity;
  for (;;) {
    const settled = master.primal(steps);
    steps = STEPS_A_ROUND;
    const value = master.value();
    const { bound } = best;
    best = { ...best, value };
    if (bound >= hopeless || effort.ended) return best;
    const sameUnit = unit > 0 && Math.ceil(value / unit - 1e-7) <= Math.ceil(bound / unit - 1e-7);
    if (value <= goal || sameUnit || value - bound <= closeness * Math.max(1, value)) {
      if (!master.barExchanges()) return best;
      [weight, steps] = [0, Infinity];
      continue;
    }
    const worths = new Float64Array(sizes.length);
    for (let i = 0; i < sizes.length; i++)
      worths[i] = weight * best.worths[i]! + (1 - weight) * Math.max(0, master.dual[i]!);
    const limitDuals = boards.map((_, k) => weight * best.limitDuals[k]! + (1 - weight) * master.limitDual(k));
    const fillings = filler.fill(worths, 1e-9, control.waste);
    let added = 0;
    for (const [board, found] of fillings.entries()) {
      if (!found || found.filling.pieces.length === 0) continue;
      const pattern: Pattern = { board, pieces: found.filling.pieces, counts: found.filling.counts };
      if (master.worthOver(pattern) > 1e-9 && master.add(pattern)) added++;
    }
    const scale = payingScale(fillings, boards);
    const here = boundAt(worths, fillings, scale, cutting, master);
    const improved = here > bound;
    if (improved) best = { value, bound: here, worths: worths.map((worth) => worth * scale), limitDuals };
    if (added > 0) weight = improved ? 0.5 : Math.max(0, weight - 0.1);
    else if (weight > 0) weight = 0;
    else if (!settled) steps = Infinity;
    else if (!master.barExchanges()) return best;
  }
}

/** Factor that makes worths small enough for every board without limit to be worth no more than its price (Farley). */
function payingScale(fillings: readonly (Filled | null)[], boards: readonly Board[]): number {
  let scale = 1;
  for (const [k, board] of boards.entries()) {
    const upper = fillings[k]?.upper ?? 0;
    if (board.limit === Infinity && upper > 0) scale = Math.min(scale, board.price / upper);
  }
  return scale;
}

/** The bound those worths prove: all that is wanted, less what boards of limited number are worth over their price. */
function boundAt(
  worths: Float64Array,
  fillings: readonly (Filled | null)[],
  scale: number,
  { boards }: Cutting,
  master: Master,
): number {
  let bound = 0;
  for (let i = 0; i < worths.length; i++) bound += master.wanted[i]! * worths[i]! * scale;
  for (const [k, board] of boards.entries()) {
    if (board.limit === Infinity) continue;
    bound -= master.hadOf(k) * Math.max(0, scale * (fillings[k]?.upper ?? 0) - board.price);
  }
  return bound;
}
