import { ok, refuse, type Result } from '../result';
import { cellText, isBlank } from '../schedule/cell';
import { inWorkbookUnit, type ColumnUnit } from '../schedule/columnUnit';
import { quote } from '../schedule/figure';
import type { CellValue } from '../schedule/opening';
import { readLength } from '../schedule/readLength';
import { readQuantity } from '../schedule/readQuantity';
import { readSection, readSize } from '../schedule/readSize';
import type { Standards } from '../standards';
import { perInch } from '../unit';
import { describedIn } from './described';
import type { QuoteColumn } from './headings';
import type { Marks } from './marks';
import { LENGTHS, RADII, type QuoteKey } from './meanings';
import { discountOf } from './arithmetic';
import { readMoney } from './money';
import {
  SIDE_FIGURES,
  type Described,
  type QuoteField,
  type QuoteLine,
  type QuoteProblem,
  type SetAside,
  type SideFigure,
} from './quote';
import { halfLastDecimal, type Counted, type Feet } from './reckon';
import { amounts, ofOneFoot, type Price } from './amounts';
import { isFigure } from './setAside';

/** The first word decides what a price is by. */
const BY_FOOT = /^(?:lf|lft|l\.f\.|ft|feet|foot|lin\.? ?ft|lineal|linear|linear f|lineal f)/i;
const BY_LOT = /^(?:lot|ls|l\.s\.|lump|job)\b/i;
const BY_PAIR = /^(?:pr|prs|pair|pairs)\b/i;
const COUNTED = /^(\d[\d,]*(?:\.\d+)?)\s*([a-z].*)$/i;
/** Words of a length's cell that say at which edge it is taken. */
const EDGE_WORDS =
  /\s*\(?\b(?:long|l\.?p\.?|long[ -]p(?:oin)?t|o\.?a\.?l?\.?|overall|lg|approx\.?|\+\/-|each|ea\.?|radius|rad|r)\)?\.?$/i;

/** A row that is a line of the quote. Nothing is dropped: a figure that can't be read is null, with a sentence that says why. */
export function readLine(
  row: number,
  cells: readonly CellValue[],
  columns: readonly QuoteColumn[],
  aside: readonly SetAside[],
  standards: Standards,
  marks: Marks,
  noted: ColumnUnit | null = null,
): QuoteLine {
  const { unit } = standards;
  const problems: QuoteProblem[] = [];
  const cellOf = (key: QuoteKey) => {
    const column = columns.find((one) => one.key === key);
    const cell = column === undefined ? null : (cells[column.index] ?? null);
    return column === undefined || isBlank(cell) ? null : { column, cell };
  };
  const mark = cellText(cellOf('mark')?.cell);
  const description = wordsOf(cells, columns);
  const figure = <T>(field: QuoteField, read: Result<T>): T | null => {
    if (!read.ok) problems.push({ row, field, message: read.message });
    return read.ok ? read.value : null;
  };
  const length = (field: QuoteField, key: QuoteKey, zero = false): number | null => {
    const found = cellOf(key);
    if (found === null) return null;
    const options = { name: found.column.heading || field, column: found.column.unit, unit, zero };
    const cell =
      typeof found.cell === 'string'
        ? found.cell.replace(EDGE_WORDS, '').replace(/^\s*(?:R|RAD\.?|RADIUS)[\s=:]*(?=\d)/i, '')
        : found.cell;
    return figure(field, readLength(cell, options));
  };
  const money = (field: QuoteField, key: QuoteKey) => {
    const found = cellOf(key);
    return found === null ? null : figure(field, readMoney(found.cell));
  };
  const firstOf = <Basis>(keys: readonly (readonly [QuoteKey, Basis])[]) =>
    keys.find(([key]) => cellOf(key) !== null) ?? keys[0]!;

  const described = describedIn(wordsOf(cells, columns, false), unit, (word) => marks.find(word).length > 0, noted);
  const counted = countOf(cellOf('quantity')?.cell ?? null, cellText(cellOf('measure')?.cell), described);
  const extension = money('extension', 'extension');
  const price = priceOf(cellOf, money);
  const discounted = cellOf('discount');
  const count = figure('quantity', counted.quantity);
  const less = discounted === null ? 0 : (discountOf(discounted.cell, discounted.column) ?? 0);
  const paidAt = (at: Price | null) =>
    amounts({ lot: counted.lot, counted: count, price: at, extension }, feetOf(cellOf, standards), less);
  const paid = paidAt(ofOneFoot(price, cellOf('footPrice')?.column.heading ?? '', extension, paidAt));
  const [lengthKey, lengthOf] = firstOf(LENGTHS);
  const [radiusKey, radiusOf] = firstOf(RADII);
  const across = length('radius', radiusKey);
  const byDiameter = radiusKey === 'diameter';
  const size = cellOf('size');
  const side: Partial<Record<SideFigure, number>> = {};
  for (const key of SIDE_FIGURES) {
    const value = length(key, key, key === 'reveal' || key === 'leg');
    if (value !== null) side[key] = value;
  }
  const section = cellOf('section');
  if (section !== null) Object.assign(side, sectionOf(section, standards, figure), side);
  const unread = aside.filter((column) => column.unread && isFigure(cells[column.index]));
  return withDescribed({
    kind: 'line',
    row,
    mark,
    description,
    head: cellText(cellOf('head')?.cell),
    species: cellText(cellOf('species')?.cell),
    ends: cellText(cellOf('ends')?.cell),
    ...paid,
    size: size === null ? null : sizeOf(size, standards),
    radius: across !== null && byDiameter ? across / 2 : across,
    radiusOf,
    byDiameter,
    length: length('length', lengthKey),
    lengthOf,
    side,
    legCount: figure('legCount', legsIn(cellOf('legCount')?.cell ?? null)),
    described,
    extension,
    unread: unread.map(({ name }) => name),
    problems,
  });
}

