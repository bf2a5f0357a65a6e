import type { Effort } from '../stock/effort';
import { Simplex } from '../stock/simplex';
import { allCuts } from './allCuts';
import { allFills, type Fills } from './fills';
import { Pairs } from './pairs';
import type { Cut, Problem } from './problem';
import { worthOf } from './proper';

/** More steps than this are too many. */
const MOST_STEPS = 20_000_000;
/** Work of one step: a case of finding cuts, or a cut that is looked at for a place in the plan; so many are counted at once. */
const A_STEP = 3;
const AT_ONCE = 1024;
/** Where more cuts than this come into question, the fractional plan is worked out to leave some of them out. */
const MANY_CUTS = 400;
/** So many dead ends are remembered at most. */
const MOST_ENDS = 20_000;
/** A piece left unmade, and one made too many, in its worth. */
const UNMADE = 20;
const EXTRA = -0.3;
/** Duals are counted in this part of the greatest worth, whole. */
const PARTS = 2 ** 30;

/** Too many to look through. */
class TooMany extends Error {}

/** Pieces at whole worths, and what no board of a kind holds more than in the same worths: what a plan's boards hold less is loss. */
export interface Pricing {
  readonly worths: readonly number[];
  readonly prices: readonly number[];
}

/** All fillings of a lane of this problem, once they are known; null: there are too many. */
export interface Fillings {
  all?: Fills | null;
}

/** How far looking through the plans of some boards has come: called again with it, it soon is where the effort ended. */
export interface Looking {
  cuts?: Cut[] | null;
  pairs?: Pairs | null;
  /** Dead ends: what was left to make, with which boards and cuts. */
  readonly ends: Set<string>;
}

/**
 * Looks through all plans of just these boards, so many of each kind. What the boards can hold over the worth of all pieces is all that
 * the cuts may lose together, so only cuts that lose no more come into question. A plan takes one of them for the piece that the
 * fewest make, then goes on with what is left; a cut that was tried is left out of what follows. While many cuts come into question, the
 * fractional plan of what is left says anew, in whole numbers, how little may be lost, and which cut to try first. `'none'`: there is
 * no such plan. Null: too many to tell.
 */
export function tightPlan(
  problem: Problem,
  counts: readonly number[],
  { worths, prices }: Pricing,
  fillings: Fillings,
  looking: Looking,
  effort: Effort,
): Cut[] | 'none' | null {
  const { demand } = problem;
  const total = demand.reduce((sum, wanted, at) => sum + wanted * worths[at]!, 0);
  const budget = counts.reduce((sum, count, at) => sum + (count === 0 ? 0 : count * prices[at]!), 0) - total;
  if (budget < 0) return 'none';
  let steps = 0;
  let counted = 0;
  const step = (many: number) => {
    if ((steps += many) < counted + AT_ONCE) return;
    effort.spend((steps - counted) * A_STEP);
    counted = steps;
    if (steps > MOST_STEPS || effort.ended) throw new TooMany();
  };
  try {
    const fills = (fillings.all ??= allFills(problem, step));
    if (fills === null) return null;
    const least = counts.map((count, board) => (count === 0 ? Infinity : prices[board]! - budget));
    const cuts = (looking.cuts ??= allCuts(problem, fills, worths, least, step));
    if (cuts === null) return null;
    looking.pairs ??= Pairs.of(cuts, demand, counts);
    const loss = Float64Array.from(cuts, (cut) => prices[cut.board]! - worthOf(cut, worths));
    return searchThrough(problem, counts, cuts, { loss, budget, worths }, looking, step, effort);
  } catch (fault) {
    if (fault instanceof TooMany) return null;
    throw fault;
  }
}

/** What each cut loses, by its place, and what all cuts still to be chosen lose together. */
interface Losses {
  readonly loss: Float64Array;
  readonly budget: number;
}

