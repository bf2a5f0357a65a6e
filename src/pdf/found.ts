import type { Box } from './drawn';
import type { Merge, Table } from '../schedule/opening';

/** A table found on a page, as read. Places are in points on the page turned so that the table stands upright. */
export interface FoundTable {
  /** From 1. */
  readonly page: number;
  /** Quarter turns to the right by which the table is turned on its page. */
  readonly turn: number;
  readonly box: Box;
  /** Left edge of each column, and the right edge of the last. */
  readonly edges: readonly number[];
  readonly rows: readonly FoundRow[];
  /** Cells that span rows or columns; rows and columns from 0. */
  readonly merges: readonly Merge[];
  /** Whether rules close its cells. */
  readonly ruled: boolean;
  /** Whether its headings name at least three things; a table without goes on from the page before, or is none of ours. */
  readonly named: boolean;
  /** Letters within its frame that went into no cell, as text. */
  readonly unplaced: readonly string[];
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
