import type { ICellData, Injector, Univer, Workbook, Worksheet } from '@univerjs/core';
import type { FUniver } from '@univerjs/core/facade';
import { Calculation } from './calculation/calculation';
import { Telling } from './calculation/telling';
import { registerFunctions, type GridFunction } from './functions';
import type { GridLibrary } from './library';

/** A grid's parts and its one workbook. */
export interface EngineCore {
  readonly library: GridLibrary;
  readonly injector: Injector;
  readonly workbook: Workbook;
}

/** A running grid, with or without a page around it. */
export interface Engine extends EngineCore {
  readonly univer: Univer;
  readonly api: FUniver;
  readonly calculation: Calculation;
  /** Waits until every change made so far has been calculated through. */
  settled(): Promise<void>;
  /** Called when a calculation that takes more than a moment starts, and when it ends. */
  onCalculating(listener: (calculating: boolean) => void): void;
}

const WORKBOOK_ID = 'workbench';

export function startWorkbook(library: GridLibrary, univer: Univer, functions: readonly GridFunction[]): Engine {
  const api = library.coreFacade.FUniver.newAPI(univer);
  const injector = univer.__getInjector();
  const workbook = univer.createUnit<object, Workbook>(library.core.UniverInstanceType.UNIVER_SHEET, {
    id: WORKBOOK_ID,
    name: 'Workbook',
    sheetOrder: ['first'],
    sheets: { first: { id: 'first', name: 'Sheet1', rowCount: 200, columnCount: 30 } },
  });
  registerFunctions({ library, injector }, functions);
  const telling = new Telling();
  const calculation = new Calculation({ library, injector, workbook }, functions, telling);
  univer.onDispose(() => calculation.end());
  return {
    ...{ library, univer, injector, api, workbook, calculation },
    settled: () => calculation.settled(),
    onCalculating: (listener) => telling.hear(listener),
  };
}

/** What a cell holds, exactly; null where it is empty. Spilled cells lie in a layer of their own. */
export function cellData({ library, injector, workbook }: Engine, sheet: Worksheet, row: number, column: number) {
  const own = sheet.getCellMatrix().getValue(row, column) as ICellData | undefined;
  if (own && (own.v ?? own.f ?? own.p ?? own.si) != null) return own;
  const spilled = injector.get(library.engineFormula.FormulaDataModel).getArrayFormulaCellData();
  return (spilled[workbook.getUnitId()]?.[sheet.getSheetId()]?.[row]?.[column] ?? null) as ICellData | null;
}

export type PlainValue = string | number | boolean | null;

export function plainValue({ core }: GridLibrary, cell: ICellData | null): PlainValue {
  if (!cell) return null;
  if (cell.v == null || cell.v === '') return cell.p?.body?.dataStream.replace(/\r?\n$/, '') || null;
  if (cell.t === core.CellValueType.BOOLEAN) return cell.v === 1 || cell.v === true || cell.v === '1';
  if (cell.t === core.CellValueType.NUMBER) return Number(cell.v);
  return cell.v;
}

/** The formula as `=…`, or '' for a constant. */
export function cellFormula({ library, injector, workbook }: Engine, sheet: Worksheet, row: number, column: number) {
  const model = injector.get(library.engineFormula.FormulaDataModel);
  return model.getFormulaStringByCell(row, column, sheet.getSheetId(), workbook.getUnitId()) ?? '';
}

/** The sentence behind an error value. */
export function cellError(cell: ICellData | null): string | null {
  const sentence: unknown = cell?.custom?.['error'];
  return typeof cell?.v === 'string' && cell.v.startsWith('#') && typeof sentence === 'string' ? sentence : null;
}

/** Rows and columns in use, counted from A1. */
export function usedSize({ library, injector, workbook }: Engine, sheet: Worksheet): { rows: number; columns: number } {
  const size = { rows: 0, columns: 0 };
  const see = (row: number, column: number, cell: ICellData | null | undefined) => {
    if (!cell || (cell.v ?? cell.f ?? cell.p ?? cell.si) == null || cell.v === '') return;
    size.rows = Math.max(size.rows, row + 1);
    size.columns = Math.max(size.columns, column + 1);
  };
  sheet.getCellMatrix().forValue((row, column, cell) => see(row, column, cell as ICellData));
  const spilled = injector.get(library.engineFormula.FormulaDataModel).getArrayFormulaCellData();
  const own = spilled[workbook.getUnitId()]?.[sheet.getSheetId()];
  if (own) new library.core.ObjectMatrix(own).forValue((row, column, cell) => see(row, column, cell as ICellData));
  return size;
}
