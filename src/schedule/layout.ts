import type { CellValue } from './opening';
import { cellText, isEmpty } from './cell';
import { readUnit, type ColumnUnit } from './columnUnit';
import { headingsAt, type HeadingRows } from './headingRows';
import { isNumberHeading, normalHeading, splitUnit } from './headingText';
import type { MeaningKey } from './meanings';

/** One column of a schedule, as its heading says. */
export interface Column {
  readonly index: number;
  readonly heading: string;
  readonly key: MeaningKey | null;
  /** How good a name the heading is for its meaning, 0 best. */
  readonly rank: number;
  readonly unit: ColumnUnit | null;
  /** Why a column whose heading is understood is not used all the same. */
  readonly leftAlone?: string;
}

/** Where the headings stand and what each column means. Indices count the table's rows from 0. */
export interface Layout {
  readonly headingRows: readonly number[];
  readonly unitRow: number | null;
  readonly columns: readonly Column[];
  /** Columns of one opening; more than one where a schedule is set in parallel blocks across the page. */
  readonly blocks: readonly (readonly Column[])[];
}

export type Choices = Partial<Record<number, MeaningKey>>;
type Row = readonly CellValue[];

/** Headings further down than this are not looked for. */
const SEARCHED_ROWS = 500;
/** The first heading row (or pair of rows) at or below `from`, or null. */
export function findLayout(rows: readonly Row[], from: number, choices: Choices): Layout | null {
  let weak: HeadingRows | null = null;
  const end = Math.min(rows.length, from + SEARCHED_ROWS);
  for (let index = from; index < end; index += 1) {
    const found = headingsAt(rows, index);
    if (found === null) continue;
    if (found.score >= 3) return toLayout(rows, found, choices);
    weak ??= found.score === 2 ? found : null;
  }
  return weak === null ? null : toLayout(rows, weak, choices);
}

/** A layout from choices where no headings are understood: a row of words in the chosen columns is still the heading row. */
export function layoutFromChoices(rows: readonly Row[], choices: Choices): Layout {
  const chosen = Object.keys(choices).map(Number);
  const heading = rows.slice(0, SEARCHED_ROWS).findIndex((row) => {
    const cells = chosen.map((index) => row[index]);
    return (
      cells.filter((cell) => typeof cell === 'string' && /\p{L}/u.test(cell)).length >= 2 &&
      cells.every((cell) => !/\d/.test(cellText(cell)))
    );
  });
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const texts = Array.from({ length: width }, (_, index) => (heading < 0 ? '' : cellText(rows[heading]?.[index])));
  return toLayout(rows, { rows: heading < 0 ? [] : [heading], texts, read: texts.map(() => null), score: 0 }, choices);
}

function toLayout(rows: readonly Row[], found: HeadingRows, choices: Choices): Layout {
  const next = found.rows.length === 0 ? 0 : (found.rows.at(-1) ?? 0) + 1;
  const units = found.rows.length > 0 ? unitsAt(rows[next]) : null;
  const width = Math.max(found.texts.length, ...Object.keys(choices).map((index) => Number(index) + 1));
  const columns = Array.from({ length: width }, (_, index): Column => {
    const heading = found.texts[index] ?? '';
    const read = found.read[index] ?? null;
    const chosen = choices[index];
    const key = chosen ?? read?.key ?? null;
    const unit = read?.unit ?? units?.[index] ?? (chosen === undefined ? null : splitUnit(heading.slice(0, 80)).unit);
    return { index, heading, key, rank: chosen === undefined ? (read?.rank ?? 0) : -1, unit };
  });
  const settled = settleNumber(columns, choices);
  return {
    headingRows: found.rows,
    unitRow: units === null ? null : next,
    columns: settled,
    blocks: splitBlocks(settled),
  };
}