/** What the words give takes the place of a figure that no column gives; the rest stays to be compared by itself. */
function withDescribed(line: QuoteLine): QuoteLine {
  const rest: Described[] = [];
  let radiusBare = false;
  let { radius, radiusOf, byDiameter, length, lengthOf, legCount, quantity } = line;
  const side = { ...line.side };
  const unread = (field: QuoteField) => line.problems.some((problem) => problem.field === field);
  for (const one of line.described) {
    const { kind, value, other } = one;
    if (kind === 'length' && length === null && !unread('length'))
      [length, lengthOf] = [value, one.lengthOf ?? 'outside'];
    else if (kind === 'radius' && radius === null && !unread('radius'))
      [radius, radiusOf, radiusBare] = [value, one.radiusOf ?? 'inside', one.radiusOf === undefined];
    else if (kind === 'diameter' && radius === null && !unread('radius')) [radius, byDiameter] = [value / 2, true];
    else if (kind === 'legCount' && legCount === null) legCount = value;
    else if (kind === 'quantity') {
      if (quantity === null && line.by === 'piece' && !unread('quantity')) quantity = value;
    } else if (kind === 'section' && side.face === undefined && side.thickness === undefined)
      [side.thickness, side.face] = [value, other!];
    else if (isSide(kind) && side[kind] === undefined) side[kind] = value;
    else rest.push(one);
  }
  const bare = radiusBare ? { radiusBare } : {};
  return {
    ...line,
    radius,
    radiusOf,
    ...bare,
    byDiameter,
    length,
    lengthOf,
    legCount,
    quantity,
    side,
    described: rest,
  };
}

function isSide(kind: Described['kind']): kind is SideFigure {
  return (SIDE_FIGURES as readonly string[]).includes(kind);
}

type CellOf = (key: QuoteKey) => { readonly column: QuoteColumn; readonly cell: CellValue } | null;

/** The price of the line and what it is of: under a heading that says so, or in the cell itself, `45.42/lf`. */
function priceOf(cellOf: CellOf, money: (field: QuoteField, key: QuoteKey) => number | null): Price | null {
  const own = money('unitPrice', 'unitPrice');
  if (own !== null) {
    const of = cellText(cellOf('unitPrice')?.cell).split('/')[1]?.trim() ?? '';
    return {
      amount: own,
      per: BY_FOOT.test(of) ? 'foot' : BY_PAIR.test(of) ? 'pair' : 'piece',
      net: cellOf('listPrice') !== null,
    };
  }
  for (const [key, per] of [
    ['pairPrice', 'pair'],
    ['footPrice', 'foot'],
    ['listPrice', 'piece'],
  ] as const) {
    const amount = money('unitPrice', key);
    if (amount !== null) return { amount, per, net: key !== 'listPrice' };
  }
  return null;
}

