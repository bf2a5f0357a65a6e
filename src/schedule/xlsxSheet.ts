import { ok, refuse, type Result } from '../result';
import { shownAs } from './numberLook';
import type { CellValue, Merge, Table } from './opening';
import { walkXml } from './xml';
import { isTrue, textCollector, unescapeText, type CellLook, type SharedText } from './xlsxParts';

export interface SheetContext {
  readonly name: string;
  readonly texts: readonly SharedText[];
  /** For each cell style, how it shows a cell. */
  readonly looks: readonly CellLook[];
  readonly from1904: boolean;
}

/** A sheet has at most this many rows and columns in any spreadsheet program. */
const LAST_ROW = 1_048_576;
export const LAST_COLUMN = 16_384;
/** What is read of one sheet: far beyond any schedule, and still small in memory. */
export const MOST_CELLS = 4_000_000;
/** Rows of a list that are read. */
export const MOST_ROWS = 150_000;
/** A row that stands alone this far below the rest is a stray. */
const LONGEST_GAP = 5_000;

/** One sheet as a table, from its first row that holds anything. */
export function readSheet(xml: string, context: SheetContext): Result<Table> {
  const reader = new SheetReader(context);
  const refusal = walkXml(xml, context.name, reader);
  if (reader.fault !== null) return refuse(reader.fault);
  return refusal ?? ok(reader.table());
}

class SheetReader {
  fault: string | null = null;
  private readonly rows = new Map<number, CellValue[]>();
  private readonly hiddenRows: number[] = [];
  private readonly merges: Merge[] = [];
  private readonly remarks: string[] = [];
  private readonly inline = textCollector();
  private cells = 0;
  private readonly hiddenColumns: { first: number; last: number }[] = [];
  private readonly struck = new Map<number, number[]>();
  private readonly columnsFilled = new Set<number>();
  private filtered = false;
  private uncalculated = 0;
  private row = 0;
  private column = 0;
  private cell: { type: string; style: number; value: string | null; formula: string | null } | null = null;
  private inside: 'v' | 'f' | 'is' | null = null;

  constructor(private readonly context: SheetContext) {}

  open(name: string, attributes: () => Readonly<Record<string, string>>): void {
    if (name === 'row') this.openRow(attributes());
    else if (name === 'c') this.openCell(attributes());
    else if (name === 'mergeCell') this.merge(attributes()['ref'] ?? '');
    else if (name === 'col') {
      const { hidden, min, max } = attributes();
      if (isTrue(hidden)) this.hiddenColumns.push({ first: Number(min) - 1, last: Number(max) - 1 });
    } else if (name === 'filterColumn') this.filtered = true;
    else if (this.cell !== null) this.openInCell(name, attributes);
  }

  close(name: string): void {
    if (name === 'c') this.closeCell();
    else if (name === 'v' || name === 'f' || name === 'is') this.inside = null;
    else if (this.inside === 'is') this.inline.close(name);
  }

  text(text: string): void {
    if (this.cell === null) return;
    if (this.inside === 'v') this.cell.value = (this.cell.value ?? '') + text;
    else if (this.inside === 'f') this.cell.formula = (this.cell.formula ?? '') + text;
    else if (this.inside === 'is') this.inline.add(text);
  }

  enough(): boolean {
    return this.fault !== null;
  }

  private openRow({ r, hidden }: Readonly<Record<string, string>>): void {
    const row = r === undefined ? this.row + 1 : Number(r);
    this.column = 0;
    if (!this.setRow(row)) return;
    if (isTrue(hidden)) this.hiddenRows.push(row);
  }

  private setRow(row: number): boolean {
    if (!Number.isInteger(row) || row < 1 || row > LAST_ROW) {
      this.fault = `The sheet "${this.context.name}" is damaged: it has a row numbered ${String(row)}.`;
      return false;
    }
    this.row = row;
    return true;
  }

