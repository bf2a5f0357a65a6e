import type { QuoteCheck } from '../../src/check/quote';
import type { QuoteChoices } from '../../src/quote/headings';
import type { Job } from '../../src/job/fields';
import type { MeaningKey } from '../../src/schedule/meanings';
import type { Schedule, Table } from '../../src/schedule/opening';
import type { Standards } from '../../src/standards';
import type { SheetName } from '../../src/workbook/sheet';
import type { TakeoffTotals } from '../../src/workbook/takeoff/totals';
import type { CellAt, Selection } from '../host';
import {
  canGo,
  LIST_PAGE,
  PLANS_CURRENT,
  NO_LIST,
  type AnswersGiven,
  type Filled,
  type ListRead,
  type Notice,
  type PaneState,
  type Plans,
  type Place,
  type Revised,
  type ShownPdf,
  type Step,
  type TextFile,
  type Work,
  UNTOUCHED,
} from './state';

export type Action =
  | { readonly type: 'went'; readonly place: Place }
  | { readonly type: 'stepped'; readonly step: Step }
  | { readonly type: 'working'; readonly work: Work | null }
  | { readonly type: 'told'; readonly notice: Notice | null }
  | { readonly type: 'sheets listed'; readonly names: readonly string[] }
  | { readonly type: 'settings read'; readonly standards: Standards; readonly firstUse: boolean }
  | { readonly type: 'standards set'; readonly standards: Standards; readonly ahead: boolean }
  | { readonly type: 'tables found'; readonly tables: readonly Table[] }
  | { readonly type: 'rows hidden'; readonly selection: Selection | null }
  | { readonly type: 'files shown'; readonly files: readonly TextFile[] }
  | { readonly type: 'pdf read'; readonly pdf: ShownPdf | null }
  | { readonly type: 'table chosen'; readonly table: Table }
  | {
      readonly type: 'list resumed';
      readonly table: Table;
      readonly choices: Readonly<Record<number, MeaningKey>>;
      readonly answers: AnswersGiven;
      readonly ours: boolean;
      readonly scheduleStands: boolean;
      readonly plain: boolean;
    }
  | { readonly type: 'meaning chosen'; readonly column: number; readonly meaning: MeaningKey }
  | { readonly type: 'schedule read'; readonly schedule: ListRead | null }
  /** The list read again by these answers. */
  | { readonly type: 'answered'; readonly answers: AnswersGiven; readonly schedule: ListRead }
  /** `message` null: the text is no longer the refused one. */
  | { readonly type: 'answer refused'; readonly key: string; readonly message: string | null }
  | { readonly type: 'opening looked at'; readonly at: number | null }
  | { readonly type: 'more listed' }
  | { readonly type: 'formulas chosen'; readonly plain: boolean }
  | {
      readonly type: 'sheets in the way';
      readonly names: readonly SheetName[] | null;
      readonly typedOver?: readonly string[];
    }
  | { readonly type: 'filled'; readonly filled: Filled }
  | { readonly type: 'job set'; readonly job: Job }
  | { readonly type: 'revision compared'; readonly revised: Revised | null }
  /** The revised list stands in place of the one before. */
  | {
      readonly type: 'revision taken over';
      readonly schedule: Schedule;
      readonly table: Table;
      readonly ours: boolean;
    }
  | { readonly type: 'plans'; readonly plans: Plans }
  | { readonly type: 'unfilled' }
  | { readonly type: 'totals read'; readonly totals: TakeoffTotals }
  | { readonly type: 'quote read'; readonly table: Table; readonly choices: QuoteChoices }
  | { readonly type: 'quote checked'; readonly check: QuoteCheck }
  | { readonly type: 'cell selected'; readonly cell: CellAt | null };

