import { cellText, isBlank } from './cell';
import { columnsFor, type Column } from './layout';
import type { MeaningKey } from './meanings';
import type { CellValue } from './opening';

/** One opening's cells, before they are made sense of. */
export interface RawOpening {
  readonly row: number;
  /** The row, and a letter from the second opening side by side on: by which answers name it. */
  readonly at: string;
  readonly cells: readonly CellValue[];
  /** The columns that belong to this opening. */
  readonly block: readonly Column[];
  readonly source: readonly string[];
  /** Remarks of continuation rows below. */
  readonly more: readonly string[];
  /** Sentences about the row from the file reader and the row sorter. */
  readonly notes: readonly string[];
  /** Of a list with decimal commas. */
  readonly commas?: boolean;
  /** Columns whose cell was merged over several rows: a count there is in doubt. */
  readonly shared: ReadonlySet<number>;
  /** Why the row's cells may stand under the wrong headings, or null. */
  readonly doubt: string | null;
}

export interface NamedCell {
  readonly column: Column;
  readonly cell: CellValue;
}

/** The opening's cells with this meaning that say something, best heading first. */
export function cellsOf({ block, cells }: RawOpening, key: MeaningKey): readonly NamedCell[] {
  const columns = columnsFor(block, key);
  // Asked for dozens of meanings in every row, of which a list has a few.
  if (columns.length === 0) return NONE;
  const found: NamedCell[] = [];
  for (const column of columns) {
    const cell = cells[column.index] ?? null;
    // In a column of heads "none" is an answer: no arch.
    if (!isBlank(cell) || (key === 'head' && /^none$/i.test(cellText(cell)))) found.push({ column, cell });
  }
  return found;
}

const NONE: readonly NamedCell[] = [];

/** All that the row remarks, with what goes on below it. */
export function remarksOf(raw: RawOpening): string {
  return [...cellsOf(raw, 'remarks').map(({ cell }) => cellText(cell)), ...raw.more].join('; ');
}
