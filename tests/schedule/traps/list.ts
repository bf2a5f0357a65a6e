import fc from 'fast-check';
import type { CellValue, Table } from '../../../src/schedule/opening';

/** An opening of an invented list, and what a right reading of it gives; lengths in inches. */
export interface Truth {
  readonly mark: string;
  readonly quantity: number;
  readonly head: 'segmental' | 'half round' | 'elliptical';
  readonly span: number;
  readonly rise: number;
}

export type Row = CellValue[];
export const HEADINGS = ['Mark', 'Qty', 'Head', 'Width', 'Rise'];

/** Openings as they are common: 20 to 84 in wide in half inches, a rise of a sixth to a third of the width. */
export const truths: fc.Arbitrary<readonly Truth[]> = fc
  .array(
    fc.record({
      quantity: fc.integer({ min: 1, max: 6 }),
      head: fc.constantFrom('segmental', 'half round', 'elliptical' as const),
      halves: fc.integer({ min: 40, max: 168 }),
      part: fc.integer({ min: 3, max: 6 }),
    }),
    { minLength: 5, maxLength: 9 },
  )
  .map((all) =>
    all.map(({ quantity, head, halves, part }, index): Truth => {
      const span = halves / 2;
      const rise = head === 'half round' ? span / 2 : Math.round((span / part) * 4) / 4;
      return { mark: `W${index + 1}`, quantity, head, span, rise };
    }),
  );

/** A list as it would be without any trap. */
export function rowsOf(all: readonly Truth[]): Row[] {
  return all.map(({ mark, quantity, head, span, rise }) => [mark, quantity, head, span, rise]);
}

export interface Trapped {
  /** Rows with their headings; or text of a file. */
  readonly table: Omit<Table, 'name' | 'firstRow'> | string;
  /** Rows of the list, 0 the first opening's, that must be asked about: all of them, or those at these places. */
  readonly asks?: 'all' | readonly number[];
  /** Where what is right is not what the list would be without the trap. */
  readonly right?: readonly Truth[];
  /** Rows at these places are right with more in them, which is compared as well. */
  readonly also?: Readonly<Record<string, CellValue>>;
}

export interface Trap {
  readonly name: string;
  /** `at` is the place of the row that is trapped. */
  plant(all: readonly Truth[], at: number): Trapped;
}

/** Two columns more, or other cells in the row that is trapped. */
export function withColumn(
  all: readonly Truth[],
  heading: string,
  cell: (one: Truth, index: number) => CellValue,
): Row[] {
  return [[...HEADINGS, heading], ...rowsOf(all).map((row, index) => [...row, cell(all[index]!, index)])];
}

export function withCell(all: readonly Truth[], at: number, column: string, cell: (one: Truth) => CellValue): Row[] {
  const rows = rowsOf(all);
  rows[at]![HEADINGS.indexOf(column)] = cell(all[at]!);
  return [HEADINGS, ...rows];
}
