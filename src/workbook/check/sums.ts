import type { Holds } from '../../check/quote/charges';
import type { QuoteCheck } from '../../check/quote/checkQuote';
import type { SumCheck } from '../../check/quote/sums';
import { given } from '../../check/rules/expression';
import { amountRule } from '../../check/rules/lineRules';
import { sumRule } from '../../check/rules/moneyRules';
import { reasonOf } from '../../check/rules/verdict';
import { amountOf } from '../../quote/quote';
import { toCents } from '../../rounding';
import { columnFormat } from '../format';
import type { Cell } from '../sheet';
import { checkLetter, checkRange, type Lines } from './columns';
import { rowOf, type Row } from './content';

/**
 * Freight, tax, discount, subtotals and totals, each beside what follows from the corrected lines. Gives the formula of what the quote
 * comes to: the total it states, or its lines and charges.
 */
export function addSums(rows: Row[], check: QuoteCheck, lines: Lines): string {
  const { sums, stated } = check;
  const goods = `SUM(${checkRange('rightAmount', lines)})`;
  if (sums.length === 0) return goods;
  const money = columnFormat('money', check.takeoff.standards.unit);
  rows.push([], [{ value: 'Charges, subtotals and totals', style: 'group' }]);
  const first = rows.length + 1;
  const held = new HeldCells(check, lines, first);
  for (const sum of sums) {
    const { item, finding } = sum;
    const row = rows.length + 1;
    rows.push(
      rowOf({
        row: { value: item.row, style: 'text', format: '0' },
        description: { value: item.text, style: 'text', format: '@', wrap: true },
        verdict: { value: item.kind === 'sum' ? item.sum : item.charge, style: 'text', format: '@' },
        reason: { ...held.says(sum, row), wrap: true },
        extension: { value: item.amount, style: 'input', format: money },
        extensionRight: { ...held.right(sum, row), format: money },
        found: { value: finding.text, style: 'fixed', format: '@', wrap: true },
      }),
    );
  }
  const right = (row: number) => `${checkLetter('extensionRight')}${row}`;
  if (stated !== null) return right(first + sums.findIndex(({ item }) => item === stated));
  const owed = sums.flatMap(({ item }, at) => {
    return item.kind === 'charge' && item.charge !== 'deposit' && item.amount !== null
      ? [`N(${right(first + at)})`]
      : [];
  });
  return [goods, ...owed].join('+');
}

/** Charges and sums by the cells of what they hold. Lines are not in the quote's order here: those of a part are told by their row in it. */
class HeldCells {
  /** The row of each charge of the quote. */
  private readonly charges: readonly number[];

  constructor(
    private readonly check: QuoteCheck,
    private readonly lines: Lines,
    first: number,
  ) {
    this.charges = check.sums.flatMap(({ item }, at) => (item.kind === 'charge' ? [first + at] : []));
  }

  /** What follows from the corrected lines. */
  right({ item, holds }: SumCheck, row: number): Cell {
    const value = this.check.corrected.sums.get(item.row) ?? null;
    if (value === null || holds === null) return { value, style: 'fixed' };
    const sum = this.sum('rightAmount', 'extensionRight', holds);
    const right = holds.rate === 1 ? `(${sum})` : `${holds.rate}*(${sum})`;
    return {
      value,
      formula: sumRule(given(item.amount, `${checkLetter('extension')}${row}`), given(value, right), holds.within)
        .formula,
      style: 'figure',
    };
  }

  /** Whether it agrees with the quote's own figures. */
  says(sum: SumCheck, row: number): Cell {
    const { item, finding, holds } = sum;
    // What follows from a sum that is wrong has no right figure of its own.
    const isLive = isLast(sum, this.check) && holds !== null && finding.right !== null;
    if (!isLive) {
      const text = finding.verdict === 'agrees' ? 'agrees' : reasonOf(finding.text);
      return { value: text, style: 'fixed', format: '@' };
    }
    const rule = amountRule(
      given(item.amount, `${checkLetter('extension')}${row}`),
      given(toCents(finding.right), `(${this.sum('amount', 'extension', holds)})`),
      given(holds.within, String(holds.within)),
    );
    return { value: rule.of({}), formula: rule.formula, style: 'figure' };
  }

  private sum(line: 'amount' | 'rightAmount', charge: 'extension' | 'extensionRight', holds: Holds): string {
    const taken = holds.charges.map((place) => `N(${checkLetter(charge)}${this.charges[place]!})`);
    const beside = holds.alternates === 0 ? [] : [String(holds.alternates)];
    return [this.sumOfLines(line, holds), ...taken, ...beside].join('+');
  }

  private sumOfLines(key: 'amount' | 'rightAmount', holds: Holds): string {
    const cells = checkRange(key, this.lines);
    if (this.holdsAll(holds)) return `SUM(${cells})`;
    const [from, before] = holds.lines;
    const { lines } = this.check;
    if (from === before) return '0';
    const rows = checkRange('row', this.lines);
    return `SUMIFS(${cells},${rows},">=${lines[from]!.line.row}",${rows},"<=${lines[before - 1]!.line.row}")`;
  }

  /** Every line that has an amount. */
  private holdsAll({ lines: [from, before] }: Holds): boolean {
    return this.check.lines.every(({ corrected }, at) => corrected === null || (at >= from && at < before));
  }
}

/** The total below everything else, with every amount known. */
function isLast({ item }: SumCheck, { quote, lines }: QuoteCheck): boolean {
  const isTotal = item.kind === 'sum' && item.sum === 'total' && item.amount !== null;
  const below = quote.items.slice(quote.items.indexOf(item) + 1).some(({ kind }) => kind !== 'sum');
  const unknown =
    lines.some(({ line }) => amountOf(line) === null) ||
    quote.items.some((one) => one.kind === 'charge' && one.amount === null);
  return isTotal && !below && !unknown;
}
