import { toCents } from '../rounding';
import type { Standards } from '../standards';
import type { BoardPlan } from './boardPlan';
import type { BoardNeeds } from './boards';

/** Boards of one size, over all plans. */
export interface BoardsToBuy {
  /** Of the plans these boards are for, the first: it names their wood and width. */
  readonly plan: BoardPlan;
  readonly length: number;
  readonly price: number;
  readonly planned: number;
  /** With the allowance for defects and waste. */
  readonly bought: number;
  /** Money for the boards bought. */
  readonly cost: number;
}

/**
 * The boards to buy by size: those of the plans, and the allowance for waste. The allowance is of all boards of a wood, rounded
 * up to whole boards once: from the first size on, as soon as it comes to another board, one more of that size is bought.
 */
export function boardsToBuy({ plans }: BoardNeeds, { waste }: Standards): BoardsToBuy[] {
  const sizes = new Map<string, { plan: BoardPlan; length: number; price: number; planned: number }>();
  for (const plan of plans) {
    for (const { length, count, price } of plan.buys) {
      const key = [woodOf(plan), plan.quarters, plan.width, length].join('|');
      const size = sizes.get(key) ?? { plan, length, price, planned: 0 };
      size.planned += count;
      sizes.set(key, size);
    }
  }
  const inOrder = [...sizes.values()].sort(
    (one, other) =>
      one.plan.species.localeCompare(other.plan.species, 'en') ||
      one.plan.thickness - other.plan.thickness ||
      one.plan.width - other.plan.width ||
      one.length - other.length,
  );
  const ofWood = new Map<string, { planned: number; bought: number }>();
  return inOrder.map((size) => {
    const wood = woodOf(size.plan);
    const before = ofWood.get(wood) ?? { planned: 0, bought: 0 };
    const planned = before.planned + size.planned;
    // The sheet's formula takes off the same hair.
    const bought = Math.ceil(planned * (1 + waste) - 1e-9) - before.bought;
    ofWood.set(wood, { planned, bought: before.bought + bought });
    return { ...size, bought, cost: toCents(bought * size.price) };
  });
}

function woodOf({ species, thickness }: BoardPlan): string {
  return `${species.toLowerCase()}|${thickness}`;
}
