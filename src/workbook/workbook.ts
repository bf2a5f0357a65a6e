import type { QuoteCheck } from '../check/quote/checkQuote';
import type { Schedule } from '../schedule/opening';
import { planBoards, type BoardNeeds } from '../takeoff/boards';
import { factorsOf } from '../takeoff/factors';
import { partsOf } from '../takeoff/parts';
import { planSetups } from '../takeoff/setups';
import { withFactors, type Takeoff } from '../takeoff/takeoff';
import type { OwnColumn } from './refill';
import { checkSheet } from './checkSheet';
import { withPlan } from './planBlock';
import { scheduleSheet } from './scheduleSheet';
import { setupsSheet } from './setupsSheet';
import type { Sheet, SheetSource } from './sheet';
import { standardsRanges, standardsSheet } from './standardsSheet';
import { stockSheet } from './stockSheet';
import { takeoffSource } from './takeoff/sheet';
import { workingFigure, workingSource } from './working/sheet';

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
  const { plain = false, check, ownColumns = [] } = options;
  const boards = options.boards ?? planBoards(partsOf(takeoff), takeoff.standards);
  const planned = withFactors(takeoff, factorsOf(takeoff, boards));
  return [
    takeoffSource(planned, plain ? workingFigure(takeoff.openings.length) : null, ownColumns),
    ...(check ? [checkSheet(check, plain)] : []),
    ...planSheets(planned, boards, plain),
    scheduleSheet(schedule, planned, plain),
    ...(plain ? [workingSource(planned)] : []),
    standardsSheet(takeoff.standards),
  ];
}

/** The sheets that are planned: values, that say themselves when they are older than the takeoff. */
export function planSheets(takeoff: Takeoff, boards: BoardNeeds, plain: boolean): Sheet[] {
  const { standards } = takeoff;
  const factors = factorsOf(takeoff, boards);
  return [
    withPlan(stockSheet(boards, standards, plain), takeoff, factors, standardsRanges(standards)),
    setupsSheet(planSetups(takeoff), takeoff),
  ];
}
