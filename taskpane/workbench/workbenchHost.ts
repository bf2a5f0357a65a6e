import type { ICellData, ICommandInfo, IRange, Worksheet } from '@univerjs/core';
import { isFormula } from '../../src/formulaText';
import { ok, refuse, type Result } from '../../src/result';
import { lookOf, shownAs } from '../../src/schedule/numberLook';
import type { CellValue, Table } from '../../src/schedule/opening';
import { addressOf, readAddress, readRange } from '../../src/workbook/address';
import type { Sheet } from '../../src/workbook/sheet';
import { filledRegion } from '../filledRegion';
import type { CellAt, CellBlock, Host, Selection, WriteOptions } from '../host';
import { cellInTheWay, EMPTY_SELECTION, NO_RECTANGLE, noSheet } from '../refusals';
import { cellData, cellError, cellFormula, plainValue, usedSize, type Engine, type PlainValue } from './engine';
import { clipped, isWithin, visibleBefore } from './ranges';
import { settingsOf } from './readGrid';
import { typedValue } from './worksheet';
import { writeSheets } from './write';

/** What only a grid on the page can do. */
interface Shown {
  getVisibleRange(): IRange | null;
  scrollToCell(row: number, column: number): void;
}

/** The port over the workbench's grid. */
export class WorkbenchHost implements Host {
  readonly name = 'workbench';
  private readonly settingListeners: (() => void)[] = [];
  private readonly showListeners: (() => void)[] = [];
  private readonly refusalListeners = new Set<(sentence: string | null) => void>();

  constructor(private readonly engine: Engine) {}

  async readSelection(): Promise<Result<Selection>> {
    const sheet = this.active();
    const range = this.selected();
    if (!sheet || !range) return refuse('Nothing is selected. Select the schedule, or a cell of it.');
    const used = usedSize(this.engine, sheet);
    const single = range.startRow === range.endRow && range.startColumn === range.endColumn;
    const area = single ? this.region(sheet, range, used) : clipped(range, used);
    if (!area) return refuse(EMPTY_SELECTION);
    const table = this.table(sheet, area, (row, column) => this.value(sheet, row, column));
    const hiddenRows = table.rows.map((_, at) => table.firstRow + at).filter((row) => !sheet.getRowVisible(row - 1));
    return ok({ ...table, ...(single ? { single } : {}), ...(hiddenRows.length > 0 ? { hiddenRows } : {}) });
  }

  async sheetNames(): Promise<Result<readonly string[]>> {
    return ok(this.engine.workbook.getSheets().map((sheet) => sheet.getName()));
  }

  async isFilled(name: string): Promise<Result<boolean>> {
    const sheet = this.engine.workbook.getSheetBySheetName(name);
    return ok(!!sheet && usedSize(this.engine, sheet).rows > 0);
  }

  async readSheet(name: string): Promise<Result<Table | null>> {
    return this.read(name, (sheet, row, column) => this.value(sheet, row, column));
  }

  async readFormulas(name: string): Promise<Result<Table | null>> {
    return this.read(
      name,
      (sheet, row, column) => cellFormula(this.engine, sheet, row, column) || this.value(sheet, row, column),
    );
  }

  async writeSheets(sheets: readonly Sheet[], options: WriteOptions): Promise<Result<void>> {
    const written = await writeSheets(this.engine, sheets, options);
    const first = sheets[0];
    return written.ok && first && !options.quiet ? this.reveal(first.name, first.home) : written;
  }

  async writeCells(
    name: string,
    address: string,
    rows: readonly (readonly PlainValue[])[],
    replace: boolean,
  ): Promise<Result<void>> {
    return this.put(name, [{ address, rows }], replace);
  }

  async overwrite(name: string, blocks: readonly CellBlock[]): Promise<Result<void>> {
    return this.put(name, blocks, true);
  }

