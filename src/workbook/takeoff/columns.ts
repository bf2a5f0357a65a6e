import { figureNamed, figureOf, type FigureName } from '../../takeoff/figures';
import { moneyFigure, type MoneyFigureName } from '../../takeoff/moneyFigures';
import type { RowField } from '../../takeoff/row';
import type { OpeningTakeoff, Takeoff } from '../../takeoff/takeoff';
import type { Unit } from '../../unit';
import type { ColumnMeasure } from '../format';
import { lengthTextFormula } from '../lengthFormula';
import { MONEY_FORMULAS } from './money';

/** One column of the takeoff, described here and nowhere else. Headings stand as they are shown. */
export interface TakeoffColumn {
  readonly key: ColumnKey;
  readonly heading: string;
  readonly group: 'Opening' | 'More inputs' | 'Figures' | 'Money' | 'Plan';
  readonly measure: ColumnMeasure;
  /** In characters. */
  readonly width: number;
  /** An input is the user's to change; a figure follows from the row; the number stays with the opening for good. */
  readonly role: 'number' | 'input' | 'figure';
  readonly value: (row: OpeningTakeoff, takeoff: Takeoff) => string | number | null | undefined;
  /** Of a cell that asks `ARCH.OPENING` for a figure: its name. */
  readonly figure?: FigureName | undefined;
  /** The figure whose description it is, whichever way the cell comes to it. */
  readonly shows?: FigureName | MoneyFigureName;
  /** Of other figures: native arithmetic on the row; where the figure is one, what stands behind the call. */
  readonly formula?: (at: CellsOfRow, unit: Unit) => string;
  /** The totals row adds this column up. */
  readonly total?: boolean;
}

type FigureKey =
  | 'longPoint'
  | 'unitPrice'
  | 'price'
  | 'lookAt'
  | 'length'
  | 'radius'
  | 'blank'
  | 'cuts'
  | 'runMinutes'
  | 'boardFeet'
  | 'stock'
  | 'wood'
  | 'labor'
  | 'material'
  | 'plan';
export type ColumnKey = 'no' | 'mark' | 'place' | 'priceAgreed' | 'remarks' | RowField | FigureKey;

/** The addresses of one row's cells, such as F6; `main` and `more` are the two blocks of inputs. */
export type CellsOfRow = Readonly<Record<ColumnKey | 'main' | 'more', string>>;

/** A column but for its key. */
type Column = Omit<TakeoffColumn, 'key' | 'value'> & {
  /** Null: what stands in the row's own cell of this key. */
  readonly value: TakeoffColumn['value'] | null;
};
type Rest = Partial<Column>;

const input = (heading: string, measure: ColumnMeasure, width: number, rest: Rest = {}): Column => ({
  ...{ heading, measure, width, group: 'More inputs', role: 'input', value: null },
  ...rest,
});

/** A figure that the cell asks `ARCH.OPENING` for: heading, measure and value are those of its description. */
const ofOpening = (name: FigureName, width: number, rest: Rest = {}): Column => {
  const described = figureNamed(name)!;
  return {
    ...{ heading: described.heading, measure: described.measure, width, figure: name, shows: name },
    ...{ group: 'Figures', role: 'figure' },
    value: (row, { standards }) => figureOf(described, row, standards.unit),
    ...rest,
  };
};

/** A figure of money, by its own formula. */
const ofMoney = (name: MoneyFigureName, width: number, rest: Rest = {}): Column => {
  const { heading, measure, value } = moneyFigure(name);
  const formula = MONEY_FORMULAS[name];
  return { heading, measure, width, value, formula, shows: name, group: 'Money', role: 'figure', ...rest };
};

/** What the last column says of a row that the boards and set-ups at hand were not planned from, or not as it stands now. */
export const UNPLANNED = 'not planned yet';

/** A row's names and inputs as one text, by which a plan tells whether it is still made from them: its lists name marks. */
function rowText({ mark, place, main, more }: Pick<CellsOfRow, 'mark' | 'place' | 'main' | 'more'>): string {
  return `TEXTJOIN("|",FALSE,${mark},${place},${main},${more})`;
}

