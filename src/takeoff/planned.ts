import { planBoards, type BoardControl, type BoardNeeds } from './boards';
import { factorsOf } from './factors';
import { partsOf } from './parts';
import { withFactors, type Takeoff } from './takeoff';

/** A takeoff whose prices pay for the boards that are bought, and the plan of those boards. */
export interface PlannedTakeoff {
  readonly taken: Takeoff;
  readonly boards: BoardNeeds;
}

/** Plans the boards of a takeoff, and prices it by what they cost. */
export function planTakeoff(takeoff: Takeoff, control: BoardControl = {}): PlannedTakeoff {
  const boards = planBoards(partsOf(takeoff), takeoff.standards, control);
  return { taken: withFactors(takeoff, factorsOf(takeoff, boards)), boards };
}