  /** All blocks at once: one undo takes them back. */
  private put(name: string, blocks: readonly CellBlock[], replace: boolean): Result<void> {
    const sheet = this.engine.workbook.getSheetBySheetName(name);
    if (!sheet) return refuse(noSheet(name));
    const types = this.engine.library.core.CellValueType;
    const cells: Record<number, Record<number, ICellData>> = {};
    const ranges: IRange[] = [];
    for (const { address, rows } of blocks) {
      const read = readAddress(address);
      if (!read.ok) return read;
      const start = read.value;
      const width = rows[0]?.length ?? 0;
      if (width === 0 || rows.some((row) => row.length !== width)) return refuse(NO_RECTANGLE);
      for (const [down, row] of rows.entries()) {
        for (const [across, value] of row.entries()) {
          const place = { row: start.row + down, column: start.column + across };
          if (!replace && cellData(this.engine, sheet, place.row, place.column)) {
            return refuse(cellInTheWay(name, addressOf(place)));
          }
          const formula = isFormula(value);
          (cells[place.row] ??= {})[place.column] = formula
            ? { f: value, v: null, p: null }
            : { v: null, f: null, si: null, p: null, ...typedValue(types, value) };
        }
      }
      ranges.push({
        ...{ startRow: start.row, startColumn: start.column },
        ...{ endRow: start.row + rows.length - 1, endColumn: start.column + width - 1 },
      });
    }
    if (ranges.length === 0) return ok(undefined);
    const range = {
      startRow: Math.min(...ranges.map(({ startRow }) => startRow)),
      startColumn: Math.min(...ranges.map(({ startColumn }) => startColumn)),
      endRow: Math.max(...ranges.map(({ endRow }) => endRow)),
      endColumn: Math.max(...ranges.map(({ endColumn }) => endColumn)),
    };
    if (range.endRow >= sheet.getRowCount()) this.facade(sheet)?.setRowCount(range.endRow + 1);
    if (range.endColumn >= sheet.getColumnCount()) this.facade(sheet)?.setColumnCount(range.endColumn + 1);
    const { core, sheets } = this.engine.library;
    const done = this.engine.injector.get(core.ICommandService).syncExecuteCommand(sheets.SetRangeValuesCommand.id, {
      unitId: this.engine.workbook.getUnitId(),
      subUnitId: sheet.getSheetId(),
      range,
      value: cells,
    });
    return done
      ? ok(undefined)
      : refuse(`The grid did not take the values for ${name}!${blocks.map(({ address }) => address).join(', ')}.`);
  }

  async show(name: string, address: string): Promise<Result<void>> {
    for (const heard of this.showListeners) heard();
    return this.reveal(name, address);
  }

  /** Called when somebody asks for a cell to be shown: the sheet may have to be brought into sight. */
  onShow(listener: () => void): void {
    this.showListeners.push(listener);
  }

  private reveal(name: string, address: string): Result<void> {
    const sheet = this.engine.workbook.getSheetBySheetName(name);
    if (!sheet) return refuse(noSheet(name));
    const read = readRange(address);
    if (!read.ok) return read;
    const place = read.value.first;
    // Only the visible grid shows and scrolls.
    const facade = this.facade(sheet) as (ReturnType<typeof this.facade> & Partial<Shown>) | undefined;
    const inSight = this.active() === sheet && isWithin(place, facade?.getVisibleRange?.() ?? null);
    facade?.activate();
    facade?.getRange(address).activate();
    if (!inSight) facade?.scrollToCell?.(Math.max(0, place.row - 3), visibleBefore(sheet, place.column, 2));
    return ok(undefined);
  }

  async cellAt(): Promise<Result<CellAt>> {
    const sheet = this.active();
    const range = this.selected();
    if (!sheet || !range) return refuse('No cell is selected.');
    const place = { row: range.startRow, column: range.startColumn };
    const cell = cellData(this.engine, sheet, place.row, place.column);
    return ok({
      sheet: sheet.getName(),
      address: addressOf(place),
      ...place,
      formula: cellFormula(this.engine, sheet, place.row, place.column),
      value: plainValue(this.engine.library, cell),
      error: cellError(cell),
    });
  }

  onSelect(listener: () => void): () => void {
    const { SetSelectionsOperation, SetWorksheetActiveOperation } = this.engine.library.sheets;
    const moves = [SetSelectionsOperation.id, SetWorksheetActiveOperation.id];
    return this.listen((command) => {
      if (moves.includes(command.id)) listener();
    });
  }

  onEdit(listener: (sheet: string) => void): () => void {
    const { SetRangeValuesMutation, RemoveRowMutation, InsertRowMutation, ReorderRangeMutation, MoveRangeMutation } =
      this.engine.library.sheets;
    const edits = [
      SetRangeValuesMutation,
      RemoveRowMutation,
      InsertRowMutation,
      ReorderRangeMutation,
      MoveRangeMutation,
    ];
    const ids = new Set(edits.map(({ id }) => id));
    const waiting = new Set<string>();
    return this.listen((command, calculated) => {
      if (!ids.has(command.id) || calculated) return;
      const { subUnitId, from } = command.params as { subUnitId?: string; from?: { subUnitId: string } };
      const name = this.engine.workbook.getSheetBySheetId(subUnitId ?? from?.subUnitId ?? '')?.getName();
      if (name === undefined || waiting.has(name)) return;
      waiting.add(name);
      // Who listens wants to read what follows from the edit, too.
      void this.engine.settled().then(() => {
        waiting.delete(name);
        listener(name);
      });
    });
  }

