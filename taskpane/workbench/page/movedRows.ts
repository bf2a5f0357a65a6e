import type { ICellData, IMutationInfo, IRange, Worksheet } from '@univerjs/core';
import { copiedFormula } from '../../../src/workbook/formulas/relativeForm';
import { cellFormula, type Engine } from '../engine';

/** What puts rows into another order, and what puts them back. */
export interface MovedRows {
  readonly redo: readonly IMutationInfo[];
  readonly undo: readonly IMutationInfo[];
}

type Cells = Record<number, Record<number, ICellData>>;

/**
 * The cells of `body` so that row `order[at]` stands in its row `at`, with their heights. The grid's own command would
 * measure every row's text for its height, which held the page for half a second at 1,000 rows.
 */
export function movedRows(engine: Engine, sheet: Worksheet, body: IRange, order: readonly number[]): MovedRows {
  const redo: Cells = {};
  const undo: Cells = {};
  order.forEach((from, at) => {
    const to = body.startRow + at;
    if (from === to) return;
    for (let column = body.startColumn; column <= body.endColumn; column++) {
      const moved = movedCell(engine, sheet, from, to, column);
      if (moved === null) continue;
      (redo[to] ??= {})[column] = moved;
      (undo[to] ??= {})[column] = wholeCell(sheet.getCellRaw(to, column));
    }
  });
  if (Object.keys(redo).length === 0) return { redo: [], undo: [] };
  const place = { unitId: engine.workbook.getUnitId(), subUnitId: sheet.getSheetId() };
  const { id } = engine.library.sheets.SetRangeValuesMutation;
  const heights = movedHeights(engine, sheet, body, order);
  return {
    redo: [{ id, params: { ...place, cellValue: redo } }, ...heights.redo],
    undo: [{ id, params: { ...place, cellValue: undo } }, ...heights.undo],
  };
}

/** All that a cell holds, said so that nothing stays of what it is written over. */
function wholeCell(cell: ReturnType<Worksheet['getCellRaw']>): ICellData {
  const raw = cell ?? null;
  return {
    ...{ p: raw?.p ?? null, s: raw?.s ?? null, custom: raw?.custom ?? null },
    ...{ si: raw?.si ?? null, f: raw?.f ?? null, v: raw?.v ?? null, t: raw?.t ?? null },
  };
}

/** A cell as it stands in another row; null where one just like it stands there: most do, and each that is written takes its time. */
function movedCell(engine: Engine, sheet: Worksheet, from: number, to: number, column: number): ICellData | null {
  const [raw, there] = [sheet.getCellRaw(from, column), sheet.getCellRaw(to, column)];
  const looksAlike =
    (there?.s ?? null) === (raw?.s ?? null) && !there?.p && !raw?.p && notedAlike(there?.custom, raw?.custom);
  // Cells of one form; what they give follows from the row.
  if (looksAlike && raw?.si != null && raw.si === there?.si) return null;
  const formulaOf = (cell: typeof raw, row: number) =>
    cell?.f || cell?.si ? cellFormula(engine, sheet, row, column) : '';
  const formula = formulaOf(raw, from);
  const moved = formula === '' ? null : copiedFormula(formula, to - from, 0);
  const sameValue = (there?.v ?? null) === (raw?.v ?? null) && (there?.t ?? null) === (raw?.t ?? null);
  const sameFormula = (moved ?? '') === formulaOf(there, to);
  if (looksAlike && sameFormula && (moved !== null || sameValue)) return null;
  return { ...wholeCell(raw), si: null, f: moved };
}

/** Whether the same is noted at two cells, but for the sentence of an error, which comes with its value. */
function notedAlike(one: ICellData['custom'], other: ICellData['custom']): boolean {
  const keys = Object.keys({ ...one, ...other }).filter((key) => key !== 'error');
  return keys.every((key) => {
    const [note, there]: unknown[] = [one?.[key], other?.[key]];
    return note === there || JSON.stringify(note) === JSON.stringify(there);
  });
}

/** Rows keep their heights, those set by hand and those that the grid found for their text. */
function movedHeights(engine: Engine, sheet: Worksheet, body: IRange, order: readonly number[]): MovedRows {
  const manager = sheet.getRowManager();
  const usual = sheet.getConfig().defaultRowHeight;
  const heightOf = (row: number) => {
    const { h = usual, ah, ia } = manager.getRow(row) ?? {};
    return { h, ah, ia };
  };
  type Height = ReturnType<typeof heightOf>;
  const differing = order.flatMap((from, at) => {
    const [moved, there] = [heightOf(from), heightOf(body.startRow + at)];
    const same = moved.h === there.h && moved.ah === there.ah && moved.ia === there.ia;
    return same ? [] : [{ row: body.startRow + at, moved, there }];
  });
  if (differing.length === 0) return { redo: [], undo: [] };
  const { sheets } = engine.library;
  const place = { unitId: engine.workbook.getUnitId(), subUnitId: sheet.getSheetId() };
  const ranges = differing.map(({ row }) => ({ ...body, startRow: row, endRow: row }));
  const steps = (which: 'moved' | 'there'): IMutationInfo[] => {
    const byRow = <T>(of: (height: Height) => T) =>
      Object.fromEntries(differing.map((each) => [each.row, of(each[which])]));
    const rowsAutoHeightInfo = differing.map((each) => ({ row: each.row, autoHeight: each[which].ah }));
    return [
      { id: sheets.SetWorksheetRowHeightMutation.id, params: { ...place, ranges, rowHeight: byRow(({ h }) => h) } },
      { id: sheets.SetWorksheetRowAutoHeightMutation.id, params: { ...place, rowsAutoHeightInfo } },
      {
        id: sheets.SetWorksheetRowIsAutoHeightMutation.id,
        params: { ...place, ranges, autoHeightInfo: byRow(({ ia }) => ia) },
      },
    ];
  };
  return { redo: steps('moved'), undo: steps('there') };
}
