import { ok } from '../result';
import { cellText, isBlank, isDitto, isEmpty, isRowEmpty, rowText } from './cell';
import { quote } from './figure';
import { findLayout, type Choices, type Column, type Layout } from './layout';
import { meaningOf } from './meanings';
import type { CellValue, Merge, Table } from './opening';
import { readQuantity } from './readQuantity';
import type { RawOpening } from './rowCells';
import { sortRow } from './sortRows';
import { unitOfTitle } from './tableNotes';

type Row = readonly CellValue[];

/** Goes through a table's rows: each becomes an opening's cells or is passed over with the reason. */
export class BodyReader {
  readonly raw: (Omit<RawOpening, 'more'> & { more: string[] })[] = [];
  readonly passedOver: { row: number; why: string; text: string }[] = [];
  private layout: Layout;
  private counted = 0;
  private countedAtTotal = 0;
  private openingDirectlyAbove = false;
  private inNotes = false;
  private above: Row = [];
  private readonly merges: ReadonlyMap<number, readonly Merge[]>;
  private readonly usualLength: number;
  private readonly titles: ReadonlySet<string>;

  constructor(
    private readonly table: Table,
    private readonly choices: Choices,
    private found: Layout,
    private readonly settled: (layout: Layout, titles: readonly string[]) => Layout,
  ) {
    this.layout = settled(found, []);
    this.merges = mergesByRow(table);
    this.usualLength = commonestLength(table.rows);
    const top = Math.min(found.headingRows[0] ?? 0, MOST_TITLES);
    this.titles = new Set(table.rows.slice(0, top).map(rowText));
  }

  /** The columns as the headings of the table at hand give them. */
  get columns(): readonly Column[] {
    return this.layout.columns;
  }

  readAll(hasHeadings: boolean): void {
    const { rows } = this.table;
    const top = hasHeadings ? (this.layout.headingRows[0] ?? 0) : 0;
    for (let index = 0; index < top; index += 1)
      this.pass(index, isRowEmpty(rows[index]) ? 'blank' : 'title or note above the headings');
    let index = top;
    if (hasHeadings) index = this.passHeadings('headings');
    while (index < rows.length) index = this.readOne(index);
  }

  /** What was passed over since the last opening: the titles of a table that begins here. */
  private directlyAbove(): readonly string[] {
    const last = this.raw.at(-1)?.row ?? 0;
    return this.passedOver.flatMap(({ row, text }) => (row > last ? [text] : []));
  }

  /** Passes over the layout's heading and unit rows and gives the row after them. */
  private passHeadings(why: string): number {
    for (const heading of this.layout.headingRows) this.pass(heading, why);
    const last = this.layout.headingRows.at(-1) ?? -1;
    if (this.layout.unitRow === null) return last + 1;
    this.pass(this.layout.unitRow, 'units');
    return this.layout.unitRow + 1;
  }

  private readOne(index: number): number {
    const { rows } = this.table;
    const { counted, openingDirectlyAbove, inNotes, titles } = this;
    const countedSinceTotal = counted - this.countedAtTotal;
    const above = { counted, countedSinceTotal, openingDirectlyAbove, inNotes, titles };
    const sorted = sortRow(rows, index, this.layout, above);
    if (sorted.kind === 'headings') {
      const next = findLayout(rows, index, this.choices);
      if (next !== null && next.headingRows[0] === index) {
        this.found = next;
        this.layout = this.settled(next, this.directlyAbove());
        this.above = [];
        this.openingDirectlyAbove = false;
        this.inNotes = false;
        return this.passHeadings('headings of another table; the rows below were read by these');
      }
      this.pass(index, 'headings');
    } else if (sorted.kind === 'continuation') {
      const last = this.raw.at(-1);
      last?.more.push(sorted.text);
      this.pass(index, `continues the remarks of row ${last?.row ?? 0}`, true);
    } else if (sorted.kind === 'other') {
      if (sorted.why === 'notes') this.inNotes = true;
      if (sorted.why.startsWith('total')) this.countedAtTotal = this.counted;
      // The same headings again, under a title that gives the unit of what follows.
      const titles = sorted.why === 'repeated headings' ? this.directlyAbove() : [];
      if (titles.some((title) => unitOfTitle(title) !== null)) this.layout = this.settled(this.found, titles);
      this.pass(index, sorted.why);
    } else {
      this.inNotes = false;
      this.take(index, sorted.blocks);
    }
    return index + 1;
  }

  private pass(index: number, why: string, continues = false): void {
    this.passedOver.push({ row: this.table.firstRow + index, why, text: rowText(this.table.rows[index]) });
    this.openingDirectlyAbove = continues;
  }

