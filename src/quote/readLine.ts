import { ok, refuse, type Result } from '../result';
import { cellText, isBlank } from '../schedule/cell';
import { quote } from '../schedule/figure';
import type { CellValue } from '../schedule/opening';
import { inWorkbookUnit } from '../schedule/columnUnit';
import { readLength } from '../schedule/readLength';
import { readQuantity } from '../schedule/readQuantity';
import { readSize } from '../schedule/readSize';
import type { Standards } from '../standards';
import { perInch } from '../unit';
import type { QuoteColumn } from './headings';
import { LENGTHS, RADII, type QuoteKey } from './meanings';
import { extensionTolerance, readMoney } from './money';
import { halfLastDecimal, perFoot, piecePrice, type Feet } from './perFoot';
import type { QuoteField, QuoteLine, QuoteProblem, SetAside } from './quote';
import { isFigure } from './setAside';

/** The first word decides what a price is by. */
const BY_FOOT = /^(?:lf|l\.f\.|ft|feet|foot|lin\.? ?ft|linear f|lineal f)/i;
const BY_LOT = /^(?:lot|ls|l\.s\.|lump|job|set)\b/i;
const PAIRS = /^(\d+)\s*(?:pr|prs|pair|pairs)\.?$/i;
const COUNTED = /^(\d[\d,]*(?:\.\d+)?)\s*([a-z].*)$/i;

/** A row that is a line of the quote. Nothing is dropped: a figure that can't be read is null, with a sentence that says why. */
export function readLine(
  row: number,
  cells: readonly CellValue[],
  columns: readonly QuoteColumn[],
  aside: readonly SetAside[],
  standards: Standards,
): QuoteLine {
  const problems: QuoteProblem[] = [];
  const cellOf = (key: QuoteKey) => {
    const column = columns.find((one) => one.key === key);
    const cell = column === undefined ? null : (cells[column.index] ?? null);
    return column === undefined || isBlank(cell) ? null : { column, cell };
  };
  const figure = <T>(field: QuoteField, read: Result<T>): T | null => {
    if (!read.ok) problems.push({ row, field, message: read.message });
    return read.ok ? read.value : null;
  };
  const length = (field: QuoteField, key: QuoteKey): number | null => {
    const found = cellOf(key);
    if (found === null) return null;
    const options = { name: found.column.heading || field, column: found.column.unit, unit: standards.unit };
    return figure(field, readLength(found.cell, options));
  };
  const money = (field: QuoteField, key: QuoteKey) => {
    const found = cellOf(key);
    return found === null ? null : figure(field, readMoney(found.cell));
  };
  const firstOf = <Basis>(keys: readonly (readonly [QuoteKey, Basis])[]) =>
    keys.find(([key]) => cellOf(key) !== null) ?? keys[0]!;

  const [lengthKey, lengthOf] = firstOf(LENGTHS);
  const [radiusKey, radiusOf] = firstOf(RADII);
  const size = cellOf('size');
  const across = length('radius', radiusKey);
  const byDiameter = radiusKey === 'diameter';
  const price = money('unitPrice', 'unitPrice');
  const saysFoot = BY_FOOT.test(cellText(cellOf('unitPrice')?.cell).split('/')[1]?.trim() ?? '');
  const footPrice = saysFoot ? price : money('unitPrice', 'footPrice');
  const ownPrice = saysFoot ? null : price;
  const extension = money('extension', 'extension');
  const measure = cellText(cellOf('measure')?.cell);
  const counted = countOf(cellOf('quantity')?.cell ?? null, measure, footPrice, extension);
  const count = counted === null ? null : figure('quantity', counted.quantity);
  const priced = {
    counts: counted?.by ?? null,
    count,
    ownPrice,
    footPrice,
    extension,
    feet: feetOf(cellOf, standards),
  };
  const unread = aside.filter((column) => column.unread && isFigure(cells[column.index]));
  return {
    kind: 'line',
    row,
    mark: cellText(cellOf('mark')?.cell),
    description: wordsOf(cells, columns, aside),
    ...countedBy(priced),
    size: size === null ? null : sizeOf(size, standards),
    span: length('span', 'span'),
    radius: across !== null && byDiameter ? across / 2 : across,
    radiusOf,
    byDiameter,
    length: length('length', lengthKey),
    lengthOf,
    extension,
    unread: unread.map(({ name }) => name),
    problems,
  };
}

interface Priced {
  /** What the quantity's cell counts; null where it is blank. */
  readonly counts: QuoteLine['by'] | null;
  readonly count: number | null;
  readonly ownPrice: number | null;
  readonly footPrice: number | null;
  readonly extension: number | null;
  readonly feet: ReturnType<typeof feetOf>;
}

