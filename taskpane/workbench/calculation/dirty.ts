import type { IFormulaDatasetConfig, IFormulaDirtyData } from '@univerjs/engine-formula';
import type { EngineCore } from '../engine';
import type { Graph } from './graph';
import type { Area } from './range';

/** What a change touches, as the library tells it. */
export type Dirty = Partial<IFormulaDirtyData>;

/** Marks the formulas that a change leads to at once. */
export function markDirty(graph: Graph, dirty: readonly Dirty[]): void {
  for (const node of [...graph.always, ...graph.blocked]) node.dirty = true;
  for (const { forceCalculation, dirtyRanges, dirtyNameMap, dirtyDefinedNameMap, dirtySuperTableMap } of dirty) {
    if (forceCalculation || hasSome(dirtySuperTableMap)) graph.allDirty();
    for (const { sheetId, range } of dirtyRanges ?? []) {
      const sheet = graph.sheets.get(sheetId);
      if (sheet) graph.touch(sheet, areaOf(range));
    }
    const names = [dirtyDefinedNameMap, dirtyNameMap].flatMap((units) => Object.values(units ?? {}));
    for (const sheets of Object.values(dirtyNameMap ?? {}))
      for (const sheetId of Object.keys(sheets ?? {})) {
        const sheet = graph.sheets.get(sheetId);
        if (sheet) graph.touch(sheet, EVERYWHERE);
      }
    // By its id a sheet's name is told, and by its name where a name points.
    const words = names.flatMap((map) => Object.entries(map ?? {}).flat());
    if (words.length > 0) graph.touchNaming(words.map((word) => word.toLowerCase()));
  }
}

const EVERYWHERE: Area = { firstRow: 0, lastRow: Infinity, firstColumn: 0, lastColumn: Infinity };

/** Of whole columns and rows the library names no ends. */
function areaOf(range: { startRow: number; endRow: number; startColumn: number; endColumn: number }): Area {
  const end = (value: number) => (Number.isFinite(value) ? value : Infinity);
  return {
    firstRow: range.startRow || 0,
    lastRow: end(range.endRow),
    firstColumn: range.startColumn || 0,
    lastColumn: end(range.endColumn),
  };
}

function hasSome(map: object | undefined): boolean {
  return map !== undefined && Object.keys(map).length > 0;
}

/** Several changes as one. */
export function merged(dirty: readonly Dirty[]): Dirty {
  const byUnit = (maps: readonly (Readonly<Record<string, unknown>> | undefined)[]) => {
    const all: Record<string, object> = {};
    for (const map of maps)
      for (const [unit, more] of Object.entries(map ?? {})) all[unit] = { ...all[unit], ...(more as object) };
    return all;
  };
  return {
    forceCalculation: dirty.some(({ forceCalculation }) => forceCalculation),
    dirtyRanges: dirty.flatMap(({ dirtyRanges }) => dirtyRanges ?? []),
    dirtyNameMap: byUnit(dirty.map((each) => each.dirtyNameMap)),
    dirtyDefinedNameMap: byUnit(dirty.map((each) => each.dirtyDefinedNameMap)),
    dirtySuperTableMap: byUnit(dirty.map((each) => each.dirtySuperTableMap)),
    clearDependencyTreeCache: byUnit(dirty.map((each) => each.clearDependencyTreeCache)),
  } as Dirty;
}

/** Has the library calculate, and waits until it has written. */
export async function calculateByLibrary({ library, injector }: EngineCore, dirty: Dirty): Promise<void> {
  const { core, engineFormula } = library;
  const calculation = injector.get(engineFormula.ICalculateFormulaService);
  const model = injector.get(engineFormula.FormulaDataModel);
  const done = new Promise<void>((resolve) => {
    const heard = calculation.executionCompleteListener$.subscribe(() => {
      setTimeout(() => heard.unsubscribe());
      resolve();
    });
  });
  await calculation.execute({
    formulaData: model.getFormulaData(),
    arrayFormulaCellData: model.getArrayFormulaCellData(),
    arrayFormulaRange: model.getArrayFormulaRange(),
    forceCalculate: dirty.forceCalculation ?? false,
    dirtyRanges: dirty.dirtyRanges ?? [],
    dirtyNameMap: dirty.dirtyNameMap ?? {},
    dirtyDefinedNameMap: dirty.dirtyDefinedNameMap ?? {},
    dirtySuperTableMap: dirty.dirtySuperTableMap ?? {},
    dirtyUnitFeatureMap: {},
    dirtyUnitOtherFormulaMap: {},
    clearDependencyTreeCache: dirty.clearDependencyTreeCache ?? {},
    maxIteration: injector.get(core.IConfigService).getConfig(engineFormula.ENGINE_FORMULA_CYCLE_REFERENCE_COUNT) ?? 1,
    rowData: model.getHiddenRowsFiltered(),
  });
  await done;
  // What was found is written by commands that wait for one another.
  await new Promise((resolve) => setTimeout(resolve));
}

/** What the library is told of a calculation of which it does only parts. */
export function quietConfig(engine: EngineCore): IFormulaDatasetConfig {
  const model = engine.injector.get(engine.library.engineFormula.FormulaDataModel);
  return {
    formulaData: {},
    arrayFormulaCellData: model.getArrayFormulaCellData(),
    arrayFormulaRange: model.getArrayFormulaRange(),
    forceCalculate: false,
    ...{
      dirtyRanges: [],
      dirtyNameMap: {},
      dirtyDefinedNameMap: {},
      dirtyUnitFeatureMap: {},
      dirtyUnitOtherFormulaMap: {},
    },
  };
}
