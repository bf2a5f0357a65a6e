import type { QuoteCheck } from '../../src/check/quote';
import type { QuoteChoices } from '../../src/quote/headings';
import { BLANK_JOB, type Job } from '../../src/job/fields';
import type { Refused, Revision } from '../../src/revision/compare';
import type { Kept } from '../../src/workbook/refill';
import type { MeaningKey } from '../../src/schedule/meanings';
import type { PdfTable } from '../../src/pdf/pdfTable';
import type { UnreadPage } from '../../src/pdf/readPdf';
import type { Answers, Reading, Schedule, Table } from '../../src/schedule/opening';
import type { Standards } from '../../src/standards';
import type { Takeoff } from '../../src/takeoff/takeoff';
import type { SheetName } from '../../src/workbook/sheet';
import type { TakeoffTotals } from '../../src/workbook/takeoff/totals';
import type { CellAt, Selection } from '../host';

/** The four steps of a takeoff, in the order they are walked. */
export const STEPS = ['list', 'headings', 'openings', 'fill'] as const;
export type Step = (typeof STEPS)[number];

/** What the pane shows: the takeoff, or one of its tools. */
export type Place = 'takeoff' | 'figure' | 'cell' | 'quote' | 'drawings' | 'job' | 'shop';

/** A file for the user to keep. */
export interface TextFile {
  readonly name: string;
  readonly content: string;
  /** Media type. */
  readonly type: string;
}

/** Something under way that the user can watch and, where `canStop`, stop. */
export interface Work {
  readonly what: string;
  readonly done: number;
  /** Null: no telling how much there is. */
  readonly of: number | null;
  readonly canStop: boolean;
}

/** One sentence to the user. An error stays until the next deed. */
export interface Notice {
  readonly tone: 'error' | 'done';
  readonly text: string;
}

/** What was answered to a question about the list, or typed in place of a figure it gave. */
export interface Answered {
  /** As the reader of schedules takes it; a length has its unit, so that it stays as long in a workbook that changes to millimeters. */
  readonly text: string;
  /** What was asked. */
  readonly about: string;
}

/** By question, or `field@row`. */
export type AnswersGiven = Readonly<Record<string, Answered>>;

export function answersOf(given: AnswersGiven): Answers {
  return Object.fromEntries(Object.entries(given).map(([key, { text }]) => [key, text]));
}

/** A list as read; one that was taken over from a comparison may have no questions. */
export type ListRead = Schedule & Partial<Reading>;

/** What stands in the workbook after a fill. */
export interface Filled extends TakeoffTotals {
  readonly sheets: readonly { readonly name: string; readonly address: string; readonly about: string }[];
  /** What was kept of an earlier filling, a sentence each. */
  readonly said: readonly string[];
  /** How the prices of a workbook of the first version have changed, and why. */
  readonly repriced: readonly string[];
}

/** A PDF whose tables are looked at. */
export interface ShownPdf {
  readonly name: string;
  readonly tables: readonly PdfTable[];
  readonly unread: readonly UnreadPage[];
  /** Place in `tables` of the one that is marked. */
  readonly chosen: number;
}

