import { BLANK_JOB, type Job } from '../job/fields';
import { notSetSentence } from '../notSet';
import { ON_HAND_COLUMNS, STOCK_COLUMNS } from '../shopRange';
import {
  cellName,
  isNotSet,
  SETTING_GROUPS,
  SETTINGS,
  type Setting,
  type SettingKey,
  type Standards,
} from '../standards';
import type { Table } from '../schedule/opening';
import type { CostKind } from '../takeoff/costKinds';
import { sellingFactor } from '../takeoff/price';
import { asRowCell } from '../takeoff/row';
import { longUnit, perFootPerMinute, perInch, type Unit } from '../unit';
import { headingCell } from './columnHeads';
import { columnFormat } from './format';
import { jobRows } from './jobBlock';
import type { StandardsRanges } from './planBlock';
import { notSetFormula, settingRow, validationOf, SETTING_HEADINGS, TYPED, USED } from './settingRow';
import type { Cell, Sheet, Validation } from './sheet';
import {
  addOnHand,
  addStockList,
  LIST_END,
  ON_HAND_HEADING,
  onHandCells,
  SPARE_ROWS,
  STOCK_HEADING,
  stockCells,
  type Names,
  type Rows,
} from './standardsLists';

/** Figures that follow from settings; formulas of other sheets use them. */
const WORKED_OUT: readonly {
  readonly name: string;
  readonly label: string;
  readonly of: (standards: Standards) => number;
  readonly formula: string;
  readonly note: string;
}[] = [
  unitFigure('Shop_per_inch', 'Units in an inch', perInch, '25.4 mm, by definition.'),
  unitFigure('Shop_per_ft_min', 'Feed units in 1 ft/min', perFootPerMinute, '0.3048 m/min, by definition.'),
  unitFigure(
    'Shop_long_unit',
    'Units in a foot or meter',
    longUnit,
    'What minutes of sawing and sanding are counted by.',
  ),
  {
    name: 'Shop_sell',
    label: 'Selling factor',
    of: sellingFactor,
    formula: 'IF(Shop_pricing="margin",1/(1-Shop_pricing_rate),1+Shop_pricing_rate)',
    note: 'Cost times this is the price.',
  },
  {
    name: 'Shop_unplanned',
    label: 'Wood factor before planning',
    of: ({ waste }) => 1 + waste,
    formula: '1+Shop_waste',
    note: 'For wood that no plan of boards holds yet.',
  },
];

function unitFigure(name: string, label: string, of: (unit: Unit) => number, note: string) {
  const formula = `IF(Shop_unit="mm",${of('mm')},${of('in')})`;
  return { name, label, of: ({ unit }: Standards) => of(unit), formula, note };
}

const WORKED_OUT_HEADING = 'Worked out';
/** Over the table of what the job's money goes to. */
const COSTS_HEADING = 'What this job costs, as planned';
/**
 * Every shop setting once, with its unit, limits and the name formulas know it by; below, the stock list and what is on hand.
 * A blank value is not set, and means the default: what is in use stands beside it. The job at hand stands among them.
 */
