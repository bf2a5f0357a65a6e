import type { ICellData, IRange, IWorksheetData } from '@univerjs/core';
import { readRange } from '../../src/workbook/address';
import type { BookSheet, Cell, Sheet } from '../../src/workbook/sheet';
import { heightInFile, isEvenRow } from './evenRows';
import type { GridLibrary } from './library';
import { SharedFormulas } from './sharedFormulas';
import type { CellStyles } from './styles';

/** What the host needs of a sheet again later; kept with the worksheet itself, so that undo brings it back too. */
export interface SheetRules {
  readonly validations: Sheet['validations'];
  readonly locked: boolean;
  /** What the grid has no use for, for the file and for print. */
  readonly kept: Pick<Sheet, (typeof KEPT)[number]>;
}

const KEPT = [
  'figures',
  'home',
  'repeatRows',
  'landscape',
  'pagesWide',
  'pageBreaks',
  'printArea',
  'autoFilter',
] as const;

/** A sheet whose rows are all there. */
export type HeldSheet = BookSheet & { readonly rows: Sheet['rows'] };

/** What the host needs of a cell again later. */
export interface CellNotes {
  readonly input?: true;
  readonly comment?: string;
}

const CHARACTER_PX = 7.4;
const CELL_PADDING_PX = 12;
/** Characters of running text that fit a column are about those of its width, which is counted in digits. */
const LINE_FILL = 1.05;
/** Small print is smaller. */
const NOTE_FILL = 1.3;
const USUAL_WIDTH = 10;
const LINE_PX = 17;
const ROW_PADDING_PX = 7;
const TITLE_PX = 30;
/** Rows turned into the grid's cells, at most, between two looks at the stop signal, and for how long, in ms. */
const CHUNK_ROWS = 200;
const TURN_MS = 50;
const SPARE_ROWS = 40;
const SPARE_COLUMNS = 6;

/**
 * A sheet as the grid stores it, built in chunks: `step` is called after each with the rows done and says whether to go
 * on; undefined where it said no. Nothing of the workbook is touched.
 */
export async function worksheetData(
  { core }: GridLibrary,
  sheet: HeldSheet,
  styles: CellStyles,
  step: (rows: number) => Promise<boolean>,
): Promise<IWorksheetData | undefined> {
  const cells: Record<number, Record<number, ICellData>> = {};
  const formulas = new SharedFormulas();
  const spilled = spilledCells(sheet.rows);
  let turn = performance.now();
  for (const [at, row] of sheet.rows.entries()) {
    const filled: Record<number, ICellData> = {};
    row.forEach((cell, column) => {
      if (!cell) return;
      // What a formula spills stands in a layer of the grid's own; a value here would be in its way.
      const away = spilled.has(`${at},${column}`);
      filled[column] = gridCell(core.CellValueType, cell, styles, away ? null : cell.value);
      if (cell.formula !== undefined) formulas.put(filled[column], cell.formula, at, column);
    });
    cells[at] = filled;
    const done = at + 1;
    if (done < sheet.rows.length && done % CHUNK_ROWS !== 0 && performance.now() - turn < TURN_MS) continue;
    if (!(await step(done))) return undefined;
    turn = performance.now();
  }
  const columns = sheet.rows.reduce((most, row) => Math.max(most, row.length), sheet.widths.length);
  const kept = Object.fromEntries(KEPT.filter((key) => sheet[key] !== undefined).map((key) => [key, sheet[key]]));
  const rules: SheetRules = {
    validations: sheet.validations,
    locked: sheet.locked ?? false,
    kept: kept as unknown as SheetRules['kept'],
  };
  return core.mergeWorksheetSnapshotWithDefault({
    id: core.generateRandomId(8),
    name: sheet.name,
    hidden: sheet.hidden ? 1 : 0,
    cellData: cells,
    mergeData: mergedRanges(sheet.merges ?? []),
    rowCount: sheet.rows.length + SPARE_ROWS,
    columnCount: columns + SPARE_COLUMNS,
    columnData: columnData(sheet),
    rowData: rowData(sheet),
    freeze: {
      xSplit: sheet.frozenColumns,
      ySplit: sheet.frozenRows,
      startRow: sheet.frozenRows || -1,
      startColumn: sheet.frozenColumns || -1,
    },
    custom: { rules },
  });
}

type CellValueTypes = GridLibrary['core']['CellValueType'];

