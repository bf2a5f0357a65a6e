import { cellText, isBlank } from '../schedule/cell';
import type { CellValue } from '../schedule/opening';
import { readLength } from '../schedule/readLength';
import { perInch, type Unit } from '../unit';
import type { QuoteColumn } from './headings';
import type { QuoteKey } from './meanings';
import { readMoney } from './money';
import { makes, reckonings, type Counted, type Feet, type PricePer } from './reckon';

type Row = readonly CellValue[];

/** So many rows have to come out before figures decide against headings. */
const ENOUGH = 0.6;
const FEWEST = 2;
const MOST_ROWS = 120;
const MOST_COLUMNS = 10;

const LENGTH_KEYS: readonly QuoteKey[] = ['totalLength', 'length', 'lengthWithLegs', 'centerLength', 'insideLength'];
const MONEY: ReadonlySet<QuoteKey> = new Set<QuoteKey>([
  'unitPrice',
  'footPrice',
  'pairPrice',
  'listPrice',
  'extension',
]);
const PER: Readonly<Record<PricePer, QuoteKey>> = { piece: 'unitPrice', foot: 'footPrice', pair: 'pairPrice' };

const PER_THOUSAND =
  /(?:\/|\bper|\ba)\s*(?:m|1,?000|thousand|m ?(?:lf|ft|feet|lin\.? ?ft)\.?|1,?000 (?:lf|ft|feet)\.?)\s*$/i;

/** "Price/M ft": the price of a thousand feet. */
export function isPerThousand(heading: string): boolean {
  return PER_THOUSAND.test(heading);
}

interface Reading {
  readonly quantity: QuoteColumn | null;
  readonly price: QuoteColumn;
  readonly amount: QuoteColumn;
  readonly per: PricePer;
  readonly discount: QuoteColumn | null;
  readonly rows: number;
  readonly right: number;
  /** How many of the columns are what their headings say. */
  readonly named: number;
}

/**
 * Which columns hold the counts, the prices and the amounts: those by which quantity × price = amount comes out in most rows, by the
 * piece, the pair or the foot. Headings decide between readings that come out alike, and where none does.
 */
