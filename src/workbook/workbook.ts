import type { QuoteCheck } from '../check/quote/checkQuote';
import type { Schedule } from '../schedule/opening';
import { planBoards, type BoardNeeds } from '../takeoff/boards';
import { partsOf } from '../takeoff/parts';
import { planSetups } from '../takeoff/setups';
import type { Takeoff } from '../takeoff/takeoff';
import type { OwnColumn } from './refill';
import { checkSheet } from './checkSheet';
import { scheduleSheet } from './scheduleSheet';
import { setupsSheet } from './setupsSheet';
import type { Sheet, SheetSource } from './sheet';
import { standardsSheet } from './standardsSheet';
import { stockSheet } from './stockSheet';
import { takeoffSource } from './takeoffSheet';

export interface WorkbookOptions {
  /** Native formulas only, so that the workbook calculates where the add-in isn't. */
  readonly plain?: boolean;
  /** The boards to buy, where they have been planned already; a long plan is worked out in the background. */
  readonly boards?: BoardNeeds;
  /** The user's own columns of the takeoff, kept from the last filling. */
  readonly ownColumns?: readonly OwnColumn[];
  /** A quote checked against this takeoff: the workbook then has a Check sheet. */
  readonly check?: QuoteCheck;
}

/** The takeoff workbook, the same value for every host. */
export function workbookSheets(schedule: Schedule, takeoff: Takeoff, options: WorkbookOptions = {}): Sheet[] {
  return workbookSources(schedule, takeoff, options).map(held);
}

/** A sheet with all its rows made. */
export function held(source: SheetSource): Sheet {
  return { ...source, rows: [...source.rows] };
}

/** The same workbook for a file, which takes row after row. */
export function workbookSources(schedule: Schedule, takeoff: Takeoff, options: WorkbookOptions = {}): SheetSource[] {
  const { plain = false, check, boards = planBoards(partsOf(takeoff), takeoff.standards), ownColumns = [] } = options;
  return [
    takeoffSource(takeoff, plain, ownColumns),
    ...(check ? [checkSheet(check, plain)] : []),
    stockSheet(boards, takeoff.standards, plain),
    setupsSheet(planSetups(takeoff), takeoff, plain),
    scheduleSheet(schedule),
    standardsSheet(takeoff.standards),
  ];
}
