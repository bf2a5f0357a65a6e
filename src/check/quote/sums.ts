import { agrees, cantTell, differs, type Finding } from './finding';
import { dollars } from '../../quote/money';
import { swapped } from './moneyFindings';
import { amountOf, type Quote, type QuoteCharge, type QuoteSum } from '../../quote/quote';

/** A subtotal, total or charge and whether its figure follows from those above it. */
export interface SumCheck {
  readonly item: QuoteSum | QuoteCharge;
  readonly finding: Finding;
}

/** Amounts since some point of the quote. */
class Running {
  lines = 0;
  charges = 0;
  /** Offers beside the quote, which its sums may hold or not. */
  alternates = 0;
  /** Rows whose amount can't be known: nothing that holds them can be called wrong. */
  unknown: number[] = [];

  get all(): number {
    return this.lines + this.charges;
  }
}

/** A sum that the quote has wrong: what is figured on it further down is no second fault. */
interface WrongSum {
  /** "the subtotal of row 9". */
  readonly what: string;
  readonly off: number;
}

interface Amount {
  readonly what: string;
  readonly amount: number;
  readonly row: number;
}

/**
 * Checks every charge with a rate and every sum against the amounts above it, all of them the quote's own. `alternates` are
 * the rows of offers beside the quote.
 */
export function checkSums({ items }: Quote, alternates: ReadonlySet<number>): readonly SumCheck[] {
  const checks: SumCheck[] = [];
  const start = new Running();
  let sinceSum = new Running();
  let sinceTotal = new Running();
  const lines: Amount[] = [];
  const charges: (Amount & { readonly discount: boolean })[] = [];
  const subtotals: Amount[] = [];
  const wrong: WrongSum[] = [];
  for (const item of items) {
    const above = [start, sinceSum, sinceTotal];
    if (item.kind === 'sum') {
      const finding = sumFinding(item, start, sinceSum, sinceTotal, { lines, charges, subtotals, wrong });
      checks.push({ item, finding });
      if (finding.verdict === 'differs')
        wrong.push({ what: `the ${item.sum} of row ${item.row}`, off: finding.dollars! });
      if (item.amount !== null && item.sum === 'subtotal')
        subtotals.push({ what: `the subtotal of row ${item.row}`, amount: item.amount, row: item.row });
      sinceSum = new Running();
      if (item.sum === 'total') sinceTotal = new Running();
      continue;
    }
    const amount = item.kind === 'line' ? amountOf(item) : item.amount;
    if (item.kind === 'charge') checks.push({ item, finding: chargeFinding(item, start, wrong) });
    for (const running of above) {
      if (alternates.has(item.row)) running.alternates += amount ?? 0;
      else if (amount === null) running.unknown.push(item.row);
      else if (item.kind === 'line') running.lines += amount;
      else running.charges += amount;
    }
    if (amount === null || alternates.has(item.row)) continue;
    if (item.kind === 'line') lines.push({ what: `row ${item.row}`, amount, row: item.row });
    else
      charges.push({
        what: `the ${item.charge} of row ${item.row}`,
        amount,
        row: item.row,
        discount: item.charge === 'discount',
      });
  }
  return checks;
}

/** Amounts in whole cents add up exactly; others were rounded for print. */
function tolerance(amounts: readonly Amount[]): number {
  const whole = amounts.every(({ amount }) => Math.abs(amount * 100 - Math.round(amount * 100)) < 1e-6);
  return whole ? 0.0050001 : 0.005 * (amounts.length + 1);
}

function sumFinding(
  item: QuoteSum,
  start: Running,
  sinceSum: Running,
  sinceTotal: Running,
  above: {
    readonly lines: readonly Amount[];
    readonly charges: readonly (Amount & { readonly discount: boolean })[];
    readonly subtotals: readonly Amount[];
    readonly wrong: readonly WrongSum[];
  },
): Finding {
  const { sum: about, amount } = item;
  if (amount === null) return cantTell(about, `the amount of the ${about} can't be read`);
  const allowed = tolerance([...above.lines, ...above.charges]);
  const near = (figure: number) => Math.abs(amount - figure) <= allowed;
  const own =
    about === 'total'
      ? [start.all, sinceTotal.all]
      : [start.all, start.lines, sinceSum.all, sinceSum.lines, sinceTotal.all, sinceTotal.lines];
  const ways = start.alternates === 0 ? own : [...own, ...own.map((figure) => figure + start.alternates)];
  const right = about === 'total' ? start.all : above.subtotals.length === 0 ? start.lines : sinceSum.lines;
  if (ways.some(near)) return agrees(about, `${about} ${dollars(amount)} agrees`, amount, ways.find(near)!);
  const carried = carriedFrom(above.wrong, (off) => ways.some((figure) => near(figure + off)));
  if (carried) return agrees(about, `${about} ${dollars(amount)} follows from ${carried.what} as stated`, amount, null);
  const { unknown } = about === 'total' || above.subtotals.length === 0 ? start : sinceSum;
  if (unknown.length > 0) {
    const rows = `${unknown.length === 1 ? 'row' : 'rows'} ${unknown.slice(0, 5).join(', ')}${unknown.length > 5 ? ' …' : ''}`;
    return cantTell(about, `no amount is known for ${rows}`, { quoted: amount });
  }
  const off = amount - right;
  const mistakes = sumMistakes(off, above, near, right, amount);
  const why = mistakes.length > 0 ? `: ${mistakes.join(' or ')}` : '';
  const direction = off < 0 ? 'too little' : 'too much';
  return differs(
    about,
    `${about} ${dollars(amount)}, but the amounts above add up to ${dollars(right)} (${dollars(Math.abs(off))} ${direction})${why}`,
    { mistakes, cause: `${about} is not the sum`, quoted: amount, right, dollars: off, stake: Math.abs(off) },
  );
}

