import type { IStyleData, IWorksheetData, Worksheet } from '@univerjs/core';
import { rangeAddress } from '../../src/workbook/address';
import type { Cell } from '../../src/workbook/sheet';
import { cellData, cellFormula, plainValue, usedSize, type Engine } from './engine';
import { lookOfStyle } from './styles';
import { heightInFile, isEvenRow } from './evenRows';
import { notesAt, rulesOf } from './typing';
import { PX_IN_POINT, widthInCharacters, type HeldSheet } from './worksheet';

/** Rows read between two chances for the page to draw. */
const CHUNK_ROWS = 100;
const USUAL_COLUMN_PX = 88;
const USUAL_ROW_PX = 24;

export interface GridBook {
  readonly sheets: readonly HeldSheet[];
  readonly settings: Readonly<Record<string, string>>;
}

/**
 * The whole workbook as plain values: what a file of it holds. `breath` lets the page draw between two parts; what is typed
 * meanwhile may be in it or not.
 */
export async function readGrid(engine: Engine, breath: () => Promise<void>): Promise<GridBook> {
  const sheets: HeldSheet[] = [];
  const names = namesOf(engine);
  for (const worksheet of engine.workbook.getSheets()) {
    const sheet = await readWorksheet(engine, worksheet, breath);
    const own = names.filter(({ sheet: name }) => name === worksheet.getName()).map(({ name, ref }) => ({ name, ref }));
    sheets.push(own.length > 0 ? { ...sheet, names: own } : sheet);
  }
  return { sheets, settings: { ...settingsOf(engine) } };
}

/** The small texts kept with the workbook. */
export function settingsOf({ workbook }: Engine): Record<string, string> {
  const snapshot = workbook.getSnapshot();
  snapshot.custom ??= {};
  return (snapshot.custom['settings'] ??= {}) as Record<string, string>;
}

/** Names of the workbook, in the order of their making, each with the sheet that it points at, or the first. */
export function namesOf({ library, injector, workbook }: Engine): { name: string; ref: string; sheet: string }[] {
  const { IDefinedNamesService } = library.engineFormula;
  const present = injector.get(IDefinedNamesService).getDefinedNameMap(workbook.getUnitId()) ?? {};
  const first = workbook.getSheets()[0]?.getName() ?? '';
  return Object.values(present).map(({ name, formulaOrRefString }) => {
    const ref = formulaOrRefString.replace(/^=/, '');
    const sheet = workbook
      .getSheets()
      .find(
        (one) => ref.startsWith(`${one.getName()}!`) || ref.startsWith(`'${one.getName().replaceAll("'", "''")}'!`),
      );
    return { name, ref, sheet: sheet?.getName() ?? first };
  });
}

export async function readWorksheet(
  engine: Engine,
  worksheet: Worksheet,
  breath: () => Promise<void>,
): Promise<HeldSheet> {
  const config = worksheet.getConfig();
  const size = usedSize(engine, worksheet);
  const matrix = worksheet.getCellMatrix();
  const end = { rows: Math.max(size.rows, matrix.getLength()), columns: size.columns };
  const styles = new Map<string, IStyleData>();
  const rows: (Cell | null)[][] = [];
  for (let row = 0; row < end.rows; row++) {
    if (row % CHUNK_ROWS === CHUNK_ROWS - 1) await breath();
    const cells: (Cell | null)[] = [];
    const last = Math.max(size.columns, 1 + Math.max(-1, ...Object.keys(matrix.getRow(row) ?? {}).map(Number)));
    for (let column = 0; column < last; column++) cells.push(readCell(engine, worksheet, row, column, styles));
    while (cells.length > 0 && cells.at(-1) === null) cells.pop();
    rows.push(cells);
  }
  while (rows.length > 0 && rows.at(-1)!.length === 0) rows.pop();
  withSpills(engine, worksheet, rows);
  return { name: worksheet.getName(), rows, ...setUp(config, rows) };
}

