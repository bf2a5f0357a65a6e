import { dollars } from '../../quote/money';
import type { ChargeKind, QuoteCharge } from '../../quote/quote';
import { agrees, cantTell, differs, type Finding } from './finding';
import { swapped } from './moneyFindings';

/** What a sum or a charge is figured on. */
export interface Holds {
  /** Places, from and before, among all lines of the quote. */
  readonly lines: readonly [number, number];
  /** Places among all charges of the quote. */
  readonly charges: readonly number[];
  /** What offers beside the quote come to, where a sum holds them. */
  readonly alternates: number;
  /** 1 for a sum, below 0 for what is taken off. */
  readonly rate: number;
  /** By how much the quoted amount may be off that and still be right: it was rounded. */
  readonly within: number;
}

/** A share of something is rounded to cents, and so may be what it is of. */
const WITHIN = 0.0150001;

/** A sum that the quote has wrong: what is figured on it further down is no second fault. */
export interface WrongSum {
  /** "the subtotal of row 9". */
  readonly what: string;
  readonly off: number;
}

/** The amounts above a sum or a charge. */
export interface Above {
  /** How many lines there are, with an amount or without. */
  readonly count: number;
  readonly lines: readonly Amount[];
  readonly charges: readonly Charged[];
  readonly subtotals: readonly (Amount & { readonly holds: Holds })[];
  readonly wrong: readonly WrongSum[];
}

export interface Charged extends Amount {
  readonly kind: ChargeKind;
  /** Its place among all charges. */
  readonly place: number;
}

export interface Amount {
  readonly what: string;
  readonly amount: number;
  readonly row: number;
}

/** The wrong sum, or all of them together, that a later figure follows from, and what fits with it. */
export function carriedFrom<Fitting>(
  wrong: readonly WrongSum[],
  fitting: (off: number) => Fitting | undefined,
): { readonly what: string; readonly fits: Fitting } | undefined {
  const all = { what: wrong.map(({ what }) => what).join(' and '), off: wrong.reduce((sum, { off }) => sum + off, 0) };
  for (const { what, off } of [...wrong, ...(wrong.length > 1 ? [all] : [])]) {
    const fits = fitting(off);
    if (fits !== undefined) return { what, fits };
  }
  return undefined;
}

/** A sum of amounts above that a rate may be of. */
interface Base {
  readonly what: string;
  readonly amount: number;
  /** It holds freight. */
  readonly freight: boolean;
  readonly holds: Pick<Holds, 'lines' | 'charges'>;
}

/** Goods with and without discounts, other charges and freight, and every sum as the quote states it: which, is for the quote to choose. */
function basesOf({ count, lines, charges, subtotals, wrong }: Above): readonly Base[] {
  const goods = { lines: [0, count] as const, charges: [] };
  const starts = [
    { what: 'the goods', amount: total(lines), holds: goods },
    ...subtotals.filter(({ what }) => !wrong.some((one) => one.what === what)),
  ];
  const parts = PARTS.map(({ what, kind }) => {
    const of = charges.filter((one) => one.kind === kind);
    return { what, kind, amount: total(of), places: of.map(({ place }) => place) };
  }).filter(({ amount }) => Math.abs(amount) > 0.005);
  const bases = starts.flatMap((start) =>
    Array.from({ length: 2 ** parts.length }, (_, mask): Base => {
      const taken = parts.filter((_part, at) => (mask >> at) & 1);
      return {
        what: start.what + taken.map(({ what }) => what).join(''),
        amount: start.amount + total(taken),
        freight: taken.some(({ kind }) => kind === 'freight'),
        // A subtotal holds charges of its own.
        holds: {
          lines: start.holds.lines,
          charges: [...start.holds.charges, ...taken.flatMap(({ places }) => places)],
        },
      };
    }),
  );
  return bases.sort((one, two) => Number(one.freight) - Number(two.freight));
}

const PARTS = [
  { what: ' less discount', kind: 'discount' },
  { what: ' with charges', kind: 'other charge' },
  { what: ' with freight', kind: 'freight' },
  { what: ' with tax', kind: 'tax' },
] as const satisfies readonly { what: string; kind: ChargeKind }[];

function total(amounts: readonly { readonly amount: number }[]): number {
  return amounts.reduce((sum, { amount }) => sum + amount, 0);
}

/** Rates that taxes and discounts have: eighths of a percent. */
function isRoundRate(rate: number, base: number): number | null {
  const eighths = Math.round(rate * 800);
  return eighths > 0 &&
    eighths <= 400 &&
    Math.abs((eighths / 800) * base) > 0 &&
    Math.abs(rate - eighths / 800) * Math.abs(base) <= WITHIN
    ? eighths / 800
    : null;
}

const percentText = (rate: number) => `${Number((rate * 100).toFixed(4))}%`;

