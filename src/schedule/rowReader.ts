import { ENDS, HEAD_SHAPES, type Ends, type HeadShape } from '../head/head';
import { readEnds, readHead } from '../head/words';
import type { Standards } from '../standards';
import { perInch } from '../unit';
import { cellText, isBlank, typedBeforeDate } from './cell';
import { figure, listed, quote } from './figure';
import type { Findings, Given, GivenLengths } from './given';
import { columnsFor, type Column } from './layout';
import { meaningOf, type MeaningKey } from './meanings';
import type { CellValue, OpeningField } from './opening';
import { readLength, readQuantity, readSize } from './readCell';

/** One opening's cells, before they are made sense of. */
export interface RawOpening {
  readonly row: number;
  readonly cells: readonly CellValue[];
  /** The columns that belong to this opening. */
  readonly block: readonly Column[];
  readonly source: readonly string[];
  /** Remarks of continuation rows below. */
  readonly more: readonly string[];
  /** Sentences about the row from the file reader and the row sorter. */
  readonly notes: readonly string[];
  /** Columns whose cell was merged over several rows: a count there is in doubt. */
  readonly shared: ReadonlySet<number>;
  /** Why the row's cells may stand under the wrong headings, or null. */
  readonly doubt: string | null;
}

/** No casing is wider or thicker, no reveal larger. */
const MOST_INCHES: Partial<Record<MeaningKey, number>> = { reveal: 12, face: 48, thickness: 12 };

const WHOLE: ReadonlySet<MeaningKey> = new Set<MeaningKey>([
  'width',
  'roughWidth',
  'height',
  'headHeight',
  'roughHeight',
]);

/** Takes the cells of one opening by their meaning. */
export class RowReader {
  constructor(
    private readonly raw: RawOpening,
    private readonly standards: Standards,
    private readonly say: Findings,
  ) {}

  /** The cells with this meaning that say something, best heading first. */
  private cells(key: MeaningKey): readonly { readonly column: Column; readonly cell: CellValue }[] {
    const columns = columnsFor(this.raw.block, key);
    const found: { column: Column; cell: CellValue }[] = [];
    for (const column of columns) {
      const cell = this.raw.cells[column.index] ?? null;
      // In a column of heads "none" is an answer: no arch.
      if (!isBlank(cell) || (key === 'head' && /^none$/i.test(cellText(cell)))) found.push({ column, cell });
    }
    return found;
  }

  texts(key: MeaningKey): readonly string[] {
    return this.cells(key).map(({ cell }) => cellText(cell));
  }

  /** A text; a mark such as 1-2 that a spreadsheet program made a date of is not used. */
  plainText(key: MeaningKey, field: OpeningField): string | null {
    const [first] = this.cells(key);
    if (first === undefined) return null;
    const text = cellText(first.cell);
    if (!(first.cell instanceof Date)) return text;
    const typed = typedBeforeDate(first.cell) ?? '';
    this.say.problem(
      field,
      `${meaningName(key)} is the date ${text} in the file, which is what a spreadsheet program makes of ${typed.replace('/', '-')} or ${typed}; please type it as text.`,
    );
    return null;
  }

  quantity(): number | null {
    const columns = columnsFor(this.raw.block, 'quantity');
    const [first] = this.cells('quantity');
    if (columns.length === 0) {
      this.say.note('The schedule has no quantity column, so one was taken.');
      return 1;
    }
    if (first === undefined) {
      const said = cellText(this.raw.cells[columns[0]?.index ?? -1]);
      this.say.problem(
        'quantity',
        said === ''
          ? 'Quantity is blank; a whole number is needed.'
          : `Quantity must be a whole number of 1 or more; the cell says ${quote(said)}.`,
      );
      return null;
    }
    if (this.raw.shared.has(first.column.index)) {
      this.say.problem(
        'quantity',
        'The quantity stands in a cell merged over several rows; please give each opening its own.',
      );
      return null;
    }
    const alike = this.cells('quantity').filter(({ column }) => column.rank === first.column.rank);
    const counts = alike.map(({ cell }) => readQuantity(cell));
    const fault = counts.find((count) => !count.ok);
    if (fault !== undefined && !fault.ok) {
      this.say.problem('quantity', fault.message);
      return null;
    }
    const figures = counts.flatMap((count) => (count.ok ? [count.value] : []));
    if (new Set(figures).size > 1) {
      this.say.problem(
        'quantity',
        `Two columns give the quantity, ${listed(figures.map(String))}; please say which is right.`,
      );
      return null;
    }
    return figures[0] ?? null;
  }

  head(): { head: HeadShape | null; inDoubt: boolean } {
    const [best, ...others] = this.cells('head').map(({ column, cell }) => ({
      column,
      cell,
      read: readHead(cellText(cell)),
    }));
    if (best === undefined) return { head: null, inDoubt: false };
    if (!best.read.ok) {
      const said = quote(cellText(best.cell));
      this.say.problem(
        'head',
        `The head can't be read: the cell says ${said}; accepted are ${listed(HEAD_SHAPES, 'or')}.`,
      );
      return { head: null, inDoubt: true };
    }
    for (const { read } of others) {
      // A second column that names no head ("Type": A, B, C) is no contradiction.
      if (!read.ok || read.value === best.read.value) continue;
      this.say.problem(
        'head',
        `Two columns give different heads, ${best.read.value} and ${read.value}; please say which is right.`,
      );
      return { head: null, inDoubt: true };
    }
    return { head: best.read.value, inDoubt: false };
  }

