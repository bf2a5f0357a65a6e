import type { CellValue } from '../../../src/schedule/opening';
import type { Random } from '../../random';
import type { Planted } from './line';
import { wording, type Style } from './wordings';

/** A row below the goods: words and an amount. */
export interface SumRow {
  readonly line: 'subtotal' | 'total' | 'tax' | 'discount' | 'freight' | 'charge' | 'allowance' | 'alternate';
  readonly words: string;
  amount: number;
  /** Of a tax or discount that states its rate. */
  readonly rate: number | null;
  planted: Planted | null;
}

export const cents = (amount: number) => Math.round(amount * 100 + 1e-7) / 100;

const TAXES = [0.05, 0.06, 0.07, 0.0825];

/** The rate that words state, as a fraction. */
function rateIn(words: string): number | null {
  const found = /(\d+)(?:-(\d)\/(\d)|(\.\d+))?\s*%/.exec(words);
  if (found === null) return null;
  const [, whole, above, below, decimals] = found;
  return (Number(whole) + (above ? Number(above) / Number(below) : Number(decimals ?? 0))) / 100;
}

const BLOCKS: readonly (readonly SumRow['line'][])[] = [
  ['total'],
  ['subtotal', 'tax', 'total'],
  ['subtotal', 'discount', 'freight', 'tax', 'total'],
  ['subtotal', 'charge', 'freight', 'total'],
  ['subtotal', 'allowance', 'total'],
  ['discount', 'total'],
  ['subtotal', 'freight', 'tax', 'total'],
  ['subtotal', 'discount', 'tax', 'freight', 'total'],
];

/** Charges and sums below lines of these amounts, as a supplier words them; at most one of them is wrong. */
export function sumsOf(amounts: readonly number[], style: Style, random: Random, mistake: boolean): SumRow[] {
  const block = random.pick(BLOCKS);
  const rows = block.map((line): SumRow => {
    let words = wording(`line: ${line}`, style, random, (text) => line !== 'subtotal' || !/floor/i.test(text));
    let rate = rateIn(words);
    if (line === 'tax' && rate === null && random.pick([true, true, false])) {
      rate = random.pick(TAXES);
      words = `${words} ${Number((rate * 100).toFixed(2))}%`;
    }
    return { line, words, amount: 0, rate, planted: null };
  });
  const kinds = mistake ? SUM_KINDS.filter(({ fits }) => fits(rows, amounts)) : [];
  const kind = kinds.length > 0 ? random.pick(kinds) : null;
  const goods = cents(amounts.reduce((sum, one) => sum + one, 0));
  let [discount, freight, other, tax, stated] = [0, 0, 0, 0, goods];
  for (const row of rows) {
    const at = rows.indexOf(row);
    switch (row.line) {
      case 'subtotal':
        row.amount = goods;
        break;
      case 'discount':
        row.amount = -cents(stated * (row.rate ?? random.pick([0.05, 0.1])));
        break;
      case 'freight':
        row.amount = random.pick([65, 85, 145, 210]);
        break;
      case 'charge':
      case 'allowance':
        row.amount = random.pick([45, 75, 120]);
        break;
      case 'tax':
        row.amount = cents((stated + discount) * (row.rate ?? random.pick(TAXES)));
        break;
      default:
        row.amount = cents(stated + discount + freight + other + tax);
    }
    const wrong =
      kind !== null && kind.at(rows) === at
        ? kind.wrong(row, { amounts, goods, discount, freight, stated, rows })
        : null;
    if (wrong !== null && Math.abs(wrong - row.amount) > 0.02) {
      row.amount = wrong;
      row.planted = kind;
    }
    if (row.line === 'subtotal') stated = row.amount;
    if (row.line === 'discount') discount = row.amount;
    if (row.line === 'freight') freight = row.amount;
    if (row.line === 'charge' || row.line === 'allowance') other += row.amount;
    if (row.line === 'tax') tax = row.amount;
  }
  return rows;
}

interface Known {
  readonly amounts: readonly number[];
  readonly goods: number;
  readonly discount: number;
  readonly freight: number;
  readonly stated: number;
  readonly rows: readonly SumRow[];
}
interface SumKind extends Planted {
  readonly fits: (rows: readonly SumRow[], amounts: readonly number[]) => boolean;
  readonly at: (rows: readonly SumRow[]) => number;
  readonly wrong: (row: SumRow, known: Known) => number | null;
}

const has = (rows: readonly SumRow[], line: SumRow['line'], rated = false) =>
  rows.some((row) => row.line === line && (!rated || row.rate !== null));
const at = (line: SumRow['line']) => (rows: readonly SumRow[]) => rows.findIndex((row) => row.line === line);
const kindOf = (
  kind: string,
  named: RegExp,
  line: SumRow['line'],
  wrong: SumKind['wrong'],
  fits: SumKind['fits'] = (rows) => has(rows, line),
): SumKind => ({ kind, named, at: at(line), wrong, fits });

function swappedDigits(amount: number): number | null {
  const text = amount.toFixed(2);
  const place = text.indexOf('.') - 2;
  if (place < 0 || text[place] === text[place + 1]) return null;
  return Number(text.slice(0, place) + text[place + 1]! + text[place]! + text.slice(place + 2));
}

const SUM_KINDS: readonly SumKind[] = [
  kindOf('subtotal leaves out a line', /left out/, 'subtotal', (row, { amounts }) => cents(row.amount - amounts[2]!)),
  kindOf('subtotal is not the sum', /^subtotal.*add up to/, 'subtotal', (row) => cents(row.amount + 37.4)),
  kindOf('total is not the sum', /^total.*add up to/, 'total', (row) => cents(row.amount - 53.2)),
  kindOf('digits swapped in the total', /digits/, 'total', (row) => swappedDigits(row.amount)),
  kindOf(
    'subtotal counted twice in the total',
    /counted in/,
    'total',
    (row, { stated }) => cents(row.amount + stated),
    (rows) => has(rows, 'subtotal'),
  ),
  kindOf(
    'freight left out of the total',
    /left out/,
    'total',
    (row, { freight }) => cents(row.amount - freight),
    (rows) => has(rows, 'freight'),
  ),
  kindOf(
    'tax at another rate',
    /another rate/,
    'tax',
    (row, { stated, discount }) => cents((stated + discount) * (row.rate! + 0.01)),
    (rows) => has(rows, 'tax', true),
  ),
  kindOf(
    'tax on freight',
    /freight/,
    'tax',
    (row, { stated, discount, freight }) => (freight === 0 ? null : cents((stated + discount + freight) * row.rate!)),
    (rows) => has(rows, 'tax', true) && has(rows, 'freight'),
  ),
  kindOf(
    'discount added, not taken off',
    /added/,
    'total',
    (row, { discount }) => cents(row.amount - 2 * discount),
    (rows) => has(rows, 'discount'),
  ),
  kindOf(
    'discount at another rate',
    /another rate/,
    'discount',
    (row, { stated }) => -cents(stated * (row.rate! + 0.02)),
    (rows) => has(rows, 'discount', true),
  ),
];

/** Such a row in a table of `width` columns: its words in the first or the second, its amount under `amountAt`. */
export function sumCells(row: SumRow, width: number, wordsAt: number, amountAt: number): CellValue[] {
  return Array.from({ length: width }, (_, place) =>
    place === wordsAt ? row.words : place === amountAt ? row.amount.toFixed(2) : null,
  );
}
