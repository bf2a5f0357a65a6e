import type { QuoteCheck } from '../../src/check/quote';
import type { QuoteChoices } from '../../src/quote/headings';
import type { Job } from '../../src/job/fields';
import type { MeaningKey } from '../../src/schedule/meanings';
import type { Opening, OpeningField, Schedule, Table } from '../../src/schedule/opening';
import type { Standards } from '../../src/standards';
import type { SheetName } from '../../src/workbook/sheet';
import type { TakeoffTotals } from '../../src/workbook/takeoff/totals';
import type { CellAt, Selection } from '../host';
import {
  canGo,
  LIST_PAGE,
  PLANS_CURRENT,
  NO_LIST,
  type ByField,
  type Filled,
  type Notice,
  type PaneState,
  type Plans,
  type Place,
  type Revised,
  type ShownPdf,
  type Step,
  type TextFile,
  type Typed,
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
      readonly edits: PaneState['edits'];
      readonly plain: boolean;
    }
  | { readonly type: 'meaning chosen'; readonly column: number; readonly meaning: MeaningKey }
  | { readonly type: 'schedule read'; readonly schedule: Schedule | null }
  | {
      readonly type: 'opening fixed';
      readonly at: number;
      readonly opening: Opening;
      readonly field: OpeningField;
      readonly typed: Typed;
    }
  | { readonly type: 'opening put back'; readonly at: number }
  /** `message` null: the text is no longer the refused one. */
  | {
      readonly type: 'figure refused';
      readonly at: number;
      readonly field: OpeningField;
      readonly message: string | null;
    }
  | { readonly type: 'opening looked at'; readonly at: number | null }
  | { readonly type: 'more listed' }
  | { readonly type: 'formulas chosen'; readonly plain: boolean }
  | { readonly type: 'sheets in the way'; readonly names: readonly SheetName[] | null }
  | { readonly type: 'filled'; readonly filled: Filled }
  | { readonly type: 'job set'; readonly job: Job }
  | { readonly type: 'revision compared'; readonly revised: Revised | null }
  /** The revised list stands in place of the one before. */
  | { readonly type: 'revision taken over'; readonly schedule: Schedule; readonly table: Table }
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
        edits: action.edits,
        plain: action.plain,
        firstUse: false,
      };
    case 'meaning chosen':
      return {
        ...state,
        choices: { ...state.choices, [action.column]: action.meaning },
        edits: {},
      };
    case 'schedule read':
      return { ...state, ...UNTOUCHED, schedule: withNumbersOf(state.schedule, action.schedule) };
    case 'opening fixed':
      return fixed(state, action.at, action.opening, action.field, action.typed);
    case 'opening put back':
      return putBack(state, action.at);
    case 'figure refused':
      return { ...state, refused: withEntry(state.refused, action.at, action.field, action.message) };
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
      return { ...state, inTheWay: action.names };
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
        ...{ ...state, ...NO_LIST, table: action.table, schedule: action.schedule },
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
function withNumbersOf(before: Schedule | null, schedule: Schedule | null): Schedule | null {
  if (!before || !schedule) return schedule;
  const numbers = new Map(before.openings.map(({ row, mark, no }) => [JSON.stringify([row, mark]), no]));
  const openings = schedule.openings.map((opening) => {
    const no = numbers.get(JSON.stringify([opening.row, opening.mark]));
    return no === undefined ? opening : { ...opening, no };
  });
  return { ...schedule, openings };
}

function fixed(state: PaneState, at: number, opening: Opening, field: OpeningField, typed: Typed): PaneState {
  if (!state.schedule) return state;
  const before = state.schedule.openings[at];
  const openings = state.schedule.openings.map((one, index) => (index === at ? opening : one));
  return {
    ...state,
    schedule: { ...state.schedule, openings },
    edits: withEntry(state.edits, at, field, typed),
    originals: at in state.originals || !before ? state.originals : { ...state.originals, [at]: before },
    refused: withEntry(state.refused, at, field, null),
    filled: null,
  };
}

/** An opening as the list gave it, before anything was typed. */
function putBack(state: PaneState, at: number): PaneState {
  const { [at]: original, ...originals } = state.originals;
  if (!state.schedule || !original) return state;
  const { [at]: _edits, ...edits } = state.edits;
  const { [at]: _refused, ...refused } = state.refused;
  const openings = state.schedule.openings.map((one, index) => (index === at ? original : one));
  return { ...state, schedule: { ...state.schedule, openings }, originals, edits, refused, filled: null };
}

function withEntry<T>(entries: ByField<T>, at: number, field: OpeningField, entry: T | null): ByField<T> {
  const { [field]: _replaced, ...others } = entries[at] ?? {};
  return { ...entries, [at]: entry === null ? others : { ...others, [field]: entry } };
}
