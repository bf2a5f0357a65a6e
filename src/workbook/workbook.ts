import type { Schedule } from '../schedule/opening';
import type { Takeoff } from '../takeoff/takeoff';
import { scheduleSheet } from './scheduleSheet';
import type { Sheet } from './sheet';
import { standardsSheet } from './standardsSheet';
import { takeoffSheet } from './takeoffSheet';

export interface WorkbookOptions {
  /** Native formulas only, so that the workbook calculates where the add-in isn't. */
  readonly plain?: boolean;
}

/** The takeoff workbook, the same value for every host. */
export function workbookSheets(schedule: Schedule, takeoff: Takeoff, { plain = false }: WorkbookOptions = {}): Sheet[] {
  return [takeoffSheet(takeoff, plain), scheduleSheet(schedule), standardsSheet(takeoff.standards)];
}
