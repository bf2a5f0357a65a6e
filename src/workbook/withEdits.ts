import type { Schedule } from '../schedule/opening';
import type { Standards } from '../standards';
import { planTakeoff } from '../takeoff/planned';
import { takeoff } from '../takeoff/takeoff';
import { pricesSinceFirst } from './firstPrices';
import { heldFactors } from './planBlock';
import { keptFrom, NOTHING_KEPT, reapply, type Before } from './refill';

/** What a workbook is filled from: a list, the shop's settings, and the takeoff as it stands, where there is one. */
export interface Filling {
  readonly schedule: Schedule;
  readonly standards: Standards;
  readonly before: Before | null;
}

/** The takeoff of a schedule with what its user has changed by hand in the workbook; told before its boards are planned. */
export function takeoffWithEdits(filling: Filling, onPlanning?: () => void) {
  const { taken: unplanned, said, ownColumns, firstPrices } = unplannedTakeoff(filling);
  const held = heldFactors(filling.before?.stock ?? null);
  onPlanning?.();
  const { taken, boards } = planTakeoff(unplanned, {}, held);
  const repriced = firstPrices === undefined ? [] : pricesSinceFirst(firstPrices, taken);
  return { taken, boards, held, said, repriced, ownColumns };
}

/** The same before its boards are planned, which takes seconds: enough for whatever doesn't rest on boards, as set-ups. */
export function unplannedTakeoff({ schedule, standards, before }: Filling) {
  const kept = before ? keptFrom(before, standards.unit) : NOTHING_KEPT;
  const { openings, said } = reapply(schedule.openings, kept, standards);
  const taken = takeoff(openings, standards, { numbersGiven: kept.numbersGiven });
  return { taken, said, ownColumns: kept.ownColumns, firstPrices: kept.firstPrices };
}
