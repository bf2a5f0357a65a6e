import type { CellValue, Table } from '../../../src/schedule/opening';
import type { Random } from '../../random';
import type { Shape } from './geometry';
import { headingFits, pickWritten, write, type Column, type Layout, type Written } from './layouts';
import type { Line, Planted } from './line';
import { plantIn, price } from './plant';
import { cents, sumCells, sumsOf, type SumRow } from './money';
import { FACE, LEG, madeOpenings, REVEAL, THICKNESS, type MadeOpening } from './openings';
import { described } from './described';
import { wording, type Style } from './wordings';

/** What was done to one row of a made quote; null: it is right. */
export interface MadeRow {
  readonly row: number;
  readonly what: 'line' | SumRow['line'];
  readonly planted: Planted | null;
  /** Its words don't say what it is figured by. */
  readonly undecidable: boolean;
}
export interface MadeQuote {
  readonly layout: string;
  readonly style: Style;
  readonly openings: readonly MadeOpening[];
  readonly table: Table;
  readonly rows: readonly MadeRow[];
  /** Marks of openings that the quote leaves out. */
  readonly omitted: readonly string[];
}

const HEADS: Readonly<Record<Style, Readonly<Record<Shape, string>>>> = {
  plain: {
    segmental: 'Segmental',
    'half round': 'Half round',
    'quarter round': 'Quarter round',
    round: 'Round',
    elliptical: 'Elliptical',
    'three-centered': 'Three-centered',
    pointed: 'Pointed',
  },
  odd: {
    segmental: 'Seg',
    'half round': 'HR',
    'quarter round': 'Qtr rd',
    round: 'Rd',
    elliptical: 'Ellipse',
    'three-centered': 'Three-centered',
    pointed: 'Gothic',
  },
};

/** A quote in one layout, in plain or in odd words, with a mistake in about every fifth line and every third sum. */
export function makeQuote(layout: Layout, style: Style, random: Random): MadeQuote {
  const legs = layout.extra === 'legs' || (layout.extra === undefined && random.between(0, 1) < 0.2);
  const openings = withAlike(madeOpenings(random, legs), layout);
  const written = pickWritten(layout, random);
  const headings = headingsOf(layout, written, style, random);
  const outsideRadius = layout.columns.some((one, at) => one === 'radius' && /outside/i.test(headings[at]!));
  const insideRadius = layout.columns.some((one, at) => one === 'radius' && /inside|i\.r/i.test(headings[at]!));
  const toEdge = outsideRadius ? REVEAL + FACE : insideRadius ? REVEAL : 0;
  const rate = random.pick([14.5, 18.4, 21, 26.3, 31.5]);
  const lines = linesOf(openings, layout, random).map((of): Line => {
    const [first] = of;
    const quantity = of.reduce((sum, one) => sum + one.quantity, 0);
    const pair = layout.extra === 'pairs' && quantity % 2 === 0;
    const line: Line = {
      of,
      mark: of.map(({ mark }) => mark).join(random.pick([', ', ' & '])),
      quantity,
      pair,
      withLegs: layout.extra === 'legs',
      head: first!.arch.shape,
      span: first!.arch.span,
      rise: first!.rise,
      radius: first!.radius === null ? null : first!.radius + toEdge,
      face: FACE,
      thickness: THICKNESS,
      length: first!.length,
      leg: LEG,
      rate: cents(rate * random.between(0.85, 1.2)),
      unitPrice: 0,
      extension: 0,
      planted: null,
    };
    price(line, layout);
    return line;
  });
  const left = random.whole(0, 2);
  const omitted = layout.extra === 'ranges' ? [] : lines.splice(random.whole(0, lines.length - left), left);
  plantIn(lines, layout, random);
  return tableOf(lines, { layout, style, written, headings, openings, omitted, random });
}

/** Every line for one opening; where a layout has several marks on a line, neighbors that are alike share it. */
function linesOf(openings: readonly MadeOpening[], { extra }: Layout, random: Random): MadeOpening[][] {
  const lines: MadeOpening[][] = [];
  for (const one of openings) {
    const last = lines.at(-1);
    if (extra === 'ranges' && last !== undefined && last[0]!.arch === one.arch) last.push(one);
    else lines.push([one]);
  }
  return random.pick([true, false]) ? lines : lines.reverse();
}

function withAlike(openings: readonly MadeOpening[], { extra }: Layout): readonly MadeOpening[] {
  if (extra !== 'ranges') return openings;
  return openings.map((one, at) => {
    if (at % 4 === 0) return one;
    const { arch, rise, radius, length } = openings[at - (at % 4)]!;
    return at % 4 === 1 ? { ...one, arch, rise, radius, length } : one;
  });
}

interface Sheet {
  readonly layout: Layout;
  readonly style: Style;
  readonly written: Written;
  readonly headings: readonly string[];
  readonly openings: readonly MadeOpening[];
  readonly omitted: readonly Line[];
  readonly random: Random;
}

const TWO_ROWS: Readonly<Record<Style, readonly (readonly [Column, string, string])[]>> = {
  plain: [
    ['span', 'Opening', 'Width'],
    ['rise', '', 'Rise'],
    ['casing width', 'Casing', 'Width'],
  ],
  odd: [
    ['span', 'window', 'wd'],
    ['rise', '', 'ht'],
    ['casing width', 'trim', 'wd'],
  ],
};

