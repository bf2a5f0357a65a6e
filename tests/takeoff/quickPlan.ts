import type { Schedule } from '../../src/schedule/opening';
import { planTakeoff, type PlannedTakeoff } from '../../src/takeoff/planned';
import type { Takeoff } from '../../src/takeoff/takeoff';
import type { Sheet } from '../../src/workbook/sheet';
import { workbookSheets, type WorkbookOptions } from '../../src/workbook/workbook';

/** A takeoff planned with the least search there is, for a test that asks nothing of how good a plan is. */
export function quickPlan(takeoff: Takeoff): PlannedTakeoff {
  return planTakeoff(takeoff, { work: 1 });
}

/** Its whole workbook. */
export function quickSheets(schedule: Schedule, takeoff: Takeoff, options: WorkbookOptions = {}): Sheet[] {
  return workbookSheets(schedule, takeoff, { boards: quickPlan(takeoff).boards, ...options });
}
