import type { ICellData, IMutationInfo, IRange, IWorksheetData, ObjectMatrix, Worksheet } from '@univerjs/core';
import { ok, refuse, type Result } from '../../src/result';
import type { Sheet } from '../../src/workbook/sheet';
import type { WriteOptions } from '../host';
import { namesLeftOver } from '../../src/workbook/namesLeftOver';
import { sheetInTheWay, STOPPED } from '../refusals';
import { usedSize, type Engine } from './engine';
import { CellStyles } from './styles';
import { typedValue, worksheetData } from './worksheet';

/**
 * Writes sheets with their values, so that the grid need not calculate what is already known. They are built beside the
 * workbook first, and put in all at once at the end: a stop leaves the workbook as it was, and one undo takes all back.
 */
export async function writeSheets(
  engine: Engine,
  sheets: readonly Sheet[],
  options: WriteOptions,
): Promise<Result<void>> {
  const { library, workbook } = engine;
  for (const { name } of sheets) {
    const present = workbook.getSheetBySheetName(name);
    if (present && usedSize(engine, present).rows > 0 && !options.replace.includes(name)) {
      return refuse(sheetInTheWay(name));
    }
  }
  const styles = new CellStyles((style) => workbook.getStyles().setValue(style)!);
  const total = sheets.reduce((sum, sheet) => sum + sheet.rows.length, 0);
  const built: IWorksheetData[] = [];
  let before = 0;
  for (const sheet of sheets) {
    const data = await worksheetData(library, sheet, styles, async (rows) => {
      options.onProgress?.(before + rows, total);
      await breath();
      return !options.signal?.aborted;
    });
    if (!data || options.signal?.aborted) return refuse(STOPPED);
    // The same sheet to the steps of undo that there are, which go by its id.
    const present = options.quiet ? workbook.getSheetBySheetName(sheet.name) : null;
    built.push(present ? { ...data, id: present.getSheetId() } : data);
    before += sheet.rows.length;
  }
  const put = putIn(engine, sheets, built, options.quiet ?? false);
  if (!put.ok) return put;
  // At once, this and what is shown then would hold the page for longer than it is to stand still.
  if (!options.quiet) await breath();
  enterAgain(engine, sheets);
  if (!options.quiet) await breath();
  return put;
}

/** Lets the page draw and the stop button be pressed. */
function breath(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}

type Step = { readonly redo: IMutationInfo; readonly undo: IMutationInfo };

function putIn(
  engine: Engine,
  sheets: readonly Sheet[],
  built: readonly IWorksheetData[],
  quiet: boolean,
): Result<void> {
  const { library, injector } = engine;
  const steps = [...sheetSteps(engine, built), ...nameSteps(engine, sheets)];
  const commands = injector.get(library.core.ICommandService);
  const done: Step[] = [];
  const looksAt = engine.workbook.getActiveSheet()?.getSheetId();
  try {
    // Their values are known: the grid would calculate every formula of a sheet that is put in.
    engine.calculation.without(() => {
      for (const step of steps) {
        // Counted before it is done: a mutation that throws half way may have done its half.
        done.push(step);
        if (!commands.syncExecuteCommand(step.redo.id, step.redo.params))
          throw new Error(`${step.redo.id} was refused`);
      }
    });
  } catch (thrown) {
    for (const step of done.reverse()) commands.syncExecuteCommand(step.undo.id, step.undo.params);
    const why = thrown instanceof Error ? thrown.message : String(thrown);
    return refuse(`The grid could not take the sheets (${why}). The workbook is as it was.`);
  }
  if (quiet) {
    const looked = engine.api.getActiveWorkbook()?.getSheetBySheetId(looksAt ?? '');
    if (engine.workbook.getActiveSheet()?.getSheetId() !== looksAt) looked?.activate();
  } else {
    injector.get(library.core.IUndoRedoService).pushUndoRedo({
      unitID: engine.workbook.getUnitId(),
      redoMutations: steps.map((step) => step.redo),
      undoMutations: steps.map((step) => step.undo).reverse(),
    });
  }
  drawActive(engine);
  return ok(undefined);
}

