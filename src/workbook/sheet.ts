import type { Scene } from '../drawing/scene';

/** What a host is asked to write: plain values, the same for Excel, the workbench's grid and an .xlsx file. */
export type SheetName =
  | 'Schedule'
  | 'Standards'
  | 'Takeoff'
  | 'Stock'
  | 'Setups'
  | 'Check'
  | 'Working'
  | 'Proposal'
  | 'Revision'
  | 'Tickets'
  | 'Purchase';

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

/** A look that a person gave a cell over that of its style. A flag that is false takes back what the style has. */
export interface OwnLook {
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly underline?: boolean;
  readonly strike?: boolean;
  /** Of the letters, in points. */
  readonly size?: number;
  readonly font?: string;
  /** Of the letters, `#rrggbb`. */
  readonly color?: string;
  /** Of the ground, `#rrggbb`; `none` takes it away. */
  readonly fill?: string;
  readonly horizontal?: 'left' | 'center' | 'right';
  readonly vertical?: 'top' | 'center' | 'bottom';
  /** A line by its kind in the file format (`thin`, `medium`, `double`…) and its color. */
  readonly borders?: Readonly<Partial<Record<BorderSide, { readonly line: string; readonly color: string }>>>;
}

export const BORDER_SIDES = ['left', 'right', 'top', 'bottom'] as const;
export type BorderSide = (typeof BORDER_SIDES)[number];

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
  /** What a person changed of the look. */
  readonly own?: OwnLook;
}

const ERROR_VALUES = ['#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NAME?', '#NUM!', '#N/A'];

/** Whether a formula's value is an error, which a file tells from text that reads the same. */
export function isErrorValue(value: Cell['value']): value is string {
  return typeof value === 'string' && ERROR_VALUES.includes(value);
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

/** A drawing that lies on the sheet, over rows of the usual height. */
export interface Picture {
  /** The row (from 1) at its upper edge. */
  readonly row: number;
  /** From the sheet's left edge, and its size with the caption below it: pixels, 96 to the inch. */
  readonly left: number;
  readonly width: number;
  readonly height: number;
  readonly caption: string;
  readonly scene: Scene;
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
  /** A1 ranges of figures that follow by formula: a cell there that holds none was typed over, and is shown so. */
  readonly figures?: readonly string[];
  /** Rows repeated on every printed page, from 1. */
  readonly repeatRows?: readonly [number, number];
  readonly landscape?: boolean;
  /** Left out: US letter. */
  readonly paper?: 'letter' | 'A4';
  /** Only files hold these. */
  readonly pictures?: readonly Picture[];
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

/** The sheet with its values alone, for a file that holds nothing its formulas could speak of. */
export function asWritten(sheet: Sheet): Sheet {
  const rows = sheet.rows.map((row) =>
    row.map((cell) => {
      if (cell?.formula === undefined) return cell;
      const { formula: _, spill: __, ...written } = cell;
      return written;
    }),
  );
  return { ...sheet, rows };
}

/** A sheet whose rows are made as they are asked for: a long takeoff's cells need not all be held at once. */
export interface SheetSource extends Omit<Sheet, 'rows'> {
  readonly rows: Iterable<readonly (Cell | null)[]>;
}

/** A sheet of a workbook that is kept: one of ours with what was done to it by hand, or one of the user's own. */
export interface BookSheet extends Omit<SheetSource, 'name'> {
  readonly name: string;
  readonly hidden?: boolean;
  /** Row from 0 → its height in points; rows left out are as high as their text asks. */
  readonly heights?: ReadonlyMap<number, number>;
  /** From 0. */
  readonly hiddenRows?: readonly number[];
  /** A1 ranges that are one cell each. */
  readonly merges?: readonly string[];
}

/** A workbook as it is kept. */
export interface Book {
  readonly sheets: readonly (BookSheet & { readonly rows: Sheet['rows'] })[];
  /** Small texts kept with the workbook: the pane's own notes. */
  readonly settings: Readonly<Record<string, string>>;
}
