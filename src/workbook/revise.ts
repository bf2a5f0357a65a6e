import type { Refused, Revision } from '../revision/compare';
import { compareTakeoffs } from '../revision/listed';
import { takenOver } from '../revision/takeOver';
import type { Schedule } from '../schedule/opening';
import type { BoardNeeds } from '../takeoff/boards';
import { planTakeoff } from '../takeoff/planned';
import { takeoff, type Takeoff } from '../takeoff/takeoff';
import { NOTHING_KEPT, reapply, type Kept } from './refill';
import { numberedAlike } from './revisedList';

export interface Revising {
  /** The takeoff at hand, and what its user changed by hand since it was filled. */
  readonly before: Takeoff;
  readonly kept?: Kept;
  /** The revised list; `ours`: a Takeoff under its own numbers. */
  readonly schedule: Schedule;
  readonly ours: boolean;
  readonly refused?: Refused;
}

export interface Revised {
  readonly revision: Revision;
  /** Its openings are known by their numbers, not by mark and figures. */
  readonly numbered: boolean;
  /** The revised list under the numbers that its openings had. */
  readonly schedule: Schedule;
  /** The same with the changes by hand that still apply, priced; its boards; and sentences on which changes were kept and which were not. */
  readonly taken: Takeoff;
  readonly boards: BoardNeeds;
  readonly said: readonly string[];
}

/**
 * A revised list against the takeoff at hand. An input that was changed by hand and that the revised list leaves as the first
 * list had it is kept, and so is no change: otherwise every answer of the estimator would be told as a change of the builder's.
 */
export function revise({ before, kept = NOTHING_KEPT, schedule, ours, refused = [] }: Revising): Revised {
  const { standards } = before;
  const numbered =
    ours &&
    numberedAlike(
      before.openings.map(({ opening, no }) => ({ ...opening, no })),
      schedule.openings,
    );
  const compared = (openings: Schedule['openings']) => {
    const { taken } = planTakeoff(
      takeoff(numbered ? openings : openings.map((opening) => ({ ...opening, no: undefined })), standards),
    );
    return compareTakeoffs(before, taken, { refused, numbered });
  };
  const first = compared(schedule.openings);
  const numberedList = takenOver(schedule, first, before);
  // A Takeoff of ours holds its changes by hand already.
  const { openings, said } = ours
    ? { openings: numberedList.openings, said: [] }
    : reapply(numberedList.openings, kept, standards);
  const numbersGiven = Math.max(before.numbersGiven, kept.numbersGiven, ...openings.map(({ no }) => no ?? 0));
  const { taken, boards } = planTakeoff(takeoff(openings, standards, { numbersGiven }));
  const changed = said.length > 0 && kept.edits.length > 0;
  return { revision: changed ? compared(openings) : first, numbered, schedule: numberedList, taken, boards, said };
}
