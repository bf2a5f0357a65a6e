import { coverTightly } from './cover';
import { costOf, isSimple, patternKey, usedRoom, type Cutting, type Pattern, type Run } from './cutting';
import { firstFitDecreasing } from './decreasing';
import type { Effort } from './effort';
import { Filler } from './filler';
import { generatePatterns } from './generate';
import { Master, SHORT_PRICES } from './master';
import { pricingFrom, spareOf, tightestPricing } from './pricing';
import { proofFrom } from './proof';
import { allOf, partOf, patternToWhole, toHere, toWhole, type Rest } from './rest';

/** Patterns found so far, over the sizes of the whole problem, each once. */
export class Pool {
  readonly patterns: Pattern[] = [];
  private readonly known = new Set<string>();

  add(pattern: Pattern): void {
    const key = patternKey(pattern);
    if (this.known.has(key)) return;
    this.known.add(key);
    this.patterns.push(pattern);
  }
}

export interface DiveControl {
  readonly effort: Effort;
  /** A number from 0 to 1, for choosing differently each time. */
  readonly random: () => number;
}

/** Below so many boards a dive isn't divided any further. */
const FEW_BOARDS = 6;
/** Up to so many boards all tight plans are looked through, as far as patience goes. */
const COVERED_BOARDS = 24;
const COVER_PATIENCE = 3_000;
/** Work of taking one pattern of the pool over. */
const A_PATTERN = 300;

/**
 * Looks for a plan that costs at most `aim`: boards are bought as the fractional plan has them, the fullest fraction first, and
 * patterns are generated anew for what is left, until nothing is. When half the boards are bought the rest is a problem of its
 * own, which is tried several times in different ways before the first half is given up. `'none'`: there is no such plan. Null: none
 * was found.
 */
export function dive(
  cutting: Cutting,
  aim: number,
  pool: Pool,
  control: DiveControl,
  attempt: number,
): Run[] | 'none' | null {
  return descend(allOf(cutting), aim, pool, control, attempt);
}

function complete(rest: Rest, aim: number, pool: Pool, control: DiveControl, tries: number): Run[] | null {
  const { cutting } = rest;
  const quick = firstFitDecreasing(cutting, control.effort);
  if (quick !== null && costOf(quick, cutting.boards) <= aim) return quick.map((run) => toWhole(run, rest));
  for (let attempt = 0; attempt < tries && !control.effort.ended; attempt++) {
    const found = descend(rest, aim, pool, control, attempt);
    if (found === 'none') return null;
    if (found !== null) return found;
  }
  return null;
}

function descend(rest: Rest, aim: number, pool: Pool, control: DiveControl, attempt: number): Run[] | 'none' | null {
  const { cutting } = rest;
  const { sizes, demand, boards } = cutting;
  const one = isSimple(cutting);
  const dearest = Math.max(...boards.map((board) => board.price));
  const master = new Master(
    demand,
    boards.map((board) => board.limit),
    boards.map((board) => board.price),
    SHORT_PRICES * dearest,
    control.effort,
    false,
  );
  const filler = new Filler(
    sizes,
    master.wanted,
    boards.map((board) => board.room),
    control.effort,
  );
  control.effort.spend(A_PATTERN * pool.patterns.length);
  for (const pattern of pool.patterns) {
    const local = toHere(pattern, rest);
    if (local !== null && master.mostOf(local) >= 1) master.add(local);
  }
  const known = master.patterns.length;
  const runs: Run[] = [];
  let left = aim;
  let bought = 0;
  let fresh = true;
  const give = <T>(answer: T): T => {
    for (let at = known; at < master.patterns.length; at++) pool.add(patternToWhole(master.patterns[at]!, rest));
    return answer;
  };
  for (;;) {
    let waste: number[] | null = null;
    if (one) {
      let size = 0;
      for (let i = 0; i < sizes.length; i++) size += master.wanted[i]! * sizes[i]!;
      const spare = left * boards[0]!.room - size;
      if (spare < 0) return give(fresh ? 'none' : null);
      if (spare < boards[0]!.room) {
        waste = [spare];
        master.barWhere((pattern) => boards[0]!.room - usedRoom(pattern, sizes) > spare);
      }
    }
    const generated = generatePatterns(master, cutting, filler, {
      effort: control.effort,
      // A later attempt goes on to the optimum: what is saved now is room for whole boards later.
      goal: one && attempt === 0 ? left + 1e-6 : undefined,
      hopeless: left + 1e-6,
      closeness: one ? 1e-7 : 1e-5,
      waste,
    });
    const proof = () => proofFrom(generated.worths, cutting, filler, waste);
    if (generated.value > left + 1e-6) {
      if (!fresh || control.effort.ended) return give(null);
      const spare = spareOf(left, pricingFrom(proof(), cutting), cutting);
      return give(spare !== null && spare < 0 ? 'none' : null);
    }
    const total = master.used().reduce((sum, { level }) => sum + level, 0);
    if (fresh && attempt === 0 && total <= COVERED_BOARDS) {
      const pricing = tightestPricing(generated.bound, proof(), cutting);
      const cover = coverTightly(cutting, left, pricing, COVER_PATIENCE, control.effort);
      if (cover === 'none') return give('none');
      if (cover !== null) return give(cover.map((run) => toWhole(run, rest)));
    }
    fresh = false;
    const cost = buy(master, boards, attempt, control.random, runs);
    left -= cost.cost;
    bought += cost.count;
    if (cost.count === 0) return give(null);
    const next = partOf(
      rest,
      master.wanted,
      boards.map((_, k) => master.hadOf(k)),
    );
    if (next === null) return give(runs.map((run) => toWhole(run, rest)));
    if (total - cost.count > FEW_BOARDS && bought < (total - cost.count + bought) / 2) {
      if (!master.dualSteps()) return give(null);
      master.dropBarred();
      continue;
    }
    const completed = complete(next, left, pool, control, 3);
    return give(completed === null ? null : [...runs.map((run) => toWhole(run, rest)), ...completed]);
  }
}

/** Buys the whole boards of the fractional plan; where there are none, one of a pattern that is nearly whole. */
function buy(
  master: Master,
  boards: Cutting['boards'],
  attempt: number,
  random: () => number,
  runs: Run[],
): { cost: number; count: number } {
  const used = master.used();
  let cost = 0;
  let count = 0;
  const take = (column: number, pattern: Pattern, wish: number) => {
    const times = Math.min(wish, master.mostOf(pattern));
    if (times < 1) return;
    master.fix(column, times);
    runs.push({ pattern, times });
    cost += times * boards[pattern.board]!.price;
    count += times;
  };
  for (const { column, pattern, level } of used) {
    // Later attempts leave a whole board here and there open to another choice.
    const open = attempt > 0 && random() < 0.3 ? 1 : 0;
    if (level >= 1 - 1e-6) take(column, pattern, Math.floor(level + 1e-6) - open);
  }
  if (count > 0) return { cost, count };
  const liking = new Map(used.map((use) => [use, attempt === 0 ? use.level : use.level * (0.5 + random())]));
  used.sort((a, b) => liking.get(b)! - liking.get(a)!);
  for (const { column, pattern, level } of used) if (count === 0 || level > 0.85) take(column, pattern, 1);
  return { cost, count };
}
