import type { IMutationInfo, IRange, Worksheet } from '@univerjs/core';
import { ok, refuse, type Result } from '../../../src/result';
import { readRange } from '../../../src/workbook/address';
import { filledRegion } from '../../filledRegion';
import { cellData, plainValue, usedSize, type Engine, type PlainValue } from '../engine';
import { rulesOf } from '../typing';
import { movedRows } from './movedRows';

type Look = 'bold' | 'italic' | 'underline' | 'left' | 'center' | 'right' | 'wrap';

/** A table around the selected cell, and the column that it stands in. */
interface Sortable {
  readonly sheet: Worksheet;
  readonly body: IRange;
  readonly column: number;
  readonly heading: string;
  readonly rows: number;
  /** What the selected cell shows. */
  readonly shown: string;
  readonly value: PlainValue;
}

/** What the bar does to the grid. */
export class GridTools {
  constructor(
    private readonly engine: Engine,
    private readonly say: (sentence: string) => void,
  ) {}

  undo(): void {
    void this.engine.api.undo();
  }

  redo(): void {
    void this.engine.api.redo();
  }

  format(code: string): void {
    this.range()?.setNumberFormat(code);
  }

  look(look: Look): void {
    const range = this.range();
    if (!range) return;
    const style = range.getCellStyleData();
    if (look === 'bold') range.setFontWeight(style?.bl === 1 ? 'normal' : 'bold');
    else if (look === 'italic') range.setFontStyle(style?.it === 1 ? 'normal' : 'italic');
    else if (look === 'underline') range.setFontLine(style?.ul?.s === 1 ? 'none' : 'underline');
    else if (look === 'wrap') range.setWrap(style?.tb !== this.engine.library.core.WrapStrategy.WRAP);
    else range.setHorizontalAlignment(look === 'right' ? 'normal' : look);
  }

  ground(color: string | null): void {
    this.range()?.setBackgroundColor(color ?? '');
  }

  private range() {
    return this.engine.api.getActiveWorkbook()?.getActiveSheet()?.getSelection()?.getActiveRange() ?? null;
  }

  /** The table that can be sorted by the selected cell's column. */
  sortable(): Result<Sortable> {
    const { workbook } = this.engine;
    const sheet = workbook.getActiveSheet();
    const at = this.range()?.getRange();
    if (!sheet || !at) return refuse('Click a cell of the column to sort by.');
    const body = this.bodyAround(sheet, at);
    if (!body.ok) return body;
    const column = at.startColumn;
    const value = this.value(sheet, at.startRow, column);
    return ok({
      sheet,
      body: body.value,
      column,
      heading: String(this.value(sheet, body.value.startRow - 1, column) ?? '').trim() || 'this column',
      rows: body.value.endRow - body.value.startRow + 1,
      shown: value === null ? '' : String(value),
      value,
    });
  }

  /** The rows of the table: what the sheet says can be filtered, or the filled block below its first row. */
  private bodyAround(sheet: Worksheet, at: IRange): Result<IRange> {
    const rules = rulesOf(sheet.getConfig());
    const filter = rules?.kept?.autoFilter === undefined ? null : readRange(rules.kept.autoFilter);
    const NOT_HERE = 'The selected cell is in no table that can be sorted: click a cell below a heading.';
    let area: IRange;
    if (filter?.ok) {
      const { first, last } = filter.value;
      area = { startRow: first.row, endRow: last.row, startColumn: first.column, endColumn: last.column };
    } else {
      if (rules?.locked) return refuse('This sheet keeps the order it was written in.');
      const used = usedSize(this.engine, sheet);
      const found = filledRegion(
        { row: at.startRow, column: at.startColumn },
        (row, column) => this.value(sheet, row, column) !== null,
        used,
      );
      if (!found) return refuse(NOT_HERE);
      area = {
        startRow: found.first.row,
        endRow: found.last.row,
        startColumn: found.first.column,
        endColumn: found.last.column,
      };
    }
    const body = { ...area, startRow: area.startRow + 1 };
    const inside =
      at.startRow >= body.startRow &&
      at.startRow <= body.endRow &&
      at.startColumn >= body.startColumn &&
      at.startColumn <= body.endColumn;
    return inside && body.endRow > body.startRow ? ok(body) : refuse(NOT_HERE);
  }

  private value(sheet: Worksheet, row: number, column: number): PlainValue {
    return plainValue(this.engine.library, cellData(this.engine, sheet, row, column));
  }