export function standardsSheet(standards: Standards, job: Job = BLANK_JOB, costs: readonly CostKind[] = []): Sheet {
  const { unit } = standards;
  const rows: Rows = [
    [{ value: 'Standards', style: 'title' }],
    [
      {
        value:
          'Change the tinted cells; the takeoff follows. A blank value means the default. Save the workbook and use it for the next job.',
        style: 'text',
      },
    ],
    [],
    SETTING_HEADINGS.map((heading) =>
      headingCell(heading, heading === 'Value' || heading === 'In use' ? 'figures' : 'text'),
    ),
  ];
  const names: Names = [];
  const validations: Validation[] = [];
  const first = rows.length + 1;
  for (const group of SETTING_GROUPS) {
    rows.push([{ value: group, style: 'group' }]);
    for (const setting of SETTINGS as readonly Setting[]) {
      if (setting.group !== group) continue;
      rows.push(settingRow(setting, standards, rows.length + 1));
      names.push({ name: cellName(setting.key), ref: `Standards!$${USED}$${rows.length}` });
      const validation = validationOf(setting, unit, `${TYPED}${rows.length}`);
      if (validation) validations.push(validation);
    }
  }
  const last = rows.length;
  names.push(
    { name: 'Shop', ref: `Standards!$A$${first}:$${TYPED}$${last}` },
    { name: 'Shop_values', ref: `Standards!$${TYPED}$${first}:$${TYPED}$${last}` },
  );
  rows.push([], [{ value: WORKED_OUT_HEADING, style: 'group' }]);
  for (const { name, label, of, formula, note } of WORKED_OUT) {
    rows.push([
      { value: label, style: 'text' },
      null,
      { value: of(standards), formula, style: 'figure', format: '0.0###' },
      ...[null, null].map(() => ({ value: '', style: 'text' }) as const),
      { value: name, style: 'note' },
      { value: note, style: 'note' },
    ]);
    names.push({ name, ref: `Standards!$${USED}$${rows.length}` });
  }
  const settingRows = new Map(rows.map((row, at) => [row[0]?.value, at + 1]));
  rows.push([
    null,
    null,
    {
      value: notSetSentence(standards),
      formula: notSetFormula(unit, (setting) => settingRows.get(setting.label)!),
      style: 'attention',
    },
    ...[null, null],
    { value: 'Shop_not_set', style: 'note' },
  ]);
  names.push({ name: 'Shop_not_set', ref: `Standards!$${USED}$${rows.length}` });
  rows.push([]);
  if (costs.length > 0) rows.push(...costRows(costs, rows.length + 1), []);
  const block = jobRows(job, unit, rows.length + 1);
  rows.push(...block.rows, []);
  names.push(...block.names);
  validations.push(...block.validations);
  const settingsEnd = rows.length;
  addStockList(rows, names, standards);
  rows.push([]);
  addOnHand(rows, names, validations, standards);
  return {
    name: 'Standards',
    rows,
    widths: [32, 14, 18, 18, 22, 20, 14, 14],
    landscape: true,
    // The headings of the settings are not those of the lists below them.
    frozenRows: 1,
    frozenColumns: 1,
    names,
    validations,
    repeatRows: [1, 1],
    pageBreaks: [settingsEnd],
    home: 'B6',
    locked: true,
  };
}

/** What this job's money goes to, from the plan on the sheet Stock: it says itself where that is older than the rows. */
function costRows(costs: readonly CostKind[], first: number): Rows {
  const total = costs.reduce((sum, { money }) => sum + money, 0);
  const from = first + 1;
  const to = first + costs.length;
  return [
    [
      { value: COSTS_HEADING, style: 'group' },
      null,
      { value: '$', style: 'note', align: 'right' },
      { value: 'share of the price', style: 'note' },
      { value: '', formula: 'Plan_state', style: 'attention' },
    ],
    ...costs.map(({ name, money }, at): (Cell | null)[] => [
      { value: name, style: 'text' },
      null,
      { value: money, formula: `INDEX(Plan_costs,${at + 1})`, style: 'figure', format: columnFormat('money', 'in') },
      {
        value: total === 0 ? 0 : money / total,
        formula: `IF(SUM(${USED}$${from}:${USED}$${to})=0,0,${USED}${from + at}/SUM(${USED}$${from}:${USED}$${to}))`,
        style: 'figure',
        format: '0.0%',
      },
    ]),
  ];
}

/** What the named ranges hold that a plan rests on, cell by cell, blank rows left out at their ends. */
export function standardsRanges(standards: Standards): StandardsRanges {
  const blank = <T>(columns: readonly T[]) => Array.from({ length: SPARE_ROWS }, () => columns.map(() => null));
  return {
    settings: SETTING_GROUPS.flatMap((group) => [
      null,
      ...(SETTINGS as readonly Setting[])
        .filter((setting) => setting.group === group)
        .map(({ key }) => (isNotSet(standards, key as SettingKey) ? null : standards[key as SettingKey])),
    ]),
    wood: [...standards.stock.map((board) => [...stockCells(board)]), ...blank(STOCK_COLUMNS)],
    onHand: [...standards.onHand.map(onHandCells), ...blank(ON_HAND_COLUMNS)],
  };
}

/** The same as a filled Standards sheet now has it, blanks and all; null where its lists stand otherwise. */
export function standardsRangesIn({ rows }: Table): StandardsRanges | null {
  const at = (text: string, from = 0) => rows.findIndex((row, place) => place >= from && row[0] === text);
  const [settings, workedOut] = [at('Setting'), at(WORKED_OUT_HEADING)];
  const [stock, onHand, end] = [at(STOCK_HEADING), at(ON_HAND_HEADING), at(LIST_END)];
  if (settings < 0 || workedOut < settings || stock < workedOut || onHand < stock || end < onHand) return null;
  const block = (first: number, last: number, columns: number) =>
    rows.slice(first, last).map((row) => Array.from({ length: columns }, (_, column) => asRowCell(row[column])));
  return {
    settings: block(settings + 1, workedOut - 1, 2).map(([, value]) => value ?? null),
    wood: block(stock + 3, onHand - 1, STOCK_COLUMNS.length),
    onHand: block(onHand + 3, end, ON_HAND_COLUMNS.length),
  };
}