function searchThrough(
  { demand, kinds }: Problem,
  counts: readonly number[],
  cuts: readonly Cut[],
  { worths, ...first }: Losses & { readonly worths: readonly number[] },
  { pairs = null, ends }: Looking,
  step: (many: number) => void,
  effort: Effort,
): Cut[] | 'none' {
  const left = [...demand];
  const had = [...counts];
  const tried = new Uint8Array(cuts.length);
  const chosen: Cut[] = [];
  const fits = ({ board, pieces, counts: made }: Cut) => {
    if (had[board] === 0) return false;
    for (let at = 0; at < pieces.length; at++) if (made[at]! > left[pieces[at]!]!) return false;
    return true;
  };
  /** Times that two boards were left: once the table of pairs is quicker, it is made. */
  let twos = 0;
  const boardsLeft = () => had.reduce((sum, count) => sum + count, 0);
  /** The kind of which pieces are wanted that the fewest cuts make; `'none'`: all are made. Null: some can't be. */
  const hardest = (open: readonly number[]): number | 'none' | null => {
    const making = new Int32Array(kinds.length);
    for (const at of open) for (const piece of cuts[at]!.pieces) making[piece]!++;
    let hard: number | 'none' = 'none';
    for (let kind = 0; kind < kinds.length; kind++) {
      if (left[kind] === 0) continue;
      if (making[kind] === 0) return null;
      if (hard === 'none' || making[kind]! < making[hard]!) hard = kind;
    }
    return hard;
  };
  const take = (cut: Cut, times: number) => {
    had[cut.board]! -= times;
    cut.pieces.forEach((piece, at) => (left[piece]! -= times * cut.counts[at]!));
  };
  const place = (among: readonly number[], { loss, budget }: Losses): boolean => {
    if (pairs !== null && boardsLeft() <= 2 && ++twos > cuts.length / 2 && !pairs.makes(left, had, step)) {
      return left.every((count) => count === 0);
    }
    step(among.length);
    let open = among.filter((at) => loss[at]! <= budget && tried[at] === 0 && fits(cuts[at]!));
    let kind = hardest(open);
    if (kind === 'none') return true;
    if (kind === null) return false;
    let its = { loss, budget };
    let levels: ReadonlyMap<number, number> = new Map();
    if (open.length > MANY_CUTS) {
      const fractional = fractionalPlan(open, cuts, { left, had, worths }, effort);
      if (fractional.budget < 0) return false;
      its = fractional;
      levels = fractional.levels;
      open = open.filter((at) => its.loss[at]! <= its.budget);
      kind = hardest(open);
      if (kind === null || kind === 'none') return false;
    }
    // Other cuts often come to the same: what was looked through with these cuts to go on with needs no second look.
    const end = open.length > MANY_CUTS ? null : `${left.join()} ${had.join()} ${open.join()}`;
    if (end !== null) {
      if (ends.has(end)) return false;
      // A text of them all takes longer than looking at them.
      step(4 * open.length);
    }
    const making = kind;
    const level = (at: number) => levels.get(at) ?? 0;
    const hopeful = open
      .filter((at) => cuts[at]!.pieces.includes(making))
      .sort((a, b) => level(b) - level(a) || its.loss[a]! - its.loss[b]! || a - b);
    let through = 0;
    for (const at of hopeful) {
      const cut = cuts[at]!;
      take(cut, 1);
      chosen.push(cut);
      if (place(open, { loss: its.loss, budget: its.budget - its.loss[at]! })) return true;
      chosen.pop();
      take(cut, -1);
      // Every plan that has this cut, with what was chosen before, was looked at.
      tried[at] = 1;
      through++;
    }
    for (const at of hopeful.slice(0, through)) tried[at] = 0;
    if (end !== null && ends.size < MOST_ENDS) ends.add(end);
    return false;
  };
  return place([...cuts.keys()], first) ? chosen : 'none';
}

/**
 * The fractional plan of what is left, with these cuts alone, that makes most pieces over; its duals as whole worths. However they came
 * about, no board holds more than the fullest of these cuts, so the budget that follows is exact.
 */
function fractionalPlan(
  open: readonly number[],
  cuts: readonly Cut[],
  rest: { readonly left: readonly number[]; readonly had: readonly number[]; readonly worths: readonly number[] },
  effort: Effort,
): Losses & { readonly levels: ReadonlyMap<number, number> } {
  const { left, had, worths } = rest;
  const kinds = left.length;
  const most = Math.max(...worths, 1);
  const simplex = new Simplex(Float64Array.from([...left, ...had]), effort);
  const shorts = left.map((_, kind) => simplex.append((UNMADE * worths[kind]!) / most, [kind], [1]));
  left.forEach((_, kind) => simplex.append((EXTRA * worths[kind]!) / most, [kind], [-1]));
  const spares = had.map((_, board) => simplex.append(0, [kinds + board], [1]));
  simplex.begin([...shorts, ...spares]);
  const first = simplex.cost.length;
  for (const at of open) {
    const { board, pieces, counts } = cuts[at]!;
    simplex.append(0, [...pieces, kinds + board], [...counts, 1]);
  }
  simplex.primal();
  const whole = left.map((_, kind) => Math.round(simplex.dual[kind]! * PARTS));
  const fullest = had.map(() => 0);
  const loss = new Float64Array(cuts.length).fill(Infinity);
  for (const at of open) {
    const worth = worthOf(cuts[at]!, whole);
    loss[at] = -worth;
    fullest[cuts[at]!.board] = Math.max(fullest[cuts[at]!.board]!, worth);
  }
  for (const at of open) loss[at]! += fullest[cuts[at]!.board]!;
  const budget =
    had.reduce((sum, count, board) => sum + count * fullest[board]!, 0) -
    left.reduce((sum, count, kind) => sum + count * whole[kind]!, 0);
  const levels = new Map<number, number>();
  simplex.basis.forEach((column, row) => column >= first && levels.set(open[column - first]!, simplex.level[row]!));
  return { loss, budget, levels };
}
