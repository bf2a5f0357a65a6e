import { dollars } from '../../quote/money';
import { amountOf, type Quote, type QuoteCharge, type QuoteSum } from '../../quote/quote';
import {
  carriedFrom,
  chargeFinding,
  type Above,
  type Amount,
  type Charged,
  type Holds,
  type WrongSum,
} from './charges';
import { agrees, cantTell, differs, type Finding } from './finding';
import { swapped } from './moneyFindings';

/** A subtotal, total or charge and whether its figure follows from those above it. */
export interface SumCheck {
  readonly item: QuoteSum | QuoteCharge;
  readonly finding: Finding;
  /** The amounts above that it is the sum, or a share, of; null: it stands by itself. */
  readonly holds: Holds | null;
}

/** Amounts since some point of the quote: after so many lines and charges, with an amount or without. */
class Running {
  constructor(
    readonly fromLine: number,
    readonly fromCharge: number,
  ) {}

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

/**
 * Checks every charge with a rate and every sum against the amounts above it, all of them the quote's own. `alternates` are
 * the rows of offers beside the quote.
 */
export function checkSums({ items }: Quote, alternates: ReadonlySet<number>): readonly SumCheck[] {
  const checks: SumCheck[] = [];
  const start = new Running(0, 0);
  let sinceSum = start;
  let sinceTotal = start;
  const lines: Amount[] = [];
  const charges: Charged[] = [];
  const subtotals: (Amount & { readonly holds: Holds })[] = [];
  const wrong: WrongSum[] = [];
  // Of all lines and charges, with an amount or without.
  let [count, charge] = [0, 0];
  for (const item of items) {
    const running = new Set([start, sinceSum, sinceTotal]);
    const above = { count, lines, charges, subtotals, wrong };
    if (item.kind === 'sum') {
      const { finding, holds } = sumFinding(item, start, sinceSum, sinceTotal, above);
      checks.push({ item, finding, holds });
      if (finding.verdict === 'differs')
        wrong.push({ what: `the ${item.sum} of row ${item.row}`, off: finding.dollars! });
      if (item.amount !== null && item.sum === 'subtotal')
        subtotals.push({ what: `the subtotal of row ${item.row}`, amount: item.amount, row: item.row, holds });
      sinceSum = new Running(count, charge);
      if (item.sum === 'total') sinceTotal = new Running(count, charge);
      continue;
    }
    const amount = item.kind === 'line' ? amountOf(item) : item.amount;
    if (item.kind === 'charge') checks.push({ item, ...chargeFinding(item, start.unknown, above) });
    const place = item.kind === 'line' ? count++ : charge++;
    for (const one of running) {
      if (alternates.has(item.row)) one.alternates += amount ?? 0;
      else if (amount === null) one.unknown.push(item.row);
      else if (item.kind === 'line') one.lines += amount;
      else one.charges += amount;
    }
    if (amount === null || alternates.has(item.row)) continue;
    if (item.kind === 'line') lines.push({ what: `row ${item.row}`, amount, row: item.row });
    else
      charges.push({
        what: `the ${item.charge} of row ${item.row}`,
        amount,
        row: item.row,
        kind: item.charge,
        place,
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
  above: Above,
): { readonly finding: Finding; readonly holds: Holds } {
  const { sum: about, amount } = item;
  const allowed = tolerance([...above.lines, ...above.charges]);
  const held = ({ fromLine, fromCharge }: Running, withCharges: boolean): Holds => ({
    lines: [fromLine, above.count],
    charges: withCharges ? above.charges.map(({ place }) => place).filter((place) => place >= fromCharge) : [],
    alternates: 0,
    rate: 1,
    within: allowed,
  });
  // A subtotal right below another one is of everything.
  const first = above.subtotals.length === 0 || sinceSum.lines === 0 ? start : sinceSum;
  const usual = about === 'total' ? held(start, true) : held(first, false);
  if (amount === null) return { finding: cantTell(about, `the amount of the ${about} can't be read`), holds: usual };
  const near = (figure: number) => Math.abs(amount - figure) <= allowed;
  const withCharges = [start, sinceSum, sinceTotal].map((one) => ({ sum: one.all, holds: held(one, true) }));
  const alone = [start, sinceSum, sinceTotal].map((one) => ({ sum: one.lines, holds: held(one, false) }));
  const own =
    about === 'total' ? [withCharges[0]!, withCharges[2]!] : withCharges.flatMap((one, at) => [one, alone[at]!]);
  const { alternates } = start;
  const withThem = own.map(({ sum, holds }) => ({ sum: sum + alternates, holds: { ...holds, alternates } }));
  const ways = alternates === 0 ? own : [...own, ...withThem];
  const right = about === 'total' ? start.all : first.lines;
  const found = ways.find(({ sum }) => near(sum));
  if (found)
    return { finding: agrees(about, `${about} ${dollars(amount)} agrees`, amount, found.sum), holds: found.holds };
  const carried = carriedFrom(above.wrong, (off) => ways.find(({ sum }) => near(sum + off)));
  if (carried) {
    const text = `${about} ${dollars(amount)} follows from ${carried.what} as stated`;
    return { finding: agrees(about, text, amount, null), holds: carried.fits.holds };
  }
  const { unknown } = about === 'total' ? start : first;
  if (unknown.length > 0) {
    const rows = `${unknown.length === 1 ? 'row' : 'rows'} ${unknown.slice(0, 5).join(', ')}${unknown.length > 5 ? ' …' : ''}`;
    return { finding: cantTell(about, `no amount is known for ${rows}`, { quoted: amount }), holds: usual };
  }
  const off = amount - right;
  const mistakes = sumMistakes(off, above, near, right, amount);
  const why = mistakes.length > 0 ? `: ${mistakes.join(' or ')}` : '';
  const direction = off < 0 ? 'too little' : 'too much';
  const finding = differs(
    about,
    `${about} ${dollars(amount)} quoted, the amounts above add up to ${dollars(right)} (${dollars(Math.abs(off))} ${direction})${why}`,
    {
      mistakes,
      cause: `${about} is not the sum`,
      quoted: amount,
      right,
      said: { quoted: dollars(amount), right: `the amounts above add up to ${dollars(right)}` },
      dollars: off,
      stake: Math.abs(off),
    },
  );
  return { finding, holds: usual };
}

/** What was probably done to the sum. More than three single rows of that amount say nothing. */
function sumMistakes(
  off: number,
  above: Above,
  near: (figure: number) => boolean,
  right: number,
  stated: number,
): readonly string[] {
  const is = (figure: number) => Math.abs(figure) > 0.005 && near(right + figure);
  const said: string[] = [];
  for (const { what, amount, kind } of above.charges) {
    if (is(-amount)) said.push(`${what} is left out`);
    if (kind === 'discount' && is(-2 * amount)) said.push(`${what} is added, not taken off`);
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
  if (said.length === 0 && near(10 * right)) said.push('ten times too much');
  if (said.length === 0 && near(right / 10)) said.push('a tenth of it');
  if (said.length === 0) said.push(...pairsLeftOut(above.lines, is));
  return said;
}

/** Two neighboring rows that are left out together, where only one pair of them fits. */
function pairsLeftOut(lines: readonly Amount[], is: (figure: number) => boolean): readonly string[] {
  const pairs = lines.slice(1).filter(({ amount }, at) => is(-amount - lines[at]!.amount));
  return pairs.length === 1 ? [`${lines[lines.indexOf(pairs[0]!) - 1]!.what} and ${pairs[0]!.what} are left out`] : [];
}
