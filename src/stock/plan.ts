import { ok, refuse, type Result } from '../result';
import { certificateOf, type Certificate } from './certificate';
import { Effort } from './effort';
import { gathered, usedRoom, type Run } from './cutting';
import { onGrid } from './grid';
import { readOrder, type CheckedOrder, type StockOrder } from './order';
import { search, type Found } from './search';

/** How long to look, and who is told. */
export interface PlanControl {
  /** Work to look for better plans; left out: `USUAL_WORK`, or without end where `deadlineMs` is given. */
  readonly effort?: Effort | undefined;
  /** Milliseconds after which the best plan so far is given; left out: `GUARD_MS`, more than the usual work needs anywhere. */
  readonly deadlineMs?: number | undefined;
  /** Told about each better plan or bound. */
  readonly onProgress?: ((progress: PlanProgress) => void) | undefined;
  /** Asked now and then; true ends the work with the best plan so far. */
  readonly stopped?: (() => boolean) | undefined;
  /** The clock, in milliseconds; left out: `Date.now`. */
  readonly now?: (() => number) | undefined;
}

export interface PlanProgress {
  readonly boards: number;
  readonly cost: number;
  readonly lowerBound: number;
  readonly elapsedMs: number;
  /** The best plan so far. */
  readonly plan: StockPlan;
}

/** Boards cut alike. */
export interface BoardsAlike {
  readonly count: number;
  /** Length of the board. */
  readonly stock: number;
  /** Lengths and how many of each, longest first. */
  readonly cuts: readonly (readonly [length: number, count: number])[];
  /** What is left between the trims once the last piece is sawn off; 0 where the last cut leaves nothing. */
  readonly offcut: number;
}

export interface StockPlan {
  readonly boards: number;
  readonly cost: number;
  /** What a plan is measured by: boards where there is one kind of board, else cost. `lowerBound` and `gap` are in it. */
  readonly measure: 'boards' | 'cost';
  /** No plan whatever takes less than this. */
  readonly lowerBound: number;
  /** The plan reaches the bound: none is better. */
  readonly proven: boolean;
  /** How far above the bound the plan is; 0 where proven. */
  readonly gap: number;
  /** Share of the bought length that becomes pieces, 0 to 1. */
  readonly yield: number;
  readonly plan: readonly BoardsAlike[];
  /** The clock or the user ended the search: another time, or on another machine, it may come to another plan. */
  readonly interrupted: boolean;
  /** Whole numbers that prove `lowerBound`. */
  readonly certificate: Certificate;
}

/** Work put into a plan that nobody waits longer for: two seconds or so. */
const USUAL_WORK = 1e9;
/** Ends a search on a machine so slow that the work, which is counted, takes this long. */
export const GUARD_MS = 60_000;

/**
 * A plan for the order: the fewest boards where one kind is on sale, the least cost where there are several. The plan is valid,
 * makes exactly the pieces wanted, and comes with the least any plan can take and the whole numbers that prove it.
 *
 * Refuses orders that make no sense, pieces longer than every board and orders the boards on hand can't fill, in one sentence.
 * Method: first-fit decreasing, dual feasible bounds, column generation (Gilmore and Gomory), dives on the patterns found;
 * where prices differ, boards counted whole in the bound and a few boards at a time planned anew.
 * `planStock({ lengths: [24, 17], quantities: [10, 4], stock: [96], kerf: 0.125 })` buys 4 boards, proven.
 */
export function planStock(order: StockOrder & PlanControl): Result<StockPlan> {
  const checked = readOrder(order);
  if (!checked.ok) return checked;
  const now = order.now ?? Date.now;
  const start = now();
  const deadline = start + Math.max(0, order.deadlineMs ?? GUARD_MS);
  const effort =
    order.effort ??
    new Effort(
      order.deadlineMs === undefined ? USUAL_WORK : Infinity,
      () => now() >= deadline || (order.stopped?.() ?? false),
    );
  const found = search(checked.value.cutting, {
    effort,
    better: (better) => {
      if (!order.onProgress || better.runs === null) return;
      const plan = asPlan(better.runs, better, checked.value, false);
      const { boards, cost, lowerBound } = plan;
      order.onProgress({ boards, cost, lowerBound, elapsedMs: now() - start, plan });
    },
  });
  if (found.runs === null) return refuse(shortage(checked.value, found.impossible));
  return ok(asPlan(found.runs, found, checked.value, effort.interrupted));
}

function boardsIn(runs: readonly Run[]): number {
  return runs.reduce((sum, run) => sum + run.times, 0);
}

/** Frees a sum of prices of the noise in its last places. */
function withoutNoise(cost: number): number {
  return Number(cost.toPrecision(14));
}

function asPlan(runs: readonly Run[], found: Found, order: CheckedOrder, interrupted: boolean): StockPlan {
  const { lengths, stock, prices, cutting, measure, priceSteps } = order;
  const { bound } = found;
  const boards = boardsIn(runs);
  const units = runs.reduce((sum, run) => sum + run.times * cutting.boards[run.pattern.board]!.price, 0);
  const bought = runs.reduce((sum, run) => sum + run.times * stock[run.pattern.board]!, 0);
  const wanted = lengths.reduce((sum, length, at) => sum + length * cutting.demand[at]!, 0);
  return {
    boards,
    cost: withoutNoise(measure === 'boards' ? boards * prices[0]! : units / priceSteps),
    measure,
    lowerBound: withoutNoise(bound / priceSteps),
    proven: units <= bound,
    gap: withoutNoise((units - bound) / priceSteps),
    yield: wanted / bought,
    plan: gathered(runs).map((run) => boardsAlike(run, order)),
    interrupted: interrupted && units > bound,
    certificate: certificateOf(found, order),
  };
}

function boardsAlike({ pattern, times }: Run, { lengths, stock, cutting, grid, kerf }: CheckedOrder): BoardsAlike {
  const left = cutting.boards[pattern.board]!.room - usedRoom(pattern, cutting.sizes) - onGrid(kerf, grid);
  return {
    count: times,
    stock: stock[pattern.board]!,
    cuts: pattern.pieces.map((piece, at) => [lengths[piece]!, pattern.counts[at]!] as const),
    offcut: Math.max(0, left) / grid.steps,
  };
}

function shortage({ stock }: CheckedOrder, certain: boolean): string {
  const boards = `the boards on hand (${stock.join(', ')})`;
  return certain
    ? `${boards} don't hold all the pieces`
    : `no plan that ${boards} suffice for was found in the time given`;
}
