import type { Standards } from '../standards';
import { setupFlags } from '../takeoff/setupFlags';
import { marksOf, type Setup, type SetupPlan } from '../takeoff/setups';
import type { Takeoff } from '../takeoff/takeoff';
import { columnLetters } from './address';
import { headingRow, unitRow } from './columnHeads';
import { columnFormat } from './format';
import { FEED } from './columns/formulas';
import type { ColumnMeasure } from './columns/column';
import { plainFormula } from './plain';
import { setupPage } from './setupPage';
import type { Cell, CellStyle, Sheet } from './sheet';
import { takeoffRange } from './takeoffSheet';

/** A printed page for each of the first so many set-ups; a longer job says how many pages it leaves out. */
const MOST_PAGES = 100;

const HEAD_ROWS = 5;

interface SetupColumn {
  readonly heading: string;
  readonly measure: ColumnMeasure;
  readonly width: number;
  readonly value: (setup: Setup, at: number, standards: Standards) => string | number | null;
  /** With `{A}` for the cell in column A of the same row, `{pieces}` for a column of the takeoff. */
  readonly formula?: string;
  readonly total?: true;
  /** Left out: `figure` with a formula, else `fixed`. */
  readonly style?: CellStyle;
}

/** A takeoff figure of the first opening in this set-up, from its crowns, else its haunches. */
const lookUp = (figure: string, haunchFigure: string) =>
  `IFERROR(INDEX({${figure}},MATCH({B},{guide},0)),IFERROR(INDEX({${haunchFigure}},MATCH({B},{haunchGuide},0)),""))`;
const straight = 'SUMIFS({straightPieces},{straightSetup},{B})';
const curved = '(SUMIFS({pieces},{guide},{B})+SUMIFS({haunchPieces},{haunchGuide},{B}))';
const lengths =
  '(SUMIFS({runLength},{guide},{B})+SUMIFS({haunchRunLength},{haunchGuide},{B})' +
  '+SUMPRODUCT(--({straightSetup}={B}),{counted},{straightLength}))';
const FACE =
  'IFERROR(INDEX({face},MATCH({B},{guide},0)),IFERROR(INDEX({face},MATCH({B},{haunchGuide},0)),INDEX({face},MATCH({B},{straightSetup},0))))';

const COLUMNS: readonly SetupColumn[] = [
  { heading: 'Order', measure: 'count', width: 6, value: (_setup, at) => at + 1 },
  { heading: 'Set-up', measure: 'text', width: 31, value: (setup) => setup.name },
  { heading: 'Knife', measure: 'text', width: 20, value: (setup) => setup.knife },
  { heading: 'Marks', measure: 'text', width: 18, value: (setup) => marksOf(setup.pieces).join(', ') },
  {
    heading: 'Inside radius',
    measure: 'length',
    width: 9,
    value: (setup) => setup.insideRadius,
    formula: lookUp('insideRadius', 'haunchInsideRadius'),
  },
  {
    heading: 'Inside guide',
    measure: 'length',
    width: 9,
    value: (setup) => guideOf(setup, 'inside'),
    formula: 'IF({E}="","",{E}-Shop_margin-Shop_clearance)',
  },
  {
    heading: 'Outside guide',
    measure: 'length',
    width: 9,
    value: (setup) => guideOf(setup, 'outside'),
    formula: `IF({E}="","",{E}+${FACE}+Shop_margin+Shop_clearance)`,
  },
  {
    heading: 'Pieces',
    measure: 'count',
    width: 7,
    value: (setup) => setup.count,
    formula: `IF({E}="",${straight},IF(${curved}=0,0,${curved}+Shop_spare_pieces))`,
    total: true,
  },
  {
    heading: 'Passes',
    measure: 'count',
    width: 7,
    value: (setup) => setup.passes,
    formula: 'ROUNDUP(Shop_profile_depth/Shop_deepest_cut-0.000000001,0)',
  },
  {
    heading: 'Cuts per inch, center',
    measure: 'cuts',
    width: 9,
    value: (setup) => setup.cutsCenter,
    formula: `ARCH.CUTSPERINCH(Shop_rpm,Shop_knives,${FEED})`,
  },
  {
    heading: 'Cuts per inch, outside',
    measure: 'cuts',
    width: 9,
    value: (setup) => setup.cutsOutside,
    formula: `IF({E}="",{J},ARCH.CUTSPERINCH(Shop_rpm,Shop_knives,${FEED},{E}+${FACE}/2,{E}+${FACE}))`,
  },
  {
    heading: 'Run minutes',
    measure: 'minutes',
    width: 9,
    value: (setup) => setup.runMinutes,
    formula: `IF({H}=0,0,{I}*${lengths}*IF({E}="",1,{H}/${curved})/Shop_per_inch/(12*${FEED})+{H}*Shop_handling)`,
    total: true,
  },
  {
    heading: 'Set-up minutes',
    measure: 'minutes',
    width: 9,
    value: (_setup, _at, { setupMinutes }) => setupMinutes,
    formula: 'Shop_setup_minutes',
    total: true,
  },
  {
    heading: 'Look at',
    measure: 'text',
    width: 34,
    value: (setup, _at, standards) => setupFlags(setup, standards).join(' '),
    style: 'attention',
  },
];

