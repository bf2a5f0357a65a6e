import { figureNamed, figureOf, type FigureName } from '../../takeoff/figures';
import type { RowField } from '../../takeoff/row';
import type { OpeningTakeoff, Takeoff } from '../../takeoff/takeoff';
import type { Unit } from '../../unit';
import type { ColumnMeasure } from '../format';
import { lengthTextFormula } from '../lengthFormula';

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
  /** Of a figure that `ARCH.OPENING` gives: its name. */
  readonly figure?: FigureName;
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

type Rest = Partial<TakeoffColumn>;

const input = (
  key: ColumnKey,
  heading: string,
  measure: ColumnMeasure,
  width: number,
  rest: Rest = {},
): TakeoffColumn => ({
  ...{ key, heading, measure, width, group: 'More inputs', role: 'input' },
  value: ({ cells }) => cells[key as RowField],
  ...rest,
});

const ofOpening = (
  key: ColumnKey,
  figure: FigureName,
  heading: string,
  measure: ColumnMeasure,
  width: number,
  rest: Rest = {},
): TakeoffColumn => {
  const described = figureNamed(figure)!;
  return {
    ...{ key, heading, measure, width, figure, group: 'Figures', role: 'figure' },
    value: (row, { standards }) => figureOf(described, row, standards.unit),
    ...rest,
  };
};

const native = (
  key: ColumnKey,
  heading: string,
  measure: ColumnMeasure,
  width: number,
  value: TakeoffColumn['value'],
  formula: NonNullable<TakeoffColumn['formula']>,
  rest: Rest = {},
): TakeoffColumn => ({
  ...{ key, heading, measure, width, value, formula, group: 'Figures', role: 'figure' },
  ...rest,
});

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

/** Every column of the takeoff from left to right. The first eleven are what an estimator looks at first. */
// prettier-ignore
export const TAKEOFF_COLUMNS: readonly TakeoffColumn[] = [
  { key: 'no', heading: 'No.', group: 'Opening', measure: 'row', width: 5, role: 'number', value: ({ no }) => no },
  input('mark', 'Mark', 'text', 9, { group: 'Opening', value: ({ opening }) => opening.mark }),
  input('place', 'Place', 'text', 9, { group: 'Opening', value: ({ opening }) => opening.place }),
  input('quantity', 'Quantity', 'count', 10, { group: 'Opening' }),
  input('head', 'Head', 'text', 13, { group: 'Opening' }),
  input('span', 'Span', 'input length', 9, { group: 'Opening' }),
  input('rise', 'Rise', 'input length', 9, { group: 'Opening' }),
  native('longPoint', 'Long point', 'length text', 11, (row, { standards }) => figureOf(figureNamed('long point text')!, row, standards.unit), (at, unit) => `IF(${at.length}="","",${lengthTextFormula(at.length, unit)})`, { group: 'Opening' }),
  native('unitPrice', 'Unit price', 'money', 10, ({ cost }) => cost?.unitPrice, (at) => `IF(${at.material}="","",IF(N(${at.priceAgreed})>0,${at.priceAgreed},MAX(ROUND(Shop_piece_minimum,2),ROUND((${at.material}+${at.labor}+VLOOKUP(${at.no},Shares,2,FALSE))/${at.quantity}*Shop_sell,2))))`, { group: 'Opening' }),
  native('price', 'Price', 'money', 11, ({ cost }) => cost?.price, (at) => `IF(${at.unitPrice}="","",ROUND(${at.unitPrice}*${at.quantity},2))`, { group: 'Opening', total: true }),
  ofOpening('lookAt', 'look at', 'Look at', 'text', 26, {
    group: 'Opening',
    value: (row, { standards }) => lookAt(String(figureOf(figureNamed('look at')!, row, standards.unit)), row.opening.priceAgreed !== null),
    formula: (at) => `&IF(${at.priceAgreed}="",""," ${PRICE_AGREED}")&IF(${at.no}=""," ${NEEDS_NUMBER}","")`,
  }),

  input('ends', 'Ends', 'text', 9),
  input('reveal', 'Reveal', 'input length', 9),
  input('face', 'Casing width', 'input length', 9),
  input('thickness', 'Thickness', 'input length', 10),
  input('species', 'Species', 'text', 12),
  input('profile', 'Profile', 'text', 12),
  input('leg', 'Leg, each', 'input length', 9),
  input('segmentsWanted', 'Segments wanted', 'count', 10),
  input('sides', 'Sides', 'count', 7),
  input('arcs', 'Arcs', 'count', 7),
  input('haunch', 'Haunch', 'input length', 9),
  input('otherLeg', 'Other leg', 'input length', 9),
  input('priceAgreed', 'Price agreed', 'money', 10, { value: ({ opening }) => opening.priceAgreed }),
  input('remarks', 'Remarks', 'text', 24, { value: ({ opening }) => opening.remarks }),

  ofOpening('length', 'long point', 'Outside (long-point) length', 'length', 12),
  ofOpening('radius', 'radius', 'Opening radius', 'length', 10),
  ofOpening('blank', 'blank', 'Blank', 'length text', 28),
  ofOpening('cuts', 'cuts', 'Cuts per inch, outside edge', 'cuts', 10),
  ofOpening('runMinutes', 'run minutes', 'Run minutes', 'minutes', 10, { total: true }),
  ofOpening('boardFeet', 'board feet', 'Board feet', 'boardFeet', 10, { total: true }),
  ofOpening('stock', 'stock', 'Wood', 'text', 16),
  ofOpening('wood', 'wood', 'Wood, before waste', 'money', 11, { group: 'Money', total: true }),
  ofOpening('labor', 'labor', 'Labor', 'money', 11, { group: 'Money', total: true }),
  native('material', 'Material', 'money', 11, ({ cost }) => cost?.material, (at) => `IF(OR(${at.wood}="",${at.no}=""),"",(${at.wood}+VLOOKUP(${at.no},Shares,3,FALSE))*IF(COUNTIF(Factor_woods,${at.stock})=0,Shop_unplanned,VLOOKUP(${at.stock},Factors,2,FALSE)))`, { group: 'Money', total: true }),
  native('plan', 'Boards and set-ups', 'text', 14, ({ cost }) => (cost && !cost.planned ? UNPLANNED : ''), (at) => `IF(IFERROR(VLOOKUP(${at.no},Plan,2,FALSE)=${rowText(at)},FALSE),"","${UNPLANNED}")`, { group: 'Plan' }),
];

/** What the column "Look at" says. */
function lookAt(said: string, priceAgreed: boolean): string {
  return `${said}${priceAgreed ? ` ${PRICE_AGREED}` : ''}`;
}
