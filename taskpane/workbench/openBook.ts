import type { IMutationInfo, IWorksheetData } from '@univerjs/core';
import { ok, refuse, type Result } from '../../src/result';
import { isErrorValue } from '../../src/workbook/sheet';
import type { Engine } from './engine';
import type { GridBook } from './readGrid';
import { CellStyles } from './styles';
import { worksheetData, type HeldSheet } from './worksheet';
import { enterCells } from './write';

/** A workbook as the grid stores it: sheets in order, and names. */
export interface StoredBook {
  readonly sheets: readonly IWorksheetData[];
  readonly names: readonly { readonly name: string; readonly ref: string }[];
  readonly settings: Readonly<Record<string, string>>;
}

/** Puts a workbook in place of the one that is there. What was before can't be undone back: it is another document. */
export async function openBook(engine: Engine, book: GridBook, breath: () => Promise<void>): Promise<Result<void>> {
  const sheets = await builtSheets(engine, book.sheets, breath);
  const names = book.sheets.flatMap((sheet) => sheet.names ?? []);
  const opened = replaceWorkbook(engine, { sheets, names, settings: book.settings });
  if (opened.ok) enterUnknown(engine, book.sheets);
  return opened;
}

/** Adds sheets behind those that are there, under names that are still free; gives these. */
export async function addSheets(
  engine: Engine,
  sheets: readonly HeldSheet[],
  breath: () => Promise<void>,
): Promise<Result<readonly string[]>> {
  const taken = new Set(engine.workbook.getSheets().map((sheet) => sheet.getName().toLowerCase()));
  const named = sheets.map((sheet) => {
    let name = sheet.name;
    for (let count = 2; taken.has(name.toLowerCase()); count++) name = `${sheet.name} (${count})`;
    taken.add(name.toLowerCase());
    return { ...sheet, name };
  });
  const built = await builtSheets(engine, named, breath);
  const { InsertSheetMutation, RemoveSheetMutation } = engine.library.sheets;
  const unitId = engine.workbook.getUnitId();
  const before = engine.workbook.getSheets().length;
  const redo = built.map((sheet, at) => ({
    id: InsertSheetMutation.id,
    params: { index: before + at, sheet, unitId },
  }));
  const undo = built.map(({ id, name }) => ({
    id: RemoveSheetMutation.id,
    params: { subUnitId: id, subUnitName: name, unitId },
  }));
  const done = run(engine, redo);
  if (!done.ok) return done;
  engine.injector
    .get(engine.library.core.IUndoRedoService)
    .pushUndoRedo({ unitID: unitId, redoMutations: redo, undoMutations: undo.reverse() });
  return ok(named.map(({ name }) => name));
}

async function builtSheets(
  engine: Engine,
  sheets: readonly HeldSheet[],
  breath: () => Promise<void>,
): Promise<IWorksheetData[]> {
  const styles = new CellStyles((style) => engine.workbook.getStyles().setValue(style)!);
  const built: IWorksheetData[] = [];
  for (const sheet of sheets) {
    const data = await worksheetData(engine.library, sheet, styles, async () => {
      await breath();
      return true;
    });
    if (data) built.push(data);
  }
  return built;
}

/** Sheets and names go out, the others come in. */
export function replaceWorkbook(engine: Engine, { sheets, names, settings }: StoredBook): Result<void> {
  const { library, injector, workbook } = engine;
  const { InsertSheetMutation, RemoveSheetMutation } = library.sheets;
  const { IDefinedNamesService, SetDefinedNameMutation, RemoveDefinedNameMutation } = library.engineFormula;
  if (sheets.length === 0) return refuse('The workbook has no sheet.');
  const unitId = workbook.getUnitId();
  const present = workbook
    .getSheets()
    .map((sheet) => ({ subUnitId: sheet.getSheetId(), subUnitName: sheet.getName() }));
  const oldNames = Object.values(injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {});
  // A workbook is never without a sheet, and never has two of one name: a blank one stands in meanwhile.
  const blank = library.core.mergeWorksheetSnapshotWithDefault({ id: library.core.generateRandomId(8), name: '…' });
  const insert = (sheet: IWorksheetData, index: number): IMutationInfo => ({
    id: InsertSheetMutation.id,
    params: { index, sheet, unitId },
  });
  const remove = (params: object): IMutationInfo => ({ id: RemoveSheetMutation.id, params: { ...params, unitId } });
  const done = run(engine, [
    ...oldNames.map((name) => ({ id: RemoveDefinedNameMutation.id, params: { unitId, ...name } })),
    insert(blank, present.length),
    ...present.map(remove),
    ...sheets.map((sheet, at) => insert(sheet, at)),
    remove({ subUnitId: blank.id, subUnitName: blank.name }),
    ...names.map(({ name, ref }) => ({
      id: SetDefinedNameMutation.id,
      params: {
        unitId,
        id: library.core.generateRandomId(10),
        name,
        formulaOrRefString: ref,
        localSheetId: 'AllDefaultWorkbook',
      },
    })),
  ]);
  if (!done.ok) return done;
  workbook.getSnapshot().custom = { settings: { ...settings } };
  injector.get(library.core.IUndoRedoService).clearUndoRedo(unitId);
  const first = sheets.find(({ hidden }) => hidden !== 1) ?? sheets[0]!;
  engine.api.getActiveWorkbook()?.getSheetBySheetId(first.id)?.activate();
  return ok(undefined);
}

function run(engine: Engine, mutations: readonly IMutationInfo[]): Result<void> {
  const commands = engine.injector.get(engine.library.core.ICommandService);
  try {
    engine.calculation.without(() => {
      for (const { id, params } of mutations)
        if (!commands.syncExecuteCommand(id, params)) throw new Error(`${id} was refused`);
    });
    return ok(undefined);
  } catch (thrown) {
    const why = thrown instanceof Error ? thrown.message : String(thrown);
    return refuse(`The grid could not take the workbook (${why}).`);
  }
}

/**
 * Formulas whose values the file doesn't hold, or not whole: those without one, errors, which have a sentence behind them
 * that a file has no place for, and those that spill.
 */
function enterUnknown(engine: Engine, sheets: readonly HeldSheet[]): void {
  for (const { name, rows } of sheets) {
    const worksheet = engine.workbook.getSheetBySheetName(name);
    if (!worksheet) continue;
    enterCells(engine, worksheet, (row, column) => {
      const cell = rows[row]?.[column];
      return (
        cell?.formula !== undefined && (cell.value === null || isErrorValue(cell.value) || cell.spill !== undefined)
      );
    });
  }
}