function readCell(
  engine: Engine,
  worksheet: Worksheet,
  row: number,
  column: number,
  styles: Map<string, IStyleData>,
): Cell | null {
  const raw = worksheet.getCellRaw(row, column);
  const value = plainValue(engine.library, cellData(engine, worksheet, row, column));
  const formula = cellFormula(engine, worksheet, row, column).replace(/^=/, '');
  const notes = notesAt(worksheet, row, column);
  const style = raw?.s == null ? undefined : styleOf(engine, raw.s, styles);
  const look = style === undefined ? {} : lookOfStyle(style, value, notes?.input === true);
  const comment = notes?.comment;
  if (value === null && formula === '' && comment === undefined && Object.keys(look).length === 0) return null;
  return {
    value,
    ...look,
    ...(formula === '' ? {} : { formula }),
    ...(comment === undefined ? {} : { comment }),
  };
}

function styleOf({ workbook }: Engine, style: string | IStyleData, known: Map<string, IStyleData>): IStyleData {
  if (typeof style !== 'string') return style;
  const made = known.get(style) ?? workbook.getStyles().get(style) ?? {};
  known.set(style, made);
  return made;
}

/** The areas that formulas spill over. */
function withSpills({ library, injector, workbook }: Engine, worksheet: Worksheet, rows: (Cell | null)[][]): void {
  const model = injector.get(library.engineFormula.FormulaDataModel);
  const areas = model.getArrayFormulaRange()[workbook.getUnitId()]?.[worksheet.getSheetId()];
  if (!areas) return;
  new library.core.ObjectMatrix(areas).forValue((row, column, area) => {
    const cell = rows[row]?.[column];
    if (!cell?.formula || !area) return;
    const size = { rows: area.endRow - area.startRow + 1, columns: area.endColumn - area.startColumn + 1 };
    if (size.rows * size.columns > 1) rows[row]![column] = { ...cell, spill: size };
  });
}

function setUp(config: IWorksheetData, rows: HeldSheet['rows']): Omit<HeldSheet, 'name' | 'rows'> {
  const rules = rulesOf(config);
  const columns = Object.entries(config.columnData);
  const hiddenColumns = columns.filter(([, data]) => data?.hd === 1).map(([column]) => Number(column));
  const folded = runs(hiddenColumns);
  const hiddenRows = Object.entries(config.rowData)
    .filter(([, data]) => data?.hd === 1)
    .map(([row]) => Number(row));
  const wide = Math.max(
    rows.reduce((most, row) => Math.max(most, row.length), 0),
    ...columns.map(([column]) => Number(column) + 1),
  );
  const widths = Array.from({ length: wide }, (_, column) =>
    widthInCharacters(config.columnData[column]?.w ?? USUAL_COLUMN_PX),
  );
  // Not `ySplit`: a small page shows fewer of the rows than are frozen (page/frozenRows.ts).
  const { startRow, startColumn } = config.freeze;
  const heights = new Map(
    Object.entries(config.rowData).flatMap(([row, data]) => {
      // A height that the grid found for wrapped text stands in `ah`.
      const px =
        data?.h !== undefined && data.h !== USUAL_ROW_PX ? data.h : data?.ah !== USUAL_ROW_PX ? data?.ah : undefined;
      return px === undefined || data?.hd === 1 ? [] : [[Number(row), px / PX_IN_POINT] as const];
    }),
  );
  const even = { figures: rules?.kept.figures, frozenRows: Math.max(0, startRow) };
  rows.forEach((cells, row) => {
    if (!isEvenRow(even, row) || heights.has(row) || hiddenRows.includes(row)) return;
    const points = heightInFile({ widths, folded }, cells);
    if (points !== null) heights.set(row, points);
  });
  const merges = config.mergeData.map(({ startRow, endRow, startColumn, endColumn }) =>
    rangeAddress({ first: { row: startRow, column: startColumn }, last: { row: endRow, column: endColumn } }),
  );
  return {
    widths,
    frozenRows: even.frozenRows,
    frozenColumns: Math.max(0, startColumn),
    heights,
    ...(folded.length > 0 ? { folded } : {}),
    ...(hiddenRows.length > 0 ? { hiddenRows } : {}),
    ...(merges.length > 0 ? { merges } : {}),
    ...(config.hidden === 1 ? { hidden: true } : {}),
    ...(rules?.validations && rules.validations.length > 0 ? { validations: rules.validations } : {}),
    ...(rules?.locked ? { locked: true } : {}),
    home: 'A1',
    ...rules?.kept,
  };
}

function runs(numbers: readonly number[]): { first: number; last: number }[] {
  const found: { first: number; last: number }[] = [];
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const before = found.at(-1);
    if (before && before.last === number - 1) before.last = number;
    else found.push({ first: number, last: number });
  }
  return found;
}
