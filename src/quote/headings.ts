import { cellText } from '../schedule/cell';
import { readUnit, type ColumnUnit } from '../schedule/columnUnit';
import { normalHeading, splitUnit } from '../schedule/headingText';
import { unitsAt } from '../schedule/layout';
import type { CellValue, Table } from '../schedule/opening';
import type { Unit } from '../unit';
import { matchQuoteHeading, unitNamed, type QuoteKey } from './meanings';
import { hasFigures, isData } from './setAside';
import { settle } from './settle';
import type { Ours } from './ours';

export interface QuoteColumn {
  readonly index: number;
  readonly heading: string;
  readonly key: QuoteKey | null;
  readonly rank: number;
  readonly unit: ColumnUnit | null;
  /** The column that says the same by a better name, or further left, and is read in its place. */
  readonly instead: QuoteColumn | null;
}

export interface QuoteLayout {
  /** Rows of the table, from 0. */
  readonly headingRows: readonly number[];
  readonly unitRow: number | null;
  readonly columns: readonly QuoteColumn[];
  /** Columns that were known by their figures, and not by their headings. */
  readonly remarks: readonly string[];
}

type Row = readonly CellValue[];
interface Read {
  readonly text: string;
  readonly key: QuoteKey | null;
  readonly rank: number;
  readonly unit: ColumnUnit | null;
}

/** Headings further down than this are not looked for. */
const SEARCHED_ROWS = 200;

/** Where a quote's headings stand and what its columns mean; null where no row names a price, a length or a radius beside something else. */
export function findQuoteLayout(
  rows: readonly Row[],
  { choices = {}, unit = null, ours = null, workbook = 'in' }: LayoutOptions = {},
): QuoteLayout | null {
  let best: { readonly headingRows: readonly number[]; readonly read: readonly Read[]; readonly score: number } | null =
    null;
  const end = Math.min(rows.length, SEARCHED_ROWS);
  for (let at = 0; at < end; at++) {
    // Headings of groups ("Opening", "Price") stand right above the headings proper.
    if (best !== null && best.score >= 3 && at > best.headingRows[0]! + 2) break;
    const single = readRow(rows[at] ?? []);
    if (scoreOf(single) < 1 || isData(rows[at]!)) continue;
    const pair = readPair(rows[at] ?? [], rows[at + 1] ?? []);
    const paired =
      !hasFigures(rows[at + 1] ?? []) &&
      scoreOf(pair) > scoreOf(single) &&
      scoreOf(pair) > scoreOf(readRow(rows[at + 1] ?? []));
    const read = paired ? pair : single;
    const score = scoreOf(read);
    if (!isHeading(read) || (best !== null && score <= best.score)) continue;
    best = { headingRows: paired ? [at, at + 1] : [at], read, score };
  }
  const layout = layoutOf(rows, best?.headingRows ?? [], best?.read ?? [], { choices, unit, ours, workbook });
  if (best !== null || Object.keys(choices).length > 0) return layout;
  // Without headings the figures have to say it all: our marks, and counts, prices and amounts that come out.
  const keys = keysOf(layout.columns);
  return keys.has('extension') && (keys.has('mark') || keys.has('description')) ? layout : null;
}

/** What a user says that columns are, by their place from 0. */
export type QuoteChoices = Readonly<Partial<Record<number, QuoteKey>>>;

export interface LayoutOptions {
  readonly choices?: QuoteChoices;
  /** Of figures in columns that name none, from a note about the whole quote. */
  readonly unit?: ColumnUnit | null;
  /** What the quote is for; null: it is read by itself. */
  readonly ours?: Ours | null;
  readonly workbook?: Unit;
}

/** How much of a table reads like a quote: the number of things its headings name, marks and prices above all. */
export function quoteScore({ rows }: Table): number {
  const keys = keysOf(findQuoteLayout(rows)?.columns ?? []);
  const priced = keys.has('unitPrice') || keys.has('extension');
  const named = keys.has('mark') || keys.has('description');
  return keys.size + (priced ? 10 : 0) + (named ? 10 : 0);
}

const OTHER_UNITS = /^\s*(?:\$|usd|dollars|%|deg(?:rees)?|bd ft|board feet|min(?:utes)?|per in|lbs?)\s*$/i;