  private openCell({ r, t = 'n', s = '' }: Readonly<Record<string, string>>): void {
    this.column += 1;
    if (r !== undefined) {
      const address = readAddress(r);
      if (address === null) {
        this.fault = `The sheet "${this.context.name}" is damaged: it has a cell named "${r.slice(0, 20)}".`;
        return;
      }
      if (!this.setRow(address.row)) return;
      this.column = address.column + 1;
    }
    this.cell = { type: t, style: Number(s), value: null, formula: null };
    // A blank text cell may come without any text: what the cell before held must not stand for it.
    if (t === 'inlineStr') this.inline.start();
  }

  private openInCell(name: string, attributes: () => Readonly<Record<string, string>>): void {
    if (name === 'v' || name === 'f') this.inside = name;
    // An empty element has no text to tell of, and is a result all the same: a formula's empty text.
    if (name === 'v' && this.cell !== null) this.cell.value ??= '';
    if (name === 'f' && this.cell !== null) this.cell.formula ??= attributes()['t'] === 'shared' ? '' : null;
    if (name === 'is') {
      this.inside = 'is';
    } else if (this.inside === 'is') this.inline.open(name, attributes);
  }

  private closeCell(): void {
    const { cell } = this;
    this.cell = null;
    if (cell === null) return;
    const value = this.valueOf(cell);
    if (value === null) return;
    if (this.column > LAST_COLUMN) {
      this.fault = `The sheet "${this.context.name}" is damaged: it has more than ${LAST_COLUMN} columns.`;
      return;
    }
    let row = this.rows.get(this.row);
    if (row === undefined) this.rows.set(this.row, (row = []));
    if (this.rows.size > MOST_ROWS)
      this.fault = `The sheet "${this.context.name}" has more than ${MOST_ROWS} rows; a schedule has far fewer.`;
    this.cells += Math.max(1, this.column - row.length);
    if (this.cells > MOST_CELLS) {
      this.fault = `The sheet "${this.context.name}" has more than ${MOST_CELLS} cells; a schedule is far smaller.`;
      return;
    }
    while (row.length < this.column - 1) row.push(null);
    row[this.column - 1] = value;
    if (this.hiddenColumns.length > 0) this.columnsFilled.add(this.column - 1);
    if (this.isStruck(cell)) this.struck.set(this.row, [...(this.struck.get(this.row) ?? []), this.column - 1]);
  }

  private isStruck({ type, style, value }: NonNullable<SheetReader['cell']>): boolean {
    if (this.context.looks[style]?.struck) return true;
    if (type === 's') return this.context.texts[Number(value)]?.struck ?? false;
    return type === 'inlineStr' && this.inline.struck();
  }

  private valueOf({ type, style, value, formula }: NonNullable<SheetReader['cell']>): CellValue {
    if (type === 'inlineStr') return unescapeText(this.inline.text()) || null;
    if (value === null || (value === '' && type !== 'str')) {
      if (formula === null) return null;
      this.uncalculated += 1;
      return `=${formula === '' ? 'formula shared with the cells above' : formula}`;
    }
    if (type === 's') return this.sharedText(Number(value));
    if (type === 'b') return isTrue(value);
    if (type === 'str' || type === 'e') return value === '' ? null : unescapeText(value);
    if (type === 'd') return new Date(value);
    const number = Number(value);
    if (!Number.isFinite(number)) return value;
    return shownAs(number, this.context.looks[style]?.number ?? null, this.context.from1904);
  }

  private sharedText(index: number): CellValue {
    const { texts, name } = this.context;
    if (texts.length === 0) this.fault = `The texts of the sheet "${name}" are missing from the file.`;
    return texts[index]?.text ?? '#REF! the text of this cell is missing from the file';
  }

  private merge(ref: string): void {
    const [from, to] = ref.split(':').map(readAddress);
    if (!from || !to || this.merges.length > 20_000) return;
    this.merges.push({ firstRow: from.row, lastRow: to.row, firstColumn: from.column, lastColumn: to.column });
  }

