import { cellText, isBlank, isRowEmpty } from '../schedule/cell';
import type { CellValue } from '../schedule/opening';
import { declines } from './declined';
import { quoteUnits, repeatsHeadings, type QuoteColumn, type QuoteLayout } from './headings';
import {
  chargeKind,
  namesAlternate,
  namesCharge,
  namesGoods,
  namesPart,
  namesSum,
  namesTotal,
  rateIn,
  readLabel,
} from './labels';
import type { Marks } from './marks';
import type { QuoteKey } from './meanings';
import { readMoney } from './money';
import { netted } from './netted';
import type { QuoteCharge, QuoteSum } from './quote';
import { isFigure } from './setAside';

type Row = readonly CellValue[];

/** Why a row is passed over that says that its opening isn't quoted. */
const NOT_QUOTED = 'not quoted';

export type SortedRow = 'line' | QuoteCharge | QuoteSum | { readonly why: string; readonly declined?: string };

/** A row that gives one of these is molding, whatever its words. */
const SIZED: ReadonlySet<QuoteKey> = new Set<QuoteKey>([
  'radius',
  'length',
  'insideLength',
  'centerLength',
  'lengthWithLegs',
  'outsideRadius',
  'openingRadius',
  'diameter',
]);
const FIGURES: ReadonlySet<QuoteKey> = new Set<QuoteKey>([
  ...SIZED,
  'totalLength',
  'quantity',
  'size',
  'span',
  'rise',
  'unitPrice',
  'footPrice',
  'pairPrice',
  'extension',
]);
/** Figures of a row that are never its amount: "Freight, 1" is not a dollar. */
const NO_MONEY: ReadonlySet<QuoteKey> = new Set<QuoteKey>([
  ...SIZED,
  'totalLength',
  'quantity',
  'size',
  'span',
  'rise',
  'face',
  'thickness',
  'reveal',
  'leg',
  'legCount',
  'section',
  'discount',
  'measure',
  'mark',
  'aside',
]);
const PRICES: ReadonlySet<QuoteKey> = new Set<QuoteKey>(['unitPrice', 'footPrice', 'pairPrice', 'listPrice']);

/** What a sum may be of, so far. */
interface Above {
  /** Amounts of the lines, and of the charges, since the start. */
  lines: number;
  charges: number;
  count: number;
  /** The same since the last sum. */
  sinceLines: number;
  sinceCharges: number;
  sinceCount: number;
}

/**
 * What every row of a quote is: a line, a charge, a sum, or passed over with the reason. Figures say it first: an unmarked row whose
 * amount is the sum of those above is a sum, whatever it is called. Then its words; money that is for no molding is a charge.
 */
export function sortRows(
  rows: readonly Row[],
  firstRow: number,
  layout: QuoteLayout,
  marks: Marks | null,
): readonly SortedRow[] {
  const above: Above = { lines: 0, charges: 0, count: 0, sinceLines: 0, sinceCharges: 0, sinceCount: 0 };
  const last = lastAmount(rows, layout.columns);
  return rows.map((row, at) => {
    const sorted =
      passedOver(row, at, layout) ?? sortRow(row, firstRow + at, layout.columns, marks, above, at === last);
    note(sorted, row, layout.columns, above);
    return sorted;
  });
}

function passedOver(row: Row, at: number, layout: QuoteLayout): SortedRow | null {
  if (isRowEmpty(row)) return { why: 'blank' };
  if (layout.headingRows.includes(at)) return { why: 'headings' };
  if (at < (layout.headingRows[0] ?? 0)) return { why: 'title or note above the headings' };
  if (at === layout.unitRow || quoteUnits(row) !== null) return { why: 'units' };
  return repeatsHeadings(row, layout) ? { why: 'repeated headings' } : null;
}

