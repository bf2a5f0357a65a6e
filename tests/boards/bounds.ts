import loadHighs from 'highs';
import type { PartPricing, WoodOrder, WoodPlan } from '../../src/boards/order';
import { holdsMore, rowClasses } from './fullest';
import { noPlanOf } from './lookedThrough';

export type Highs = Awaited<ReturnType<typeof loadHighs>>;

export interface BoundLook {
  /** What is wrong with the bound. */
  readonly faults: readonly string[];
  /** What could not be told within the checker's own limits. */
  readonly untold: readonly string[];
  /** Pricings the bound rests on, and boards of which all plans were looked through. */
  readonly pricings: number;
  readonly lookedThrough: number;
}

/**
 * An independent look at a bound. It rests on pricings: pieces are worth so much, and no board holds more than so much. That no board does is worked
 * out here anew, by other means (`fullest.ts`). What whole boards that hold the worth of all pieces cost at the least, the mixed-integer
 * solver HiGHS says, which knows nothing of this planner; boards of which all plans were looked through, it looks through again.
 */
export async function lookAtBound(order: WoodOrder, plan: WoodPlan, highs?: Highs): Promise<BoundLook> {
  const solver = highs ?? (await loadHighs());
  const faults: string[] = [];
  const untold: string[] = [];
  const wanted = wantedOf(order, plan);
  const { pricings, lookedThrough } = plan.grounds;
  if (leastCost(order, plan, wanted, solver) < Math.round(plan.lowerBound * 100))
    faults.push(`boards that keep to all its grounds cost less than the bound ${plan.lowerBound}`);
  const classes = rowClasses(order);
  const look = ({ worths, most }: PartPricing, counts?: readonly number[]) => {
    order.boards.forEach((board, at) => {
      if (board.limit === 0 || counts?.[at] === 0 || most[at] === Infinity) return;
      const more = holdsMore(order, classes, board, worths, wanted, most[at]!);
      if (more === true) faults.push(`board ${at} can hold more than ${most[at]}`);
      if (more === null) untold.push(`whether board ${at} can hold more than ${most[at]}`);
    });
  };
  for (const pricing of pricings) look(pricing);
  for (const { counts, pricing } of lookedThrough) {
    look(pricing, counts);
    const none = noPlanOf(order, wanted, counts, pricing, solver);
    if (none === false) faults.push(`there is a plan of the boards ${counts.join()}`);
    if (none === null) untold.push(`whether there is a plan of the boards ${counts.join()}`);
  }
  return { faults, untold, pricings: pricings.length, lookedThrough: lookedThrough.length };
}

/** Pieces of each part that the plan makes. */
export function wantedOf({ parts }: WoodOrder, { tooLarge, short }: WoodPlan): number[] {
  const missing = new Map(short.map(({ part, count }) => [part, count]));
  return parts.map(({ count }, part) => (tooLarge.includes(part) ? 0 : count - (missing.get(part) ?? 0)));
}

/** Cents for whole boards that hold the worth of all pieces by each pricing, and are not among those looked through. */
function leastCost(
  { boards }: WoodOrder,
  { grounds: { pricings, lookedThrough } }: WoodPlan,
  wanted: readonly number[],
  highs: Highs,
): number {
  const rows = pricings.map(({ worths, most }, at) => {
    const total = worths.reduce((sum, worth, part) => sum + worth * wanted[part]!, 0);
    // What holds everything is written as such: infinite amounts are none the solver knows.
    const terms = most.map((each, board) => `${Math.min(1, each / total)} x${board}`);
    return ` p${at}: ${terms.join(' + ')} >= 1`;
  });
  const more: string[] = [];
  const limited = boards.flatMap(({ limit }, at) => (limit === null ? [] : [` x${at} <= ${limit}`]));
  for (;;) {
    const model = [
      `Minimize\n obj: ${boards.map(({ price }, at) => `${Math.round(price * 100)} x${at}`).join(' + ')}`,
      ...['Subject To', ...rows],
      ...(limited.length > 0 ? ['Bounds', ...limited] : []),
      `General\n ${boards.map((_, at) => `x${at}`).join(' ')}`,
      ...(more.length > 0 ? [`Binary\n ${more.join(' ')}`] : []),
      'End',
    ].join('\n');
    const solution = highs.solve(model, {
      ...{ mip_rel_gap: 0, mip_abs_gap: 0, mip_feasibility_tolerance: 1e-9, primal_feasibility_tolerance: 1e-9 },
      output_flag: false,
    });
    if (solution.Status === 'Infeasible') return Infinity;
    if (solution.Status !== 'Optimal') return -Infinity;
    const bought = boards.map((_, at) => Math.round(solution.Columns[`x${at}`]!.Primal));
    const such = lookedThrough.findIndex(({ counts }) => counts.every((count, board) => bought[board]! <= count));
    if (such < 0) return Math.round(solution.ObjectiveValue);
    // Only boards that come into question are ruled out: more of some kind than each of those looked through.
    const { counts } = lookedThrough[such]!;
    const its = counts.map((_, board) => `y${such}_${board}`);
    counts.forEach((count, board) => rows.push(` m${such}_${board}: x${board} - ${count + 1} ${its[board]!} >= 0`));
    more.push(...its);
    rows.push(` e${such}: ${its.join(' + ')} >= 1`);
  }
}
