/** What a host is asked to write: plain values, the same for Excel, the workbench's grid and an .xlsx file. */
export type SheetName = 'Schedule' | 'Standards' | 'Takeoff' | 'Stock' | 'Setups' | 'Check';

/** How a cell looks; each host maps the few names to its own means. Color is never the only sign. */
export type CellStyle =
  | 'title' // a sheet's name and what it is, on top
  | 'heading' // column heading
  | 'unit' // unit row below the headings
  | 'group' // a band over related rows or columns
  | 'input' // the user may change it: bordered, tinted
  | 'figure' // follows from others
  | 'fixed' // computed once, no formula: marked so
  | 'total'
  | 'attention' // says what is needed
  | 'text'
  | 'note'; // small print

export interface Cell {
  readonly value: string | number | boolean | null;
  /** Excel syntax, English, comma, without `=`; worksheet functions as `ARCH.RADIUS(…)`. `value` is what it gives. */
  readonly formula?: string;
  /**
   * The formula gives an array, that fills so many rows and columns from this cell on. The other cells of that area hold the
   * array's values and no formula; a host that calculates leaves them empty, for anything typed there is in the array's way.
   */
  readonly spill?: { readonly rows: number; readonly columns: number };
  /** Excel number format. */
  readonly format?: string;
  readonly style?: CellStyle;
  readonly wrap?: boolean;
  /** Text over a column of figures. Left out: text stands left, a figure right. */
  readonly align?: 'right';
  /** A comment shown on the cell. */
  readonly comment?: string;
}

export interface Validation {
  /** A1 range on the same sheet. */
  readonly range: string;
  readonly rule:
    | { readonly kind: 'number'; readonly min: number; readonly max: number; readonly whole?: boolean }
    | { readonly kind: 'list'; readonly choices: readonly string[] };
  /** The sentence shown when the value is refused. */
  readonly message: string;
}

export interface Sheet {
  readonly name: SheetName;
  /** From A1; rows may be ragged. null: an empty cell. */
  readonly rows: readonly (readonly (Cell | null)[])[];
  /** Width of each column in characters. */
  readonly widths: readonly number[];
  readonly frozenRows: number;
  readonly frozenColumns: number;
  /** Columns (from 0) folded away until wanted: working figures. */
  readonly folded?: readonly { readonly first: number; readonly last: number }[];
  /** Defined names of the workbook: `Shop_reveal` → `Standards!$B$12`. */
  readonly names?: readonly { readonly name: string; readonly ref: string }[];
  readonly validations?: readonly Validation[];
  /** Rows repeated on every printed page, from 1. */
  readonly repeatRows?: readonly [number, number];
  readonly landscape?: boolean;
  /** Printed so many pages wide, the frozen columns repeated; left out: 1. */
  readonly pagesWide?: number;
  /** A new page begins after each of these rows (from 1). */
  readonly pageBreaks?: readonly number[];
  /** A1 range that is printed; left out: everything. */
  readonly printArea?: string;
  /** A1 range with buttons to filter and sort in its first row. */
  readonly autoFilter?: string;
  /** The cell to open at, A1. */
  readonly home: string;
  /** Cells that are not inputs are locked; the protection has no password. */
  readonly locked?: boolean;
  /** Figures whose dependence the host may draw on: the key of each column, for reading a sheet back. */
  readonly columnKeys?: readonly string[];
  /** First and last row (from 1) of the table body, where the sheet is one. */
  readonly body?: readonly [number, number];
}

/** A sheet whose rows are made as they are asked for: a long takeoff's cells need not all be held at once. */
export interface SheetSource extends Omit<Sheet, 'rows'> {
  readonly rows: Iterable<readonly (Cell | null)[]>;
}
