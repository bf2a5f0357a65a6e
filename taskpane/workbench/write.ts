import type { IMutationInfo, IWorksheetData } from '@univerjs/core';
import { ok, refuse, type Result } from '../../src/result';
import type { Sheet } from '../../src/workbook/sheet';
import type { WriteOptions } from '../host';
import { usedSize, type Engine } from './engine';
import { CellStyles } from './styles';
import { worksheetData } from './worksheet';

const STOPPED = 'stopped; nothing was written';

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
      return refuse(`the sheet "${name}" already holds something; rename it, or say that it may be replaced`);
    }
  }
  const styles = new CellStyles((style) => workbook.getStyles().setValue(style)!);
  const total = sheets.reduce((sum, sheet) => sum + sheet.rows.length, 0);
  const built: Partial<IWorksheetData>[] = [];
  let before = 0;
  for (const sheet of sheets) {
    const data = await worksheetData(library, sheet, styles, async (rows) => {
      options.onProgress?.(before + rows, total);
      await breath();
      return !options.signal?.aborted;
    });
    if (!data || options.signal?.aborted) return refuse(STOPPED);
    built.push(data);
    before += sheet.rows.length;
  }
  return putIn(engine, sheets, built);
}

/** Lets the page draw and the stop button be pressed. */
function breath(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}

type Step = { readonly redo: IMutationInfo; readonly undo: IMutationInfo };

function putIn(engine: Engine, sheets: readonly Sheet[], built: Partial<IWorksheetData>[]): Result<void> {
  const { library, injector } = engine;
  const steps = [...sheetSteps(engine, built), ...nameSteps(engine, sheets)];
  const commands = injector.get(library.core.ICommandService);
  const done: Step[] = [];
  try {
    for (const step of steps) {
      if (!commands.syncExecuteCommand(step.redo.id, step.redo.params)) throw new Error(`${step.redo.id} was refused`);
      done.push(step);
    }
  } catch (thrown) {
    for (const step of done.reverse()) commands.syncExecuteCommand(step.undo.id, step.undo.params);
    const why = thrown instanceof Error ? thrown.message : String(thrown);
    return refuse(`the grid could not take the sheets, and nothing was written: ${why}`);
  }
  injector.get(library.core.IUndoRedoService).pushUndoRedo({
    unitID: engine.workbook.getUnitId(),
    redoMutations: steps.map((step) => step.redo),
    undoMutations: steps.map((step) => step.undo).reverse(),
  });
  return ok(undefined);
}

/**
 * New sheets go in where the old ones of the same name stand, and those are taken out after: a workbook is never without
 * a sheet. Sheets of the user's own that name a replaced sheet keep their formulas.
 */
function sheetSteps({ library, workbook }: Engine, built: Partial<IWorksheetData>[]): Step[] {
  const { InsertSheetMutation, RemoveSheetMutation } = library.sheets;
  const unitId = workbook.getUnitId();
  const old = built.map((data) => workbook.getSheetBySheetName(data.name!));
  let end = workbook.getSheets().length;
  let added = 0;
  const step = (data: Partial<IWorksheetData>, index: number) => ({
    in: { id: InsertSheetMutation.id, params: { index, sheet: data, unitId } },
    out: { id: RemoveSheetMutation.id, params: { subUnitId: data.id!, subUnitName: data.name!, unitId } },
  });
  const inserts = built.map((data, at) => {
    const present = old[at];
    const { in: redo, out: undo } = step(data, present ? workbook.getSheetIndex(present) + added : end++ + added);
    if (present) added++;
    return { redo, undo };
  });
  const removes = old.flatMap((present) => {
    if (!present) return [];
    // Undo puts it back before its successor goes, so beside that one.
    const { in: undo, out: redo } = step(present.getSnapshot(), workbook.getSheetIndex(present));
    return [{ redo, undo }];
  });
  return [...inserts, ...removes];
}

/** Defined names of the workbook; one that exists already is pointed at its new place. */
function nameSteps({ library, injector, workbook }: Engine, sheets: readonly Sheet[]): Step[] {
  const { IDefinedNamesService, SetDefinedNameMutation, RemoveDefinedNameMutation } = library.engineFormula;
  const unitId = workbook.getUnitId();
  const present = injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {};
  const byName = new Map(Object.values(present).map((item) => [item.name, item]));
  return sheets
    .flatMap((sheet) => sheet.names ?? [])
    .flatMap(({ name, ref }) => {
      const before = byName.get(name);
      if (before?.formulaOrRefString === ref) return [];
      const id = before?.id ?? library.core.generateRandomId(10);
      const params = { unitId, id, name, formulaOrRefString: ref, localSheetId: 'AllDefaultWorkbook' };
      return {
        redo: { id: SetDefinedNameMutation.id, params },
        undo: before
          ? { id: SetDefinedNameMutation.id, params: { unitId, ...before } }
          : { id: RemoveDefinedNameMutation.id, params },
      };
    });
}
