import { BLANK_JOB, type Job } from '../job/fields';
import { NOT_SET, notSetPart, notSetSentence } from '../notSet';
import { ON_HAND_KINDS, type OnHand } from '../onHand';
import { settingUnit } from '../settingUnit';
import { ON_HAND_COLUMNS, STOCK_COLUMNS, type OnHandColumnKey, type StockColumnKey } from '../shopRange';
import {
  cellName,
  defaultStandards,
  isNotSet,
  limits,
  SETTING_GROUPS,
  SETTINGS,
  type Setting,
  type SettingKey,
  type Standards,
} from '../standards';
import type { CellValue, Table } from '../schedule/opening';
import type { StockBoard } from '../stockList';
import type { CostKind } from '../takeoff/costKinds';
import { sellingFactor } from '../takeoff/price';
import { longUnit, perFootPerMinute, perInch, type Unit } from '../unit';
import { columnLetters } from './address';
import { headingCell, unitCell } from './columnHeads';
import { columnFormat, settingFormat } from './format';
import { jobRows } from './jobBlock';
import type { StandardsRanges } from './planBlock';
import { quote } from './quote';
import type { Cell, Sheet, Validation } from './sheet';

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
export const STOCK_HEADING = 'Stock list';
export const ON_HAND_HEADING = 'Knives and guides on hand';
/** Stands below the heading Quarters; the unit row is told by it when the sheet is read back. */
export const QUARTERS_UNIT = 'of an inch, rough';
/** Stands below the last row of a list: what is added above it is inside the named range. */
export const LIST_END = 'Add rows above this line.';
/** Stands below the heading of what a row on hand is. */
export const KIND_UNIT = 'knife, new knife or guides';
/** Blank rows below a list, so that rows can be added inside the named ranges. */
const SPARE_ROWS = 16;

type Rows = (Cell | null)[][];
type Names = { name: string; ref: string }[];

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
    ['Setting', 'Value', 'In use', 'Unit', 'Limits', 'Name in formulas', 'Note'].map((heading) =>
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
      names.push({ name: cellName(setting.key), ref: `Standards!$C$${rows.length}` });
      const validation = validationOf(setting, unit, `B${rows.length}`);
      if (validation) validations.push(validation);
    }
  }
  const last = rows.length;
  names.push(
    { name: 'Shop', ref: `Standards!$A$${first}:$B$${last}` },
    { name: 'Shop_values', ref: `Standards!$B$${first}:$B$${last}` },
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
    names.push({ name, ref: `Standards!$C$${rows.length}` });
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
  names.push({ name: 'Shop_not_set', ref: `Standards!$C$${rows.length}` });
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
        formula: `IF(SUM(C$${from}:C$${to})=0,0,C${from + at}/SUM(C$${from}:C$${to}))`,
        style: 'figure',
        format: '0.0%',
      },
    ]),
  ];
}

function addStockList(rows: Rows, names: Names, { unit, stock }: Standards): void {
  const over = (key: StockColumnKey) => (key === 'species' ? 'text' : 'figures');
  rows.push([{ value: STOCK_HEADING, style: 'group' }]);
  rows.push(STOCK_COLUMNS.map(({ key, heading }) => headingCell(heading, over(key))));
  rows.push(STOCK_COLUMNS.map(({ key }) => unitCell(stockUnit(key, unit), over(key))));
  const first = rows.length + 1;
  for (const board of stock) {
    const value = stockCells(board);
    rows.push(
      STOCK_COLUMNS.map(({ key }, at) => ({
        value: value[at]!,
        style: 'input',
        format: stockFormat(key, unit, value[at]),
      })),
    );
  }
  for (let spare = 0; spare < SPARE_ROWS; spare++)
    rows.push(STOCK_COLUMNS.map(({ key }) => ({ value: null, style: 'input', format: stockFormat(key, unit, null) })));
  nameColumns(names, 'Stock', 'Wood', STOCK_COLUMNS, first, rows.length);
}

function addOnHand(rows: Rows, names: Names, validations: Validation[], { unit, onHand }: Standards): void {
  const figures = (key: OnHandColumnKey) => key !== 'kind' && key !== 'profile';
  const units: Partial<Record<OnHandColumnKey, string>> = {
    ...{ kind: KIND_UNIT, profile: '', passes: 'blank: by the depth', charge: '$, of a new knife' },
  };
  const format = (key: OnHandColumnKey, value: unknown) =>
    !figures(key)
      ? '@'
      : key === 'passes'
        ? '0'
        : key === 'charge'
          ? columnFormat('money', unit)
          : columnFormat('input length', unit, value);
  rows.push([{ value: ON_HAND_HEADING, style: 'group' }]);
  rows.push(ON_HAND_COLUMNS.map(({ key, heading }) => headingCell(heading, figures(key) ? 'figures' : 'text')));
  rows.push(ON_HAND_COLUMNS.map(({ key }) => unitCell(units[key] ?? unit, figures(key) ? 'figures' : 'text')));
  const first = rows.length + 1;
  const cells = [
    ...onHand.map(onHandCells),
    ...Array.from({ length: SPARE_ROWS }, () => [] as (string | number | null)[]),
  ];
  for (const values of cells) {
    rows.push(
      ON_HAND_COLUMNS.map(({ key }, at) => ({
        value: values[at] ?? null,
        style: 'input',
        format: format(key, values[at] ?? null),
      })),
    );
  }
  validations.push({
    range: `A${first}:A${rows.length}`,
    rule: { kind: 'list', choices: ON_HAND_KINDS },
    message: `A row is a ${KIND_UNIT}.`,
  });
  nameColumns(names, 'OnHand', 'OnHand', ON_HAND_COLUMNS, first, rows.length);
  rows.push([{ value: LIST_END, style: 'note' }]);
}

