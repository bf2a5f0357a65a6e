import { cellText, isBlank } from '../schedule/cell';
import { inWorkbookUnit, UNIT_NAMES, type ColumnUnit } from '../schedule/columnUnit';
import { listed, quote } from '../schedule/figure';
import { normalHeading } from '../schedule/headingText';
import type { CellValue } from '../schedule/opening';
import { isBare, readLength } from '../schedule/readLength';
import { readSection } from '../schedule/readSize';
import { perInch, type Unit } from '../unit';
import { namesGoods } from './labels';
import { moneyColumns } from './arithmetic';
import type { QuoteColumn } from './headings';
import type { QuoteKey } from './meanings';
import type { OurFigure, OurOpening, Ours } from './ours';

type Row = readonly CellValue[];

export interface Settled {
  readonly columns: readonly QuoteColumn[];
  /** Which columns hold counts, prices and amounts is certain by their figures. */
  readonly byFigures: boolean;
  readonly remarks: readonly string[];
}

/** Rows looked at: a quote of ten thousand lines is no clearer than one of three hundred. */
const MOST_ROWS = 300;

/**
 * What columns are by their cells; their headings, read first, only have a first guess. The column whose cells are our marks is the
 * mark. Quantity × price = amount tells counts, prices and amounts. Lengths are in the unit of the whole quote where their
 * heading names none; a column whose heading says nothing is the figure of ours that most of its cells have.
 */
export function settle(
  columns: readonly QuoteColumn[],
  below: readonly Row[],
  noted: ColumnUnit | null,
  ours: Ours | null,
  workbook: Unit,
): Settled {
  const rows = below.slice(0, MOST_ROWS).filter((row) => row.some((cell) => !isBlank(cell)));
  const remarks: string[] = [];
  const marked = ours === null ? columns : settleMark(columns, rows, ours);
  const cased = marked.map((column) => settleCasing(column, rows));
  const inUnits = cased.map((column) =>
    noted !== null && column.unit === null && LENGTH_KEYS.has(column.key) ? { ...column, unit: noted } : column,
  );
  const places = ours === null ? [] : rows.map((row) => placeOf(row, inUnits, ours));
  const lengths =
    ours === null
      ? inUnits
      : settleLengths(
          inUnits,
          rows,
          places.map((place) => (place === null ? null : ours.openings[place]!)),
          workbook,
          remarks,
        );
  const { columns: priced, byFigures } = moneyColumns(lengths, rows, workbook);
  for (const [at, column] of priced.entries()) {
    const { key, heading } = columns[at]!;
    if (column.key !== key && column.key !== null && key !== null)
      remarks.push(`Column ${quote(heading)} was read as ${NAMES[column.key] ?? column.key}, by its figures.`);
  }
  return { columns: priced, byFigures, remarks };
}

const NAMES: Readonly<Partial<Record<QuoteKey, string>>> = {
  mark: 'the mark',
  quantity: 'the quantity',
  unitPrice: 'the price of a piece',
  footPrice: 'the price of a foot',
  pairPrice: 'the price of a pair',
  listPrice: 'the list price',
  extension: 'the amount',
  face: 'the width of the casing',
  span: 'the width of the opening',
  openingRadius: 'the radius of the opening',
  rise: 'the rise',
  aside: 'a number of the lines',
};

const LENGTH_KEYS: ReadonlySet<QuoteKey | null> = new Set<QuoteKey | null>([
  'radius',
  'outsideRadius',
  'openingRadius',
  'diameter',
  'length',
  'insideLength',
  'centerLength',
  'totalLength',
  'lengthWithLegs',
  'span',
  'rise',
  'face',
  'thickness',
  'section',
  'reveal',
  'leg',
  'size',
]);

/** The column whose cells are our marks is the mark, whatever its heading; one that only counts the lines is none. */
function settleMark(columns: readonly QuoteColumn[], rows: readonly Row[], { marks }: Ours): readonly QuoteColumn[] {
  if (columns.some(({ key, rank }) => key === 'mark' && rank < 0)) return columns;
  const shares = columns.map(({ index, key, rank }) => {
    if (rank < 0) return 0;
    const cells = rows.map((row) => cellText(row[index])).filter((text) => text !== '');
    const found = cells.filter(
      (text) =>
        marks.find(text).length > 0 || (text.length <= 40 && key === 'mark' && marks.within(text, true).length > 0),
    ).length;
    if (found === 0) return 0;
    // Bare figures may be anything: they are marks only under a heading of marks.
    const bare = cells.every((text) => /^\d+(?:\.\d+)?$/.test(text));
    if (bare && key !== 'mark') return 0;
    return found / Math.max(cells.length, 1) + (key === 'mark' ? 0.05 : 0) - (bare ? 0.2 : 0);
  });
  const best = shares.reduce((most, share, at) => (share > shares[most]! ? at : most), 0);
  if (!(shares[best]! >= 0.34)) return columns;
  return columns.map((column, at): QuoteColumn => {
    if (at === best) return { ...column, key: 'mark', rank: Math.min(column.rank, 0) };
    if (column.key !== 'mark') return column;
    // Another one numbers the lines, or says where or what in words.
    const words = rows.some((row) => /[a-z]{3}/i.test(cellText(row[column.index])));
    const numbers = rows.map((row) => Number(cellText(row[column.index]))).filter((number) => number > 0);
    const counting = numbers.every((number, place) => place === 0 || number > numbers[place - 1]!);
    return { ...column, key: words ? 'description' : counting ? 'aside' : null };
  });
}

