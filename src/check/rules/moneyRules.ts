import {
  all,
  any,
  atMost,
  BLANK,
  cents,
  equal,
  figure,
  isBlank,
  isGiven,
  less,
  minus,
  number,
  orZero,
  over,
  plus,
  said,
  says,
  size,
  times,
  when,
  words,
  type Figure,
  type Value,
} from './expression';
import { countOf, type CountedBy, type LineFigures } from './lineRules';
import { isWrong } from './verdict';

/*
 * The money of a line and of what holds lines, once: what it comes to at the quote's own prices, and the formula of the Check sheet. A line that
 * is figured another way (by the foot, less a discount) has its money from `quote/corrected.ts`, and no formula.
 */

type Says = 'openingSays' | 'quantitySays' | 'radiusSays' | 'lengthSays' | 'extensionSays' | 'priceSays';

/** What a line's money goes by: its figures, what is said of each, and what it comes to as it stands and corrected. */
export interface MoneyFigures extends LineFigures, Readonly<Record<Says, string>> {
  readonly verdict: string;
  readonly amount: Figure;
  readonly rightAmount: Figure;
}
const money = <Key extends Exclude<keyof MoneyFigures, Says | 'verdict' | 'lacks'>>(key: Key) => figure(key);
const differs = (key: Says) => isWrong(said(key));

const [quantity, unitPrice, extension] = [money('quantity'), money('unitPrice'), money('extension')];
const [amount, rightAmount, unit] = [money('amount'), money('rightAmount'), money('unit')];

/** The price of one piece, from the extension where the quote gives no unit price. */
export const UNIT = when(
  isGiven(unitPrice),
  unitPrice,
  when(isBlank(extension), BLANK, when(isBlank(quantity), BLANK, over(extension, quantity))),
);

export const AMOUNT = when(
  isGiven(extension),
  extension,
  when(isBlank(quantity), number(0), when(isBlank(unitPrice), number(0), cents(times(quantity, unitPrice)))),
);

/** What the line comes to at the price it quotes, its count and its own arithmetic put right. */
export function rightAmountRule(by: CountedBy): Value<MoneyFigures> {
  const missing = when(differs('quantitySays'), minus(money('ourQuantity'), countOf(by)), number(0));
  return when(
    any<MoneyFigures>(differs('quantitySays'), differs('extensionSays')),
    cents(times(plus(quantity, missing), unit)),
    amount,
  );
}

/** Beside the quoted extension: that it agrees, or what the line comes to. */
export const EXTENSION_BESIDE = when(
  isBlank(extension),
  rightAmount,
  when(less(size(minus(extension, rightAmount)), number(0.005)), words('agrees'), rightAmount),
);

export const OFF = cents(minus(amount, rightAmount));

/** The line's price above or below ours by more than the band. Lines that are counted together each bear that of their own pieces. */
export function priceOffRule(by: CountedBy): Value<MoneyFigures> {
  const pieces: Value<MoneyFigures> = by === 'itself' ? money('ourQuantity') : quantity;
  const off = times(minus(unit, money('ourPrice')), orZero(pieces));
  return cents(when(differs('priceSays'), off, number(0)));
}

/** What may change with a figure whose money none tells. */
export const HANGS: Value<MoneyFigures> = when(
  all<MoneyFigures>(
    any<MoneyFigures>(
      ...(['openingSays', 'radiusSays', 'lengthSays'] as const).map(differs),
      says(said('verdict'), "can't tell"),
    ),
    equal(rightAmount, amount),
  ),
  size(amount),
  number(0),
);

/** What a sum or a charge comes to; the quoted amount where that is right but for its rounding. */
export function sumRule<Quoted, Sum>(quoted: Value<Quoted>, sum: Value<Sum>, within: number): Value<Quoted & Sum> {
  const isRight = all<Quoted & Sum>(isGiven(quoted), atMost(size(minus(orZero(quoted), sum)), number(within)));
  return when(isRight, quoted, cents(sum));
}
