import { ok, refuse, type Result } from '../../src/result';
import type { CellValue, Table } from '../../src/schedule/opening';
import { addressOf, readAddress, readRange } from '../../src/workbook/address';
import type { Sheet } from '../../src/workbook/sheet';
import { filledRegion } from '../filledRegion';
import type { CellAt, CellBlock, Host, Selection, WriteOptions } from '../host';
import { cellInTheWay, EMPTY_SELECTION, NO_RECTANGLE, noSheet, sheetInTheWay, STOPPED } from '../refusals';
import { constant, filled, put, type Grid, type MemoryCell } from './cells';
import { sheetFaults } from './strict';

/** Ways in which a real spreadsheet refuses; a test switches them on. */
export interface Faults {
  /** The user is typing in a cell. */
  editing?: boolean;
  /** Writing stops with this message once so many sheets are written. */
  failAfterSheets?: number;
  /** Sheets the user has protected. */
  protectedSheets?: readonly string[];
}

/**
 * A workbook in memory behind the same port as Excel and the workbench: the one host that needs neither, for tests of the
 * pane and as the plainest example of a host. It is stricter than they are: a sheet that Excel would show damaged is
 * refused with the reason.
 */
export class MemoryHost implements Host {
  readonly name = 'memory';
  readonly faults: Faults = {};
  /** Rows, from 1, that a filter hides in whichever sheet is selected. */
  hiddenRows: readonly number[] = [];
  /** The sheets as last written, with formats, names and styles. */
  readonly written = new Map<string, Sheet>();
  #grids = new Map<string, Grid>();
  #settings = new Map<string, string>();
  #selected = { sheet: 'Sheet1', range: 'A1' };
  readonly #onSelect = new Set<() => void>();
  readonly #onEdit = new Set<(sheet: string) => void>();

