import { patternKey } from '../stock/cutting';
import type { Effort } from '../stock/effort';
import type { Master } from '../stock/master';
import { Filler } from './filling';
import { generateCuts, masterOf, WORTHS_PER_CENT } from './fractions';
import { portionOf, type Cut, type Problem } from './problem';
import { worthOf } from './proper';

/** Work of looking at a cut of the pool. */
const A_CUT = 40;
/** Rounds of new cuts between two purchases of a dive, times kinds: of many kinds it needs good cuts there, not the best. */
const ROUNDS = 1_500;
const MANY_KINDS = 60;
/** Of more kinds than a few, boards nearly whole are bought together, up to this share of what is left to pay for. */
const FEW_KINDS = 20;
const SPREE = 0.5;
const NEARLY_WHOLE = 0.6;
/** Of more boards than this more are taken back at a time. */
const MANY_BOARDS = 30;
/** Work of setting up a dive, beside its own. */
const A_DIVE = 30_000;
/** States of the lane tables of a plan made board by board. */
const QUICK_STATES = 150;
const LARGEST_AREA = 1e6;
/** Kinds considered for one of its boards. */
const LARGEST = 40;
const SMALLEST = 20;
/** When fewer than this share of the kinds are still wanted, they become a problem of their own. */
const REST = 0.7;

/** Cuts found so far, each once. */
export class Pool {
  readonly cuts: Cut[] = [];
  private readonly known = new Set<string>();

  add(cut: Cut): void {
    const key = patternKey(cut);
    if (this.known.has(key)) return;
    this.known.add(key);
    this.cuts.push(cut);
  }
}

export interface Tools {
  readonly filler: Filler;
  readonly pool: Pool;
  readonly effort: Effort;
  readonly random: () => number;
}

export function costOf(cuts: readonly Cut[], { boards }: Problem): number {
  return cuts.reduce((sum, { board }) => sum + boards[board]!.price, 0);
}

/**
 * Looks for a plan that costs at most `aim`: boards are bought as the fractional plan has them, the fullest fraction first, and
 * cuts are generated anew for what is left, until nothing is. Null: none was found. `from`: the fractional plan to begin with.
 */
export function dive(problem: Problem, aim: number, tools: Tools, daring: number, from?: Master): Cut[] | null {
  const { filler, pool, effort, random } = tools;
  const master = from?.copy(effort) ?? masterOf(problem, effort);
  effort.spend(A_CUT * pool.cuts.length);
  for (const cut of pool.cuts) if (master.mostOf(cut) >= 1) master.add(cut);
  const known = master.patterns.length;
  const rounds = problem.kinds.length > MANY_KINDS ? Math.ceil(ROUNDS / problem.kinds.length) : Infinity;
  const spree = problem.kinds.length > FEW_KINDS ? SPREE : 0;
  const bought: Cut[] = [];
  let left = aim;
  const give = <T>(answer: T): T => {
    for (let at = known; at < master.patterns.length; at++) pool.add(master.patterns[at] as Cut);
    return answer;
  };
  for (;;) {
    generateCuts(master, filler, effort, {
      close: 1e-3,
      rounds: from !== undefined && bought.length === 0 ? 0 : rounds,
    });
    if (effort.ended || Math.ceil(master.value() - 1e-6) > left) return give(null);
    const cuts = buy(master, spree * master.value(), daring, random);
    if (cuts.length === 0) return give(null);
    bought.push(...cuts);
    left -= costOf(cuts, problem);
    if (left < 0) return give(null);
    if (problem.demand.every((_, at) => master.wanted[at]! < 0.5)) return give(bought);
    if (problem.demand.filter((_, at) => master.wanted[at]! > 0.5).length < REST * problem.kinds.length) {
      const wanted = problem.demand.map((_, at) => Math.round(master.wanted[at]!));
      const had = problem.boards.map((_, at) => master.hadOf(at));
      give(null);
      const rest = diveFor(problem, wanted, had, left, tools, daring);
      return rest === null ? null : [...bought, ...rest];
    }
    if (!master.dualSteps()) return give(null);
    master.dropBarred();
  }
}

/** A dive for a part of the demand, as a problem of its own: fewer kinds are quicker. */
export function diveFor(
  problem: Problem,
  demand: readonly number[],
  limits: readonly number[],
  aim: number,
  tools: Tools,
  daring: number,
): Cut[] | null {
  tools.effort.spend(A_DIVE);
  const portion = portionOf(problem, demand, limits);
  const pool = new Pool();
  for (const cut of tools.pool.cuts) {
    if (limits[cut.board]! < 1 || cut.pieces.some((piece, at) => cut.counts[at]! > demand[piece]!)) continue;
    pool.add(portion.toHere(cut)!);
  }
  const before = pool.cuts.length;
  tools.effort.spend(A_CUT * tools.pool.cuts.length);
  const filler = new Filler(portion.problem, 'plan', tools.filler.most, tools.filler.idle);
  const found = dive(portion.problem, aim, { ...tools, filler, pool }, daring);
  for (const cut of pool.cuts.slice(before)) tools.pool.add(portion.toWhole(cut));
  return found?.map(portion.toWhole) ?? null;
}

