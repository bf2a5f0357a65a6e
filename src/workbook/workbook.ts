import type { QuoteCheck } from '../check/quote/checkQuote';
import { BLANK_JOB, type Job } from '../job/fields';
import { proposalFrom } from '../job/offered';
import type { Schedule } from '../schedule/opening';
import { costKinds } from '../takeoff/costKinds';
import { planBoards, type BoardNeeds } from '../takeoff/boards';
import { factorsOf, withHeld, type HeldFactors } from '../takeoff/factors';
import { partsOf } from '../takeoff/parts';
import type { SegmentSavings } from '../takeoff/segmentChange';
import { planSetups } from '../takeoff/setups';
import { withFactors, type Takeoff } from '../takeoff/takeoff';
import type { OwnColumn } from './refill';
import { checkSheet } from './checkSheet';
import { olderThanPlan, planMade, withPlan, type StandardsRanges } from './planBlock';
import { liveProposal } from './proposal/live';
import { proposalDrawings } from './proposal/drawings';
import { proposalSheet } from './proposal/sheet';
import { purchaseLines, purchaseSheet } from './purchaseSheet';
import { scheduleSheet } from './scheduleSheet';
import { setupsSheet } from './setupsSheet';
import type { Sheet, SheetSource } from './sheet';
import { standardsRanges, standardsSheet } from './standardsSheet';
import { stockSheet } from './stockSheet';
import { ticketsOf } from '../tickets/tickets';
import { ticketsSheet } from './ticketsSheet';
import { takeoffSource } from './takeoff/sheet';
import { workingFigure, workingSource } from './working/sheet';

export interface WorkbookOptions {
  /** Native formulas only, so that the workbook calculates where the add-in isn't. */
  readonly plain?: boolean;
  /** The boards to buy, where they have been planned already; a long plan is worked out in the background. */
  readonly boards?: BoardNeeds;
  /** Wood factors that are held for a job already quoted. */
  readonly held?: HeldFactors;
  /** The user's own columns of the takeoff, kept from the last filling. */
  readonly ownColumns?: readonly OwnColumn[];
  /** A quote checked against this takeoff: the workbook then has a Check sheet. */
  readonly check?: QuoteCheck;
  /** The job at hand; it stands on the Standards sheet. */
  readonly job?: Job;
  /** Whether the workbook has a Proposal sheet, whose amounts follow the Takeoff. */
  readonly proposal?: boolean;
  /** For a file: with the drawings that only files show. */
  readonly pictures?: boolean;
  /** What a revised list changed. */
  readonly revision?: Sheet;
  /** Where other numbers of segments cost less; null: nobody asked. */
  readonly savings?: SegmentSavings | null;
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
  const {
    plain = false,
    check,
    ownColumns = [],
    job = BLANK_JOB,
    held: heldFactors = new Map(),
    pictures,
    savings,
  } = options;
  const boards = options.boards ?? planBoards(partsOf(takeoff), takeoff.standards);
  const planned = withFactors(takeoff, withHeld(factorsOf(takeoff, boards), heldFactors));
  return [
    takeoffSource(planned, plain ? workingFigure(takeoff.openings.length) : null, ownColumns, job),
    ...(check ? [checkSheet(check, plain)] : []),
    ...(options.revision ? [options.revision] : []),
    ...(options.proposal ? [liveProposalSheet(planned, job)] : []),
    ...planSheets(planned, boards, {
      ...{ plain, held: heldFactors, rowsOnSheet: planned.openings.length, pictures, savings },
    }),
    scheduleSheet(schedule, planned, plain),
    ...(plain ? [workingSource(planned)] : []),
    standardsSheet(takeoff.standards, job, costKinds(planned)),
  ];
}

/** The proposal whose amounts follow the Takeoff of the same workbook. */
export function liveProposalSheet(takeoff: Takeoff, job: Job): Sheet {
  const proposal = proposalFrom(takeoff, job);
  return proposalSheet(proposal, liveProposal(proposal, takeoff), proposalDrawings(proposal, takeoff));
}

export interface PlanOptions {
  readonly plain: boolean;
  readonly held: HeldFactors;
  /** The settings and lists that it is made from, where a sheet has them already. */
  readonly made?: StandardsRanges | undefined;
  /** Rows that the Takeoff has for openings, blank ones among them too. */
  readonly rowsOnSheet: number;
  /** With what each station of the bench needs, and the boards to buy in a form to send to a yard. */
  readonly tickets?: boolean;
  /** See `WorkbookOptions`. */
  readonly pictures?: boolean | undefined;
  readonly savings?: SegmentSavings | null | undefined;
}

/** The sheets that are planned: values, that say themselves when they are older than the takeoff. */
export function planSheets(
  takeoff: Takeoff,
  boards: BoardNeeds,
  { plain, held, made, rowsOnSheet, tickets = false, pictures = false, savings = null }: PlanOptions,
): Sheet[] {
  const { standards } = takeoff;
  const plan = { boards, planned: factorsOf(takeoff, boards), held };
  const stock = stockSheet(boards, standards, { plain, pictures, savings });
  const ranges = made ?? standardsRanges(standards);
  return [
    withPlan(stock, takeoff, plan, ranges, rowsOnSheet),
    setupsSheet(planSetups(takeoff), takeoff),
    ...(tickets ? benchSheets(takeoff, boards, planMade(takeoff, boards, ranges)) : []),
  ];
}

function benchSheets(takeoff: Takeoff, boards: BoardNeeds, made: string): Sheet[] {
  const { standards } = takeoff;
  const older = (what: string) => olderThanPlan(made, what);
  return [
    ticketsSheet(ticketsOf(takeoff, boards), standards.unit, 'the Takeoff', older('the tickets')),
    purchaseSheet(purchaseLines(boards, standards), standards.unit, false, older('the list')),
  ];
}