/** Feet are written to hundredths; a cell of a spreadsheet shows 4.00 and holds 4. */
const HUNDREDTH = 0.01;
/** In inches. */
const SIXTEENTH = 1 / 16;
const FRACTION = /\d\/\d|[½¼¾⅛⅜⅝⅞]|\d\s*(?:"|'')/;

/** The lengths of a line in feet, that of all pieces first: a price by the foot is of one of them. */
function feetOf(cellOf: CellOf, { unit }: Standards): readonly Feet[] {
  const foot = 12 * perInch(unit);
  return [...LENGTHS].reverse().flatMap(([key, basis]) => {
    const found = cellOf(key);
    if (found === null) return [];
    const { heading: name, unit: column } = found.column;
    const length = readLength(found.cell, { name, column, unit });
    if (!length.ok) return [];
    const half = inWorkbookUnit(halfLastDecimal(found.cell), column ?? unit, unit) / foot;
    // What is written in sixteenths may have been multiplied in hundredths of a foot.
    const shop = FRACTION.test(cellText(found.cell)) ? SIXTEENTH / 2 / 12 : 0;
    const rounded = shop === 0 ? Math.max(half, HUNDREDTH / 2) : shop + HUNDREDTH / 2;
    return [{ feet: length.value / foot, rounded, all: basis === 'all pieces' }];
  });
}

/** A size may be of anything, or words: one that can't be read is no fault of the line. */
function sizeOf({ column, cell }: { column: QuoteColumn; cell: CellValue }, { unit }: Standards): QuoteLine['size'] {
  const read = readSize(cell, { name: column.heading, column: column.unit, unit });
  return read.ok ? read.value : null;
}

function sectionOf(
  { column, cell }: { column: QuoteColumn; cell: CellValue },
  { unit }: Standards,
  figure: <T>(field: QuoteField, read: Result<T>) => T | null,
): Partial<Record<SideFigure, number>> {
  const read = figure('face', readSection(cell, { name: column.heading, column: column.unit, unit }));
  if (read === null) return {};
  return { thickness: Math.min(read.width, read.height), face: Math.max(read.width, read.height) };
}

/** "2", "2 ea", "1 pr", "(2)". */
function legsIn(cell: CellValue): Result<number | null> {
  if (cell === null) return ok(null);
  const pairs = /^(\d+)\s*(?:pr|prs|pair|pairs)\.?$/i.exec(cellText(cell))?.[1];
  return pairs === undefined ? readQuantity(cell) : ok(2 * Number(pairs));
}

/** "2 pr" is four pieces, "86.7 LF" is no count, "1 lot" is the lump. */
function countOf(
  cell: CellValue,
  measure: string,
  described: readonly Described[],
): { readonly quantity: Result<Counted | null>; readonly lot: boolean } {
  const inWords = described.find(({ kind }) => kind === 'quantity');
  if (cell === null) {
    if (BY_LOT.test(measure)) return { quantity: ok(null), lot: true };
    return { quantity: ok(inWords ? { count: inWords.value, of: 'piece' } : null), lot: false };
  }
  const text = cellText(cell);
  if (BY_LOT.test(text)) return { quantity: ok(null), lot: true };
  const [, digits, words] = COUNTED.exec(text) ?? [];
  const unit = words ?? measure;
  const bare = Number((digits ?? text).replaceAll(',', ''));
  if (BY_LOT.test(unit)) return { quantity: ok(null), lot: true };
  if (BY_FOOT.test(unit))
    return {
      quantity:
        bare > 0 ? ok({ count: bare, of: 'foot' }) : refuse(`Quantity can't be read: the cell says ${quote(text)}.`),
      lot: false,
    };
  if (BY_PAIR.test(unit) && bare > 0) return { quantity: ok({ count: bare, of: 'pair' }), lot: false };
  const quantity = readQuantity(cell);
  // 86.7 of something is no count of pieces, but may be feet beside a price by the foot.
  if (!quantity.ok && bare > 0 && !Number.isInteger(bare))
    return { quantity: ok({ count: bare, of: 'foot' }), lot: false };
  return { quantity: quantity.ok ? ok({ count: quantity.value, of: 'piece' }) : quantity, lot: false };
}

/** The words of a row: its descriptions, and what stands in words under headings that no figure is read from; `all`: also under those that are known. */
function wordsOf(cells: readonly CellValue[], columns: readonly QuoteColumn[], all = true): string {
  return columns
    .map(({ index, key }) => {
      const cell = cells[index];
      if (typeof cell !== 'string') return '';
      // Figures are words only in a description; elsewhere they are of a heading.
      const figures = key !== 'description';
      const worded =
        key === 'description' ||
        key === 'head' ||
        key === 'species' ||
        key === 'ends' ||
        (all && key === 'aside') ||
        key === null;
      return worded && !(figures && isFigure(cell)) ? cellText(cell) : '';
    })
    .filter((text) => text !== '')
    .join('; ');
}