/** "No." is a count beside a mark; where nothing else marks the openings it is the mark. */
function settleNumber(columns: readonly Column[], choices: Choices): readonly Column[] {
  const number = columns.find(
    ({ index, key, heading }) => key === 'quantity' && choices[index] === undefined && isNumberHeading(heading),
  );
  if (number === undefined) return columns;
  const marked = columns.some(({ key }) => key === 'mark');
  const counted = columns.some(({ index, key }) => key === 'quantity' && index !== number.index);
  const first = columns.find(({ heading }) => heading !== '')?.index === number.index;
  // Beside both a mark and a count it numbers the lines.
  const key = marked ? (counted ? null : 'quantity') : counted || first ? 'mark' : 'quantity';
  return columns.map((column) => (column.index === number.index ? { ...column, key } : column));
}

/**
 * Parallel blocks: the mark's heading comes again and at least two of its neighbors with it; or beyond a column without a heading another
 * mark begins a list of its own, with openings' widths.
 */
function splitBlocks(columns: readonly Column[]): readonly (readonly Column[])[] {
  const mark = columns.find(({ key }) => key === 'mark');
  if (mark === undefined) return [columns];
  const again = columns.filter(
    ({ key, heading }) => key === 'mark' && heading !== '' && normalHeading(heading) === normalHeading(mark.heading),
  );
  const apart = columns.filter(({ key, index }) => key === 'mark' && columns[index - 1]?.heading === '');
  const starts = again.length > 1 ? again : [mark, ...apart.filter((one) => one !== mark)];
  if (starts.length < 2) return [columns];
  const blocks = starts.map((start, place) =>
    columns.slice(place === 0 ? 0 : start.index, starts[place + 1]?.index ?? columns.length),
  );
  const keysOf = (block: readonly Column[]) => new Set(block.flatMap(({ key }) => (key === null ? [] : [key])));
  const firstKeys = keysOf(blocks[0] ?? []);
  const isWide = (block: readonly Column[]) => block.some(({ key }) => key !== null && OPENING_WIDTHS.has(key));
  const parallel = blocks.every((block) =>
    again.length > 1
      ? [...keysOf(block)].filter((key) => firstKeys.has(key)).length >= 3
      : keysOf(block).size >= 3 && isWide(block),
  );
  return parallel ? blocks : [columns];
}

const OPENING_WIDTHS: ReadonlySet<MeaningKey> = new Set<MeaningKey>(['width', 'size', 'roughWidth', 'roughSize']);

const UNIT_FILLERS = /^(?:-+|ea\.?|each|no\.?|#|pcs?\.?|qty\.?|text|n\/a|units?)$/i;

/** The units of a row that holds nothing but units, or null. */
export function unitsAt(row: Row | undefined): readonly (ColumnUnit | null)[] | null {
  if (row === undefined) return null;
  const units: (ColumnUnit | null)[] = [];
  for (const cell of row) {
    const unit = typeof cell === 'string' && cell.length < 24 ? readUnit(cell) : null;
    // Nearly every row is no unit row and shows it in its first cell.
    if (unit === null && !isEmpty(cell) && !(typeof cell === 'string' && UNIT_FILLERS.test(cell.trim()))) return null;
    units.push(unit);
  }
  return units.some((unit) => unit !== null) ? units : null;
}

const NONE: readonly Column[] = [];
const byMeaning = new WeakMap<readonly Column[], Map<MeaningKey, readonly Column[]>>();

/** The columns of a block with a meaning, best name first. */
export function columnsFor(block: readonly Column[], key: MeaningKey): readonly Column[] {
  let sorted = byMeaning.get(block);
  if (sorted === undefined) {
    sorted = new Map();
    for (const column of [...block].sort((a, b) => a.rank - b.rank || a.index - b.index))
      if (column.key !== null) sorted.set(column.key, [...(sorted.get(column.key) ?? []), column]);
    byMeaning.set(block, sorted);
  }
  return sorted.get(key) ?? NONE;
}

/** What the cells of a column are read as; null where they are not read. */
export function usedAs(column: Column | undefined): MeaningKey | null {
  return column === undefined || column.key === null || column.key === 'ignore' ? null : column.key;
}