  table(): Table {
    const numbers = this.withoutStrays([...this.rows.keys()].sort((a, b) => a - b));
    const firstRow = numbers[0] ?? 1;
    const lastRow = numbers.at(-1) ?? 0;
    const rows: CellValue[][] = [];
    for (let row = firstRow; row <= lastRow; row += 1) rows.push(this.rows.get(row) ?? []);
    const hidden = this.hiddenRows.filter((row) => this.rows.has(row));
    const by = this.filtered ? 'Hidden by a filter' : 'Hidden in the file';
    if (hidden.length > 0)
      this.remarks.push(`${by}, and read all the same: row${hidden.length > 1 ? 's' : ''} ${ranges(hidden)}.`);
    const columns = this.hiddenFilled();
    if (columns.length > 0)
      this.remarks.push(
        `Hidden in the file, and read all the same: column${columns.length > 1 ? 's' : ''} ${columns.slice(0, 20).join(', ')}${columns.length > 20 ? ' and more' : ''}.`,
      );
    if (this.uncalculated > 0)
      this.remarks.push(
        `${this.uncalculated} formula${this.uncalculated > 1 ? 's have' : ' has'} no stored result; open the file in a spreadsheet program and save it again.`,
      );
    return {
      name: this.context.name,
      firstRow,
      rows,
      remarks: this.remarks,
      rowRemarks: new Map(
        hidden.map((row) => [row, [`Row ${row} is hidden ${this.filtered ? 'by a filter' : 'in the file'}.`]]),
      ),
      merges: this.merges.filter(({ firstRow, lastRow }) => lastRow > firstRow),
      struck: this.struck,
    };
  }

  /** Letters of the hidden columns that hold something. */
  private hiddenFilled(): readonly string[] {
    const isHidden = (column: number) =>
      this.hiddenColumns.some(({ first, last }) => column >= first && column <= last);
    return [...this.columnsFilled]
      .filter(isHidden)
      .sort((a, b) => a - b)
      .map(columnLetters);
  }

  /** Leaves out, and says so, what stands thousands of blank rows below the rest. */
  private withoutStrays(numbers: readonly number[]): readonly number[] {
    const gap = numbers.findIndex((row, index) => index > 0 && row - (numbers[index - 1] ?? row) > LONGEST_GAP);
    if (gap < 0) return numbers;
    const strays = numbers.slice(gap);
    const text = (this.rows.get(strays[0] ?? 0) ?? [])
      .filter((cell) => cell !== null)
      .map(String)
      .join(' ');
    this.remarks.push(
      `Row ${strays[0]} ("${text.slice(0, 40)}")${strays.length > 1 ? ` and ${strays.length - 1} more rows` : ''} stands more than ${LONGEST_GAP} blank rows below the rest and was not read.`,
    );
    return numbers.slice(0, gap);
  }
}

/** `A`, `B`, …, `AA` of a column from 0. */
function columnLetters(column: number): string {
  const before = Math.floor(column / 26);
  return (before > 0 ? columnLetters(before - 1) : '') + String.fromCharCode(65 + (column % 26));
}

/** Row from 1 and column from 0 of an address such as `B12`; null for anything else. */
function readAddress(address: string): { row: number; column: number } | null {
  const match = /^\$?([A-Za-z]{1,3})\$?(\d{1,7})$/.exec(address);
  if (match === null) return null;
  const column =
    [...(match[1] ?? '').toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return column < LAST_COLUMN ? { row: Number(match[2]), column } : null;
}

/** `3, 5–7, 12` */
function ranges(numbers: readonly number[]): string {
  const parts: string[] = [];
  for (let index = 0; index < numbers.length && parts.length < 20; index += 1) {
    const from = numbers[index] ?? 0;
    while ((numbers[index + 1] ?? 0) === (numbers[index] ?? 0) + 1) index += 1;
    const to = numbers[index] ?? from;
    parts.push(from === to ? String(from) : `${from}–${to}`);
  }
  return parts.length === 20 ? `${parts.join(', ')} and more` : parts.join(', ');
}