/** Where every sheet was replaced, the grid still draws one that is gone, and fails at the next change of a cell. */
function drawActive({ library, injector, workbook }: Engine): void {
  const subUnitId = workbook.getActiveSheet()?.getSheetId();
  if (subUnitId === undefined) return;
  const { id } = library.sheets.SetWorksheetActiveOperation;
  injector.get(library.core.ICommandService).syncExecuteCommand(id, { unitId: workbook.getUnitId(), subUnitId });
}

/** What the formulas just written spill, and formulas on other sheets that look at those just written. */
function enterAgain(engine: Engine, sheets: readonly Sheet[]): void {
  const { workbook } = engine;
  const words = [
    ...sheets.map(({ name }) => `${name}!`),
    ...sheets.flatMap(({ names }) => names ?? []).map(({ name }) => name),
  ].map((word) => word.toUpperCase());
  const looks = (formula: string) => {
    const text = formula.toUpperCase();
    return words.some((word) => text.includes(word));
  };
  putSpills(engine, sheets);
  for (const sheet of workbook.getSheets()) {
    if (sheets.some(({ name }) => name === sheet.getName())) continue;
    // Of formulas that many cells share the first tells for all.
    const shared = new Map<string, boolean>();
    enterCells(engine, sheet, (_row, _column, { f, si }) => {
      if (!si) return looks(f ?? '');
      if (f && !shared.has(si)) shared.set(si, looks(f));
      return shared.get(si) ?? true;
    });
  }
}

/** Has the formulas that `wanted` names calculated, as if they had just been typed. */
export function enterCells(
  { calculation }: Engine,
  sheet: Worksheet,
  wanted: (row: number, column: number, cell: ICellData) => boolean,
): void {
  const areas = new Map<number, IRange[]>();
  sheet.getCellMatrix().forValue((row, column, cell) => {
    if ((!cell?.f && !cell?.si) || !wanted(row, column, cell)) return;
    const above = areas.get(column)?.at(-1);
    if (above?.endRow === row - 1) above.endRow = row;
    else {
      const area = { startRow: row, endRow: row, startColumn: column, endColumn: column };
      areas.set(column, [...(areas.get(column) ?? []), area]);
    }
  });
  calculation.again(sheet.getSheetId(), [...areas.values()].flat());
}

/** Cells that a formula spills over lie in a layer of the grid's own: it is told them, as it was told all other values. */
function putSpills({ library, injector, workbook }: Engine, sheets: readonly Sheet[]): void {
  const { FormulaDataModel, SetArrayFormulaDataMutation } = library.engineFormula;
  const model = injector.get(FormulaDataModel);
  const ranges: Record<string, Record<number, Record<number, IRange>>> = {};
  const cells: Record<string, ObjectMatrix<ICellData>> = {};
  for (const { name, rows } of sheets) {
    const id = workbook.getSheetBySheetName(name)!.getSheetId();
    for (const [row, line] of rows.entries())
      for (const [column, cell] of line.entries()) {
        if (!cell?.spill) continue;
        const [endRow, endColumn] = [row + cell.spill.rows - 1, column + cell.spill.columns - 1];
        const area = { startRow: row, endRow, startColumn: column, endColumn };
        ((ranges[id] ??= {})[row] ??= {})[column] = area;
        for (let down = row; down <= endRow; down++)
          for (let right = column; right <= endColumn; right++) {
            const value = rows[down]?.[right]?.value ?? null;
            cells[id] ??= new library.core.ObjectMatrix<ICellData>();
            cells[id].setValue(down, right, typedValue(library.core.CellValueType, value));
          }
      }
  }
  if (Object.keys(ranges).length === 0) return;
  const unit = workbook.getUnitId();
  model.mergeArrayFormulaRange({ [unit]: ranges });
  model.mergeArrayFormulaCellData({ [unit]: cells });
  const arrayFormulaRange = model.getArrayFormulaRange();
  const arrayFormulaCellData = model.getArrayFormulaCellData();
  const params = { arrayFormulaRange, arrayFormulaCellData, arrayFormulaEmbedded: {} };
  injector
    .get(library.core.ICommandService)
    .syncExecuteCommand(SetArrayFormulaDataMutation.id, params, { onlyLocal: true });
}