function headingsOf({ columns, extra }: Layout, written: Written, style: Style, random: Random): string[] {
  return columns.map((column) => {
    const own = extra === 'two rows' ? TWO_ROWS[style].find(([of]) => of === column) : undefined;
    if (own !== undefined) return own[2];
    if (column === 'leg') return random.pick(style === 'plain' ? ['Leg', 'Leg length'] : ['Legs at', 'Leg lg']);
    if (column === 'length each' && written === 'feet' && style === 'plain')
      return random.pick(['Length (ft)', 'LF each', 'Feet each']);
    return wording(`heading: ${column}`, style, random, (shown) => headingFits(column, written, shown));
  });
}

function tableOf(lines: readonly Line[], sheet: Sheet): MadeQuote {
  const { layout, style, headings, openings, omitted, random } = sheet;
  const order = layout.columns.map((_, at) => at);
  if (layout.extra === 'shuffled') order.sort(() => random.between(-1, 1));
  const cells: CellValue[][] = [];
  const rows: MadeRow[] = [];
  const put = (row: readonly CellValue[]) => cells.push(order.map((at) => row[at] ?? null));
  const width = layout.columns.length;
  const amountAt = layout.columns.indexOf('extension');
  const textAt = layout.columns.findIndex((one) => one === 'description' || one === 'mark');
  const sum = (row: SumRow) => {
    put(sumCells(row, width, textAt, amountAt));
    const undecidable = row.line === 'tax' && row.rate === null;
    rows.push({ row: cells.length, what: row.line, planted: row.planted, undecidable });
  };
  if (random.pick([true, false])) cells.push(['Quotation 4471'], []);
  if (layout.note !== undefined) cells.push([layout.note]);
  if (layout.extra === 'two rows')
    put(layout.columns.map((column) => TWO_ROWS[style].find(([of]) => of === column)?.[1] ?? null));
  if (layout.extra !== 'no headings') put(headings);
  const says = layout.says === undefined ? null : random.pick(layout.says);
  const phrase = random.whole(0, 99);
  const floors = layout.extra === 'floors' ? [0, Math.floor(lines.length / 2)] : [];
  let since = 0;
  const floorTotal = (name: string) => {
    sum({ line: 'subtotal', words: `${name} total`, amount: cents(since), rate: null, planted: null });
    since = 0;
  };
  lines.forEach((line, at) => {
    const floor = floors.indexOf(at);
    if (floor === 1) floorTotal('First floor');
    if (floor >= 0)
      put(layout.columns.map((_, place) => (place === 0 ? ['FIRST FLOOR', 'SECOND FLOOR'][floor]! : null)));
    put(layout.columns.map((column, place) => cellOf(column, line, at, headings[place]!, sheet, says, phrase)));
    rows.push({ row: cells.length, what: 'line', planted: line.planted, undecidable: false });
    since += line.extension;
  });
  if (floors.length > 0) floorTotal('Second floor');
  const amounts = lines.map(({ extension }) => extension);
  for (const row of sumsOf(amounts, style, random, random.between(0, 1) < 0.45)) sum(row);
  if (layout.extra === 'alternates') {
    const words = wording('line: alternate', style, random);
    sum({ line: 'alternate', words, amount: /deduct|credit/i.test(words) ? -85 : 85, rate: null, planted: null });
  }
  return {
    layout: layout.name,
    style,
    openings,
    table: { name: 'quote', firstRow: 1, rows: cells },
    rows,
    omitted: omitted.flatMap(({ of }) => of.map(({ mark }) => mark)),
  };
}

function cellOf(
  column: Column,
  line: Line,
  at: number,
  heading: string,
  { layout, style, written }: Sheet,
  says: string | null,
  phrase: number,
): CellValue {
  const shown = (inches: number) => write(inches, written).cell;
  const small = (inches: number) => write(inches, written === 'feet' ? 'fraction' : written).cell;
  switch (column) {
    case 'line number':
      return at + 1;
    case 'mark':
      return line.mark;
    case 'quantity':
      return line.pair ? line.quantity / 2 : line.quantity;
    case 'unit of measure':
      return line.pair ? 'PR' : 'EA';
    case 'description':
      return described(says, line, HEADS[style][line.of[0]!.arch.shape], written, phrase);
    case 'head':
      return HEADS[style][line.head as Shape];
    case 'span':
      return small(line.span);
    case 'rise':
      return line.rise === null ? null : small(line.rise);
    case 'radius':
      return line.radius === null ? null : small(line.radius);
    case 'casing width':
      return small(line.face);
    case 'thickness':
      return small(line.thickness);
    case 'length each':
      return shown(line.length);
    case 'length of all':
      return /^total length$/i.test(heading)
        ? shown(line.quantity * line.length)
        : ((line.quantity * line.length) / 12).toFixed(2);
    case 'leg':
      return small(line.leg);
    case 'list price':
      return cents(line.unitPrice / 0.85).toFixed(2);
    case 'discount of the line':
      return /mult/i.test(heading) ? '0.85' : '15%';
    case 'rate per foot':
      return (line.rate * (/\/M/.test(heading) ? 1000 : 1)).toFixed(2);
    case 'unit price':
      return (line.unitPrice * (line.pair ? 2 : 1)).toFixed(2);
    case 'extension':
      return line.extension.toFixed(2);
    default:
      return layout.columns.includes('remarks') && at % 3 === 0 ? 'as drawn' : null;
  }
}
