import { cellsNamed } from '../../formulaText';
import {
  any,
  atMost,
  equal,
  figure,
  given,
  isBlank,
  join,
  less,
  listWhere,
  minus,
  most,
  number,
  over,
  plus,
  setting,
  size,
  times,
  when,
  words,
  type Expression,
  type Figure,
  type Text,
  type Value,
} from './expression';
import { dollars, HALF_CENT, HALF_CENT_NEARLY } from '../../quote/money';
import { roundTo } from '../../rounding';
import { cantTellOf } from './verdict';

/*
 * How each figure of a line is judged, once: the condition, what is then said, and by both the formula of the Check sheet.
 * Figures are those of the line and our own for its opening; `place` is the opening's place in the takeoff.
 */

/** A line's figures as its row of the Check sheet has them. Lengths in the workbook's unit, money in dollars, of one piece. */
export interface LineFigures {
  readonly place: Figure;
  readonly quantity: Figure;
  readonly radius: Figure;
  readonly length: Figure;
  readonly unitPrice: Figure;
  readonly extension: Figure;
  /** The price of one piece, from the extension where the quote gives no unit price. */
  readonly unit: Figure;
  readonly ourQuantity: Figure;
  /** At the edge that the quote's heading names. */
  readonly ourRadius: Figure;
  readonly ourLength: Figure;
  readonly ourPrice: Figure;
  /** Pieces of all lines that are counted together. */
  readonly together: Figure;
  /** "given", or "read" where the line has figures under headings that aren't understood. */
  readonly lacks: 'given' | 'read';
}
type Of<Key extends keyof LineFigures> = Pick<LineFigures, Key>;

const { its, all: column } = cellsNamed<keyof LineFigures>();
const AGREES = words('agrees');
const cell = <Key extends Exclude<keyof LineFigures, 'lacks'>>(key: Key): Value<Of<Key>> => figure(key);

/** In the formula the line's own word stands in the place of `lacks`. */
function noneGiven(name: string): Text<Of<'lacks'>> {
  return {
    of: ({ lacks }) => cantTellOf(`no ${name} ${lacks}`),
    formula: `"${cantTellOf(`no ${name}`)} ${its.lacks}"`,
  };
}

function ifGiven<One, Rest>(value: Value<One>, name: string, rest: Text<Rest>): Text<One & Of<'lacks'> & Rest> {
  return when(isBlank(value), noneGiven(name), rest);
}

/** What only an edit of the takeoff brings about: the opening or its figure is gone. */
function ifOurs<One, Rest>(value: Value<One>, name: string, rest: Text<Rest>): Text<One & Rest> {
  return when(isBlank(value), words(cantTellOf(`no ${name} in the takeoff`)), rest);
}
function ifOpening<Rest>(rest: Text<Rest>): Text<Of<'place'> & Rest> {
  return when(isBlank(cell('place')), words(cantTellOf('no such mark in the takeoff')), rest);
}

/** What a line's count of pieces is judged by: itself, or the sum of the lines that divide an opening's pieces between them. */
export type CountedBy = 'itself' | 'the sum' | 'with the first';

/** The pieces of all lines with the same place. */
const TOGETHER: Value<Of<'together'>> = {
  of: ({ together }) => together,
  formula: `SUMIFS(${column.quantity},${column.place},${its.place})`,
};

export function countOf(by: CountedBy): Value<Of<'quantity' | 'together'>> {
  return by === 'itself' ? cell('quantity') : TOGETHER;
}

/** Ways to count wrong, the plainer first: how many pieces a quote has where `right` are wanted. */
export function miscounts<Figures>(right: Value<Figures>): readonly (readonly [string, Value<Figures>])[] {
  return [
    ['one piece counted for a pair', over(right, number(2))],
    ['a pair counted for one piece', times(right, number(2))],
    ['quantity of one', number(1)],
  ];
}

/** "one piece counted for a pair or quantity of one", "2 too few". Of lines that are counted together the first says it. */
export function quantityRule(by: CountedBy): Text<Of<'place' | 'quantity' | 'together' | 'ourQuantity' | 'lacks'>> {
  const [count, ours] = [countOf(by), cell('ourQuantity')];
  const known = miscounts(ours).map(([mistake, wrong]) => [equal(count, wrong), words(mistake)] as const);
  const off = join(size(minus(count, ours)), when(less(count, ours), words(' too few'), words(' too many')));
  const differs =
    by === 'with the first' ? words('') : when(any(...known.map(([fits]) => fits)), listWhere(known, ' or '), off);
  const compared = ifOurs(ours, 'quantity', when(equal(count, ours), AGREES, differs));
  return ifOpening(ifGiven(cell('quantity'), 'quantity', compared));
}

