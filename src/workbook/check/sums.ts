import type { Holds } from '../../check/quote/charges';
import type { QuoteCheck } from '../../check/quote/checkQuote';
import type { SumCheck } from '../../check/quote/sums';
import { amountOf } from '../../quote/quote';
import { toCents } from '../../rounding';
import { columnFormat } from '../format';
import type { Cell } from '../sheet';
import { checkLetter, checkRange, type Lines } from './columns';
import { rightSum, totalSays } from './formulas';
import { rowOf, type Row } from './row';
import { moneyText } from './says';

/** Freight, tax, discount, subtotals and totals, each beside what follows from the corrected lines. Gives the formula of the right total. */
export function addSums(rows: Row[], check: QuoteCheck, lines: Lines): string {
  const total = [`SUM(${checkRange('rightAmount', lines)})`];
  if (check.sums.length === 0) return total[0]!;
  const money = columnFormat('money', check.takeoff.standards.unit);
  rows.push([], [{ value: 'Charges, subtotals and totals', style: 'group' }]);
  const [extension, corrected] = [checkLetter('extension'), checkLetter('extensionRight')];
  const first = rows.length + 1;
  const charges = check.sums.flatMap(({ item }, at) => (item.kind === 'charge' ? [{ item, row: first + at }] : []));
  const amounts = [`SUM(${checkRange('amount', lines)})`, ...charges.map(({ row }) => `N(${extension}${row})`)];
  const right = new RightSums(
    check,
    lines,
    charges.map(({ row }) => `${corrected}${row}`),
  );
  for (const sum of check.sums) {
    const { item, finding } = sum;
    const row = rows.length + 1;
    const text = finding.verdict === 'agrees' ? 'agrees' : finding.text.replace(/^can't tell: /, '');
    const said: Cell = isLast(sum, check)
      ? {
          value: moneyText(item.amount! - toCents(check.quoted), TOTAL_TOLERANCE),
          formula: totalSays(`${extension}${row}`, amounts.join('+'), TOTAL_TOLERANCE),
          style: 'figure',
          wrap: true,
        }
      : { value: text, style: 'fixed', format: '@', wrap: true };
    rows.push(
      rowOf({
        row: { value: item.row, style: 'text', format: '0' },
        description: { value: item.text, style: 'text', format: '@', wrap: true },
        verdict: { value: item.kind === 'sum' ? item.sum : item.charge, style: 'text', format: '@' },
        reason: said,
        extension: { value: item.amount, style: 'input', format: money },
        extensionRight: { ...right.of(sum, `${extension}${row}`), format: money },
        found: { value: finding.text, style: 'fixed', format: '@', wrap: true },
      }),
    );
  }
  const owed = charges.filter(({ item }) => item.charge !== 'deposit' && item.amount !== null);
  return [...total, ...owed.map(({ row }) => `N(${corrected}${row})`)].join('+');
}

/** Charges and sums figured on the corrected lines: live where they hold all lines, for these are not in the quote's order here. */
class RightSums {
  constructor(
    private readonly check: QuoteCheck,
    private readonly lines: Lines,
    /** The cell of each charge of the quote. */
    private readonly charges: readonly string[],
  ) {}

  /** `quoted` is the cell of its quoted amount. */
  of({ item, holds }: SumCheck, quoted: string): Cell {
    const value = this.check.corrected.sums.get(item.row) ?? null;
    if (value === null || holds === null || !this.holdsAll(holds)) return { value, style: 'fixed' };
    const taken = holds.charges.map((place) => `N(${this.charges[place]!})`);
    const sum = [`SUM(${checkRange('rightAmount', this.lines)})`, ...taken].join('+');
    return {
      value,
      formula: rightSum(quoted, holds.rate === 1 ? `(${sum})` : `${holds.rate}*(${sum})`, holds.within),
      style: 'figure',
    };
  }

  /** Every line that has an amount. */
  private holdsAll({ lines: [from, before] }: Holds): boolean {
    return this.check.lines.every(({ corrected }, at) => corrected === null || (at >= from && at < before));
  }
}

const TOTAL_TOLERANCE = 0.0050001;

/** The total below everything else, with every amount known. */
function isLast({ item }: SumCheck, { quote, lines }: QuoteCheck): boolean {
  const isTotal = item.kind === 'sum' && item.sum === 'total' && item.amount !== null;
  const below = quote.items.slice(quote.items.indexOf(item) + 1).some(({ kind }) => kind !== 'sum');
  const unknown =
    lines.some(({ line }) => amountOf(line) === null) ||
    quote.items.some((one) => one.kind === 'charge' && one.amount === null);
  return isTotal && !below && !unknown;
}