function note(sorted: SortedRow, row: Row, columns: readonly QuoteColumn[], above: Above): void {
  if (sorted === 'line') {
    const amount = lineAmount(row, columns);
    if (amount !== null && !namesAlternate(wordsIn(row).join(' '))) {
      above.lines += amount;
      above.sinceLines += amount;
    }
    above.count += 1;
    above.sinceCount += 1;
  } else if ('kind' in sorted && sorted.kind === 'charge') {
    above.charges += sorted.amount ?? 0;
    above.sinceCharges += sorted.amount ?? 0;
  } else if ('kind' in sorted) {
    above.sinceLines = 0;
    above.sinceCharges = 0;
    above.sinceCount = 0;
  }
}

function sortRow(
  row: Row,
  number: number,
  columns: readonly QuoteColumn[],
  marks: Marks | null,
  above: Above,
  isLast: boolean,
): SortedRow {
  const texts = row.map((cell) => (typeof cell === 'string' ? cellText(cell) : ''));
  const words = wordsIn(row).join(' ');
  const figures = columns.some(({ key, index }) => key !== null && FIGURES.has(key) && !isBlank(row[index]));
  const sized = columns.some(({ key, index }) => key !== null && SIZED.has(key) && /\d/.test(cellText(row[index])));
  const own =
    columns
      .filter(({ key }) => key === 'mark')
      .map(({ index }) => cellText(row[index]))
      .find((text) => text !== '') ?? '';
  const marked = marks === null ? looksLikeMark(own) : marks.find(own).length > 0 || marks.within(own, true).length > 0;
  const named = marks !== null && !marked && marks.within(words).length > 0;
  const amount = amountIn(row, columns);
  const filled = row.filter((cell) => !isBlank(cell)).length;
  const counted = columns.some(
    ({ key, index }) => key === 'quantity' && Number(/^\d+/.exec(cellText(row[index]))?.[0] ?? 0) > 1,
  );
  const priced = columns.some(
    ({ key, index }) => key !== null && PRICES.has(key) && !isBlank(row[index]) && amountAt(row[index]!) !== amount,
  );
  if (namesAlternate(words) && (figures || amount !== null)) return 'line';
  if (marked || named) {
    const declined = declines(row);
    if (declined !== null && (amount === null || amount === 0)) return { why: NOT_QUOTED, declined };
  }
  const label = sized ? null : readLabel(texts);
  if (label?.kind === 'sum' && !(marked && figures && amount === null)) {
    const sum: QuoteSum = { ...label, row: number, amount };
    return sum.amount === null && !hasFigure(row) ? { why: 'note' } : sum;
  }
  const net = marked || sized || counted || amount === null ? null : netted(words, rateIn(texts), amount, above);
  if (net !== null) return charge(row, number, columns, 'discount', words, net.rate, net.off);
  if (marked && (figures || filled > 1) && label === null)
    return figures || filled > 1 ? 'line' : { why: 'title or note' };
  if (label?.kind === 'charge') return charge(row, number, columns, label.charge, label.text, label.rate, amount);
  if (sized || (named && figures)) return 'line';
  const bySum = amount !== null && !counted && !priced ? sumOf(number, amount, words, above, isLast) : null;
  if (bySum !== null) return bySum;
  const rate = rateIn(texts);
  if (amount !== null && !counted && rate !== null && !/\p{L}/u.test(words))
    return charge(row, number, columns, amount < 0 ? 'discount' : 'tax', texts.join(' ').trim(), rate, amount);
  if (
    amount !== null &&
    amount !== 0 &&
    !counted &&
    !looksLikeMark(own) &&
    !(namesGoods(words) && !namesCharge(words)) &&
    /\p{L}/u.test(words)
  )
    return charge(row, number, columns, chargeKind(words, amount), words, rateIn(texts), amount);
  // A mark alone heads a group of lines.
  if (!figures && !(looksLikeMark(own) && filled > 1)) return { why: 'title or note' };
  return 'line';
}

/** A mark of a kind, whether ours or not: short, with a figure in it that is no rate of a tax: "S/T 5%". */
function looksLikeMark(text: string): boolean {
  return text.length <= 12 && /\d/.test(text) && !/^\d+$/.test(text) && !text.includes('%');
}