/** "in, to 1/16": what the figures below are rounded to. */
const ROUNDED_TO = /, to [\d./]+$/;

/** The units of a row that holds nothing but units, "$" among them; null for any other row. */
export function quoteUnits(row: Row | undefined): ReturnType<typeof unitsAt> {
  return unitsAt(
    row?.map((cell) =>
      typeof cell !== 'string' ? cell : OTHER_UNITS.test(cell) ? 'ea' : cell.replace(ROUNDED_TO, ''),
    ),
  );
}

/** True for a row that repeats the headings, as at the top of a further page. */
export function repeatsHeadings(row: Row, { columns }: QuoteLayout): boolean {
  const filled = row.filter((cell) => cellText(cell) !== '').length;
  const same = columns.filter(
    ({ index, heading }) => heading !== '' && cellText(row[index]).toLowerCase() === heading.toLowerCase(),
  ).length;
  return same >= 2 && same >= filled * 0.6;
}

function readRow(row: Row): Read[] {
  return row.map((cell) => readHeading(typeof cell === 'string' ? cellText(cell) : ''));
}

/**
 * Two heading rows read as one: "Unit" over "Price". A group's name holds for the columns on its right that have none of their own:
 * "Casing" over "Width" and "Thickness".
 */
function readPair(upper: Row, lower: Row): Read[] {
  let group = '';
  return Array.from({ length: Math.max(upper.length, lower.length) }, (_, at) => {
    const top = typeof upper[at] === 'string' ? cellText(upper[at]) : '';
    const bottom = typeof lower[at] === 'string' ? cellText(lower[at]) : '';
    if (top !== '') group = top;
    const carried = top === '' && bottom !== '' ? `${group} ${bottom}`.trim() : '';
    const ways = [`${top} ${bottom}`.trim(), bottom, readUnit(bottom) === null ? top : `${top} (${bottom})`];
    const plain = ways.map(readHeading).find(({ key }) => key !== null) ?? readHeading(ways[0] ?? '');
    if (carried === '') return plain;
    const grouped = readHeading(carried);
    // "Casing" over "Qty" says nothing of the count; over "Width" it says whose.
    return grouped.key !== null && (plain.key === null || OWNED.has(plain.key)) && !SETTLED.has(grouped.key)
      ? { ...grouped, unit: grouped.unit ?? plain.unit }
      : plain;
  });
}

/** What may be of the opening, of the casing or of a leg, as the group says. */
const OWNED: ReadonlySet<QuoteKey> = new Set<QuoteKey>([
  'span',
  'thickness',
  'length',
  'radius',
  'rise',
  'unitPrice',
  'extension',
  'quantity',
]);
const SETTLED: ReadonlySet<QuoteKey> = new Set<QuoteKey>(['mark', 'description', 'measure', 'aside']);

function readHeading(text: string): Read {
  if (text === '' || text.length > 60) return { text, key: null, rank: 0, unit: null };
  const split = splitUnit(text);
  // "Lin. ft" and "Price per ft" mean what they do by their unit: it is split off only where the whole heading is not known.
  const whole = meaningOf(text);
  const found = whole.key === null || whole.key === 'aside' ? meaningOf(split.name) : whole;
  if (found.key === null) return { ...whole, text, unit: split.unit };
  const named = LENGTHS_NAMED.has(found.key) ? unitNamed(text) : null;
  return {
    text,
    key: found.key,
    rank: found.rank,
    unit: found.key === 'totalLength' ? (named ?? split.unit) : (split.unit ?? named),
  };
}

const LENGTHS_NAMED: ReadonlySet<QuoteKey> = new Set<QuoteKey>([
  'totalLength',
  'length',
  'insideLength',
  'centerLength',
  'lengthWithLegs',
]);

function meaningOf(name: string): { readonly key: QuoteKey | null; readonly rank: number; readonly normal: string } {
  // "Price ($)" and "Price, USD" are prices, and so is "Unit $".
  const [plain, priced] = ['', ' price '].map((mark) =>
    normalHeading(
      name
        .replace(/^\$\s*\/\s*/, 'price per ')
        .replace(/@/g, ' at ')
        .replace(/\$|\busd\b/gi, mark),
    ),
  );
  const normal = plain!;
  const isPrice = plain !== priced && /^(?:units?|ea|each)?$/.test(normal);
  const found = (isPrice ? matchQuoteHeading(priced!) : null) ?? matchQuoteHeading(normal);
  return { key: found?.key ?? null, rank: found?.rank ?? 0, normal };
}

