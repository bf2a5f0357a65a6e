import { createRequire } from 'node:module';
import { startWorkbook, type Engine } from './engine';
import type { GridFunction } from './functions';
import type { GridLibrary } from './library';

// The packages' ES modules don't load in plain Node (a font reader they import has no ES build), their CommonJS ones do.
const require = createRequire(import.meta.url);

/** The workbench's grid without a page: calculates the same workbook with the same functions, for tests and benches. */
export function startHeadless(functions: readonly GridFunction[]): Engine {
  const library: GridLibrary = {
    core: require('@univerjs/core'),
    coreFacade: require('@univerjs/core/facade'),
    engineFormula: require('@univerjs/engine-formula'),
    sheets: require('@univerjs/sheets'),
    sheetsFormula: require('@univerjs/sheets-formula'),
  };
  for (const name of ['sheets', 'engine-formula', 'sheets-formula', 'sheets-numfmt'])
    require(`@univerjs/${name}/facade`);
  const { Univer, LocaleType, LogLevel } = library.core;
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: {} },
    logLevel: LogLevel.ERROR,
  });
  univer.registerPlugin(library.engineFormula.UniverFormulaEnginePlugin);
  univer.registerPlugin(library.sheets.UniverSheetsPlugin);
  univer.registerPlugin(library.sheetsFormula.UniverSheetsFormulaPlugin);
  univer.registerPlugin(require('@univerjs/sheets-numfmt').UniverSheetsNumfmtPlugin);
  const engine = startWorkbook(library, univer, functions);
  // On a page the grid does this when it is clicked; undo works on the focused workbook.
  engine.injector.get(library.core.IUniverInstanceService).focusUnit(engine.workbook.getUnitId());
  return engine;
}