export interface PaneState {
  readonly place: Place;
  readonly step: Step;
  readonly work: Work | null;
  readonly notice: Notice | null;
  readonly standards: Standards;
  /** True until settings are kept in this workbook: the example is offered. */
  readonly firstUse: boolean;
  /** The standards were replaced as a whole: until the next filling the Standards sheet still holds those of before. */
  readonly shopAhead: boolean;
  readonly sheetNames: readonly string[];
  /** The tables a file held, where the user has to choose one. */
  readonly tables: readonly Table[];
  /** The selected cells, some of whose rows are hidden, until the user says whether these are to be read. */
  readonly partlyHidden: Selection | null;
  /** The PDF of which a table is to be chosen. */
  readonly pdf: ShownPdf | null;
  readonly table: Table | null;
  /** Source column (from 0) → meaning the user chose against ours. */
  readonly choices: Readonly<Record<number, MeaningKey>>;
  /** The table is a Takeoff of ours. */
  readonly ours: boolean;
  /** It is this workbook's own, so that the builder's words on the Schedule sheet are those of its rows. */
  readonly scheduleStands: boolean;
  /** As read from the table, with the answers. */
  readonly schedule: ListRead | null;
  readonly answers: AnswersGiven;
  /** Why an answer was not taken, by its key. */
  readonly refused: Readonly<Record<string, string>>;
  /** Place in the list of the opening that is open for a closer look. A source row may hold several openings. */
  readonly openAt: number | null;
  /** How many of the ready openings are listed. */
  readonly listed: number;
  /** Sheets that hold something and would be written over; null until asked. */
  readonly inTheWay: readonly SheetName[] | null;
  /** Figures of the Takeoff that would be written over, too: mark and heading. */
  readonly typedOver: readonly string[];
  /** Files whose text is shown to be copied, where the host saves none. */
  readonly shownFiles: readonly TextFile[];
  readonly plain: boolean;
  readonly filled: Filled | null;
  /** The cell selected in the grid, while the pane follows it. */
  readonly cell: CellAt | null;
  readonly plans: Plans;
  /** The last quote checked against this list. */
  readonly quote: QuoteCheck | null;
  /** The table it was read from, or one in which no quote could be read yet. */
  readonly quoteTable: Table | null;
  /** Its column (from 0) → what the user says that it holds. */
  readonly quoteChoices: QuoteChoices;
  /** The job at hand. */
  readonly job: Job;
  /** A revised list against the chosen one; null: none was read. */
  readonly revised: Revised | null;
}

/** How the workbook's plan of boards, set-ups and wood factors stands. */
export interface Plans {
  /** What the Takeoff says of a plan that is older than its rows; '': the plan is current. */
  readonly older: string;
  readonly renewing: boolean;
  /** Why it could not be renewed; ''. */
  readonly failed: string;
  /** What the last renewed plan moved, said once. */
  readonly moved: readonly string[];
  /** Where these factors can be held, and the factors before. */
  readonly before: readonly { readonly address: string; readonly factor: number }[];
}

export const PLANS_CURRENT: Plans = { older: '', renewing: false, failed: '', moved: [], before: [] };

/** A revised list, compared with the takeoff of the chosen one. */
export interface Revised {
  readonly table: Table;
  readonly schedule: Schedule;
  /** It is a Takeoff of ours, its openings under their numbers. */
  readonly ours: boolean;
  readonly before: Takeoff;
  /** What was changed by hand in the workbook since it was filled. */
  readonly kept: Kept;
  readonly revision: Revision;
  readonly numbered: boolean;
  /** Changes by hand that the revised list leaves, and those that it doesn't. */
  readonly said: readonly string[];
  /** Pairs that only figures say are one opening, and a person said are not. */
  readonly refused: Refused;
}

export const LIST_PAGE = 50;

/** A list as it was read, before anything is done to it. */
export const UNTOUCHED = {
  refused: {},
  openAt: null,
  listed: LIST_PAGE,
  filled: null,
} satisfies Partial<PaneState>;

/** No list is chosen: nothing is known of one. */
export const NO_LIST = {
  ...UNTOUCHED,
  tables: [],
  partlyHidden: null,
  pdf: null,
  table: null,
  choices: {},
  ours: false,
  scheduleStands: false,
  answers: {},
  schedule: null,
  quote: null,
  quoteTable: null,
  quoteChoices: {},
  revised: null,
} satisfies Partial<PaneState>;

export function initialState(standards: Standards): PaneState {
  return {
    place: 'takeoff',
    step: 'list',
    work: null,
    notice: null,
    standards,
    firstUse: true,
    shopAhead: false,
    sheetNames: [],
    ...NO_LIST,
    inTheWay: null,
    typedOver: [],
    shownFiles: [],
    plain: false,
    cell: null,
    plans: PLANS_CURRENT,
    job: BLANK_JOB,
  };
}

/** The furthest step that can be gone to with what is known. */
export function reach(state: PaneState): Step {
  if (state.filled) return 'fill';
  if (!state.schedule) return 'list';
  return state.schedule.openings.length > 0 ? 'fill' : 'headings';
}

export function canGo(state: PaneState, step: Step): boolean {
  return state.work === null && STEPS.indexOf(step) <= STEPS.indexOf(reach(state));
}