/** The wrong sum, or all of them together, that a later figure follows from. */
function carriedFrom(wrong: readonly WrongSum[], follows: (off: number) => boolean): WrongSum | undefined {
  const all = { what: wrong.map(({ what }) => what).join(' and '), off: wrong.reduce((sum, { off }) => sum + off, 0) };
  return [...wrong, ...(wrong.length > 1 ? [all] : [])].find(({ off }) => follows(off));
}

/** What was probably done to the sum. More than three single rows of that amount say nothing. */
function sumMistakes(
  off: number,
  above: {
    readonly lines: readonly Amount[];
    readonly charges: readonly (Amount & { readonly discount: boolean })[];
    readonly subtotals: readonly Amount[];
  },
  near: (figure: number) => boolean,
  right: number,
  stated: number,
): readonly string[] {
  const is = (figure: number) => Math.abs(figure) > 0.005 && near(right + figure);
  const said: string[] = [];
  for (const { what, amount, discount } of above.charges) {
    if (is(-amount)) said.push(`${what} is left out`);
    if (discount && is(-2 * amount)) said.push(`${what} is added, not taken off`);
    else if (is(amount)) said.push(`${what} is counted twice`);
  }
  const all = above.charges.reduce((sum, { amount }) => sum + amount, 0);
  if (above.charges.length > 1 && is(-all)) said.push('the charges are left out');
  for (const { what, amount } of above.subtotals) if (is(amount)) said.push(`${what} is counted in`);
  const rows = above.lines.flatMap(({ what, amount }) =>
    is(-amount) ? [`${what} is left out`] : is(amount) ? [`${what} is counted twice`] : [],
  );
  if (rows.length <= 3) said.push(...rows);
  if (said.length === 0 && off !== 0 && swapped(stated, right)) said.push('two digits changed places');
  return said;
}

/** A charge that names its rate must be that share of something above it: which, is for the quote to choose. */
function chargeFinding(item: QuoteCharge, start: Running, wrong: readonly WrongSum[]): Finding {
  const { charge, rate, amount } = item;
  if (amount === null) return cantTell('charge', `the amount of "${item.text}" can't be read`);
  if (rate === null || charge === 'deposit') return agrees('charge', `${charge} ${dollars(amount)}`, amount, null);
  if (start.unknown.length > 0)
    return cantTell('charge', `not every amount above "${item.text}" is known`, { quoted: amount });
  const sign = charge === 'discount' ? -1 : 1;
  const bases = [start.lines, start.all];
  const rights = bases.map((base) => sign * rate * base);
  const isOf = (figure: number) => Math.abs(figure - amount) <= 0.0150001;
  const right = rights.find(isOf);
  const percent = `${Number((rate * 100).toFixed(4))}%`;
  if (right !== undefined) return agrees('charge', `${charge} ${dollars(amount)} is ${percent}`, amount, right);
  const carried = carriedFrom(wrong, (off) => bases.some((base) => isOf(sign * rate * (base + off))));
  if (carried)
    return agrees('charge', `${charge} ${dollars(amount)} is ${percent} by ${carried.what} as stated`, amount, null);
  // Taxes may be on part of the quote only: more than the whole is wrong, less may be meant.
  const most = Math.max(...rights.map(Math.abs));
  if (charge === 'tax' && Math.abs(amount) < most)
    return cantTell('charge', `what ${charge} ${dollars(amount)} is ${percent} of`, { quoted: amount });
  const off = amount - rights[0]!;
  return differs(
    'charge',
    `${charge} ${dollars(amount)}, but ${percent} of ${dollars(start.lines)} is ${dollars(Math.abs(rights[0]!))}`,
    {
      cause: `${charge} is not its rate`,
      quoted: amount,
      right: rights[0]!,
      dollars: off,
      stake: Math.abs(off),
    },
  );
}