  async readSetting(key: string): Promise<Result<string | null>> {
    return ok(settingsOf(this.engine)[key] ?? null);
  }

  async saveSetting(key: string, value: string): Promise<Result<void>> {
    if (settingsOf(this.engine)[key] === value) return ok(undefined);
    settingsOf(this.engine)[key] = value;
    for (const heard of this.settingListeners) heard();
    return ok(undefined);
  }

  onSheets(listener: (name: string) => void): () => void {
    const { InsertSheetMutation, RemoveSheetMutation } = this.engine.library.sheets;
    return this.listen(({ id, params }) => {
      if (id !== InsertSheetMutation.id && id !== RemoveSheetMutation.id) return;
      const { sheet, subUnitName } = params as { sheet?: { name: string }; subUnitName?: string };
      listener(sheet?.name ?? subUnitName ?? '');
    });
  }

  onRefusal(listener: (sentence: string | null) => void): () => void {
    this.refusalListeners.add(listener);
    return () => this.refusalListeners.delete(listener);
  }

  /** Tells that what was typed into a cell was not taken; null: what stands there now is right. */
  refused(sentence: string | null): void {
    for (const hear of [...this.refusalListeners]) hear(sentence);
  }

  /** Called when a text kept with the workbook changes. */
  onSetting(listener: () => void): void {
    this.settingListeners.push(listener);
  }

  private active(): Worksheet | null {
    return this.engine.workbook.getActiveSheet() ?? null;
  }

  private selected(): IRange | null {
    const { SheetsSelectionsService } = this.engine.library.sheets;
    return this.engine.injector.get(SheetsSelectionsService).getCurrentLastSelection()?.range ?? null;
  }

  private facade(sheet: Worksheet) {
    return this.engine.api.getActiveWorkbook()?.getSheetBySheetId(sheet.getSheetId());
  }

  private value(sheet: Worksheet, row: number, column: number): CellValue {
    const cell = cellData(this.engine, sheet, row, column);
    const value = plainValue(this.engine.library, cell);
    if (typeof value !== 'number') return value;
    // A number shown as a date, or with a unit, is handed over as it is shown.
    const format = this.engine.workbook.getStyles().getStyleByCell(sheet.getCellRaw(row, column))?.n?.pattern;
    return format === undefined ? value : shownAs(value, lookOf(format));
  }

  private read(name: string, cell: (sheet: Worksheet, row: number, column: number) => CellValue): Result<Table | null> {
    const sheet = this.engine.workbook.getSheetBySheetName(name);
    if (!sheet) return ok(null);
    const used = usedSize(this.engine, sheet);
    const area = { startRow: 0, startColumn: 0, endRow: used.rows - 1, endColumn: used.columns - 1 };
    return ok(this.table(sheet, area, (row, column) => cell(sheet, row, column)));
  }

  private table(sheet: Worksheet, area: IRange, cell: (row: number, column: number) => CellValue): Table {
    const rows: CellValue[][] = [];
    for (let row = area.startRow; row <= area.endRow; row++) {
      const values: CellValue[] = [];
      for (let column = area.startColumn; column <= area.endColumn; column++) values.push(cell(row, column));
      rows.push(values);
    }
    return { name: sheet.getName(), firstRow: area.startRow + 1, rows };
  }

  /** The filled block around a cell. */
  private region(sheet: Worksheet, cell: IRange, used: { rows: number; columns: number }): IRange | null {
    const filled = (row: number, column: number) => this.value(sheet, row, column) !== null;
    const found = filledRegion({ row: cell.startRow, column: cell.startColumn }, filled, used);
    if (!found) return null;
    const { first, last } = found;
    return { startRow: first.row, endRow: last.row, startColumn: first.column, endColumn: last.column };
  }

  private listen(listener: (command: Readonly<ICommandInfo>, calculated: boolean) => void): () => void {
    const subscription = this.engine.injector
      .get(this.engine.library.core.ICommandService)
      .onCommandExecuted((command, options) =>
        listener(command, Boolean(options?.onlyLocal || options?.['fromFormula'])),
      );
    return () => subscription.dispose();
  }
}