/**
 * Old sheets go out first, then the new ones into their places: with two of one name the grid would take the figures of
 * the old. Sheets of the user's own that name a replaced sheet keep their formulas.
 */
function sheetSteps({ library, workbook }: Engine, built: readonly IWorksheetData[]): Step[] {
  const { InsertSheetMutation, RemoveSheetMutation } = library.sheets;
  const unitId = workbook.getUnitId();
  const order = [...workbook.getSheetOrders()];
  const insert = (sheet: IWorksheetData, index: number) => ({
    id: InsertSheetMutation.id,
    params: { index, sheet, unitId },
  });
  const remove = ({ id, name }: IWorksheetData) => ({
    id: RemoveSheetMutation.id,
    params: { subUnitId: id, subUnitName: name, unitId },
  });
  const adding = (sheet: IWorksheetData, index: number): Step => ({ redo: insert(sheet, index), undo: remove(sheet) });
  const taking = (sheet: IWorksheetData, index: number): Step => ({ redo: remove(sheet), undo: insert(sheet, index) });

  const left = [...order];
  const removes: Step[] = [];
  const placed: { data: IWorksheetData; place: number }[] = [];
  for (const data of built) {
    const present = workbook.getSheetBySheetName(data.name);
    placed.push({ data, place: present ? order.indexOf(present.getSheetId()) : Infinity });
    if (!present) continue;
    const index = left.indexOf(present.getSheetId());
    left.splice(index, 1);
    removes.push(taking(present.getSnapshot(), index));
  }
  placed.sort((one, other) => (one.place === other.place ? 0 : one.place - other.place));
  const inserts = placed.map(({ data, place }, at) => adding(data, Math.min(place, left.length + at)));
  if (left.length > 0) return [...removes, ...inserts];
  // A workbook is never without a sheet: a blank one stands in meanwhile.
  const blank = library.core.mergeWorksheetSnapshotWithDefault({ id: library.core.generateRandomId(8), name: '…' });
  return [adding(blank, order.length), ...removes, ...inserts, taking(blank, built.length)];
}

/** Defined names of the workbook; one that exists already is pointed at its new place. */
function nameSteps({ library, injector, workbook }: Engine, sheets: readonly Sheet[]): Step[] {
  const { IDefinedNamesService, SetDefinedNameMutation, RemoveDefinedNameMutation } = library.engineFormula;
  const unitId = workbook.getUnitId();
  const present = injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {};
  const byName = new Map(Object.values(present).map((item) => [item.name, item]));
  const left = namesLeftOver(
    Object.values(present).map((item) => ({ name: item.name, ref: item.formulaOrRefString, item })),
    sheets,
  ).map(({ item }): Step => {
    const params = { unitId, ...item };
    return {
      redo: { id: RemoveDefinedNameMutation.id, params },
      undo: { id: SetDefinedNameMutation.id, params },
    };
  });
  const defined = sheets
    .flatMap((sheet) => sheet.names ?? [])
    .map(({ name, ref }): Step => {
      const before = byName.get(name);
      // Those that stand right already, too: a renewed plan may move them before this is undone.
      const id = before?.id ?? library.core.generateRandomId(10);
      const params = { unitId, id, name, formulaOrRefString: ref, localSheetId: 'AllDefaultWorkbook' };
      return {
        redo: { id: SetDefinedNameMutation.id, params },
        undo: before
          ? { id: SetDefinedNameMutation.id, params: { unitId, ...before } }
          : { id: RemoveDefinedNameMutation.id, params },
      };
    });
  return [...left, ...defined];
}