/** What the pane knows after something happened. Pure: no host, no DOM, no clock. */
export function reduce(state: PaneState, action: Action): PaneState {
  switch (action.type) {
    case 'went':
      return { ...state, place: action.place, notice: null };
    case 'stepped':
      return canGo(state, action.step)
        ? { ...state, place: 'takeoff', step: action.step, notice: null, inTheWay: null }
        : state;
    case 'working':
      return { ...state, work: action.work, notice: action.work && !state.work ? null : state.notice };
    case 'told':
      return { ...state, notice: action.notice };
    case 'sheets listed':
      return { ...state, sheetNames: action.names };
    case 'settings read':
      return { ...state, standards: action.standards, firstUse: action.firstUse };
    case 'standards set':
      return { ...state, standards: action.standards, shopAhead: action.ahead };
    case 'tables found':
      return { ...state, tables: action.tables, notice: null };
    case 'pdf read':
      return { ...state, pdf: action.pdf, notice: null };
    case 'table chosen':
      return { ...state, ...NO_LIST, pdf: state.pdf, table: action.table, inTheWay: null, notice: null };
    case 'list resumed':
      return {
        ...state,
        ...NO_LIST,
        table: action.table,
        choices: action.choices,
        answers: action.answers,
        ours: action.ours,
        scheduleStands: action.scheduleStands,
        plain: action.plain,
        firstUse: false,
      };
    case 'meaning chosen':
      return {
        ...state,
        choices: { ...state.choices, [action.column]: action.meaning },
      };
    case 'schedule read':
      return { ...state, ...UNTOUCHED, schedule: withNumbersOf(state.schedule, action.schedule) };
    case 'answered':
      return answered(state, action.answers, action.schedule);
    case 'answer refused':
      return { ...state, refused: withoutOr(state.refused, action.key, action.message) };
    case 'opening looked at':
      return { ...state, openAt: action.at };
    case 'more listed':
      return { ...state, listed: state.listed + LIST_PAGE };
    case 'formulas chosen':
      return { ...state, plain: action.plain };
    case 'rows hidden':
      return { ...state, partlyHidden: action.selection };
    case 'files shown':
      return { ...state, shownFiles: action.files };
    case 'sheets in the way':
      return { ...state, inTheWay: action.names, typedOver: action.typedOver ?? [] };
    case 'filled':
      return {
        ...state,
        filled: action.filled,
        plans: PLANS_CURRENT,
        inTheWay: null,
        firstUse: false,
        shopAhead: false,
        notice: null,
      };
    case 'job set':
      return { ...state, job: action.job };
    case 'revision compared':
      return { ...state, revised: action.revised, notice: null };
    case 'revision taken over':
      return {
        ...{ ...state, ...NO_LIST, table: action.table, schedule: action.schedule, ours: action.ours },
        ...{ place: 'takeoff', step: 'fill', inTheWay: null },
      };
    case 'plans':
      return { ...state, plans: action.plans };
    case 'totals read':
      return state.filled ? { ...state, filled: { ...state.filled, ...action.totals } } : state;
    case 'unfilled':
      return { ...state, filled: null };
    case 'quote read':
      return { ...state, quote: null, quoteTable: action.table, quoteChoices: action.choices, listed: LIST_PAGE };
    case 'quote checked':
      return { ...state, quote: action.check, notice: null };
    case 'cell selected':
      return { ...state, cell: action.cell };
  }
}

/** The same list read again: its openings keep the numbers that a comparison gave them. */
function withNumbersOf(before: ListRead | null, schedule: ListRead | null): ListRead | null {
  if (!before || !schedule) return schedule;
  const numbers = new Map(before.openings.map(({ row, at, mark, no }) => [JSON.stringify([row, at, mark]), no]));
  const openings = schedule.openings.map((opening) => {
    const no = numbers.get(JSON.stringify([opening.row, opening.at, opening.mark]));
    return no === undefined ? opening : { ...opening, no };
  });
  return { ...schedule, openings };
}

/** What is open for a closer look stays so; a fill of before is out of date. */
function answered(state: PaneState, answers: AnswersGiven, schedule: ListRead): PaneState {
  const { openAt } = state;
  const open = openAt === null ? undefined : state.schedule?.openings[openAt];
  const at = schedule.openings.findIndex((one) => one.row === open?.row && one.at === open.at);
  const same = (key: string) => answers[key]?.text === state.answers[key]?.text;
  return {
    ...state,
    answers,
    schedule: withNumbersOf(state.schedule, schedule),
    refused: Object.fromEntries(Object.entries(state.refused).filter(([key]) => same(key))),
    openAt: open === undefined || at < 0 ? null : at,
    filled: null,
  };
}

function withoutOr(
  entries: Readonly<Record<string, string>>,
  key: string,
  entry: string | null,
): Readonly<Record<string, string>> {
  const { [key]: _replaced, ...others } = entries;
  return entry === null ? others : { ...others, [key]: entry };
}