/** Said behind what is to be looked at, where a price was agreed. */
export const PRICE_AGREED = 'Price agreed.';

/** Said of a row whose number was cleared: it has no price, and no other sheet finds it. */
export const NEEDS_NUMBER = 'Needs its No. back.';

/** Every column of the takeoff from left to right. The first eleven are what an estimator looks at first: no wider than a page of 1280 pixels shows beside the pane. */
// prettier-ignore
const COLUMNS: Readonly<Record<ColumnKey, Column>> = {
  no: { heading: 'No.', group: 'Opening', measure: 'row', width: 4, role: 'number', value: ({ no }) => no },
  mark: input('Mark', 'text', 7, { group: 'Opening', value: ({ opening }) => opening.mark }),
  place: input('Place', 'text', 8, { group: 'Opening', value: ({ opening }) => opening.place }),
  quantity: input('Quantity', 'count', 10, { group: 'Opening' }),
  head: input('Head', 'text', 14, { group: 'Opening' }),
  span: input('Span', 'input length', 8, { group: 'Opening' }),
  rise: input('Rise', 'input length', 7, { group: 'Opening' }),
  longPoint: { ...ofOpening('long point text', 11, { group: 'Opening', formula: (at, unit) => `IF(${at.length}="","",${lengthTextFormula(at.length, unit)})` }), figure: undefined },
  unitPrice: ofMoney('unit price', 10, { group: 'Opening' }),
  price: ofMoney('price', 10, { group: 'Opening', total: true }),
  lookAt: ofOpening('look at', 13, {
    group: 'Opening',
    value: (row, { standards }) => lookAt(String(figureOf(figureNamed('look at')!, row, standards.unit)), row.opening.priceAgreed !== null),
    formula: (at) => `&IF(${at.priceAgreed}="",""," ${PRICE_AGREED}")&IF(${at.no}=""," ${NEEDS_NUMBER}","")`,
  }),

  ends: input('Ends', 'text', 9),
  reveal: input('Reveal', 'input length', 9),
  face: input('Casing width', 'input length', 9),
  thickness: input('Thickness', 'input length', 10),
  species: input('Species', 'text', 12),
  profile: input('Profile', 'text', 12),
  leg: input('Leg, each', 'input length', 9),
  segmentsWanted: input('Segments wanted', 'count', 10),
  sides: input('Sides', 'count', 7),
  arcs: input('Arcs', 'count', 7),
  haunch: input('Haunch', 'input length', 9),
  otherLeg: input('Other leg', 'input length', 9),
  priceAgreed: input('Price agreed', 'money', 10, { value: ({ opening }) => opening.priceAgreed }),
  remarks: input('Remarks', 'text', 24, { value: ({ opening }) => opening.remarks }),

  length: ofOpening('long point', 12),
  radius: ofOpening('radius', 10),
  blank: ofOpening('blank', 28),
  cuts: ofOpening('cuts', 10),
  runMinutes: ofOpening('run minutes', 10, { total: true }),
  boardFeet: ofOpening('board feet', 10, { total: true }),
  stock: ofOpening('stock', 16),
  wood: ofOpening('wood', 11, { group: 'Money', total: true }),
  labor: ofOpening('labor', 11, { group: 'Money', total: true }),
  material: ofMoney('material', 11, { total: true }),
  plan: { heading: 'Boards and set-ups', measure: 'text', width: 14, group: 'Plan', role: 'figure', value: ({ cost }) => (cost && !cost.planned ? UNPLANNED : ''), formula: (at) => `IF(IFERROR(VLOOKUP(${at.no},Plan,2,FALSE)=${rowText(at)},FALSE),"","${UNPLANNED}")` },
};

/** The columns in their order: a key that has no line above doesn't compile. */
export const TAKEOFF_COLUMNS: readonly TakeoffColumn[] = Object.entries(COLUMNS).map(([key, column]) => ({
  ...column,
  key: key as ColumnKey,
  value: column.value ?? (({ cells }) => cells[key as RowField]),
}));

/** What the column "Look at" says. */
function lookAt(said: string, priceAgreed: boolean): string {
  return `${said}${priceAgreed ? ` ${PRICE_AGREED}` : ''}`;
}
