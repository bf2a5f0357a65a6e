import type { PlainValue } from '../engine';
import { CellError, type Scalar } from './value';

/** A block of one sheet's cells, counted from 0; both ends belong to it. */
export interface Area {
  readonly firstRow: number;
  readonly lastRow: number;
  readonly firstColumn: number;
  readonly lastColumn: number;
}

export function meet(one: Area, other: Area): boolean {
  return (
    one.firstRow <= other.lastRow &&
    other.firstRow <= one.lastRow &&
    one.firstColumn <= other.lastColumn &&
    other.firstColumn <= one.lastColumn
  );
}

/** What a range reads from: a sheet's cells as they stand. */
export interface CellSource {
  value(row: number, column: number): Scalar;
  isFormula(row: number, column: number): boolean;
}

/** A cell as a function is given it. */
export type PlainRows = { readonly rows: PlainValue[][] } | { readonly error: CellError };

/**
 * One range that formulas read, however many do. What is worked out of its cells (their values in rows, where a value
 * stands, how often) is kept until one of them changes.
 */
export class RangeCells {
  readonly rows: number;
  readonly columns: number;
  private block: Scalar[][] | null = null;
  private plainRows: PlainRows | null = null;
  private readonly placesByColumn = new Map<number, Map<string | number, number>>();
  private counted: Map<string | number, number> | null = null;

  constructor(
    readonly source: CellSource,
    readonly area: Area,
  ) {
    this.rows = area.lastRow - area.firstRow + 1;
    this.columns = area.lastColumn - area.firstColumn + 1;
  }

  forget(): void {
    this.block = null;
    this.plainRows = null;
    this.placesByColumn.clear();
    this.counted = null;
  }

  at(row: number, column: number): Scalar {
    return this.source.value(this.area.firstRow + row, this.area.firstColumn + column);
  }

  isFormula(row: number, column: number): boolean {
    return this.source.isFormula(this.area.firstRow + row, this.area.firstColumn + column);
  }

  values(): Scalar[][] {
    return (this.block ??= Array.from({ length: this.rows }, (_, row) =>
      Array.from({ length: this.columns }, (_, column) => this.at(row, column)),
    ));
  }

  /** The rows as a worksheet function takes them; the first error among them is the answer instead. */
  plain(): PlainRows {
    return (this.plainRows ??= plainRows(this.values()));
  }

  /** The first row, from 0, where a value stands in a column; undefined where it stands nowhere. */
  find(column: number, value: number | string | boolean): number | undefined {
    let places = this.placesByColumn.get(column);
    if (!places) {
      places = new Map();
      for (const [row, cells] of this.values().entries()) {
        const key = keyOf(cells[column] ?? null);
        if (key !== null && !places.has(key)) places.set(key, row);
      }
      this.placesByColumn.set(column, places);
    }
    return places.get(keyOf(value)!);
  }

  /** How many cells hold a value as COUNTIF counts: a text of digits is the number. */
  count(value: number | string): number {
    if (!this.counted) {
      this.counted = new Map();
      for (const row of this.values())
        for (const cell of row) {
          const key = countKey(cell);
          if (key !== null) this.counted.set(key, (this.counted.get(key) ?? 0) + 1);
        }
    }
    return this.counted.get(countKey(value)!) ?? 0;
  }
}

export function plainRows(values: readonly (readonly Scalar[])[]): PlainRows {
  const rows: PlainValue[][] = [];
  for (const cells of values) {
    const row: PlainValue[] = [];
    for (const cell of cells) {
      if (cell instanceof CellError) return { error: cell };
      row.push(cell);
    }
    rows.push(row);
  }
  return { rows };
}

/** Text is found in either case, and is never a number; a blank and an error are found by nothing. Figures have 15 digits. */
function keyOf(value: Scalar): string | number | null {
  if (typeof value === 'number') return Number.isInteger(value) ? value : Number(value.toPrecision(15));
  if (typeof value === 'string') return `s${value.toLowerCase()}`;
  return typeof value === 'boolean' ? `b${value}` : null;
}

function countKey(value: Scalar): string | number | null {
  if (value === null) return 's';
  if (typeof value !== 'string') return keyOf(value);
  return value.trim() !== '' && !Number.isNaN(Number(value)) ? Number(value) : keyOf(value);
}
