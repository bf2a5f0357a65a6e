import type { LineCheck } from '../../check/quote/checkLine';
import { hangs, priceOff } from '../../check/quote/stakes';
import { amountOf } from '../../quote/quote';
import { toCents } from '../../rounding';
import type { CheckKey } from './columns';
import { figure, written, type Content } from './content';
import * as formulas from './formulas';

export type MoneyKey = Extract<CheckKey, 'rightAmount' | 'extensionRight' | 'off' | 'priceOff' | 'hangs'>;

/** What the line comes to, what is off for certain, and what hangs on it; `live`: its comparisons are formulas, `priced`: that of its price is. */
export function moneyCells(check: LineCheck, live: boolean, priced: boolean): Readonly<Record<MoneyKey, Content>> {
  const { line, corrected, count } = check;
  const amount = amountOf(line);
  const plain = line.by === 'piece' && line.reckoning === null && line.quantity !== null;
  const follows = live && plain && amount !== null;
  const against = toCents(priceOff(check));
  const hanging = hangs(check) ? Math.abs(amount ?? 0) : 0;
  const rest = {
    priceOff: priced ? figure(against, formulas.priceOff(count!.by)) : written(against),
    hangs: follows ? figure(hanging, formulas.HANGS_FORMULA) : written(hanging),
  };
  if (corrected === null)
    return { rightAmount: written(null), extensionRight: written(null), off: written(null), ...rest };
  const same = line.extension !== null && Math.abs(line.extension - corrected) < 0.005;
  return {
    rightAmount: follows ? figure(corrected, formulas.rightAmount(count!.by)) : written(corrected),
    extensionRight: figure(same ? 'agrees' : corrected, formulas.EXTENSION_BESIDE),
    off: figure(toCents((amount ?? 0) - corrected), formulas.OFF_FORMULA),
    ...rest,
  };
}
