import { headsOf } from '../../takeoff/ownCost';
import { piecesBySetup } from '../../takeoff/shares';
import type { OpeningTakeoff, Takeoff } from '../../takeoff/takeoff';

/** A takeoff with what its working figures ask of all openings together, worked out once. */
export interface WorkingTakeoff extends Takeoff {
  /** Pieces through each set-up, by its name in lower case. */
  readonly setups: ReadonlyMap<string, number>;
}

export function workingTakeoff(takeoff: Takeoff): WorkingTakeoff {
  const sharers = takeoff.openings.flatMap(({ no, inputs, own }) => (inputs && own ? [{ no, inputs, own }] : []));
  return { ...takeoff, setups: piecesBySetup(sharers) };
}

/** Heads of the whole quantity; 0 where the row needs something. */
export function piecesOf({ inputs }: OpeningTakeoff): number {
  return inputs ? headsOf(inputs) : 0;
}