/** A charge that names its rate must be that share of something above it. */
export function chargeFinding(
  item: QuoteCharge,
  unknown: readonly number[],
  above: Above,
): { readonly finding: Finding; readonly holds: Holds | null } {
  const bases = basesOf(above);
  const { finding, base } = rated(item, unknown, above, bases);
  const { charge, rate, amount } = item;
  const sign = (amount ?? 0) < 0 || charge === 'discount' ? -1 : 1;
  return {
    finding,
    holds: base === null || rate === null ? null : { ...base.holds, alternates: 0, rate: sign * rate, within: WITHIN },
  };
}

interface Rated {
  readonly finding: Finding;
  /** What the charge is a share of. */
  readonly base: Base | null;
}

function rated(item: QuoteCharge, unknown: readonly number[], above: Above, bases: readonly Base[]): Rated {
  const of = (base: Base | null, finding: Finding): Rated => ({ finding, base });
  const alone = (finding: Finding) => of(null, finding);
  const { charge, rate, amount } = item;
  if (amount === null) return alone(cantTell('charge', `the amount of "${item.text}" can't be read`));
  if (rate === null && charge === 'tax')
    return alone(cantTell('charge', `what ${charge} ${dollars(amount)} is of: no rate is stated`, { quoted: amount }));
  if (rate === null || charge === 'deposit')
    return alone(agrees('charge', `${charge} ${dollars(amount)}`, amount, null));
  if (unknown.length > 0)
    return alone(cantTell('charge', `not every amount above "${item.text}" is known`, { quoted: amount }));
  const sign = amount < 0 || charge === 'discount' ? -1 : 1;
  const isOf = (figure: number) => Math.abs(figure - amount) <= WITHIN;
  const on = charge === 'tax' ? freightIn(item.text) : null;
  const fitting = bases.filter((base) => isOf(sign * rate * base.amount));
  // Without freight on the quote, or where both come to the same, there is nothing to say of it.
  const found =
    fitting.find((base) => on === null || base.freight === on || !bases.some((one) => one.freight)) ?? fitting[0];
  const percent = percentText(rate);
  if (found && on !== null && found.freight !== on && bases.some((one) => one.freight)) {
    const words = `its words say that freight is ${on ? '' : 'not '}taxed`;
    return of(
      found,
      differs('charge', `${charge} ${dollars(amount)} is ${percent} of ${found.what}, but ${words}`, {
        mistakes: [on ? 'no tax on freight' : 'tax on freight'],
        cause: 'tax not as its words say',
        quoted: amount,
      }),
    );
  }
  if (found && (!found.freight || charge !== 'tax' || on !== null)) {
    const text = `${charge} ${dollars(amount)} is ${percent} of ${found.what}`;
    return of(found, agrees('charge', text, amount, sign * rate * found.amount));
  }
  if (found) {
    const why = `${charge} ${dollars(amount)} is ${percent} of ${found.what}: whether freight is taxed is for the state to say`;
    return of(found, cantTell('charge', why, { quoted: amount, mistakes: ['tax on freight'] }));
  }
  const carried = carriedFrom(above.wrong, (off) => bases.find((base) => isOf(sign * rate * (base.amount + off))));
  if (carried) {
    const text = `${charge} ${dollars(amount)} is ${percent} by ${carried.what} as stated`;
    return of(carried.fits, agrees('charge', text, amount, null));
  }
  const otherRate = bases.flatMap((base) => {
    const other = isRoundRate((sign * amount) / base.amount, base.amount);
    return other === null ? [] : [{ base, other }];
  })[0];
  // Taxes may be on part of the quote only: more than the whole is wrong, less may be meant.
  const most = Math.max(...bases.map((base) => Math.abs(rate * base.amount)));
  if (charge === 'tax' && Math.abs(amount) < most && !otherRate)
    return alone(cantTell('charge', `what ${charge} ${dollars(amount)} is ${percent} of`, { quoted: amount }));
  const base = otherRate?.base ?? bases[0]!;
  const right = sign * rate * base.amount;
  const off = amount - right;
  const mistakes = otherRate
    ? [`figured at another rate: ${percentText(otherRate.other)}`]
    : swapped(amount, right)
      ? ['two digits changed places']
      : [];
  const is = `${percent} of ${base.what}, ${dollars(base.amount)}, is ${dollars(Math.abs(right))}`;
  const why = mistakes.map((one) => `: ${one}`).join('');
  return of(
    base,
    differs('charge', `${charge} ${dollars(amount)} quoted, ${is}${why}`, {
      mistakes,
      cause: otherRate ? `${charge} figured at another rate` : `${charge} is not its rate`,
      quoted: amount,
      right,
      said: { quoted: dollars(amount), right: is },
      dollars: off,
      stake: Math.abs(off),
    }),
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
