import { planBoards, type BoardControl, type BoardNeeds } from './boards';
import { factorsOf, withHeld, type HeldFactors } from './factors';
import { partsOf } from './parts';
import { withFactors, type Takeoff } from './takeoff';

/** A takeoff whose prices pay for the boards that are bought, and the plan of those boards. */
export interface PlannedTakeoff {
  readonly taken: Takeoff;
  readonly boards: BoardNeeds;
}

/** Plans the boards of a takeoff, and prices it by what they cost; a wood whose factor is held, by that. */
export function planTakeoff(
  takeoff: Takeoff,
  control: BoardControl = {},
  held: HeldFactors = new Map(),
): PlannedTakeoff {
  const boards = planBoards(partsOf(takeoff), takeoff.standards, control);
  return { taken: withFactors(takeoff, withHeld(factorsOf(takeoff, boards), held)), boards };
}