  /** Sorts whole rows of the table; formulas go along with their row. One undo puts them back. */
  sort(largestFirst: boolean): void {
    const table = this.sortable();
    if (!table.ok) return this.say(table.message);
    const { sheet, body, column, heading } = table.value;
    const rows = Array.from({ length: body.endRow - body.startRow + 1 }, (_, at) => body.startRow + at);
    const order = rows
      .map((row) => ({ row, value: this.value(sheet, row, column) }))
      .sort((one, other) => compared(one.value, other.value, largestFirst) || one.row - other.row);
    const { redo, undo } = movedRows(
      this.engine,
      sheet,
      body,
      order.map(({ row }) => row),
    );
    const done = this.undoable(redo, undo);
    this.say(
      done
        ? `Sorted by ${heading}, ${largestFirst ? 'largest' : 'smallest'} first. Undo puts the rows back.`
        : 'The grid did not sort these rows.',
    );
  }

  /** Done at once, so that one undo takes all of it back. */
  private undoable(redoMutations: readonly IMutationInfo[], undoMutations: readonly IMutationInfo[]): boolean {
    const { library, injector, workbook } = this.engine;
    if (redoMutations.length === 0) return true;
    const [redo, undo] = [[...redoMutations], [...undoMutations]];
    if (!library.core.sequenceExecute(redo, injector.get(library.core.ICommandService)).result) return false;
    injector
      .get(library.core.IUndoRedoService)
      .pushUndoRedo({ unitID: workbook.getUnitId(), redoMutations: redo, undoMutations: undo });
    return true;
  }

  /** Hides the rows of the table whose cell in this column is another. */
  showOnly(): void {
    const table = this.sortable();
    if (!table.ok) return this.say(table.message);
    const { sheet, body, column, value, shown, heading } = table.value;
    const others = this.runs(sheet, body, (row) => this.value(sheet, row, column) !== value);
    this.turn(this.engine.library.sheets.SetRowHiddenCommand.id, sheet, others);
    const left = others.reduce((rows, { startRow, endRow }) => rows - (endRow - startRow + 1), table.value.rows);
    const rows = left === 1 ? '1 row' : `${left} rows`;
    this.say(`${rows} with ${shown || 'a blank'} in ${heading}; the others are hidden, and count in the totals.`);
  }

  showAll(): void {
    const table = this.sortable();
    if (!table.ok) return this.say(table.message);
    const { sheet, body } = table.value;
    // Only those that are hidden: an undo hides all that were named.
    const hidden = this.runs(sheet, body, (row) => !sheet.getRowVisible(row));
    this.turn(this.engine.library.sheets.SetSpecificRowsVisibleCommand.id, sheet, hidden);
  }

  /** Rows of the table that are meant, as whole rows of the sheet. */
  private runs(sheet: Worksheet, body: IRange, meant: (row: number) => boolean): IRange[] {
    const runs: IRange[] = [];
    for (let row = body.startRow; row <= body.endRow; row++) {
      if (!meant(row)) continue;
      const last = runs.at(-1);
      if (last?.endRow === row - 1) last.endRow = row;
      else
        runs.push({
          ...{ startRow: row, endRow: row, startColumn: 0, endColumn: sheet.getColumnCount() - 1 },
          rangeType: this.engine.library.core.RANGE_TYPE.ROW,
        });
    }
    return runs;
  }

  /** Hides or shows rows at once, so that one undo takes it back; the selection stays where it is. */
  private turn(id: string, sheet: Worksheet, ranges: readonly IRange[]): void {
    if (ranges.length === 0) return;
    const at = this.range()?.getRange();
    this.command(id, sheet, { ranges });
    if (at) this.facade(sheet)?.getRange(at.startRow, at.startColumn).activate();
  }

  private command(id: string, sheet: Worksheet, params: object): boolean {
    return this.engine.injector.get(this.engine.library.core.ICommandService).syncExecuteCommand(id, {
      unitId: this.engine.workbook.getUnitId(),
      subUnitId: sheet.getSheetId(),
      ...params,
    });
  }

  private facade(sheet: Worksheet) {
    return this.engine.api.getActiveWorkbook()?.getSheetBySheetId(sheet.getSheetId());
  }
}

/** Numbers before texts, blanks last whichever way. */
function compared(one: PlainValue, other: PlainValue, largestFirst: boolean): number {
  const rank = (value: PlainValue) => (value === null || value === '' ? 2 : typeof value === 'number' ? 0 : 1);
  if (rank(one) !== rank(other))
    return rank(one) === 2 || rank(other) === 2 || !largestFirst ? rank(one) - rank(other) : rank(other) - rank(one);
  if (rank(one) === 2) return 0;
  const way = largestFirst ? -1 : 1;
  if (typeof one === 'number' && typeof other === 'number') return way * (one - other);
  return way * String(one).localeCompare(String(other), undefined, { numeric: true });
}