/** "Casing" over sections or widths; "Legs" over counts; "Size" over the section of the casing. */
function settleCasing(column: QuoteColumn, rows: readonly Row[]): QuoteColumn {
  const { heading, key, index, rank } = column;
  const normal = normalHeading(heading);
  const cells = rows.map((row) => row[index] ?? null).filter((cell) => !isBlank(cell));
  if (cells.length === 0 || rank < 0) return column;
  const most = (test: (cell: CellValue) => boolean) => cells.filter(test).length * 2 > cells.length;
  if (
    /^(?:casing|case|trim|molding|moulding|mold|stock|profile|material)(?: (?:size|profile|type))?$/.test(normal) ||
    key === 'size' ||
    key === 'section'
  ) {
    const inInches = { name: '', column: column.unit, unit: 'in' } as const;
    const sections = most((cell) => {
      const read = readSection(cell, inInches);
      return (
        read.ok &&
        Math.min(read.value.width, read.value.height) <= 3 &&
        Math.max(read.value.width, read.value.height) <= 14
      );
    });
    if (sections) return { ...column, key: 'section' };
    if (key !== 'size' && key !== 'section' && most((cell) => readLength(cell, inInches).ok && isBare(cell)))
      return { ...column, key: 'face' };
  }
  // Whole sentences of molding under "Material" describe the piece.
  if (
    (key === 'species' || key === 'aside') &&
    most((cell) => typeof cell === 'string' && cell.trim().split(/\s+/).length > 3 && namesGoods(cell))
  )
    return { ...column, key: 'description' };
  if (
    key === 'leg' &&
    cells.some((cell) => Number(cellText(cell)) !== 0) &&
    cells
      .filter((cell) => cellText(cell) !== '0')
      .every(
        (cell) =>
          /^\(?\d\)?(?: ?(?:ea|pcs?|pr))?$/i.test(cellText(cell)) && Number(cellText(cell).replace(/\D/g, '')) < 10,
      )
  )
    return { ...column, key: 'legCount' };
  return column;
}

function placeOf(row: Row, columns: readonly QuoteColumn[], { marks }: Ours): number | null {
  for (const { key, index } of columns) {
    if (key !== 'mark') continue;
    const own = marks.find(cellText(row[index]));
    if (own.length === 1) return own[0]!;
  }
  for (const { key, index } of columns) {
    if (key !== 'description' && key !== 'mark' && key !== 'aside' && key !== null) continue;
    const groups = marks.within(cellText(row[index]), key === 'mark');
    if (groups.length === 1 && groups[0]!.length === 1) return groups[0]![0]!;
  }
  return null;
}

/** So many of a column's cells have to be a figure of ours before it is taken for it. */
const ENOUGH = 0.6;
const MANY_OF_NONE = 0.3;
const FEWEST = 2;
const UNITS: readonly ColumnUnit[] = ['in', 'mm', 'cm', 'ft'];
const OF_KEY: Readonly<Partial<Record<QuoteKey, readonly OurFigure[]>>> = {
  radius: ['radius', 'openingRadius', 'outsideRadius'],
  outsideRadius: ['outsideRadius'],
  openingRadius: ['openingRadius'],
  length: ['length', 'insideLength'],
  insideLength: ['insideLength'],
  centerLength: ['centerLength'],
  totalLength: ['length'],
  span: ['span', 'face'],
  rise: ['rise'],
  face: ['face'],
  thickness: ['thickness'],
  leg: ['leg'],
};
/** What a column without a name can be known as: the figures a right quote has. */
const SMALL: ReadonlySet<OurFigure> = new Set<OurFigure>(['face', 'thickness', 'reveal']);
/** So long that a third of a column isn't theirs by chance. */
const BY_FEWER: readonly OurFigure[] = ['length', 'radius', 'span'];
const NAMELESS: readonly OurFigure[] = ['length', 'radius', 'span', 'face', 'rise', 'thickness', 'leg'];

