import { readHead } from '../head/words';
import { cellText, isBlank, isDitto, isEmpty, isRowEmpty, rowText } from './cell';
import { quote } from './figure';
import { headingsAt } from './headingRows';
import { unitsAt, usedAs, type Column, type Layout } from './layout';
import { meaningOf, type MeaningKey } from './meanings';
import type { CellValue } from './opening';
import { readQuantity } from './readQuantity';
import { withdrawnBy } from './remarks';

type Row = readonly CellValue[];

/** What a row of the body is. */
export type RowKind =
  | { readonly kind: 'openings'; readonly blocks: readonly (readonly Column[])[] }
  | { readonly kind: 'continuation'; readonly text: string }
  | { readonly kind: 'headings' }
  | { readonly kind: 'other'; readonly why: string };

/** What has been seen above the row. */
export interface Above {
  /** Sum of the quantities of the openings so far. */
  readonly counted: number;
  /** Of those since the last total. */
  readonly countedSinceTotal: number;
  /** The row directly above is an opening, or continues one. */
  readonly openingDirectlyAbove: boolean;
  /** A row such as "Notes:" has been passed. */
  readonly inNotes: boolean;
  /** What the rows above the first headings say. */
  readonly titles: ReadonlySet<string>;
}

/** A cell that labels a total; "Total" alone and the like can't be anything else. */
const LABELS_TOTAL = /(?:\b|sub)totals?\b|^(?:sum|count)\s*[:=]?$/i;
const WHOLLY_TOTAL = /^(?:(?:grand|sub|page|sheet|overall|running)[- ]?)?totals?\s*[:=]?$|^sum\s*[:=]?$/i;

/** Sorts one body row: an opening stays an opening unless the row clearly is something else. */
export function sortRow(rows: readonly Row[], index: number, layout: Layout, above: Above): RowKind {
  const row = rows[index] ?? [];
  if (isRowEmpty(row)) return other('blank');
  const filled = columnsWhere(row, (cell) => !isEmpty(cell));
  const first = filled[0] ?? 0;
  if (isUnits(rows, row, layout)) return other('units');
  const repeated = repeatsHeadings(rows, row, layout);
  // Headings that differ from those above in one column say something new of it.
  if (repeated < 1 && isHeadings(rows, index)) return { kind: 'headings' };
  if (repeated >= 0.6) return other('repeated headings');
  const lead = cellText(row[first]);
  if (isTotal(row, filled, layout)) return other(total(row, layout, above));
  if (isPageTitle(row, filled, layout, above.titles)) return other('page title');
  const used = (column: number) => usedAs(layout.columns[column]);
  const said = filled.filter((column) => !isBlank(row[column]));
  const marked = said.some((column) => used(column) === 'mark');
  const data = said.filter((column) => !NO_DATA.has(used(column)));
  const remarks = filled.filter((column) => used(column) === 'remarks');
  if (data.length === 0 && !marked && remarks.length > 0 && above.openingDirectlyAbove)
    return { kind: 'continuation', text: remarks.map((column) => cellText(row[column])).join('; ') };
  if (filled.length === 1 && isHeadline(lead, used(first) === 'mark'))
    return other(
      /^(?:(?:general )?notes?\b|.{0,20}\b(?:legend|abbreviations|symbols|head types|key)\b)/i.test(lead)
        ? 'notes'
        : 'title or note',
    );
  if (above.inNotes && !data.some((column) => isFigure(row[column]))) return other('note');
  const withdrawn = withdrawnRow(row, said, used);
  if (withdrawn !== null) return other(withdrawn);
  if (data.length === 0 && !marked) return other('note: nothing in any column that is understood');
  const lone = !marked && data.length === 1 ? data[0] : undefined;
  if (lone !== undefined && used(lone) === 'quantity' && above.counted > 0 && readQuantity(row[lone] ?? null).ok)
    return other(total(row, layout, above));
  return { kind: 'openings', blocks: filledBlocks(row, layout) };
}

const NO_DATA: ReadonlySet<MeaningKey | null> = new Set<MeaningKey | null>([null, 'mark', 'remarks', 'place', 'unit']);

/** A number that is taken and has no opening: a mark, words that say so, and no figure. */
function withdrawnRow(row: Row, said: readonly number[], used: (column: number) => MeaningKey | null): string | null {
  const word = said.map((column) => withdrawnBy(cellText(row[column]))).find((one) => one !== null);
  const figures = said.some(
    (column) =>
      used(column) !== 'mark' &&
      used(column) !== 'place' &&
      /\d/.test(cellText(row[column])) &&
      used(column) !== null &&
      used(column) !== 'remarks' &&
      used(column) !== 'quantity',
  );
  return word && !figures ? `the row says ${quote(word)} and gives no figures` : null;
}

/** A page's title in the middle of a printed list: it says which page and nothing of an opening, or what the rows above the first headings say. */
function isPageTitle(row: Row, filled: readonly number[], layout: Layout, titles: ReadonlySet<string>): boolean {
  const text = rowText(row);
  if (filled.length < 2 || text.length > 200 || filled.some((column) => typeof row[column] === 'number')) return false;
  if (titles.has(text)) return text.length > 3;
  return (
    /\bpage \d+(?: of \d+)?\b/i.test(text) && !filled.some((column) => saysOfAnOpening(row, layout.columns[column]))
  );
}

/** A head under its heading, or a figure under that of a length or a size. */
function saysOfAnOpening(row: Row, column: Column | undefined): boolean {
  const key = usedAs(column);
  const cell = row[column?.index ?? -1];
  if (key === null) return false;
  const { kind } = meaningOf(key);
  return kind === 'head' ? readHead(cellText(cell)).ok : (kind === 'length' || kind === 'size') && isFigure(cell);
}

