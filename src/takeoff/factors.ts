import { roundTo } from '../rounding';
import type { BoardNeeds } from './boards';
import { boardsToBuy } from './boardsToBuy';
import type { WoodFactors } from './price';
import type { Takeoff } from './takeoff';

/**
 * What a plan buys for each money of wood in the rows, spare and test pieces included: with it the material of all rows comes
 * to what the boards cost. Null for a wood that the plan doesn't hold.
 */
export function factorsOf(takeoff: Takeoff, boards: BoardNeeds): WoodFactors {
  const bought = new Map<string, number>();
  for (const { plan, cost } of boardsToBuy(boards, takeoff.standards)) {
    const name = nameOf(plan.species, plan.thickness);
    bought.set(name, (bought.get(name) ?? 0) + cost);
  }
  const wood = new Map<string, number>();
  for (const { own, ownCost, share } of takeoff.openings) {
    if (own === null || ownCost === null || share === null) continue;
    const name = own.stock.toLowerCase();
    wood.set(name, (wood.get(name) ?? 0) + ownCost.wood + share.wood);
  }
  return (stock) => {
    const name = stock.toLowerCase();
    const money = bought.get(name);
    const rows = wood.get(name);
    return money === undefined || rows === undefined || !(rows > 0) ? null : money / rows;
  };
}

/** Factors that a person holds for a job already quoted, by the wood's name in lower case. */
export type HeldFactors = ReadonlyMap<string, number>;

/** A plan's factors, and in their place those that are held. A wood that no plan holds has none to hold. */
export function withHeld(planned: WoodFactors, held: HeldFactors): WoodFactors {
  return (stock) => {
    const factor = planned(stock);
    return factor === null ? null : (held.get(stock.toLowerCase()) ?? factor);
  };
}

function nameOf(species: string, thickness: number): string {
  return `${species} ${roundTo(4, thickness)}`.toLowerCase();
}
