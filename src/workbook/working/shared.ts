import { guideSetsOf, type GuideSets } from '../../takeoff/guideSets';
import { headsOf } from '../../takeoff/ownCost';
import { piecesBySetup } from '../../takeoff/shares';
import { sharersOf, type OpeningTakeoff, type Takeoff } from '../../takeoff/takeoff';

/** A takeoff with what its working figures ask of all openings together, worked out once. */
export interface WorkingTakeoff extends Takeoff {
  /** Pieces through each set-up, by its name in lower case. */
  readonly setups: ReadonlyMap<string, number>;
  readonly sets: GuideSets;
  /** Most kinds of ring that any opening has. */
  readonly ringKinds: number;
}

export function workingTakeoff(takeoff: Takeoff): WorkingTakeoff {
  const sharers = sharersOf(takeoff.openings);
  const sets = guideSetsOf(sharers, takeoff.standards);
  const ringKinds = takeoff.openings.reduce((most, { curve }) => Math.max(most, curve?.rings.length ?? 0), 0);
  return { ...takeoff, sets, ringKinds, setups: piecesBySetup(sharers, sets) };
}

/** Heads of the whole quantity; 0 where the row needs something. */
export function piecesOf({ inputs }: OpeningTakeoff): number {
  return inputs ? headsOf(inputs) : 0;
}