/** What a line counts and what one of it costs: pieces, feet or the lot. */
function countedBy(priced: Priced): Pick<QuoteLine, 'quantity' | 'by' | 'unitPrice' | 'byFoot' | 'perFoot'> {
  const { counts, count, ownPrice, footPrice, extension, feet } = priced;
  if (counts === 'lot' || (counts === null && ownPrice === null && footPrice === null && extension !== null))
    return { quantity: count, by: 'lot', unitPrice: ownPrice, byFoot: false, perFoot: null };
  const rate = footPrice ?? (counts === 'foot' ? ownPrice : null);
  const byFoot = rate !== null && (ownPrice === null || counts === 'foot');
  if (!byFoot) return { quantity: count, by: counts ?? 'piece', unitPrice: ownPrice, byFoot, perFoot: null };
  if (counts === null) {
    const along = perFoot(rate, feet, 1, extension);
    return { quantity: along?.feet ?? null, by: 'foot', unitPrice: rate, byFoot, perFoot: along };
  }
  const along = count !== null && Number.isInteger(count) ? perFoot(rate, feet, count, extension) : null;
  // "LF" as unit of measure may be the price's alone: beside a length the extension says whether pieces or feet are counted.
  const isFeet = counts === 'foot' && (count === null || extension === null || isProduct(count, rate, extension));
  if (isFeet || (counts === 'foot' && !along?.makesIt))
    return { quantity: count, by: 'foot', unitPrice: rate, byFoot, perFoot: null };
  const unitPrice = along === null ? null : piecePrice(along, count!);
  return { quantity: count, by: 'piece', unitPrice, byFoot, perFoot: along };
}

function isProduct(count: number, price: number, extension: number): boolean {
  return Math.abs(count * price - extension) <= extensionTolerance(count);
}

/** Feet are written to hundredths; a cell of a spreadsheet shows 4.00 and holds 4. */
const HUNDREDTH = 0.01;

/** The lengths of a line in feet, that of all pieces first: a price by the foot is of one of them. */
function feetOf(
  cellOf: (key: QuoteKey) => { column: QuoteColumn; cell: CellValue } | null,
  { unit }: Standards,
): (Feet & { readonly all: boolean })[] {
  const foot = 12 * perInch(unit);
  return [...LENGTHS].reverse().flatMap(([key, basis]) => {
    const found = cellOf(key);
    if (found === null) return [];
    const { heading: name, unit: column } = found.column;
    const length = readLength(found.cell, { name, column, unit });
    if (!length.ok) return [];
    const half = inWorkbookUnit(halfLastDecimal(found.cell), column ?? unit, unit) / foot;
    return [{ feet: length.value / foot, rounded: Math.max(half, HUNDREDTH / 2), all: basis === 'all pieces' }];
  });
}

/** A size may be of anything, or words: one that can't be read is no fault of the line. */
function sizeOf({ column, cell }: { column: QuoteColumn; cell: CellValue }, { unit }: Standards): QuoteLine['size'] {
  const read = readSize(cell, { name: column.heading, column: column.unit, unit });
  return read.ok ? read.value : null;
}

/**
 * "2 pr" is four pieces, "86.7 LF" is no count, "1 lot" is the lump. Beside a price by the foot a bare figure is feet where the
 * extension says so, or where it can't be pieces.
 */
function countOf(
  cell: CellValue,
  measure: string,
  footPrice: number | null,
  extension: number | null,
): { readonly quantity: Result<number | null>; readonly by: QuoteLine['by'] } | null {
  if (cell === null) return BY_LOT.test(measure) ? { quantity: ok(null), by: 'lot' } : null;
  const text = cellText(cell);
  const pairs = PAIRS.exec(text);
  if (pairs) return { quantity: ok(2 * Number(pairs[1])), by: 'piece' };
  if (BY_LOT.test(text)) return { quantity: ok(null), by: 'lot' };
  const [, digits, words] = COUNTED.exec(text) ?? [];
  const unit = words ?? measure;
  if (BY_LOT.test(unit)) return { quantity: ok(null), by: 'lot' };
  if (BY_FOOT.test(unit)) {
    const feet = Number((digits ?? text).replaceAll(',', ''));
    return {
      quantity: feet > 0 ? ok(feet) : refuse(`Quantity can't be read: the cell says ${quote(text)}.`),
      by: 'foot',
    };
  }
  if (/^(?:pr|prs|pair|pairs)\b/i.test(measure) && /^\d+$/.test(text))
    return { quantity: ok(2 * Number(text)), by: 'piece' };
  const quantity = readQuantity(cell);
  const feet = Number(text.replaceAll(',', ''));
  const isFeet =
    extension === null ? !quantity.ok : Math.abs(feet * (footPrice ?? 0) - extension) <= extensionTolerance(feet);
  if (footPrice !== null && feet > 0 && (isFeet || !quantity.ok)) return { quantity: ok(feet), by: 'foot' };
  return { quantity, by: 'piece' };
}

/** The words of a row: its descriptions, and what stands in words under headings that no figure is read from. */
function wordsOf(cells: readonly CellValue[], columns: readonly QuoteColumn[], aside: readonly SetAside[]): string {
  return columns
    .map(({ index, key, instead }) => {
      const cell = cells[index];
      if (typeof cell !== 'string') return '';
      const figures = key === 'aside' || instead !== null || aside.some((one) => one.index === index && one.unread);
      const worded = key === 'description' || key === 'aside' || key === null;
      return worded && !(figures && isFigure(cell)) ? cellText(cell) : '';
    })
    .filter((text) => text !== '')
    .join('; ');
}