/** Buys the whole boards of the fractional plan, then those most nearly whole: one in any case, others for up to `most` money. */
function buy(master: Master, most: number, daring: number, random: () => number): Cut[] {
  const used = master.used();
  const bought: Cut[] = [];
  let spent = 0;
  const take = (column: number, cut: Cut, wish: number) => {
    const times = Math.min(wish, master.mostOf(cut));
    if (times < 1) return;
    master.fix(column, times);
    for (let time = 0; time < times; time++) bought.push(cut);
    spent += times * master.priceOf(cut.board);
  };
  const liked = used
    .map(({ column, pattern, level }) => ({
      column,
      cut: pattern as Cut,
      level,
      liking: level * (1 - daring * random()),
    }))
    .sort((a, b) => b.liking - a.liking);
  for (const { column, cut, level, liking } of liked) {
    if (level >= 1 - 1e-6 && (daring === 0 || liking >= 0.6)) take(column, cut, Math.floor(level + 1e-6));
  }
  for (const { column, cut, level } of liked) {
    const rest = level - Math.floor(level + 1e-6);
    if (bought.length > 0 && (spent >= most || rest < NEARLY_WHOLE)) continue;
    take(column, cut, 1);
  }
  return bought;
}

/** Takes some boards of the plan back, lossy ones rather, and plans their pieces anew; what is cheaper is kept. */
export function improve(problem: Problem, plan: readonly Cut[], worths: ArrayLike<number>, tools: Tools): Cut[] | null {
  const { random } = tools;
  const loss = plan.map(({ board, pieces, counts }) => {
    const held = pieces.reduce((sum, piece, at) => sum + counts[at]! * worths[piece]!, 0);
    return Math.max(0, 1 - held / (WORTHS_PER_CENT * problem.boards[board]!.price));
  });
  const many = Math.min(plan.length, 2 + Math.floor(random() * (plan.length > MANY_BOARDS ? 8 : 4)));
  const order = plan
    .map((_, at) => ({ at, key: random() ** (1 / (0.02 + loss[at]!)) }))
    .sort((a, b) => b.key - a.key)
    .map(({ at }) => at);
  const taken = new Set(order.slice(0, many));
  const removed = plan.filter((_, at) => taken.has(at));
  const kept = plan.filter((_, at) => !taken.has(at));
  const demand = problem.kinds.map(() => 0);
  for (const { pieces, counts } of removed) pieces.forEach((piece, at) => (demand[piece]! += counts[at]!));
  const limits = problem.boards.map(
    ({ limit }, board) => limit - kept.reduce((sum, cut) => sum + (cut.board === board ? 1 : 0), 0),
  );
  const found = diveFor(problem, demand, limits, costOf(removed, problem) - 1, tools, random() < 0.3 ? 0 : 0.5);
  return found === null ? null : [...kept, ...found];
}

/** What pieces are worth by the wood in them: their step along the board times their width, whole. */
export function areasOf({ kinds, classes }: Problem): number[] {
  const areas = kinds.map(({ step, class: c }) => step * classes[c]!.width);
  const scale = LARGEST_AREA / Math.max(...areas);
  return areas.map((area) => Math.ceil(scale * area));
}

/**
 * A plan made board by board, each the one that holds the most wood for its price. It always comes to an end; pieces for which
 * there are no boards left are `short`.
 */
export function boardByBoard(problem: Problem, effort: Effort): { cuts: Cut[]; short: number[] } {
  const { boards, kinds } = problem;
  const filler = new Filler(problem, 'plan', QUICK_STATES);
  const worths = areasOf(problem);
  const order = kinds.map((_, kind) => kind).sort((a, b) => worths[b]! - worths[a]!);
  const left = [...problem.demand];
  const had = boards.map(({ limit }) => limit);
  const cuts: Cut[] = [];
  for (;;) {
    const prices = boards.map((_, board) => (had[board]! > 0 ? 0.5 : Infinity));
    // Among many kinds the largest, which are the hardest to place, and the smallest, which fill what they leave.
    const open = order.filter((kind) => left[kind]! > 0);
    const chosen = open.length <= LARGEST + SMALLEST ? open : [...open.slice(0, LARGEST), ...open.slice(-SMALLEST)];
    const wanted = kinds.map(() => 0);
    for (const kind of chosen) wanted[kind] = left[kind]!;
    let best: Cut | null = null;
    let most = 0;
    for (const cut of filler.some({ worths, wanted, prices }, 1, effort)) {
      const ratio = worthOf(cut, worths) / boards[cut.board]!.price;
      if (ratio > most) [best, most] = [cut, ratio];
    }
    if (best === null) return { cuts, short: left };
    const { board, pieces, counts } = best;
    const times = Math.min(had[board]!, ...pieces.map((piece, at) => Math.floor(left[piece]! / counts[at]!)));
    for (let time = 0; time < times; time++) cuts.push(best);
    had[board]! -= times;
    pieces.forEach((piece, at) => (left[piece]! -= times * counts[at]!));
  }
}
