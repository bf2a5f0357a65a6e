import { readHead } from '../head/words';
import { cellText, isBlank } from './cell';
import type { ColumnUnit } from './columnUnit';
import { fitsCasing } from './listUnit';
import { isDimensionWord } from './headingRows';
import { isNumberHeading, normalHeading } from './headingText';
import type { Choices, Column, Layout } from './layout';
import type { MeaningKey } from './meanings';
import type { CellValue } from './opening';
import { widthAndWords } from './plainFigure';
import { readLength } from './readLength';
import { readQuantity } from './readQuantity';
import { isHeadings } from './sortRows';

type Row = readonly CellValue[];

/** Rows looked at to settle a column. */
const SAMPLED_ROWS = 2000;
const ROUGH_OF: Partial<Record<MeaningKey, MeaningKey>> = {
  width: 'roughWidth',
  height: 'roughHeight',
  size: 'roughSize',
};

/** What is known of a table beside its rows. */
export interface Known {
  /** The unit of figures in columns without one. */
  readonly unit: ColumnUnit | null;
  /** Plain widths and heights are those of the rough openings. */
  readonly rough: boolean;
  readonly choices: Choices;
  /** What says of what the table is, the nearest first: the rows above its headings, those above the first ones, the file's name. */
  readonly titles: readonly string[];
}

/**
 * Meanings that only the cells and the table's notes can settle; a column whose meaning the user chose keeps it. Columns without
 * a unit take the table's.
 */
export function settle(
  layout: Layout,
  rows: readonly Row[],
  { unit, rough: areRough, choices, titles }: Known,
): Layout {
  const from = (layout.unitRow ?? layout.headingRows.at(-1) ?? -1) + 1;
  const body = bodyFrom(rows, from);
  const saysRough = layout.columns.some(({ key }) => key !== null && Object.values(ROUGH_OF).includes(key));
  const ofDoors = isOfDoors(layout, titles);
  const settled = layout.columns.map((column): Column => {
    const cells = body.map((row) => row[column.index] ?? null).filter((cell) => !isBlank(cell));
    const chosen = choices[column.index] !== undefined;
    const byCells = chosen ? column.key : settledByCells(column, cells);
    if (column.key === 'quantity' && byCells === null)
      return { ...column, key: null, leftAlone: 'it counts the rows up: one of each is taken' };
    const rough = areRough && !saysRough && !chosen && isDimensionWord(column.heading);
    const key = (rough && byCells !== null ? ROUGH_OF[byCells] : undefined) ?? byCells;
    const leftAlone = chosen || !ofDoors ? null : ofTheDoor({ ...column, key });
    if (leftAlone !== null) return { ...column, key: null, leftAlone };
    return { ...column, key, unit: column.unit ?? unit };
  });
  const get = (column: Column): Column => settled[column.index] ?? column;
  return { ...layout, columns: settled, blocks: layout.blocks.map((block) => block.map(get)) };
}

/** The rows below the headings, as far as other headings. */
function bodyFrom(rows: readonly Row[], from: number): readonly Row[] {
  let to = from;
  while (to < Math.min(rows.length, from + SAMPLED_ROWS) && !isHeadings(rows, to)) to += 1;
  return rows.slice(from, to);
}

/**
 * A "Type" column that names no head at all holds type codes, a "Casing" column without a single length names profiles, and
 * "No." over 1, 2, 3 numbers the lines.
 */
function settledByCells({ key, rank, heading }: Column, cells: readonly CellValue[]): MeaningKey | null {
  if (key === 'head' && rank >= 1 && !cells.some((cell) => readHead(cellText(cell)).ok)) return null;
  if (key === 'face' && rank >= 1 && cells.length > 0 && !cells.some((cell) => isLengthLike(cell) || withWords(cell)))
    return cells.some((cell) => /\d\s*[x×]\s*\d/i.test(cellText(cell))) ? 'casingSize' : 'profile';
  if (key === 'quantity' && isNumberHeading(heading) && countsUp(cells)) return null;
  return key;
}

function countsUp(cells: readonly CellValue[]): boolean {
  const counts = cells.map((cell) => readQuantity(cell)).flatMap((count) => (count.ok ? [count.value] : []));
  return counts.length >= 3 && counts.every((count, index) => count === index + 1);
}

/** `4 1/4 poplar`: a casing's width and more, which a profile's number is not. */
function withWords(cell: CellValue): boolean {
  const parts = widthAndWords(cellText(cell));
  if (parts === null) return false;
  const read = readLength(parts.width, { name: '', column: null, unit: 'in' });
  return read.ok && fitsCasing('face', read.value);
}

function isLengthLike(cell: CellValue): boolean {
  return typeof cell === 'number' || readLength(cell, { name: 'casing', column: null, unit: 'in' }).ok;
}

/** Headings that only lists of doors have. */
const DOOR_HEADING =
  /\b(?:hardware|hdwe?|hw (?:set|group)|fire|lockset|swing|handing|threshold|leaf|leaves|frame (?:type|mat\w*|elev\w*)|door|dr)\b/;

/** A list of doors, by the nearest title that says doors or windows, or by its headings. */
function isOfDoors(layout: Layout, titles: readonly string[]): boolean {
  const said = titles.find((title) => /\b(?:doors?|windows?)\b/i.test(title)) ?? '';
  if (/\bdoors?\b/i.test(said) && !/\bwindows?\b/i.test(said)) return true;
  return layout.columns.some(({ heading }) => heading.length < 80 && DOOR_HEADING.test(normalHeading(heading)));
}

/** A plain "Thickness" or "Material" in a list of doors is the door's. */
function ofTheDoor({ key, heading }: Column): string | null {
  if (key !== 'thickness' && key !== 'species' && key !== 'face') return null;
  if (/casing|trim|mo?u?lding|architrave|wood|species|lumber|timber/i.test(heading)) return null;
  return `in a list of doors it is the door's, not the casing's`;
}
