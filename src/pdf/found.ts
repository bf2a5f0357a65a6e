import type { Box } from './marks';
import type { Merge, Table } from '../schedule/opening';

/** A frame with column lines: where a table is, or where the user has set it. In points on the page turned so that it stands upright. */
export interface Frame {
  /** From 1. */
  readonly page: number;
  /** Quarter turns to the right by which the table is turned on its page. */
  readonly turn: number;
  readonly box: Box;
  /** Left edge of each column, and the right edge of the last. */
  readonly edges: readonly number[];
}

/** A table found on a page, as read. */
export interface FoundTable extends Frame {
  readonly rows: readonly FoundRow[];
  /** Cells that span rows or columns; rows and columns from 0. */
  readonly merges: readonly Merge[];
  /** Whether rules close its cells. */
  readonly ruled: boolean;
  /** Whether its headings name at least three things; a table without goes on from the page before, or is none of ours. */
  readonly named: boolean;
  /** Letters within its frame that went into no cell, as text. */
  readonly unplaced: readonly string[];
  /** Columns that its page had no room for, each group on a page of its own, row by row. */
  readonly beside: readonly FoundTable[];
}

export interface FoundRow {
  readonly top: number;
  readonly bottom: number;
  readonly cells: readonly string[];
  /** What is in doubt in this row, a clause each: "a word is cut at the edge of column 3". */
  readonly flags: readonly string[];
}

/** Whether a text is the heading of a column: of a schedule, of a quote. */
export type IsHeading = (text: string) => boolean;

/** What is looked for: a schedule of openings, a quote. */
export interface ListKind {
  readonly name: 'schedule' | 'quote';
  readonly isHeading: IsHeading;
  /** Whether a table reads like one as a whole. */
  readonly fits: (table: Table) => boolean;
  /** Of what its headings must name three things. */
  readonly of: string;
}
