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
  const short = new Map(plan.short.map(({ part, count }) => [part, count]));
  const wanted = order.parts.map(({ count }, part) =>
    plan.tooLarge.includes(part) ? 0 : count - (short.get(part) ?? 0),
  );
  const { pricings, lookedThrough } = plan.grounds;
  const needed = neededOf(order, plan, wanted, solver);
  if (needed === null) faults.push(`boards that keep to all its grounds cost less than the bound ${plan.lowerBound}`);
  const classes = rowClasses(order);
  const look = ({ worths, most }: PartPricing, counts?: readonly number[]) => {
    order.boards.forEach((board, at) => {
      if (board.limit === 0 || counts?.[at] === 0 || most[at] === Infinity) return;
      const more = holdsMore(order, classes, board, worths, wanted, most[at]!);
      if (more === true) faults.push(`board ${at} can hold more than ${most[at]}`);
      if (more === null) untold.push(`whether board ${at} can hold more than ${most[at]}`);
    });
  };
  for (const at of needed ?? []) look(pricings[at]!);
  for (const { counts, pricing } of lookedThrough) {
    look(pricing, counts);
    const none = noPlanOf(order, wanted, counts, pricing, solver);
    if (none === false) faults.push(`there is a plan of the boards ${counts.join()}`);
    if (none === null) untold.push(`whether there is a plan of the boards ${counts.join()}`);
  }
  return { faults, untold, pricings: needed?.length ?? 0, lookedThrough: lookedThrough.length };
}

/** The pricings that the bound needs, the fewest from the front that are found without looking for long; null: all of them don't do. */
function neededOf(order: WoodOrder, plan: WoodPlan, wanted: readonly number[], highs: Highs): number[] | null {
  const all = [...plan.grounds.pricings.keys()];
  const enough = (some: readonly number[]) =>
    leastCost(order, plan, some, wanted, highs) >= Math.round(plan.lowerBound * 100);
  if (plan.lowerBound <= 0) return [];
  if (!enough(all)) return null;
  let needed = all;
  for (let drop = all.length - 1; drop >= 0; drop--) {
    const fewer = needed.filter((at) => at !== drop);
    if (fewer.length > 0 && enough(fewer)) needed = fewer;
  }
  return needed;
}

/** Cents for whole boards that hold the worth of all pieces by each of these, and are not among those looked through. */
function leastCost(
  { boards }: WoodOrder,
  { grounds: { pricings, lookedThrough } }: WoodPlan,
  some: readonly number[],
  wanted: readonly number[],
  highs: Highs,
): number {
  const rows: string[] = [];
  for (const at of some) {
    const { worths, most } = pricings[at]!;
    const total = worths.reduce((sum, worth, part) => sum + worth * wanted[part]!, 0);
    // What holds everything is written as such: infinite amounts are none the solver knows.
    const terms = most.map((each, board) => `${Math.min(1, each / total)} x${board}`);
    rows.push(` p${at}: ${terms.join(' + ')} >= 1`);
  }
  const others: string[] = [];
  lookedThrough.forEach(({ counts }, at) => {
    counts.forEach((count, board) => rows.push(` m${at}_${board}: x${board} - ${count + 1} y${at}_${board} >= 0`));
    const more = counts.map((_, board) => `y${at}_${board}`);
    others.push(...more);
    rows.push(` e${at}: ${more.join(' + ')} >= 1`);
  });
  const limited = boards.flatMap(({ limit }, at) => (limit === null ? [] : [` x${at} <= ${limit}`]));
  const model = [
    `Minimize\n obj: ${boards.map(({ price }, at) => `${Math.round(price * 100)} x${at}`).join(' + ')}`,
    ...['Subject To', ...rows],
    ...(limited.length > 0 ? ['Bounds', ...limited] : []),
    `General\n ${boards.map((_, at) => `x${at}`).join(' ')}`,
    ...(others.length > 0 ? [`Binary\n ${others.join(' ')}`] : []),
    'End',
  ].join('\n');
  const solution = highs.solve(model, {
    ...{ mip_rel_gap: 0, mip_abs_gap: 0, mip_feasibility_tolerance: 1e-9, primal_feasibility_tolerance: 1e-9 },
    output_flag: false,
  });
  if (solution.Status === 'Infeasible') return Infinity;
  return solution.Status === 'Optimal' ? Math.round(solution.ObjectiveValue) : -Infinity;
}
