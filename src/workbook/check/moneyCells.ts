import type { LineCheck } from '../../check/quote/checkLine';
import { hangs, priceOff } from '../../check/quote/stakes';
import type { Expression } from '../../check/rules/expression';
import {
  AMOUNT,
  EXTENSION_BESIDE,
  HANGS,
  OFF,
  priceOffRule,
  rightAmountRule,
  type MoneyFigures,
} from '../../check/rules/moneyRules';
import { amountOf } from '../../quote/quote';
import { toCents } from '../../rounding';
import type { CheckKey } from './columns';
import { figure, written, type Content } from './content';

export type MoneyKey = Extract<CheckKey, 'amount' | 'rightAmount' | 'extensionRight' | 'off' | 'priceOff' | 'hangs'>;

/**
 * What the line comes to, what is off for certain, and what hangs on it: with the formula of its rule, where the rule says the same of the
 * cells beside it. `live`: its comparisons are formulas, `priced`: that of its price is.
 */
export function moneyCells(
  check: LineCheck,
  of: Omit<MoneyFigures, 'amount' | 'rightAmount'>,
  live: boolean,
  priced: boolean,
): Readonly<Record<MoneyKey, Content>> {
  const { line, corrected, count, part } = check;
  const known = amountOf(line);
  const amount = known ?? 0;
  const figures: MoneyFigures = { ...of, amount, rightAmount: corrected };
  const ruled = (value: number | string, rule: Expression<number | string | null, MoneyFigures>): Content =>
    same(rule.of(figures), value) ? figure(value, rule.formula) : written(value);
  const follows = live && line.by === 'piece' && line.reckoning === null && line.quantity !== null && known !== null;
  const against = toCents(priceOff(check));
  const hanging = hangs(check) ? Math.abs(amount) : 0;
  const rest = {
    // An offer beside the quote is no part of what it comes to.
    amount: part === 'alternate' ? written(0) : ruled(amount, AMOUNT),
    priceOff: priced ? ruled(against, priceOffRule(count!.by)) : written(against),
    hangs: follows ? ruled(hanging, HANGS) : written(hanging),
  };
  if (corrected === null)
    return { rightAmount: written(null), extensionRight: written(null), off: written(null), ...rest };
  const isAsQuoted = line.extension !== null && Math.abs(line.extension - corrected) < 0.005;
  return {
    rightAmount: follows ? ruled(corrected, rightAmountRule(count!.by)) : written(corrected),
    extensionRight: ruled(isAsQuoted ? 'agrees' : corrected, EXTENSION_BESIDE),
    off: ruled(toCents(amount - corrected), OFF),
    ...rest,
  };
}

function same(ruled: number | string | null, value: number | string): boolean {
  return typeof ruled === 'number' && typeof value === 'number' ? Math.abs(ruled - value) < 0.005 : ruled === value;
}
