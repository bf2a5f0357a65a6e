import { agrees, cantTell, differs, type Finding } from './finding';
import { dollars } from '../../quote/money';
import { swapped } from './moneyFindings';
import { amountOf, type ChargeKind, type Quote, type QuoteCharge, type QuoteSum } from '../../quote/quote';

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

/** The amounts above a sum or a charge. */
interface Above {
  readonly lines: readonly Amount[];
  readonly charges: readonly Charged[];
  readonly subtotals: readonly Amount[];
  readonly wrong: readonly WrongSum[];
}

interface Charged extends Amount {
  readonly kind: ChargeKind;
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
  const charges: Charged[] = [];
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
    if (item.kind === 'charge')
      checks.push({ item, finding: chargeFinding(item, start, { lines, charges, subtotals, wrong }) });
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
        kind: item.charge,
      });
  }
  return checks;
}

/** Amounts in whole cents add up exactly; others were rounded for print. */
function tolerance(amounts: readonly Amount[]): number {
  const whole = amounts.every(({ amount }) => Math.abs(amount * 100 - Math.round(amount * 100)) < 1e-6);
  return whole ? 0.0050001 : 0.005 * (amounts.length + 1);
}

function sumFinding(item: QuoteSum, start: Running, sinceSum: Running, sinceTotal: Running, above: Above): Finding {
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

/** A sum of amounts above that a rate may be of. */
interface Base {
  readonly what: string;
  readonly amount: number;
  /** It holds freight. */
  readonly freight: boolean;
}

/** Goods with and without discounts, other charges and freight, and every sum as the quote states it: which, is for the quote to choose. */
function basesOf({ lines, charges, subtotals, wrong }: Above): readonly Base[] {
  const of = (kinds: readonly ChargeKind[]) =>
    charges.filter(({ kind }) => kinds.includes(kind)).reduce((sum, { amount }) => sum + amount, 0);
  const goods = lines.reduce((sum, { amount }) => sum + amount, 0);
  const [discount, other, freight, tax] = [of(['discount']), of(['other charge']), of(['freight']), of(['tax'])];
  const starts = [
    { what: 'the goods', amount: goods },
    ...subtotals.filter(({ what }) => !wrong.some((one) => one.what === what)),
  ];
  const parts = [
    { what: ' less discount', amount: discount, freight: false },
    { what: ' with charges', amount: other, freight: false },
    { what: ' with freight', amount: freight, freight: true },
    { what: ' with tax', amount: tax, freight: false },
  ].filter(({ amount }) => Math.abs(amount) > 0.005);
  const bases = starts.flatMap((start) =>
    Array.from({ length: 2 ** parts.length }, (_, mask): Base => {
      const taken = parts.filter((_part, at) => (mask >> at) & 1);
      return {
        what: start.what + taken.map(({ what }) => what).join(''),
        amount: taken.reduce((sum, { amount }) => sum + amount, start.amount),
        freight: taken.some((part) => part.freight),
      };
    }),
  );
  return bases.sort((one, two) => Number(one.freight) - Number(two.freight));
}

/** Rates that taxes and discounts have: eighths of a percent. */
function isRoundRate(rate: number, base: number): number | null {
  const eighths = Math.round(rate * 800);
  return eighths > 0 &&
    eighths <= 400 &&
    Math.abs((eighths / 800) * base) > 0 &&
    Math.abs(rate - eighths / 800) * Math.abs(base) <= 0.0150001
    ? eighths / 800
    : null;
}

const percentText = (rate: number) => `${Number((rate * 100).toFixed(4))}%`;

/** A charge that names its rate must be that share of something above it. */
function chargeFinding(item: QuoteCharge, start: Running, above: Above): Finding {
  const { charge, rate, amount } = item;
  if (amount === null) return cantTell('charge', `the amount of "${item.text}" can't be read`);
  if (rate === null && charge === 'tax')
    return cantTell('charge', `what ${charge} ${dollars(amount)} is of: no rate is stated`, { quoted: amount });
  if (rate === null || charge === 'deposit') return agrees('charge', `${charge} ${dollars(amount)}`, amount, null);
  if (start.unknown.length > 0)
    return cantTell('charge', `not every amount above "${item.text}" is known`, { quoted: amount });
  const sign = amount < 0 || charge === 'discount' ? -1 : 1;
  const bases = basesOf(above);
  const isOf = (figure: number) => Math.abs(figure - amount) <= 0.0150001;
  const on = charge === 'tax' ? freightIn(item.text) : null;
  const fitting = bases.filter((base) => isOf(sign * rate * base.amount));
  // Without freight on the quote, or where both come to the same, there is nothing to say of it.
  const found =
    fitting.find((base) => on === null || base.freight === on || !bases.some((one) => one.freight)) ?? fitting[0];
  const percent = percentText(rate);
  if (found && on !== null && found.freight !== on && bases.some((one) => one.freight))
    return differs(
      'charge',
      `${charge} ${dollars(amount)} is ${percent} of ${found.what}, but its words say that freight is ${on ? '' : 'not '}taxed`,
      { mistakes: [on ? 'no tax on freight' : 'tax on freight'], cause: 'tax not as its words say', quoted: amount },
    );
  if (found && (!found.freight || charge !== 'tax' || on !== null))
    return agrees(
      'charge',
      `${charge} ${dollars(amount)} is ${percent} of ${found.what}`,
      amount,
      sign * rate * found.amount,
    );
  if (found)
    return cantTell(
      'charge',
      `${charge} ${dollars(amount)} is ${percent} of ${found.what}: whether freight is taxed is for the state to say`,
      {
        quoted: amount,
        mistakes: ['tax on freight'],
      },
    );
  const carried = carriedFrom(above.wrong, (off) => bases.some((base) => isOf(sign * rate * (base.amount + off))));
  if (carried)
    return agrees('charge', `${charge} ${dollars(amount)} is ${percent} by ${carried.what} as stated`, amount, null);
  const goods = bases[0]!.amount;
  const rated = bases.flatMap((base) => {
    const other = isRoundRate((sign * amount) / base.amount, base.amount);
    return other === null ? [] : [{ base, other }];
  })[0];
  // Taxes may be on part of the quote only: more than the whole is wrong, less may be meant.
  const most = Math.max(...bases.map((base) => Math.abs(rate * base.amount)));
  if (charge === 'tax' && Math.abs(amount) < most && !rated)
    return cantTell('charge', `what ${charge} ${dollars(amount)} is ${percent} of`, { quoted: amount });
  const base = rated?.base ?? bases[0]!;
  const right = sign * rate * (rated ? base.amount : goods);
  const off = amount - right;
  const mistakes = rated
    ? [`figured at another rate: ${percentText(rated.other)}`]
    : swapped(amount, right)
      ? ['two digits changed places']
      : [];
  return differs(
    'charge',
    `${charge} ${dollars(amount)}, but ${percent} of ${base.what}, ${dollars(base.amount)}, is ${dollars(Math.abs(right))}${mistakes.map((one) => `: ${one}`).join('')}`,
    {
      mistakes,
      cause: rated ? `${charge} figured at another rate` : `${charge} is not its rate`,
      quoted: amount,
      right,
      dollars: off,
      stake: Math.abs(off),
    },
  );
}

const FREIGHT = '(?:the )?(?:freight|deliver(?:y|ies)|shipping)';
const NOT_ON_FREIGHT = new RegExp(
  String.raw`\b(?:not on|but not|before|without|w/o|excl\w*|except(?: on| for)?|other than|but) ${FREIGHT}\b`,
  'i',
);
const ON_FREIGHT = new RegExp(
  String.raw`\b(?:on|with|and|incl\w*|plus|also) ${FREIGHT}\b|\b${FREIGHT} (?:included|taxed|too)\b`,
  'i',
);

/** Whether a tax's own words say that freight is taxed, or isn't; null: they say nothing of it. */
function freightIn(text: string): boolean | null {
  if (NOT_ON_FREIGHT.test(text)) return false;
  return ON_FREIGHT.test(text) ? true : null;
}