export function moneyColumns(
  columns: readonly QuoteColumn[],
  all: readonly Row[],
  unit: Unit,
): { readonly columns: readonly QuoteColumn[]; readonly byFigures: boolean } {
  const rows = all.slice(0, MOST_ROWS);
  const figures = new Map(columns.map((column) => [column, rows.map((row) => moneyIn(row[column.index] ?? null))]));
  const filled = (column: QuoteColumn) => figures.get(column)!.filter((figure) => figure !== null).length;
  const free = (column: QuoteColumn) => column.rank >= 0;
  const isMoney = ({ key }: QuoteColumn) => key !== null && MONEY.has(key);
  const paid = columns
    .filter(
      (column) =>
        (isMoney(column) || (column.key === null && free(column)) || (column.key === 'quantity' && free(column))) &&
        filled(column) > 0,
    )
    .slice(0, MOST_COLUMNS);
  const isCount = (column: QuoteColumn) => {
    const cells = rows.map((row) => cellText(row[column.index])).filter((text) => /^\(?\d/.test(text));
    return (
      column.key === 'quantity' ||
      cells.filter((text) => /^\(?\d+(?!\d*[.,\/]\d)/.test(text)).length >= 0.8 * cells.length
    );
  };
  const counts = columns
    .filter(
      (column) =>
        column.key === 'quantity' ||
        (free(column) && (column.key === null || column.key === 'measure' || isMoney(column))),
    )
    .slice(0, MOST_COLUMNS);
  const discount = columns.find(({ key }) => key === 'discount') ?? null;
  const lengths = feetColumns(columns, rows, unit);
  const measures = columns.find(({ key }) => key === 'measure') ?? null;
  let best: Reading | null = null;
  for (const amount of paid) {
    if (amount.rank < 0 && amount.key !== 'extension') continue;
    for (const price of paid) {
      if (price === amount || (price.rank < 0 && price.key === 'extension')) continue;
      for (const quantity of [...counts, null]) {
        if (quantity === amount || quantity === price || (quantity !== null && !isCount(quantity))) continue;
        for (const per of ['piece', 'foot', 'pair'] as const) {
          const reading = judge({ quantity, price, amount, per, discount }, rows, figures, lengths, measures);
          if (reading !== null && (best === null || isBetter(reading, best))) best = reading;
        }
      }
    }
  }
  if (best === null || best.right < ENOUGH * best.rows || best.right < Math.min(2, best.rows))
    return { columns, byFigures: false };
  const { quantity, price, amount, per } = best;
  const settled = columns.map((column): QuoteColumn => {
    const as = (key: QuoteKey): QuoteColumn =>
      column.key === key
        ? { ...column, rank: Math.min(column.rank, 0) }
        : { ...column, key, rank: Math.min(column.rank, 0) };
    if (column === amount) return as('extension');
    // Feet times the price of a foot looks like pieces times the price of a piece.
    if (column === price) return as(per === 'piece' && price.key === 'footPrice' ? 'footPrice' : PER[per]);
    if (column === quantity) return as('quantity');
    // A second price or amount beside the ones that come out: a list price, an amount with something else in it.
    if (isMoney(column) && free(column))
      return { ...column, key: null, instead: column.key === 'extension' || price.rank >= 2 ? amount : price };
    if (column.key === 'quantity' && free(column) && quantity !== null)
      return isCounting(column, rows) ? { ...column, key: 'aside' } : { ...column, key: null, instead: quantity };
    return column;
  });
  return { columns: settled, byFigures: true };
}

/** Rows that come out, then columns that are what their headings say, then the plainer way. */
function isBetter(one: Reading, other: Reading): boolean {
  const order = (reading: Reading) => [
    reading.right,
    reading.named,
    reading.quantity === null ? 0 : 1,
    reading.per === 'piece' ? 2 : reading.per === 'foot' ? 1 : 0,
    reading.amount.index,
  ];
  const [first, second] = [order(one), order(other)];
  // A reading by which one row more comes out is no better than the one that the headings name: that row may be wrong.
  if (first[1] !== second[1] && Math.abs(first[0]! - second[0]!) <= 0.34 * Math.max(one.rows, other.rows))
    return first[1]! > second[1]!;
  const at = first.findIndex((figure, place) => figure !== second[place]);
  return at >= 0 && first[at]! > second[at]!;
}

type Chosen = Pick<Reading, 'quantity' | 'price' | 'amount' | 'per' | 'discount'>;

function judge(
  chosen: Chosen,
  rows: readonly Row[],
  figures: ReadonlyMap<QuoteColumn, readonly (number | null)[]>,
  lengths: readonly (readonly Feet[])[],
  measures: QuoteColumn | null,
): Reading | null {
  const { quantity, price, amount, per, discount } = chosen;
  let [right, seen, telling] = [0, 0, 0];
  for (const [at, row] of rows.entries()) {
    const [paid, one] = [figures.get(amount)![at]!, figures.get(price)![at]!];
    if (paid === null || one === null || paid === 0 || one === 0) continue;
    const counted =
      quantity === null
        ? null
        : countedIn(row[quantity.index] ?? null, measures === null ? '' : cellText(row[measures.index]));
    if (quantity !== null && counted === null) continue;
    seen += 1;
    const reckoned = (each: number, less: number) =>
      reckonings({ counted, price: each, per, less, lengths: per === 'foot' ? lengths[at]! : [] });
    const ways = reckoned(one, 0);
    const less = discount === null ? null : discountOf(row[discount.index] ?? null, discount);
    const thousand = per === 'foot' && isPerThousand(price.heading) ? reckoned(one / 1000, 0) : [];
    const net = less === null ? thousand : [...thousand, ...reckoned(one, less)];
    if (![...ways.slice(0, per === 'pair' ? 1 : undefined), ...net].some((way) => makes(way, paid))) continue;
    right += 1;
    // One piece at its price says nothing of which column is which.
    if (Math.abs(paid - one) > 0.011) telling += 1;
  }
  if (seen === 0) return null;
  // Where no row tells more than "price = amount", headings decide.
  const says = (column: QuoteColumn | null, ...keys: QuoteKey[]) =>
    column !== null && column.key !== null && keys.includes(column.key) ? 1 : 0;
  const named =
    says(amount, 'extension') +
    says(price, PER[per]) * (price.rank < 6 ? 1 : 0.6) +
    (price.key !== 'quantity' ? 0 : -1) +
    0.5 * says(price, 'unitPrice', 'footPrice', 'pairPrice') +
    says(quantity, 'quantity');
  if (named < 2 && (telling === 0 || seen < FEWEST)) return null;
  if (quantity === null && per === 'pair') return null;
  return { ...chosen, rows: seen, right, named };
}

function moneyIn(cell: CellValue): number | null {
  if (isBlank(cell)) return null;
  const read = readMoney(cell);
  return read.ok ? read.value : null;
}

/** What is taken off the price, as a share of it: "15%", 15 and 0.15, and under "Mult." what is left, 0.85. */
export function discountOf(cell: CellValue, { heading }: Pick<QuoteColumn, 'heading'>): number | null {
  const digits = /^-?\s*(\d*\.?\d+)\s*%?$/.exec(cellText(cell))?.[1];
  if (digits === undefined) return null;
  const [figure, percent] = [Number(digits), cellText(cell).includes('%')];
  if (/\bmult(?:iplier)?\b/i.test(heading)) {
    const left = percent || figure > 1 ? figure / 100 : figure;
    return left > 0 && left <= 1 ? 1 - left : null;
  }
  const share = percent || figure >= 1 ? figure / 100 : figure;
  return share < 1 ? share : null;
}

function countedIn(cell: CellValue, measure: string): Counted | null {
  const [, digits, words] = /^\(?(\d[\d,]*(?:\.\d+)?)\)?\s*([a-z].*)?$/i.exec(cellText(cell)) ?? [];
  if (digits === undefined) return null;
  const count = Number(digits.replaceAll(',', ''));
  const unit = words ?? measure;
  if (!(count > 0) || count > 100_000) return null;
  return {
    count,
    of: /^(?:pr|prs|pair|pairs)\b/i.test(unit)
      ? 'pair'
      : Number.isInteger(count) && !/^(?:lf|lft|l\.f\.|ft|feet|foot|lin)/i.test(unit)
        ? 'piece'
        : 'foot',
  };
}

/** Every length of a row in feet: in the workbook's unit where its heading names none. */
function feetColumns(columns: readonly QuoteColumn[], rows: readonly Row[], unit: Unit): readonly (readonly Feet[])[] {
  const foot = 12 * perInch(unit);
  const own = LENGTH_KEYS.flatMap((key) => columns.filter((column) => column.key === key));
  return rows.map((row) =>
    own.flatMap((column): Feet[] => {
      const cell = row[column.index] ?? null;
      if (isBlank(cell)) return [];
      const read = readLength(cell, { name: '', column: column.unit, unit });
      return read.ok ? [{ feet: read.value / foot, rounded: 0.005, all: column.key === 'totalLength' }] : [];
    }),
  );
}

/** 1, 2, 3 …: the numbers of the lines. */
function isCounting({ index }: QuoteColumn, rows: readonly Row[]): boolean {
  const numbers = rows.map((row) => Number(cellText(row[index]))).filter((number) => number > 0);
  return numbers.length > 0 && numbers.every((number, at) => at === 0 || number > numbers[at - 1]!);
}
