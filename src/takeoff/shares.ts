import type { Inputs } from './inputs';
import type { OwnFigures } from './ownFigures';

/**
 * How many pieces each set-up and how many heads each knife serves: what their cost is shared by. Names
 * are alike whatever their letter case, as in a spreadsheet, and are held in lower case.
 */
export interface Shares {
  /** Heads by knife. */
  readonly knives: ReadonlyMap<string, number>;
  /** Pieces by guide set, and by straight set-up. */
  readonly setups: ReadonlyMap<string, number>;
}

export function sharesOf(openings: readonly { readonly inputs: Inputs; readonly own: OwnFigures }[]): Shares {
  const knives = new Map<string, number>();
  const setups = new Map<string, number>();
  const add = (to: Map<string, number>, key: string, count: number) =>
    to.set(key.toLowerCase(), (to.get(key.toLowerCase()) ?? 0) + count);
  for (const { inputs, own } of openings) {
    add(knives, own.knife, inputs.quantity);
    for (const plan of [own.crown, own.haunch]) {
      if (plan) add(setups, plan.guide, inputs.quantity * plan.ring.count);
    }
    if (own.straight) add(setups, own.straight.setup, inputs.quantity * own.straight.count);
  }
  return { knives, setups };
}