/** A quoted length is right within the tolerance; a millionth of a thousandth more is rounding. */
function isRight<One, Other, Tolerance>(
  quoted: Value<One>,
  right: Value<Other>,
  tolerance: Value<Tolerance>,
): Expression<boolean, One & Other & Tolerance> {
  return atMost(size(minus(quoted, right)), plus(tolerance, times(number(1e-9), most(number(1), right))));
}

/** The same of figures at hand: `quoted` is `right` within the tolerance. */
export function isNear(quoted: number, right: number, tolerance: number): boolean {
  return isRight(given(quoted), given(right), given(tolerance)).of({});
}

const TOLERANCE = setting('tolerance', 'Shop_tolerance');
const OURS = { radius: 'ourRadius', length: 'ourLength' } as const;

/** A radius or length against ours; `wrong` is what is said where it isn't within the tolerance: which mistake explains it has no closed form. */
export function curveRule<Wrong>(about: 'radius' | 'length', wrong: Text<Wrong>) {
  const [quoted, ours] = [cell(about), cell(OURS[about])];
  const compared = when(isRight(quoted, ours, TOLERANCE), AGREES, wrong);
  return ifOpening(ifGiven(quoted, about, ifOurs(ours, about, compared)));
}

/** An amount in dollars without its sign: `$1,234.50`. */
function dollarsOf<Figures>(amount: Expression<number | null, Figures>): Expression<string, Figures> {
  return {
    of: (figures) => dollars(Math.abs(amount.of(figures) ?? 0)),
    formula: `"$"&FIXED(ABS(${amount.formula}),2)`,
  };
}

/** A share in percent to a tenth: `12.5%`. */
function percentOf<Figures>(share: Expression<number | null, Figures>): Expression<string, Figures> {
  return {
    of: (figures) => `${roundTo(1, (share.of(figures) ?? 0) * 100).toFixed(1)}%`,
    formula: `FIXED(${share.formula}*100,1,TRUE)&"%"`,
  };
}

/** "$12.40 too little", of an amount beside what it should be. */
export function amountRule<One, Other, Within>(
  amount: Value<One>,
  right: Value<Other>,
  within: Value<Within>,
): Text<One & Other & Within> {
  const off = minus(amount, right);
  const direction = when(less(amount, right), words(' too little'), words(' too much'));
  return when(atMost(size(off), within), AGREES, join(dollarsOf(off), direction));
}

/** Quantity × unit price against the extension, all the quote's own. */
export const EXTENSION_RULE: Text<Of<'extension' | 'unitPrice' | 'quantity' | 'lacks'>> = (() => {
  const [extension, unitPrice, quantity] = [cell('extension'), cell('unitPrice'), cell('quantity')];
  // As `extensionTolerance` has it.
  const within = plus(times(number(HALF_CENT), most(number(1), quantity)), number(HALF_CENT_NEARLY));
  const compared = amountRule(extension, times(quantity, unitPrice), within);
  return ifGiven(extension, 'extension', ifGiven(unitPrice, 'unit price', ifGiven(quantity, 'quantity', compared)));
})();

/** "12.5% below our $88.00", where the price of one is farther off ours than the band. */
export function priceRule<One, Other, Band>(
  quoted: Value<One>,
  ours: Value<Other>,
  band: Value<Band>,
): Text<One & Other & Band> {
  const off = size(minus(over(quoted, ours), number(1)));
  const differs = join(
    percentOf(off),
    when(less(quoted, ours), words(' below our '), words(' above our ')),
    dollarsOf(ours),
  );
  const compared = when(atMost(off, plus(band, number(1e-9))), AGREES, differs);
  return when(atMost(ours, number(0)), words(cantTellOf('our own price is 0')), compared);
}

const PRICE_BAND = setting('priceBand', 'Shop_price_band');
/** The price of one piece against our own. */
export const PRICE_RULE = ifOpening(
  ifGiven(
    cell('unit'),
    'price',
    ifOurs(cell('ourPrice'), 'price', priceRule(cell('unit'), cell('ourPrice'), PRICE_BAND)),
  ),
);
