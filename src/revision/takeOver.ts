import type { Opening, Schedule } from '../schedule/opening';
import type { Takeoff } from '../takeoff/takeoff';
import type { Revision } from './compare';

/** A revised schedule whose openings have the numbers they had; new ones get the next numbers of the workbook. */
export function takenOver(schedule: Schedule, { matches }: Pick<Revision, 'matches'>, before: Takeoff): Schedule {
  let next = before.numbersGiven;
  const openings = schedule.openings.map((opening, at): Opening => {
    const match = matches[at] ?? null;
    return { ...opening, no: match === null ? ++next : before.openings[match]!.no };
  });
  return { ...schedule, openings };
}
