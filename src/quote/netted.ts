import { chargeKind, multiplierIn } from './labels';

/** Amounts above a row: of all lines and charges, of how many lines, and of the lines since the last sum. */
interface Sums {
  readonly lines: number;
  readonly charges: number;
  readonly count: number;
  readonly sinceLines: number;
}

/**
 * What a multiplier or a percentage takes off, whether the row says that or what is left: "Less 5%" over 570.00 below goods of
 * 600.00 takes off 30.00, and "Mult. 0.65" over 390.00 takes off 210.00. Null: the row is none such.
 */
export function netted(
  words: string,
  percent: number | null,
  amount: number,
  above: Sums,
): { readonly rate: number; readonly off: number } | null {
  const multiplier = multiplierIn(words);
  const rate = multiplier !== null && multiplier < 1 ? 1 - multiplier : percent;
  if (rate === null || above.count === 0 || (multiplier === null && chargeKind(words, amount) !== 'discount'))
    return null;
  const bases = [above.lines + above.charges, above.lines, above.sinceLines].filter((base) => base > 0);
  const within = 0.005 * (above.count + 1) + 0.001;
  // "Net after 5% discount" below the discount itself is a sum.
  if (Math.abs(amount - above.lines - above.charges) <= within) return null;
  const base = bases.find((of) => Math.abs(amount - (1 - rate) * of) <= within);
  const cents = (figure: number) => Math.round(figure * 100) / 100;
  // The words alone say that it takes off: then the nearer of both is meant, though it is wrong.
  const of = base ?? (multiplier === null ? undefined : bases[0]);
  if (of === undefined) return multiplier === null || amount >= 0 ? null : { rate, off: amount };
  const left = amount > 0 && Math.abs(amount - (1 - rate) * of) < Math.abs(amount - rate * of);
  return left ? { rate, off: cents(amount - of) } : multiplier === null ? null : { rate, off: -Math.abs(amount) };
}