  constructor(sheets: Readonly<Record<string, readonly (readonly CellValue[])[]>> = { Sheet1: [] }) {
    for (const [name, rows] of Object.entries(sheets)) {
      this.#grids.set(
        name,
        rows.map((row) => row.map((value) => constant(value instanceof Date ? value.toISOString() : value))),
      );
    }
    this.#selected = { sheet: Object.keys(sheets)[0] ?? 'Sheet1', range: 'A1' };
  }

  /** What the user does: selects a range such as "A1:C9". */
  select(sheet: string, range: string): void {
    this.#selected = { sheet, range };
    for (const listener of this.#onSelect) listener();
  }

  /** What the user does: types into a cell. A formula's value is not computed here. */
  edit(sheet: string, address: string, typed: string | number | boolean | null): void {
    const at = readAddress(address);
    const grid = this.#grids.get(sheet);
    if (!at.ok || !grid) throw new RangeError(`no cell ${sheet}!${address}`);
    put(grid, at.value.row, at.value.column, constant(typed));
    for (const listener of this.#onEdit) listener(sheet);
  }

  /** A cell's content, for a test to look at. */
  cell(sheet: string, address: string): MemoryCell | null {
    const at = readAddress(address);
    return at.ok ? (this.#grids.get(sheet)?.[at.value.row]?.[at.value.column] ?? null) : null;
  }

  async readSelection(): Promise<Result<Selection>> {
    const grid = this.#grids.get(this.#selected.sheet);
    const range = readRange(this.#selected.range);
    if (!grid || !range.ok) return refuse(noSheet(this.#selected.sheet));
    const single = addressOf(range.value.first) === addressOf(range.value.last);
    const isFilled = (row: number, column: number) => filled(grid[row]?.[column] ?? null);
    const end = { rows: grid.length, columns: Math.max(0, ...grid.map((row) => row.length)) };
    const region = single ? filledRegion(range.value.first, isFilled, end) : null;
    const { first, last } = region ?? range.value;
    const rows: CellValue[][] = [];
    for (let row = first.row; row <= last.row; row++) {
      const cells: CellValue[] = [];
      for (let column = first.column; column <= last.column; column++) {
        cells.push(grid[row]?.[column]?.value ?? null);
      }
      rows.push(cells);
    }
    return rows.every((row) => row.every((value) => value === null))
      ? refuse(EMPTY_SELECTION)
      : ok({
          name: this.#selected.sheet,
          firstRow: first.row + 1,
          rows,
          ...this.#hiddenIn(first.row + 1, last.row + 1),
          ...(single ? { single } : {}),
        });
  }

  #hiddenIn(first: number, last: number): Pick<Selection, 'hiddenRows'> {
    const hiddenRows = this.hiddenRows.filter((row) => row >= first && row <= last);
    return hiddenRows.length > 0 ? { hiddenRows } : {};
  }

  async sheetNames(): Promise<Result<readonly string[]>> {
    return ok([...this.#grids.keys()]);
  }

  async isFilled(name: string): Promise<Result<boolean>> {
    return ok((this.#grids.get(name) ?? []).flat().some(filled));
  }

  async readSheet(name: string): Promise<Result<Table | null>> {
    return this.#read(name, (cell) => cell.value);
  }

  async readFormulas(name: string): Promise<Result<Table | null>> {
    return this.#read(name, (cell) => (cell.formula === '' ? cell.value : cell.formula));
  }

  async writeSheets(sheets: readonly Sheet[], options: WriteOptions): Promise<Result<void>> {
    const refused = this.#refusal(sheets.map((sheet) => sheet.name));
    if (refused !== null) return refuse(refused);
    const faults = sheetFaults(sheets, [...this.#grids.keys()]);
    if (faults[0] !== undefined) return refuse(faults[0]);
    const inTheWay = sheets.find(
      (sheet) => !options.replace.includes(sheet.name) && (this.#grids.get(sheet.name) ?? []).flat().some(filled),
    );
    if (inTheWay) return refuse(sheetInTheWay(inTheWay.name));

    const next = new Map(this.#grids);
    for (const [index, sheet] of sheets.entries()) {
      if (options.signal?.aborted) return refuse(STOPPED);
      if (index === this.faults.failAfterSheets) {
        return refuse(`"${sheet.name}" could not be written. The workbook is as it was.`);
      }
      next.set(
        sheet.name,
        sheet.rows.map((row) =>
          row.map(
            (cell) => cell && { value: cell.value, formula: cell.formula === undefined ? '' : '=' + cell.formula },
          ),
        ),
      );
      await Promise.resolve(); // lets a stop come between two sheets, as it can in a real host
      options.onProgress?.(index + 1, sheets.length);
    }
    if (options.signal?.aborted) return refuse(STOPPED);
    this.#grids = next;
    for (const sheet of sheets) this.written.set(sheet.name, sheet);
    const last = sheets.at(-1);
    if (last) this.select(last.name, last.home);
    return ok(undefined);
  }

  async writeCells(
    sheet: string,
    address: string,
    rows: readonly (readonly (string | number | boolean | null)[])[],
    replace: boolean,
  ): Promise<Result<void>> {
    const grid = this.#grids.get(sheet);
    if (!grid) return refuse(noSheet(sheet));
    const refused = this.#refusal([sheet]);
    if (refused !== null) return refuse(refused);
    const at = readAddress(address);
    if (!at.ok) return at;
    const width = rows[0]?.length ?? 0;
    if (width === 0 || rows.some((row) => row.length !== width)) {
      return refuse(NO_RECTANGLE);
    }
    for (const [down, row] of rows.entries()) {
      for (const across of row.keys()) {
        const position = { row: at.value.row + down, column: at.value.column + across };
        if (!replace && filled(grid[position.row]?.[position.column] ?? null)) {
          return refuse(cellInTheWay(sheet, addressOf(position)));
        }
      }
    }
    for (const [down, row] of rows.entries()) {
      for (const [across, value] of row.entries()) {
        put(grid, at.value.row + down, at.value.column + across, constant(value));
      }
    }
    for (const listener of this.#onEdit) listener(sheet);
    return ok(undefined);
  }

  async overwrite(sheet: string, blocks: readonly CellBlock[]): Promise<Result<void>> {
    for (const { address, rows } of blocks) {
      const written = await this.writeCells(sheet, address, rows, true);
      if (!written.ok) return written;
    }
    return ok(undefined);
  }

  async show(sheet: string, address: string): Promise<Result<void>> {
    if (!this.#grids.has(sheet)) return refuse(noSheet(sheet));
    const range = readRange(address);
    if (!range.ok) return range;
    this.select(sheet, address);
    return ok(undefined);
  }

  async cellAt(): Promise<Result<CellAt>> {
    const range = readRange(this.#selected.range);
    const grid = this.#grids.get(this.#selected.sheet);
    if (!range.ok || !grid) return refuse(noSheet(this.#selected.sheet));
    const { row, column } = range.value.first;
    const cell = grid[row]?.[column];
    return ok({
      sheet: this.#selected.sheet,
      address: addressOf({ row, column }),
      row,
      column,
      formula: cell?.formula ?? '',
      value: cell?.value ?? null,
      error: null,
    });
  }

  onSelect(listener: () => void): () => void {
    this.#onSelect.add(listener);
    return () => this.#onSelect.delete(listener);
  }

  onEdit(listener: (sheet: string) => void): () => void {
    this.#onEdit.add(listener);
    return () => this.#onEdit.delete(listener);
  }

  async readSetting(key: string): Promise<Result<string | null>> {
    return ok(this.#settings.get(key) ?? null);
  }

  async saveSetting(key: string, value: string): Promise<Result<void>> {
    this.#settings.set(key, value);
    return ok(undefined);
  }

  #read(name: string, take: (cell: MemoryCell) => CellValue): Result<Table | null> {
    const grid = this.#grids.get(name);
    if (!grid) return ok(null);
    const width = Math.max(0, ...grid.map((row) => row.length));
    const rows = grid.map((row) =>
      Array.from({ length: width }, (_, column) => {
        const cell = row[column];
        return cell ? take(cell) : null;
      }),
    );
    return ok({ name, firstRow: 1, rows });
  }

  #refusal(names: readonly string[]): string | null {
    if (this.faults.editing) return 'A cell is being edited. Press Enter or Escape in the sheet, then try again.';
    const locked = names.find((name) => this.faults.protectedSheets?.includes(name));
    return locked === undefined ? null : `The sheet "${locked}" is protected. Unprotect it, then try again.`;
  }
}
