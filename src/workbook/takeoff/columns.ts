import { FIELD_KINDS } from '../../schedule/fieldKinds';
import type { OpeningField } from '../../schedule/opening';
import { figureNamed, figureOf, type FigureName } from '../../takeoff/figures';
import { moneyFigure, type MoneyFigureName } from '../../takeoff/moneyFigures';
import type { RowField } from '../../takeoff/row';
import type { OpeningTakeoff, Takeoff } from '../../takeoff/takeoff';
import type { Unit } from '../../unit';
import type { ColumnMeasure } from '../format';
import { lengthTextFormula } from '../sharedFormulas';
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
type OpeningColumn = OpeningField & ('mark' | 'place' | 'priceAgreed' | 'remarks' | RowField);
export type ColumnKey = 'no' | OpeningColumn | FigureKey;

/** The addresses of one row's cells, such as F6; `main` and `more` are the two blocks of inputs. */
export type CellsOfRow = Readonly<Record<ColumnKey | 'main' | 'more', string>>;

/** A column but for its key. */
type Column = Omit<TakeoffColumn, 'key' | 'value'> & {
  /** Null: what stands in the row's own cell of this key. */
  readonly value: TakeoffColumn['value'] | null;
};
type Rest = Partial<Column>;

/** Its heading is the field's own name. */
const input = (measure: ColumnMeasure, width: number, rest: Omit<Rest, 'heading'> = {}): Omit<Column, 'heading'> => ({
  ...{ measure, width, group: 'More inputs', role: 'input', value: null },
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
const COLUMNS: Readonly<Record<OpeningColumn, Omit<Column, 'heading'>> & Record<Exclude<ColumnKey, OpeningColumn>, Column>> = {
  no: { heading: 'No.', group: 'Opening', measure: 'row', width: 4, role: 'number', value: ({ no }) => no },
  mark: input('text', 7, { group: 'Opening', value: ({ opening }) => opening.mark }),
  place: input('text', 8, { group: 'Opening', value: ({ opening }) => opening.place }),
  quantity: input('count', 10, { group: 'Opening' }),
  head: input('text', 14, { group: 'Opening' }),
  span: input('input length', 8, { group: 'Opening' }),
  rise: input('input length', 7, { group: 'Opening' }),
  longPoint: { ...ofOpening('long point text', 11, { group: 'Opening', formula: (at, unit) => `IF(${at.length}="","",${lengthTextFormula(at.length, unit)})` }), figure: undefined },
  unitPrice: ofMoney('unit price', 10, { group: 'Opening' }),
  price: ofMoney('price', 10, { group: 'Opening', total: true }),
  lookAt: ofOpening('look at', 13, {
    group: 'Opening',
    value: (row, { standards }) => lookAt(String(figureOf(figureNamed('look at')!, row, standards.unit)), row.opening.priceAgreed !== null),
    formula: (at) => `&IF(${at.priceAgreed}="",""," ${PRICE_AGREED}")&IF(${at.no}=""," ${NEEDS_NUMBER}","")`,
  }),

  ends: input('text', 9),
  reveal: input('input length', 9),
  face: input('input length', 9),
  thickness: input('input length', 10),
  species: input('text', 12),
  profile: input('text', 12),
  leg: input('input length', 9),
  segmentsWanted: input('count', 10),
  sides: input('count', 7),
  arcs: input('count', 7),
  haunch: input('input length', 9),
  otherLeg: input('input length', 9),
  priceAgreed: input('money', 10, { value: ({ opening }) => opening.priceAgreed }),
  remarks: input('text', 24, { value: ({ opening }) => opening.remarks }),

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
  heading: 'heading' in column ? column.heading : FIELD_KINDS[key as OpeningColumn].label,
  key: key as ColumnKey,
  value: column.value ?? (({ cells }) => cells[key as RowField]),
}));

/** What the column "Look at" says. */
function lookAt(said: string, priceAgreed: boolean): string {
  return `${said}${priceAgreed ? ` ${PRICE_AGREED}` : ''}`;
}
