import type { Standards } from '../standards';
import { figureNamed, type FigureName } from '../takeoff/figures';
import { GUIDE_FIGURES } from '../takeoff/guideFigures';
import { setupFlags } from '../takeoff/setupFlags';
import { marksOf, type Setup, type SetupPlan } from '../takeoff/setups';
import type { Takeoff } from '../takeoff/takeoff';
import { headingRow, unitRow } from './columnHeads';
import { columnFormat, type ColumnMeasure } from './format';
import { cautionRows, setupCard } from './setupCard';
import type { Cell, CellStyle, Sheet } from './sheet';
import { pageBreaksBetween } from './textLines';
import { titleRow } from './titleRow';

/** A card for each of the first so many set-ups; a longer job says how many it leaves out. */
const MOST_CARDS = 100;

/** Rows on a printed page under the repeated title: two cards of half a page each. */
const PAGE_ROWS = 48;

const HEAD_ROWS = 5;

interface SetupColumn {
  readonly heading: string;
  readonly measure: ColumnMeasure;
  readonly width: number;
  readonly value: (setup: Setup, at: number, standards: Standards) => string | number | null;
  readonly total?: true;
  /** Left out: `fixed`. */
  readonly style?: CellStyle;
}

const COLUMNS: readonly SetupColumn[] = [
  { heading: 'Order', measure: 'count', width: 6, value: (_setup, at) => at + 1 },
  { heading: 'Set-up', measure: 'text', width: 31, value: (setup) => setup.name },
  { ...described('knife'), width: 20, value: (setup) => setup.knife },
  { heading: 'Marks', measure: 'text', width: 18, value: (setup) => marksOf(setup.pieces).join(', ') },
  {
    ...described('inside radius'),
    width: 9,
    value: (setup) => setup.insideRadius,
  },
  guideColumn('inside'),
  guideColumn('outside'),
  {
    heading: 'Pieces',
    measure: 'count',
    width: 7,
    value: (setup) => setup.count,
    total: true,
  },
  {
    ...described('passes'),
    width: 7,
    value: (setup) => setup.passes,
  },
  {
    ...described('center cuts'),
    width: 9,
    value: (setup) => setup.cutsCenter,
  },
  {
    ...described('cuts'),
    width: 9,
    value: (setup) => setup.cutsOutside,
  },
  {
    ...described('run minutes'),
    width: 9,
    value: (setup) => setup.runMinutes,
    total: true,
  },
  {
    heading: 'Set-up minutes',
    measure: 'minutes',
    width: 9,
    value: (setup) => setup.changeMinutes,
    total: true,
  },
  {
    ...described('look at'),
    width: 34,
    value: (setup, _at, standards) => setupFlags(setup, standards).join(' '),
    style: 'attention',
  },
];

/** One row for each set-up in the order that changes knives and guides least; below, the cautions once and a card of half a page for each. */
export function setupsSheet(plan: SetupPlan, takeoff: Takeoff): Sheet {
  const { standards } = takeoff;
  const { unit } = standards;
  const first = HEAD_ROWS + 1;
  const rows: (Cell | null)[][] = [
    titleRow('Setups'),
    [{ value: orderText(plan), style: 'text' }],
    [{ value: 'As planned.', style: 'note' }],
    headingRow(COLUMNS),
    unitRow(COLUMNS, unit),
  ];
  plan.setups.forEach((setup, at) => {
    rows.push(
      COLUMNS.map((column): Cell => {
        const base = {
          value: column.value(setup, at, standards) ?? '',
          format: columnFormat(column.measure, unit),
          wrap: column.measure === 'text',
        };
        return { ...base, style: column.style ?? 'fixed' };
      }),
    );
  });
  if (plan.setups.length === 0) rows.push([null, { value: 'No opening can be run yet.', style: 'attention' }]);
  rows.push(
    COLUMNS.map((column, at): Cell | null => {
      if (at === 1) return { value: 'Total', style: 'total' };
      if (!column.total) return null;
      const sum = plan.setups.reduce((total, setup, index) => total + Number(column.value(setup, index, standards)), 0);
      return {
        value: sum,
        style: 'total',
        format: columnFormat(column.measure, unit),
      };
    }),
  );
  rows.push([], ...cautionRows(plan.setups, takeoff));
  const list = rows.length;
  const cards = plan.setups.slice(0, MOST_CARDS).map((setup, at) => [...setupCard(setup, at + 1, takeoff), []]);
  for (const card of cards) rows.push(...card);
  if (cards.length > 0) rows.pop();
  const pageBreaks = pageBreaksBetween(
    cards.map((card) => card.length),
    list,
    PAGE_ROWS,
  );
  if (plan.setups.length > MOST_CARDS) {
    rows.push([
      {
        value: `Cards for the ${plan.setups.length - MOST_CARDS} set-ups after number ${MOST_CARDS} are left out.`,
        style: 'attention',
      },
    ]);
  }
  return {
    name: 'Setups',
    rows,
    widths: COLUMNS.map(({ width }) => width),
    frozenRows: HEAD_ROWS,
    frozenColumns: 2,
    repeatRows: [1, 1],
    landscape: true,
    pageBreaks,
    home: `B${first}`,
    locked: true,
  };
}

/** A set-up's figure under the heading that it has for an opening. */
function described(name: FigureName): Pick<SetupColumn, 'heading' | 'measure'> {
  const { heading, measure } = figureNamed(name)!;
  return { heading, measure };
}

function guideColumn(side: 'inside' | 'outside'): SetupColumn {
  const { heading, measure } = GUIDE_FIGURES[side];
  return { heading, measure, width: 9, value: ({ guides }) => (guides?.ok ? guides.value[side] : null) };
}

function orderText(plan: SetupPlan): string {
  const hours = (plan.runMinutes + plan.setupMinutes) / 60;
  const saved =
    plan.savedMinutes > 0
      ? `; run in the schedule's order they would take ${Math.round(plan.savedMinutes)} minutes more`
      : '';
  return (
    `Set-ups: ${plan.setups.length}, machine hours with setting up: ${hours.toFixed(1)}. ` +
    `They stand in the order that changes knives and guides least${saved}.`
  );
}
