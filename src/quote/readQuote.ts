import { ok, refuse, type Result } from '../result';
import { cellText, isBlank, isRowEmpty, rowText } from '../schedule/cell';
import { quote } from '../schedule/figure';
import type { CellValue, Table } from '../schedule/opening';
import type { Standards } from '../standards';
import {
  findQuoteLayout,
  quoteScore,
  quoteUnits,
  repeatsHeadings,
  type QuoteColumn,
  type QuoteLayout,
} from './headings';
import { readLabel } from './labels';
import type { QuoteKey } from './meanings';
import { readMoney } from './money';
import type { Quote, QuoteLine, QuoteCharge, QuoteItem, QuoteSum } from './quote';
import { readLine } from './readLine';
import { setAside } from './setAside';

type Row = readonly CellValue[];

/** The table of a file that reads most like a quote, visible sheets first; null for no tables. */
export function chooseQuoteTable(tables: readonly Table[]): Table | null {
  const scored = tables.map((table) => ({ table, score: quoteScore(table) * 2 - (table.hidden ? 1 : 0) }));
  return scored.sort((one, other) => other.score - one.score)[0]?.table ?? null;
}

/**
 * A quote from a table: finds the headings, then reads every row below as a line, a charge (freight, tax, discount) or a sum
 * (subtotal, total); rows that are none of these are in `passedOver` with the reason. Lengths come out in `standards.unit`.
 * Refused only where no headings can be found.
 */
export function readQuote(table: Table, standards: Standards): Result<Quote> {
  const layout = findQuoteLayout(table.rows);
  if (layout === null) {
    if (table.rows.every(isRowEmpty)) return refuse(`${quote(table.name)} is empty.`);
    return refuse(
      `No headings were found in ${quote(table.name)}: a quote needs one row that names its columns, among them a price, ` +
        'an amount, a length or a radius.',
    );
  }
  const sorted = table.rows.map((row, at) => sortRow(row, at, table.firstRow + at, layout));
  const aside = setAside(
    layout.columns,
    table.rows.filter((_row, at) => sorted[at] === 'line'),
  );
  const items: QuoteItem[] = [];
  const passedOver: { row: number; why: string; text: string }[] = [];
  table.rows.forEach((row, at) => {
    const item = sorted[at]!;
    const number = table.firstRow + at;
    if (item === 'line') items.push(withDoubts(readLine(number, row, layout.columns, aside, standards), table));
    else if ('why' in item) passedOver.push({ row: number, why: item.why, text: rowText(row) });
    else items.push(item);
  });
  return ok({
    name: table.name,
    headings: layout.columns.map(({ heading }) => heading),
    meaning: layout.columns.map(({ key }) => key),
    setAside: aside,
    headingRow: table.firstRow + (layout.headingRows.at(-1) ?? 0),
    remarks: table.remarks ?? [],
    items,
    lines: items.flatMap((item) => (item.kind === 'line' ? [item] : [])),
    passedOver,
  });
}

/** A line that the file's reader was not sure of can't be told to agree. */
function withDoubts(line: QuoteLine, { doubts }: Table): QuoteLine {
  const own = doubts?.get(line.row);
  if (own === undefined) return line;
  const message = `Row ${line.row} is in doubt: ${own.join('; ')}; please check it against the page.`;
  return { ...line, problems: [...line.problems, { row: line.row, field: 'length', message }] };
}

type SortedRow = 'line' | QuoteCharge | QuoteSum | { readonly why: string };

/** What a row is, or why it is passed over. */
function sortRow(row: Row, at: number, number: number, layout: QuoteLayout): SortedRow {
  if (isRowEmpty(row)) return { why: 'blank' };
  if (layout.headingRows.includes(at)) return { why: 'headings' };
  if (at < (layout.headingRows[0] ?? 0)) return { why: 'title or note above the headings' };
  if (at === layout.unitRow || quoteUnits(row) !== null) return { why: 'units' };
  if (repeatsHeadings(row, layout)) return { why: 'repeated headings' };
  const { columns } = layout;
  const sized = columns.some(({ key, index }) => key !== null && SIZED.has(key) && /\d/.test(cellText(row[index])));
  const label = sized ? null : readLabel(row.map((cell) => (typeof cell === 'string' ? cellText(cell) : '')));
  if (label?.kind === 'sum') {
    const sum: QuoteSum = { ...label, row: number, amount: amountIn(row, columns) };
    return sum.amount === null && !hasFigure(row) ? { why: 'note' } : sum;
  }
  if (label?.kind === 'charge') {
    const written = amountIn(row, columns);
    const amount =
      (label.charge === 'discount' || label.charge === 'deposit') && written !== null ? -Math.abs(written) : written;
    // "Delivery in three weeks" costs nothing; "Sales tax 7%" without its amount is still a charge, and so is freight "TBD".
    if (amount === null && label.rate === null && isBlank(extensionIn(row, columns))) return { why: 'note' };
    const charge: QuoteCharge = { ...label, row: number, amount };
    return charge;
  }
  const figures = columns.some(({ key, index }) => key !== null && FIGURES.has(key) && !isBlank(row[index]));
  const marked = columns.some(
    ({ key, index }) => key === 'mark' && /\d/.test(cellText(row[index])) && cellText(row[index]).length <= 12,
  );
  // A mark alone heads a group of lines.
  const words = row.filter((cell) => !isBlank(cell)).length;
  if (!figures && !(marked && words > 1)) return { why: 'title or note' };
  return 'line';
}

/** A row that gives one of these is molding, whatever its words. */
const SIZED: ReadonlySet<QuoteKey> = new Set<QuoteKey>([
  'radius',
  'length',
  'insideLength',
  'centerLength',
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
  'unitPrice',
  'footPrice',
  'extension',
]);

/** Figures of a row that are never its amount: "Freight, 1" is not a dollar. */
const NO_MONEY: ReadonlySet<QuoteKey> = new Set<QuoteKey>([
  ...SIZED,
  'totalLength',
  'quantity',
  'size',
  'span',
  'mark',
  'aside',
]);

/** The amount of a charge or a sum: what stands under extension, or else the last cell that may be money and is. */
function amountIn(row: Row, columns: readonly QuoteColumn[]): number | null {
  const own = extensionIn(row, columns);
  if (!isBlank(own)) {
    const read = readMoney(own);
    return read.ok ? read.value : null;
  }
  for (let at = row.length - 1; at >= 0; at--) {
    const cell = row[at] ?? null;
    const key = columns[at]?.key ?? null;
    if (isBlank(cell) || (key !== null && NO_MONEY.has(key)) || (typeof cell === 'string' && !/\d/.test(cell)))
      continue;
    const read = readMoney(cell);
    if (read.ok) return read.value;
  }
  return null;
}

function extensionIn(row: Row, columns: readonly QuoteColumn[]): CellValue {
  const column = columns.find(({ key }) => key === 'extension');
  return column === undefined ? null : (row[column.index] ?? null);
}

function hasFigure(row: Row): boolean {
  return row.some((cell) => typeof cell === 'number' || (typeof cell === 'string' && /\d/.test(cell)));
}
