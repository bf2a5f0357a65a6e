import type { Result } from '../src/result';
import type { Table } from '../src/schedule/opening';
import type { Sheet, SheetName } from '../src/workbook/sheet';

/** Where the user is: a sheet, the cell's address, and what it holds. */
export interface CellAt {
  readonly sheet: string;
  /** A1 address of the upper left cell selected. */
  readonly address: string;
  readonly row: number;
  readonly column: number;
  /** Formula as `=…`, or '' for a constant. */
  readonly formula: string;
  readonly value: string | number | boolean | null;
  /** The sentence behind an error value, where the host gives it. */
  readonly error: string | null;
}

export interface WriteOptions {
  /** Sheets of these names that already hold something may be replaced; others are refused, and nothing is written. */
  readonly replace: readonly SheetName[];
  /**
   * Nothing that the user asked for just now: the place looked at stays, and where the host can, it is no step of undo.
   */
  readonly quiet?: boolean;
  readonly onProgress?: (done: number, of: number) => void;
  readonly signal?: AbortSignal;
}

/** The selected cells; `hiddenRows` are those of their rows (from 1) that a filter or the user hides, where there are any. */
export interface Selection extends Table {
  readonly hiddenRows?: readonly number[];
  /** One single cell was selected, which stands for the filled region around it: the sheet may hold more. */
  readonly single?: boolean;
}

/** The port between the pane and a spreadsheet. Everything fails in words; nothing throws. */
/** A rectangle of values or formulas (`=…`), from `address` on. */
export interface CellBlock {
  readonly address: string;
  readonly rows: readonly (readonly (string | number | boolean | null)[])[];
}

export interface Host {
  readonly name: 'Excel' | 'workbench' | 'memory';
  /** The selected range; one single cell stands for the whole filled region around it. */
  readSelection(): Promise<Result<Selection>>;
  sheetNames(): Promise<Result<readonly string[]>>;
  /** Whether a sheet is there and any of its cells holds something. */
  isFilled(name: string): Promise<Result<boolean>>;
  /** A sheet's used range; null where there is no such sheet. */
  readSheet(name: string): Promise<Result<Table | null>>;
  /** The formulas of a sheet's used range, as `=…` or the constant. */
  readFormulas(name: string): Promise<Result<Table | null>>;
  /** All or nothing: after a failure or a stop the workbook is as it was. */
  writeSheets(sheets: readonly Sheet[], options: WriteOptions): Promise<Result<void>>;
  /** Put values or formulas (`=…`) into cells from `address` on; refuses to overwrite filled cells unless `replace`. */
  writeCells(
    sheet: string,
    address: string,
    rows: readonly (readonly (string | number | boolean | null)[])[],
    replace: boolean,
  ): Promise<Result<void>>;
  /** Puts values or formulas over what stands in many places of one sheet, in as few steps as the host can. */
  overwrite(sheet: string, blocks: readonly CellBlock[]): Promise<Result<void>>;
  show(sheet: string, address: string): Promise<Result<void>>;
  cellAt(): Promise<Result<CellAt>>;
  /** Called when the selection moves; gives back the way to stop. */
  onSelect(listener: () => void): () => void;
  /** Called when a cell was edited; gives back the way to stop. */
  onEdit(listener: (sheet: string) => void): () => void;
  /** Called when a sheet of that name came or went, by undo as well; gives back the way to stop. */
  onSheets?(listener: (name: string) => void): () => void;
  /**
   * Called when a host that checks what is typed did not take it, with the sentence that says why; null once it is right.
   * Gives back the way to stop.
   */
  onRefusal?(listener: (sentence: string | null) => void): () => void;
  /** Small texts kept with the workbook (never with the person). */
  readSetting(key: string): Promise<Result<string | null>>;
  saveSetting(key: string, value: string): Promise<Result<void>>;
}