function gridCell(types: CellValueTypes, cell: Cell, styles: CellStyles, value: Cell['value']): ICellData {
  const data: ICellData = { s: styles.of(cell), ...typedValue(types, value) };
  const notes: CellNotes = {
    ...(cell.style === 'input' ? { input: true } : {}),
    ...(cell.comment !== undefined ? { comment: cell.comment } : {}),
  };
  if (cell.style === 'input' || cell.comment !== undefined) data.custom = notes;
  return data;
}

/** A value with its type said, so that the grid guesses nothing: text stays text, also "1/2", "007" or "=A1". */
export function typedValue(types: CellValueTypes, value: Cell['value']): ICellData {
  if (value === null) return {};
  if (typeof value === 'number') return { v: value, t: types.NUMBER };
  if (typeof value === 'boolean') return { v: value ? 1 : 0, t: types.BOOLEAN };
  return { v: value, t: value.trim() !== '' && !Number.isNaN(Number(value)) ? types.FORCE_STRING : types.STRING };
}

/** The cells, but for the first, of each area that a formula spills over, as `row,column`. */
function spilledCells(rows: Sheet['rows']): Set<string> {
  const covered = new Set<string>();
  for (const [row, cells] of rows.entries()) {
    for (const [column, cell] of cells.entries()) {
      if (!cell?.spill) continue;
      for (let down = 0; down < cell.spill.rows; down++)
        for (let right = 0; right < cell.spill.columns; right++)
          if (down > 0 || right > 0) covered.add(`${row + down},${column + right}`);
    }
  }
  return covered;
}

function mergedRanges(merges: readonly string[]): IRange[] {
  return merges.flatMap((ref) => {
    const range = readRange(ref);
    if (!range.ok) return [];
    const { first, last } = range.value;
    return [{ startRow: first.row, endRow: last.row, startColumn: first.column, endColumn: last.column }];
  });
}

/** Pixels in a point. */
export const PX_IN_POINT = 96 / 72;

function rowData(sheet: HeldSheet): Record<number, { h?: number; hd?: 0 | 1 }> {
  const rows: Record<number, { h?: number; hd?: 0 | 1 }> = sheet.heights
    ? Object.fromEntries(
        [...sheet.heights]
          .filter(([row, points]) => !isEvenRow(sheet, row) || points !== heightInFile(sheet, sheet.rows[row] ?? []))
          .map(([row, points]) => [row, { h: points * PX_IN_POINT }]),
      )
    : rowHeights(sheet);
  for (const row of sheet.hiddenRows ?? []) rows[row] = { ...rows[row], hd: 1 };
  return rows;
}

/** Rows whose text wraps are made high enough: the grid measures text only of rows that are edited. */
function rowHeights(sheet: HeldSheet): Record<number, { h: number }> {
  const heights: Record<number, { h: number }> = {};
  sheet.rows.forEach((row, at) => {
    if (isEvenRow(sheet, at)) return;
    let lines = 1;
    row.forEach((cell, column) => {
      if (!cell?.wrap || typeof cell.value !== 'string') return;
      const fill = cell.style === 'note' ? NOTE_FILL : LINE_FILL;
      lines = Math.max(lines, wrappedLines(cell.value, (sheet.widths[column] ?? USUAL_WIDTH) * fill));
    });
    if (lines > 1) heights[at] = { h: lines * LINE_PX + ROW_PADDING_PX };
    else if (row.some((cell) => cell?.style === 'title')) heights[at] = { h: TITLE_PX };
  });
  return heights;
}

function wrappedLines(text: string, characters: number): number {
  let lines = 1;
  let used = 0;
  for (const word of text.split(/\s+/)) {
    if (used > 0 && used + 1 + word.length > characters) {
      lines++;
      used = 0;
    }
    used += (used > 0 ? 1 : 0) + word.length;
  }
  return lines;
}

function widthInPixels(characters: number): number {
  return Math.round(characters * CHARACTER_PX + CELL_PADDING_PX);
}

/** A width such that it comes out as so many pixels. */
export function widthInCharacters(pixels: number): number {
  return Math.max(0, Math.round(((pixels - CELL_PADDING_PX) / CHARACTER_PX) * 100) / 100);
}

function columnData(sheet: HeldSheet): Record<number, { w?: number; hd?: 0 | 1 }> {
  const columns: Record<number, { w?: number; hd?: 0 | 1 }> = {};
  sheet.widths.forEach((characters, column) => {
    columns[column] = { w: widthInPixels(characters) };
  });
  for (const { first, last } of sheet.folded ?? []) {
    for (let column = first; column <= last; column++) columns[column] = { ...columns[column], hd: 1 };
  }
  return columns;
}