function keysOf(read: readonly Pick<Read, 'key'>[]): Set<QuoteKey> {
  return new Set(read.flatMap(({ key }) => (key === null || key === 'aside' ? [] : [key])));
}

function scoreOf(read: readonly Read[]): number {
  return keysOf(read).size;
}

const TELLING: readonly QuoteKey[] = [
  'unitPrice',
  'footPrice',
  'pairPrice',
  'listPrice',
  'extension',
  'length',
  'totalLength',
  'insideLength',
  'radius',
  'diameter',
];

function isHeading(read: readonly Read[]): boolean {
  const keys = keysOf(read);
  return keys.size >= 2 && TELLING.some((key) => keys.has(key));
}

function layoutOf(
  rows: readonly Row[],
  headingRows: readonly number[],
  read: readonly Read[],
  { choices = {}, unit: noted = null, ours = null, workbook = 'in' }: LayoutOptions,
): QuoteLayout {
  const next = headingRows.length === 0 ? 0 : headingRows.at(-1)! + 1;
  const units = headingRows.length === 0 ? null : quoteUnits(rows[next]);
  const below = rows.slice(next);
  const width = below.slice(0, SEARCHED_ROWS).reduce((most, row) => Math.max(most, row.length), read.length);
  const named = Array.from({ length: width }, (_, index): QuoteColumn => {
    const { text, key, rank, unit } = read[index] ?? readHeading('');
    const chosen = choices[index];
    return {
      index,
      heading: text,
      key: chosen ?? key,
      rank: chosen === undefined ? rank : -1,
      unit: unit ?? units?.[index] ?? null,
      instead: null,
    };
  });
  const settled = settle(settleMeasure(named, below.slice(0, 50)), below, noted, ours, workbook);
  return {
    headingRows,
    unitRow: units === null ? null : next,
    columns: onePerMeaning(settlePrice(settled.columns, settled.byFigures)),
    remarks: settled.remarks,
  };
}

/** "Unit" over words such as "ea" is the unit of measure, over figures the price of one. */
function settleMeasure(columns: readonly QuoteColumn[], below: readonly Row[]): readonly QuoteColumn[] {
  const bare = ({ index, key, rank, heading }: QuoteColumn) =>
    key === 'unitPrice' &&
    rank === 1 &&
    /^units?$/.test(normalHeading(heading)) &&
    !below.some((row) => /\d/.test(cellText(row[index])));
  return columns.map((column) => (bare(column) ? { ...column, key: 'measure' as const } : column));
}

/** Of two columns with one meaning the better named counts, then the first; words may stand in several. */
function onePerMeaning(columns: readonly QuoteColumn[]): readonly QuoteColumn[] {
  const taken = new Map<QuoteKey, QuoteColumn>();
  const instead = new Map<number, QuoteColumn>();
  for (const column of [...columns].sort((one, other) => one.rank - other.rank || one.index - other.index)) {
    const { key, index } = column;
    if (
      key === null ||
      key === 'description' ||
      key === 'aside' ||
      key === 'head' ||
      key === 'species' ||
      key === 'ends'
    )
      continue;
    const better = taken.get(key);
    if (better) instead.set(index, better);
    else taken.set(key, column);
  }
  return columns.map((column) => inPlaceOf(column, instead.get(column.index)));
}

function inPlaceOf(column: QuoteColumn, better: QuoteColumn | undefined): QuoteColumn {
  return better === undefined ? column : { ...column, key: null, instead: better };
}

/** "Price" without a column of amounts is what the line costs, beside a unit price or alone. */
function settlePrice(columns: readonly QuoteColumn[], byFigures: boolean): readonly QuoteColumn[] {
  if (byFigures || columns.some(({ key }) => key === 'extension')) return columns;
  const bare = columns.filter(({ key, rank }) => key === 'unitPrice' && rank >= 2);
  const amount = [...bare].sort((one, other) => one.rank - other.rank)[0];
  return columns.map((column) => {
    if (column === amount) return { ...column, key: 'extension' as const };
    return bare.includes(column) ? inPlaceOf(column, amount) : column;
  });
}