/** A sum by its figures, or by words that only sums have. */
function sumOf(number: number, amount: number, words: string, above: Above, isLast: boolean): QuoteSum | null {
  const sum = (kind: QuoteSum['sum']): QuoteSum => ({ kind: 'sum', sum: kind, row: number, text: words, amount });
  const near = (figure: number) => Math.abs(amount - figure) <= 0.005 * (above.count + 1) + 0.001;
  const kind = namesTotal(words) || isLast ? 'total' : 'subtotal';
  const several = above.count >= 2 && [above.lines, above.lines + above.charges].some(near);
  const section = above.sinceCount >= 2 && near(above.sinceLines);
  const single =
    !namesGoods(words) &&
    amount !== 0 &&
    (near(above.lines + above.charges) || near(above.sinceLines)) &&
    above.count > 0;
  if (several || section || single) return sum(kind);
  if (namesSum(words) || (namesPart(words) && amount >= 0.3 * above.sinceLines && above.sinceCount > 0))
    return sum(kind);
  // At the end, about as much as everything above, and no charge by its words: the bottom line of the quote.
  const all = above.lines + above.charges;
  const large = above.count >= 2 && amount >= 0.45 * all && !namesCharge(words) && !namesGoods(words);
  return large && isLast ? sum('total') : null;
}

function charge(
  row: Row,
  number: number,
  columns: readonly QuoteColumn[],
  kind: QuoteCharge['charge'],
  text: string,
  rate: number | null,
  written: number | null,
): SortedRow {
  const amount = (kind === 'discount' || kind === 'deposit') && written !== null ? -Math.abs(written) : written;
  // "Delivery in three weeks" costs nothing; "Sales tax 7%" without its amount is still a charge, and so is freight "TBD".
  if (amount === null && rate === null && isBlank(extensionIn(row, columns))) return { why: 'note' };
  return { kind: 'charge', charge: kind, row: number, text, rate, amount };
}

function wordsIn(row: Row): readonly string[] {
  return row.flatMap((cell) =>
    typeof cell === 'string' && /\p{L}/u.test(cell) && !isFigure(cell) ? [cellText(cell)] : [],
  );
}

/** The amount of a charge or a sum: what stands under the amounts, or else the last cell that may be money and is. */
function amountIn(row: Row, columns: readonly QuoteColumn[]): number | null {
  const own = extensionIn(row, columns);
  if (!isBlank(own)) return amountAt(own);
  for (let at = row.length - 1; at >= 0; at--) {
    const cell = row[at] ?? null;
    const key = columns[at]?.key ?? null;
    if (
      isBlank(cell) ||
      (key !== null && NO_MONEY.has(key)) ||
      (typeof cell === 'string' && (!/\d/.test(cell) || /%/.test(cell)))
    )
      continue;
    const read = readMoney(cell);
    if (read.ok) return read.value;
  }
  return null;
}

function amountAt(cell: CellValue): number | null {
  const read = readMoney(cell);
  return read.ok ? read.value : null;
}

/** What a line comes to by its figures, as far as they can be read at a glance. */
function lineAmount(row: Row, columns: readonly QuoteColumn[]): number | null {
  const own = extensionIn(row, columns);
  if (!isBlank(own)) return amountAt(own);
  const cellOf = (key: QuoteKey) => row[columns.find((column) => column.key === key)?.index ?? -1] ?? null;
  const [price, count] = [amountAt(cellOf('unitPrice')), Number(/^\d+/.exec(cellText(cellOf('quantity')))?.[0] ?? NaN)];
  return price === null || Number.isNaN(count) ? null : Math.round(price * count * 100) / 100;
}

function lastAmount(rows: readonly Row[], columns: readonly QuoteColumn[]): number {
  for (let at = rows.length - 1; at >= 0; at--)
    if (!isRowEmpty(rows[at]) && amountIn(rows[at]!, columns) !== null) return at;
  return -1;
}

function extensionIn(row: Row, columns: readonly QuoteColumn[]): CellValue {
  const column = columns.find(({ key }) => key === 'extension');
  return column === undefined ? null : (row[column.index] ?? null);
}

function hasFigure(row: Row): boolean {
  return row.some((cell) => typeof cell === 'number' || (typeof cell === 'string' && /\d/.test(cell)));
}
