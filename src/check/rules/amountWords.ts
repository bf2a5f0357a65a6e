import { dollars } from '../../quote/money';
import { roundTo } from '../../rounding';
import type { Expression } from './expression';

/** An amount in dollars without its sign: `$1,234.50`. */
export function dollarsOf<Figures>(amount: Expression<number | null, Figures>): Expression<string, Figures> {
  return {
    of: (figures) => dollars(Math.abs(amount.of(figures) ?? 0)),
    formula: `"$"&FIXED(ABS(${amount.formula}),2)`,
  };
}

/** A share in percent to a tenth: `12.5%`. */
export function percentOf<Figures>(share: Expression<number | null, Figures>): Expression<string, Figures> {
  return {
    of: (figures) => `${roundTo(1, (share.of(figures) ?? 0) * 100).toFixed(1)}%`,
    formula: `FIXED(${share.formula}*100,1,TRUE)&"%"`,
  };
}