  ends(): Ends | null {
    const [first] = this.cells('ends');
    if (first === undefined) return null;
    const read = readEnds(cellText(first.cell));
    if (read.ok) return read.value;
    this.say.problem(
      'ends',
      `The ends can't be read: the cell says ${quote(cellText(first.cell))}; accepted are ${listed(ENDS, 'or')}.`,
    );
    return null;
  }

  /** The length a row gives under one meaning; two columns of the same rank must agree, a better-named one wins over a lesser. */
  given(key: MeaningKey): Given | undefined {
    const read = this.cells(key).map(({ column, cell }) => ({ column, given: this.read(key, column, cell) }));
    const best = read[0];
    if (best === undefined) return undefined;
    for (const { column, given } of read.slice(1)) {
      if (best.given.value === undefined || given.value === undefined || this.agree(best.given.value, given.value))
        continue;
      const both = `${quote(best.column.heading)} says ${figure(best.given.value)} and ${quote(column.heading)} says ${figure(given.value)}`;
      if (column.rank === best.column.rank)
        return { fault: `${meaningName(key)} is given twice: ${both}; please say which is right.` };
      this.say.note(`${both}; the first was used.`);
    }
    return best.given;
  }

  private read(key: MeaningKey, column: Column, cell: CellValue): Given {
    const zero = key === 'reveal' || key === 'rise' || key === 'leg';
    const read = readLength(cell, {
      name: meaningName(key),
      column: column.unit,
      unit: this.standards.unit,
      zero,
      whole: WHOLE.has(key),
      most: MOST_INCHES[key],
    });
    return read.ok ? { value: read.value } : { fault: read.message };
  }

  private agree(a: number, b: number): boolean {
    return Math.abs(a - b) <= (perInch(this.standards.unit) / 32) * (1 + 1e-9);
  }

  private size(key: 'size' | 'roughSize' | 'casingSize'): { width: Given; height: Given } | undefined {
    const [first] = this.cells(key);
    if (first === undefined) return undefined;
    const read = readSize(first.cell, { name: meaningName(key), column: first.column.unit, unit: this.standards.unit });
    if (!read.ok) return { width: { fault: read.message }, height: { fault: read.message } };
    return { width: { value: read.value.width }, height: { value: read.value.height } };
  }

  /** Every length that bears on the shape, sizes taken apart, and the casing's section where one cell gives both figures. */
  lengths(): { lengths: GivenLengths; casing: { face: Given | undefined; thickness: Given | undefined } } {
    const size = this.size('size');
    const rough = this.size('roughSize');
    const lengths: GivenLengths = {};
    const put = (key: keyof GivenLengths, given: Given | undefined) => {
      if (given !== undefined) lengths[key] = given;
    };
    put('width', this.together('width', this.given('width'), size?.width));
    put('height', this.together('height', this.given('height'), size?.height));
    put('roughWidth', this.given('roughWidth') ?? rough?.width);
    put('roughHeight', this.given('roughHeight') ?? rough?.height);
    for (const key of ['headHeight', 'springHeight', 'leg', 'rise', 'radius'] as const) put(key, this.given(key));
    return { lengths, casing: this.casing() };
  }

  private together(key: MeaningKey, own: Given | undefined, size: Given | undefined): Given | undefined {
    if (own?.value === undefined || size?.value === undefined || this.agree(own.value, size.value)) return own ?? size;
    return {
      fault: `${meaningName(key)} is ${figure(own.value)}, but the size says ${figure(size.value)}; please say which is right.`,
    };
  }

  private casing(): { face: Given | undefined; thickness: Given | undefined } {
    const size = this.size('casingSize');
    if (size === undefined) return { face: undefined, thickness: undefined };
    if (size.width.value === undefined || size.height.value === undefined)
      return { face: size.width, thickness: undefined };
    const face = Math.max(size.width.value, size.height.value);
    const thickness = Math.min(size.width.value, size.height.value);
    this.say.note(`The casing is ${figure(thickness)} thick and ${figure(face)} wide, from its size.`);
    return { face: { value: face }, thickness: { value: thickness } };
  }

  /** A length that may be left to the shop's standard: null where it is blank or in doubt. */
  optional(field: OpeningField, given: Given | undefined): number | null {
    if (given?.fault !== undefined) this.say.problem(field, given.fault);
    return given?.value ?? null;
  }
}

function meaningName(key: MeaningKey): string {
  const names: Partial<Record<MeaningKey, string>> = {
    width: 'Width',
    roughWidth: 'Rough opening width',
    height: 'Height',
    headHeight: 'Head height',
    roughHeight: 'Rough opening height',
    leg: 'Leg length',
    size: 'Size',
    roughSize: 'Rough opening size',
    casingSize: 'Casing size',
  };
  return names[key] ?? meaningOf(key).label;
}