function settleLengths(
  columns: readonly QuoteColumn[],
  rows: readonly Row[],
  openings: readonly (OurOpening | null)[],
  unit: Unit,
  remarks: string[],
): readonly QuoteColumn[] {
  const said = new Map<ColumnUnit, string[]>();
  const settled = columns.map((column): QuoteColumn => {
    const { key, index, rank, heading } = column;
    const bare = rows.flatMap((row, at) => {
      const opening = openings[at] ?? null;
      const cell = row[index] ?? null;
      return opening === null || isBlank(cell) ? [] : [{ cell, opening }];
    });
    if (bare.length < FEWEST) return column;
    /** The share of cells that are this figure of ours when read in a unit. */
    const share = (figures: readonly OurFigure[], as: ColumnUnit | null) => {
      const near = bare.filter(({ cell, opening }) => {
        const read = readLength(cell, { name: '', column: as, unit });
        if (!read.ok) return false;
        // A constant such as 0.8 is soon near a thickness: small figures have to be right.
        const fine = key === null && figures.every((figure) => SMALL.has(figure));
        const off = Math.max(perInch(unit) / (fine ? 64 : 8), as === 'mm' ? inWorkbookUnit(0.6, 'mm', unit) : 0);
        const counts = key === 'totalLength' ? [1, opening.quantity ?? 1] : [1];
        return figures.some((figure) => {
          const ours = opening.figures[figure];
          return ours !== undefined && counts.some((count) => Math.abs(read.value - count * ours) <= off);
        });
      }).length;
      return near / bare.length;
    };
    const figures = key === null ? undefined : OF_KEY[key];
    const inWords = bare.every(({ cell }) => !isBare(cell));
    if (figures !== undefined && rank >= 0) {
      // "Width" may be the opening's or the casing's, "Radius" the casing's or the opening's: the cells tell.
      const named = ofEither(column, (figure) => share([figure], column.unit));
      if (column.unit !== null || inWords || share(figures, null) >= 0.34) return named;
      // Of a quote with many wrong lengths fewer are ours, but none of them in another unit.
      const fits = (as: ColumnUnit, least: number) => as !== unit && share(figures, as) >= least;
      const none = bare.length >= 8 && share(figures, null) <= 0.1;
      const better =
        UNITS.find((as) => fits(as, ENOUGH)) ?? (none ? UNITS.find((as) => fits(as, MANY_OF_NONE)) : undefined);
      if (better === undefined) return named;
      said.set(better, [...(said.get(better) ?? []), quote(heading)]);
      return { ...named, unit: better };
    }
    // By chance two cells may be some figure of ours.
    if (key === 'aside' && HEIGHT.test(normalHeading(heading)) && share(['rise'], column.unit) >= ENOUGH)
      return { ...column, key: 'rise' };
    // By chance two cells may be some figure of ours.
    if (key !== null || (bare.length < 3 && heading === '') || !bare.every(({ cell }) => /\d/.test(cellText(cell))))
      return column;
    for (const as of [column.unit, ...UNITS.filter((one) => one !== unit)]) {
      const found =
        NAMELESS.find((figure) => share([figure], as) >= ENOUGH) ??
        (bare.length >= 8 ? BY_FEWER.find((figure) => share([figure], as) >= MANY_OF_NONE) : undefined);
      if (found === undefined) continue;
      remarks.push(
        `Column ${heading === '' ? index + 1 : quote(heading)} was read as the ${found === 'face' ? 'casing width' : found}, by its figures.`,
      );
      return { ...column, key: found as QuoteKey, rank: 8, unit: as };
    }
    return column;
  });
  for (const [as, names] of said)
    remarks.push(`Figures under ${listed(names)} were read as ${UNIT_NAMES[as]}: so most of them are right.`);
  return settled;
}

const HEIGHT = /\b(?:height|ht|hgt|high|h)\b/;

/** A heading that leaves open whose width or radius it is: the one that most of its cells are, where the plainer reading fits few. */
function ofEither(column: QuoteColumn, share: (figure: OurFigure) => number): QuoteColumn {
  const either = (plain: OurFigure, other: OurFigure & QuoteKey) =>
    share(other) >= ENOUGH && share(plain) < 0.5 ? { ...column, key: other } : column;
  if (column.key === 'span') return either('span', 'face');
  const says = /\b(?:inside|ins|is|inner|casing|csg|ir)\b/.test(normalHeading(column.heading));
  return column.key === 'radius' && !says ? either('radius', 'openingRadius') : column;
}