/** A list's name, and one for each of its columns: `Stock_on_hand`. */
function nameColumns(
  names: Names,
  prefix: string,
  whole: string,
  columns: readonly { readonly key: string }[],
  first: number,
  last: number,
): void {
  names.push({ name: whole, ref: `Standards!$A$${first}:$${columnLetters(columns.length - 1)}$${last}` });
  columns.forEach(({ key }, at) => {
    const letter = columnLetters(at);
    const end = key.replace(/[A-Z]/g, (capital) => `_${capital.toLowerCase()}`);
    names.push({ name: `${prefix}_${end}`, ref: `Standards!$${letter}$${first}:$${letter}$${last}` });
  });
}

/** A board as the cells of its row. */
function stockCells({ species, quarters, thickness, width, length, pricePerBoardFoot, onHand }: StockBoard) {
  return [species, quarters, thickness, width, length, pricePerBoardFoot, onHand] as const;
}

function onHandCells({ kind, profile, face, thickness, insideRadius, ...more }: OnHand): (string | number | null)[] {
  const { depth = null, passes = null, charge = null } = more;
  return [kind, profile, face, thickness, insideRadius, depth, passes, charge];
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
  const plain = (cell: CellValue | undefined) => {
    if (cell === null || cell === undefined || cell === '') return null;
    return typeof cell === 'number' ? cell : String(cell);
  };
  const block = (first: number, last: number, columns: number) =>
    rows.slice(first, last).map((row) => Array.from({ length: columns }, (_, column) => plain(row[column])));
  return {
    settings: block(settings + 1, workedOut - 1, 2).map(([, value]) => value ?? null),
    wood: block(stock + 3, onHand - 1, STOCK_COLUMNS.length),
    onHand: block(onHand + 3, end, ON_HAND_COLUMNS.length),
  };
}

function settingRow(setting: Setting, standards: Standards, row: number): Cell[] {
  const { unit } = standards;
  const value = standards[setting.key as keyof Standards] as string | number;
  return [
    { value: setting.label, style: 'text' },
    {
      value: isNotSet(standards, setting.key as SettingKey) ? null : value,
      style: 'input',
      format: settingFormat(setting.measure, unit, value),
    },
    {
      value,
      formula: `IF(B${row}="",${defaultText(setting, unit)},B${row})`,
      style: 'figure',
      format: settingFormat(setting.measure, unit, value).replace('@', 'General'),
    },
    unitOf(setting, standards, row),
    { value: limitsText(setting, unit), style: 'text' },
    { value: cellName(setting.key), style: 'note' },
    { value: setting.note, style: 'note' },
  ];
}

/** A setting's unit; of one machine's setting also that nobody has set it. */
function unitOf(setting: Setting, standards: Standards, row: number): Cell {
  const unit = settingUnit(setting.measure, standards.unit);
  if (!setting.ofMachine) return { value: unit, style: 'text' };
  const open = `${unit}, not set yet`;
  return {
    value: isNotSet(standards, setting.key as SettingKey) ? open : unit,
    formula: `IF(B${row}="",${quote(open)},${quote(unit)})`,
    style: 'text',
  };
}

/** The same sentence as `notSetSentence`, from the cells. */
function notSetFormula(unit: Unit, rowOf: (setting: Setting) => number): string {
  const machine = (SETTINGS as readonly Setting[]).filter(({ ofMachine }) => ofMachine);
  const set = machine.map((setting) => `B${rowOf(setting)}<>""`).join(',');
  const parts = machine.map((setting) => {
    const { before, after } = notSetPart(setting, unit);
    return `IF(B${rowOf(setting)}="",${quote(`, ${before}`)}&C${rowOf(setting)}&${quote(after)},"")`;
  });
  return `IF(AND(${set}),"",${quote(NOT_SET)}&MID(${parts.join('&')},3,1000)&".")`;
}

/** A setting's default as a formula writes it. */
function defaultText(setting: Setting, unit: Unit): string {
  const value = setting.key === 'unit' ? unit : defaultStandards(unit)[setting.key as SettingKey];
  return typeof value === 'number' ? String(value) : quote(value);
}

function limitsText(setting: Setting, unit: Unit): string {
  if (setting.measure === 'choice') return setting.choices.join(', ');
  if (setting.measure === 'text') return 'any text';
  const { min, max } = limits(setting, unit);
  const shown = (figure: number) =>
    setting.measure === 'percent' ? `${figure * 100}%` : String(Number(figure.toPrecision(4)));
  return `${shown(min)} to ${shown(max)}`;
}

function validationOf(setting: Setting, unit: Unit, range: string): Validation | null {
  if (setting.measure === 'text') return null;
  const message = `${setting.label}: ${limitsText(setting, unit)}.`;
  if (setting.measure === 'choice') return { range, rule: { kind: 'list', choices: setting.choices }, message };
  const { min, max } = limits(setting, unit);
  return {
    range,
    rule: { kind: 'number', min, max, ...(setting.measure === 'count' ? { whole: true } : {}) },
    message,
  };
}

function stockFormat(key: StockColumnKey, unit: Unit, value: unknown): string {
  switch (key) {
    case 'species':
      return '@';
    case 'quarters':
    case 'onHand':
      return '0';
    case 'price':
      return columnFormat('money', unit);
    default:
      return columnFormat('input length', unit, value);
  }
}

function stockUnit(key: StockColumnKey, unit: Unit): string {
  switch (key) {
    case 'thickness':
    case 'width':
    case 'length':
      return unit;
    case 'quarters':
      return QUARTERS_UNIT;
    case 'price':
      return '$';
    case 'onHand':
      return 'boards; blank: buy';
    default:
      return '';
  }
}
