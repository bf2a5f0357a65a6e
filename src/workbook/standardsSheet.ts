import { cellName, limits, SETTING_GROUPS, SETTINGS, type Setting, type Standards } from '../standards';
import type { Unit } from '../unit';
import { longUnit, perFootPerMinute, perInch } from '../unit';
import { columnLetters } from './address';
import { headingCell, unitCell } from './columnHeads';
import { columnFormat, settingFormat, settingUnit } from './format';
import type { Cell, Sheet, Validation } from './sheet';

/** Blank rows below the stock list, so that boards can be added inside the named ranges. */
const SPARE_STOCK_ROWS = 16;

/** Figures that follow from the unit; the takeoff's formulas divide by them. */
const UNIT_FIGURES: readonly { name: string; label: string; of: (unit: Unit) => number; note: string }[] = [
  { name: 'Shop_per_inch', label: 'Units in an inch', of: perInch, note: '25.4 mm, by definition.' },
  {
    name: 'Shop_per_ft_min',
    label: 'Feed units in 1 ft/min',
    of: perFootPerMinute,
    note: '0.3048 m/min, by definition.',
  },
  {
    name: 'Shop_long_unit',
    label: 'Units in a foot or meter',
    of: longUnit,
    note: 'What minutes of sawing and sanding are counted by.',
  },
];

/** The stock list's columns; the key is also the end of the named range, `Stock_width`. */
export const STOCK_COLUMNS = [
  { key: 'species', heading: 'Species' },
  { key: 'quarters', heading: 'Quarters' },
  { key: 'thickness', heading: 'Dressed thickness' },
  { key: 'width', heading: 'Width' },
  { key: 'length', heading: 'Length' },
  { key: 'price', heading: 'Price per board foot' },
  { key: 'onHand', heading: 'On hand' },
] as const;
export type StockColumnKey = (typeof STOCK_COLUMNS)[number]['key'];

export const STOCK_HEADING = 'Stock list';
/** Stands below the heading Quarters; the unit row is told by it when the sheet is read back. */
export const QUARTERS_UNIT = 'of an inch, rough';

/** Every shop setting once, with its unit, limits and the name formulas know it by; below, the stock list. */
export function standardsSheet(standards: Standards): Sheet {
  const { unit } = standards;
  const rows: (Cell | null)[][] = [
    [{ value: 'Standards', style: 'title' }],
    [
      {
        value: 'Change the tinted cells; the takeoff follows. Save the workbook and use it for the next job.',
        style: 'text',
      },
    ],
    [],
    ['Setting', 'Value', 'Unit', 'Limits', 'Name in formulas', 'Note'].map((heading) =>
      headingCell(heading, heading === 'Value' ? 'figures' : 'text'),
    ),
  ];
  const names: { name: string; ref: string }[] = [];
  const validations: Validation[] = [];
  for (const group of SETTING_GROUPS) {
    rows.push([{ value: group, style: 'group' }]);
    for (const setting of SETTINGS as readonly Setting[]) {
      if (setting.group !== group) continue;
      rows.push(settingRow(setting, standards));
      names.push({ name: cellName(setting.key), ref: `Standards!$B$${rows.length}` });
      const validation = validationOf(setting, unit, `B${rows.length}`);
      if (validation) validations.push(validation);
    }
    if (group === 'Workbook') {
      for (const figure of UNIT_FIGURES) {
        rows.push([
          { value: figure.label, style: 'text' },
          {
            value: figure.of(unit),
            formula: `IF(Shop_unit="mm",${figure.of('mm')},${figure.of('in')})`,
            style: 'figure',
            format: '0.0###',
          },
          { value: '', style: 'text' },
          { value: '', style: 'text' },
          { value: figure.name, style: 'note' },
          { value: figure.note, style: 'note' },
        ]);
        names.push({ name: figure.name, ref: `Standards!$B$${rows.length}` });
      }
    }
  }
  rows.push([]);
  const settingsEnd = rows.length;
  const over = (key: StockColumnKey) => (key === 'species' ? 'text' : 'figures');
  rows.push([{ value: STOCK_HEADING, style: 'group' }]);
  rows.push(STOCK_COLUMNS.map(({ key, heading }) => headingCell(heading, over(key))));
  rows.push(STOCK_COLUMNS.map(({ key }) => unitCell(stockUnit(key, unit), over(key))));
  const first = rows.length + 1;
  for (const board of standards.stock) {
    const value = { ...board, price: board.pricePerBoardFoot };
    rows.push(
      STOCK_COLUMNS.map(({ key }) => ({
        value: value[key],
        style: 'input',
        format: stockFormat(key, unit, value[key]),
      })),
    );
  }
  for (let spare = 0; spare < SPARE_STOCK_ROWS; spare++) {
    rows.push(STOCK_COLUMNS.map(({ key }) => ({ value: null, style: 'input', format: stockFormat(key, unit, null) })));
  }
  const last = rows.length;
  STOCK_COLUMNS.forEach(({ key }, at) => {
    const letter = columnLetters(at);
    names.push({
      name: `Stock_${key === 'onHand' ? 'on_hand' : key}`,
      ref: `Standards!$${letter}$${first}:$${letter}$${last}`,
    });
  });
  return {
    name: 'Standards',
    rows,
    widths: [27, 14, 18, 18, 22, 20, 14],
    landscape: true,
    // The headings of the settings are not those of the stock list below them.
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

function settingRow(setting: Setting, standards: Standards): Cell[] {
  const { unit } = standards;
  const value = standards[setting.key as keyof Standards] as string | number;
  return [
    { value: setting.label, style: 'text' },
    {
      value,
      style: 'input',
      format: settingFormat(setting.measure, unit, value),
    },
    { value: settingUnit(setting.measure, unit), style: 'text' },
    { value: limitsText(setting, unit), style: 'text' },
    { value: cellName(setting.key), style: 'note' },
    { value: setting.note, style: 'note' },
  ];
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