function columnsWhere(row: Row, holds: (cell: CellValue) => boolean): number[] {
  const columns: number[] = [];
  row.forEach((cell, column) => {
    if (holds(cell)) columns.push(column);
  });
  return columns;
}

/** Whether a row of words holds the headings of a table, as they may come again or change further down. */
export function isHeadings(rows: readonly Row[], index: number): boolean {
  const filled = (rows[index] ?? []).filter((cell) => !isEmpty(cell));
  if (!filled.every(isWords)) return false;
  const found = headingsAt(rows, index);
  const known = found?.read.filter((meaning) => meaning !== null).length ?? 0;
  return found !== null && found.score >= 3 && known >= filled.length * 0.6;
}

/** Inch marks right across a row are units only where they repeat the unit row; else they repeat the row above. */
function isUnits(rows: readonly Row[], row: Row, layout: Layout): boolean {
  if (unitsAt(row) === null) return false;
  if (!row.every((cell) => isEmpty(cell) || isDitto(cell))) return true;
  const units = layout.unitRow === null ? undefined : rows[layout.unitRow];
  return units !== undefined && row.every((cell, column) => cellText(cell) === cellText(units[column]));
}

/** A row labelled as a total, with no head and, unless the label can mean nothing else, no lengths either. */
function isTotal(row: Row, filled: readonly number[], layout: Layout): boolean {
  const used = (column: number) => usedAs(layout.columns[column]);
  const label = filled.find((column) => {
    const mayLabel = column === filled[0] || used(column) === 'mark' || used(column) === null;
    return mayLabel && LABELS_TOTAL.test(cellText(row[column]));
  });
  if (label === undefined) return false;
  const others = filled.filter((column) => column !== label && !isBlank(row[column]));
  if (others.some((column) => used(column) === 'head' && readHead(cellText(row[column])).ok)) return false;
  const measured = others.some((column) => !NO_DATA.has(used(column)) && used(column) !== 'quantity');
  return !measured || WHOLLY_TOTAL.test(cellText(row[label]));
}

function isWords(cell: CellValue | undefined): boolean {
  return typeof cell === 'string' && !/\d/.test(cell);
}

function isFigure(cell: CellValue | undefined): boolean {
  return typeof cell === 'number' || /^[\d'"½¼¾. /-]+$/.test(cellText(cell));
}

/** A total of the quantities is compared with what was read: all of it, or what follows the total before. */
function total(row: Row, layout: Layout, { counted, countedSinceTotal }: Above): string {
  const stated = layout.columns
    .filter(({ key }) => key === 'quantity')
    .flatMap(({ index }) => {
      const count = readQuantity(row[index] ?? null);
      return count.ok ? [count.value] : [];
    })[0];
  if (stated === undefined) return 'total';
  if (stated === counted) return 'total: agrees with the quantities above';
  if (stated === countedSinceTotal) return 'total: agrees with the quantities since the total before';
  const since =
    countedSinceTotal === counted || countedSinceTotal === 0
      ? ''
      : `, those since the total before to ${countedSinceTotal}`;
  return `total: says ${stated}, the quantities above add up to ${counted}${since}`;
}

function other(why: string): RowKind {
  return { kind: 'other', why };
}

/** How much of a row repeats the headings above it: all of it is 1. */
function repeatsHeadings(rows: readonly Row[], row: Row, layout: Layout): number {
  const shares = layout.headingRows.map((heading) => {
    const original = rows[heading] ?? [];
    let same = 0;
    let filled = 0;
    row.forEach((cell, column) => {
      if (isEmpty(cell)) return;
      filled += 1;
      const before = original[column];
      if (typeof cell === 'string' && typeof before === 'string' && sameWords(cell, before)) same += 1;
    });
    return same >= 2 ? same / filled : 0;
  });
  return Math.max(0, ...shares);
}

function sameWords(a: string, b: string): boolean {
  const [first, second] = [a.trim(), b.trim()];
  return first.length === second.length && first !== '' && first.toLowerCase() === second.toLowerCase();
}

/** What stands at the foot of a page. */
const FOOTER = /^(?:page|sheet|rev(?:ision|\.)?|dated?|drawn|printed|issued|end(?: of schedule)?)(?![a-z])/i;

/** A lone cell that is a title, a section name, a footer or a sentence rather than a mark or a figure. */
function isHeadline(text: string, inMarkColumn: boolean): boolean {
  if (FOOTER.test(text)) return true;
  const words = text.split(/\s+/).length;
  if (inMarkColumn) return !(/\d/.test(text) && text.length <= 12 && words <= 2) && text.length > 3;
  return /[a-z]{3,}/i.test(text) && (words >= 2 || !/\d/.test(text));
}

/** The parallel blocks of a row that hold an opening; a block that repeats an earlier one word for word is not counted again. */
function filledBlocks(row: Row, layout: Layout): readonly (readonly Column[])[] {
  if (layout.blocks.length === 1) return layout.blocks;
  const seen = new Set<string>();
  const filled = layout.blocks.filter((block) => {
    const cells = block.filter((column) => usedAs(column) !== null).map(({ index }) => cellText(row[index]));
    const content = cells.join('\u0000');
    if (cells.every((cell) => cell === '') || seen.has(content)) return false;
    seen.add(content);
    return true;
  });
  return filled.length === 0 ? layout.blocks.slice(0, 1) : filled;
}
