import type { ICellData } from '@univerjs/core';
import { plainValue } from '../engine';
import type { GridLibrary } from '../library';

/** An error value, `#N/A` for one, and the sentence behind it where it has one. */
export class CellError {
  constructor(
    readonly kind: string,
    readonly sentence: string | null = null,
  ) {}
}

/** What a cell holds; null where it is blank. */
export type Scalar = number | string | boolean | CellError | null;

export function sameValue(one: Scalar, other: Scalar): boolean {
  if (one instanceof CellError && other instanceof CellError)
    return one.kind === other.kind && one.sentence === other.sentence;
  return Object.is(one, other) || (one === 0 && other === 0);
}

/** Between the grid's cells and plain values. */
export class CellValues {
  private readonly errors: ReadonlySet<string>;

  constructor(private readonly library: GridLibrary) {
    this.errors = new Set(Object.values(library.engineFormula.ErrorType));
  }

  read(cell: ICellData | null | undefined): Scalar {
    if (!cell) return null;
    const value = plainValue(this.library, cell);
    if (typeof value !== 'string' || !this.errors.has(value)) return value;
    const sentence: unknown = cell.custom?.['error'];
    return new CellError(value, typeof sentence === 'string' ? sentence : null);
  }

  /** The same of a formula's cell: there an empty text is a value. */
  readResult(cell: ICellData | null | undefined): Scalar {
    return cell?.v === '' && !cell.p ? '' : this.read(cell);
  }

  write(value: Scalar): ICellData {
    const types = this.library.core.CellValueType;
    if (value === null) return { v: null };
    if (typeof value === 'number') return { v: value, t: types.NUMBER };
    if (typeof value === 'boolean') return { v: value ? 1 : 0, t: types.BOOLEAN };
    if (typeof value === 'string') return { v: value, t: types.STRING };
    const cell = { v: value.kind, t: types.STRING };
    return value.sentence === null ? cell : { ...cell, custom: { error: value.sentence } };
  }
}