  private take(index: number, blocks: readonly (readonly Column[])[]): void {
    const row = this.table.firstRow + index;
    const original = this.table.rows[index] ?? [];
    const notes = [...(this.table.rowRemarks?.get(row) ?? [])];
    const shared = this.merges.has(row) ? new Set<number>() : NOTHING_SHARED;
    const cells = [...original];
    original.forEach((cell, column) => {
      if (isDitto(cell)) cells[column] = this.repeated(cell, column, notes);
    });
    this.fillMerged(row, cells, shared, notes);
    const doubt = this.overflow(row, cells, notes);
    this.above = cells;
    const source = Array.from({ length: Math.max(this.layout.columns.length, original.length) }, (_, column) =>
      cellText(original[column]),
    );
    if (blocks.length > 1) notes.push(`Row ${row} holds ${blocks.length} openings side by side.`);
    for (const [place, block] of blocks.entries()) {
      const at = place === 0 ? String(row) : `${row}${String.fromCharCode(97 + (place % 26))}`;
      this.raw.push({
        row,
        at,
        cells,
        block,
        source,
        more: [],
        notes: [...notes],
        shared,
        doubt,
        ...(this.table.decimalCommas ? { commas: true } : {}),
      });
      const quantity = block.find(({ key }) => key === 'quantity');
      const count = quantity === undefined ? ok(1) : readQuantity(cells[quantity.index] ?? null);
      if (count.ok) this.counted += count.value;
    }
    this.openingDirectlyAbove = true;
  }

  /** A ditto mark repeats the cell above it. */
  private repeated(cell: CellValue, column: number, notes: string[]): CellValue {
    const key = this.layout.columns[column]?.key;
    if (key === 'mark' || key === 'remarks' || key === null || key === undefined) return cell;
    const above = this.above[column] ?? null;
    if (isBlank(above)) return cell;
    notes.push(`${this.columnName(column)} repeats ${quote(cellText(above))} from the row above.`);
    return above;
  }

  /** Cells merged downward hold their value in the first row only. */
  private fillMerged(row: number, cells: CellValue[], shared: Set<number>, notes: string[]): void {
    for (const merge of this.merges.get(row) ?? []) {
      const column = merge.firstColumn;
      if (row > merge.firstRow && isEmpty(cells[column])) {
        const value = this.table.rows[merge.firstRow - this.table.firstRow]?.[column] ?? null;
        while (cells.length <= column) cells.push(null);
        cells[column] = value;
        if (!isEmpty(value) && this.layout.columns[column]?.key)
          notes.push(
            `${this.columnName(column)} ${quote(cellText(value))} is from the cell merged over rows ${merge.firstRow} to ${merge.lastRow}.`,
          );
      }
      shared.add(column);
    }
  }

  /** Cells beyond the last heading of a delimited row: text behind an unquoted comma, or cells moved by one. */
  private overflow(row: number, cells: CellValue[], notes: string[]): string | null {
    const { columns } = this.layout;
    if (!this.table.delimited || this.layout.headingRows.length === 0) return null;
    const beyond = cells.slice(columns.length).filter((cell) => !isEmpty(cell));
    const doubt = `Row ${row} has ${cells.length} cells under ${columns.length} headings, so an unquoted comma may have moved its cells; please check the row.`;
    if (beyond.length === 0) return this.mayHoldDecimalComma(cells) ? doubt : null;
    const last = columns.at(-1);
    // Only words can be the start of remarks that were cut by a comma; a figure there came from the left.
    if (last?.key === 'remarks' && /[a-z]{2}/i.test(cellText(cells[last.index]))) {
      cells[last.index] = [cells[last.index] ?? null, ...beyond].map(cellText).join(', ');
      notes.push('The remarks run over an unquoted comma and were put together again.');
      return null;
    }
    return doubt;
  }

  /** One cell more than the other rows have, if blank, and a length that could go on in the next cell: 36,5 made two of one. */
  private mayHoldDecimalComma(cells: readonly CellValue[]): boolean {
    const { columns } = this.layout;
    if (cells.length !== columns.length + 1 || this.usualLength !== columns.length) return false;
    const digits = (column: number) => /^\d+$/.test(cellText(cells[column]));
    return columns.some(
      ({ key, index }) => key !== null && meaningOf(key).kind === 'length' && digits(index) && digits(index + 1),
    );
  }

  private columnName(column: number): string {
    const heading = this.layout.columns[column]?.heading ?? '';
    return heading === '' ? `Column ${column + 1}` : heading;
  }
}

/** Title rows above the first headings that may come again on each page. */
const MOST_TITLES = 20;
const NOTHING_SHARED = new Set<number>();

/** More merged rows than this are not a schedule's doing. */
const MOST_MERGED_ROWS = 200_000;

function mergesByRow({ merges = [], firstRow, rows }: Table): Map<number, Merge[]> {
  const byRow = new Map<number, Merge[]>();
  let count = 0;
  for (const merge of merges) {
    if (merge.firstRow === merge.lastRow) continue;
    const last = Math.min(merge.lastRow, firstRow + rows.length - 1);
    for (let row = Math.max(merge.firstRow, firstRow); row <= last && count < MOST_MERGED_ROWS; row += 1, count += 1) {
      const there = byRow.get(row);
      if (there === undefined) byRow.set(row, [merge]);
      else there.push(merge);
    }
  }
  return byRow;
}

/** The length that most rows have; 0 where no two rows are alike. */
function commonestLength(rows: readonly Row[]): number {
  const counts = new Map<number, number>();
  for (const { length } of rows) counts.set(length, (counts.get(length) ?? 0) + 1);
  const [commonest = [0, 0]] = [...counts].sort((one, other) => other[1] - one[1]);
  return commonest[1] > 1 ? commonest[0] : 0;
}