/** One row for each set-up in the order that changes knives and guides least; below, a page for each at the machine. */
export function setupsSheet(plan: SetupPlan, takeoff: Takeoff, plain: boolean): Sheet {
  const { standards } = takeoff;
  const { unit } = standards;
  const first = HEAD_ROWS + 1;
  const last = HEAD_ROWS + Math.max(1, plan.setups.length);
  const rows: (Cell | null)[][] = [
    [{ value: 'Setups', style: 'title' }],
    [{ value: orderText(plan), style: 'text' }],
    [
      {
        value:
          'Radii and minutes follow the takeoff. Fill again after openings were added or a casing changed: the list of set-ups itself is written.',
        style: 'note',
      },
    ],
    headingRow(COLUMNS),
    unitRow(COLUMNS, unit),
  ];
  const resolve = (template: string, row: number) =>
    template.replace(/\{([A-Z]|[a-z]\w+)\}/g, (_all, name: string) =>
      name.length === 1 ? `${name}${row}` : takeoffRange(name, takeoff.openings.length),
    );
  plan.setups.forEach((setup, at) => {
    rows.push(
      COLUMNS.map((column): Cell => {
        const base = {
          value: column.value(setup, at, standards) ?? '',
          format: columnFormat(column.measure, unit),
          wrap: column.measure === 'text',
        };
        if (column.formula === undefined) return { ...base, style: column.style ?? 'fixed' };
        const formula = resolve(column.formula, first + at);
        return { ...base, style: 'figure', formula: plain ? plainFormula(formula, () => 0).formula : formula };
      }),
    );
  });
  if (plan.setups.length === 0) rows.push([null, { value: 'No opening can be run yet.', style: 'attention' }]);
  rows.push(
    COLUMNS.map((column, at): Cell | null => {
      if (at === 1) return { value: 'Total', style: 'total' };
      if (!column.total) return null;
      const letter = columnLetters(at);
      const sum = plan.setups.reduce((total, setup, index) => total + Number(column.value(setup, index, standards)), 0);
      return {
        value: sum,
        formula: `SUM(${letter}${first}:${letter}${last})`,
        style: 'total',
        format: columnFormat(column.measure, unit),
      };
    }),
  );
  const pageBreaks = [rows.length];
  for (const setup of plan.setups.slice(0, MOST_PAGES)) {
    rows.push([], ...setupPage(setup, takeoff));
    pageBreaks.push(rows.length);
  }
  if (plan.setups.length > MOST_PAGES) {
    rows.push(
      [],
      [
        {
          value: `Pages for the ${plan.setups.length - MOST_PAGES} set-ups after number ${MOST_PAGES} are left out.`,
          style: 'attention',
        },
      ],
    );
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

function guideOf(setup: Setup, side: 'inside' | 'outside'): number | null {
  return setup.guides?.ok ? setup.guides.value[side] : null;
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
