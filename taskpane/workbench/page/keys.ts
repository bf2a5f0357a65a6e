import type { Worksheet } from '@univerjs/core';
import { addressOf, type CellPosition } from '../../../src/workbook/address';
import { usedSize, type Engine } from '../engine';
import { endEditing, isEditing } from '../typing';
import type { WorkbenchHost } from '../workbenchHost';

export interface KeyDeeds {
  readonly save: () => void;
  readonly open: () => void;
  readonly print: () => void;
  readonly find: () => void;
  readonly keys: () => void;
  readonly escape: () => void;
}

/** The page's keys. They are heard before the grid, which has some of them for things of its own. */
export function watchKeys(engine: Engine, host: WorkbenchHost, grid: HTMLElement, deeds: KeyDeeds): void {
  const ofThePage: Readonly<Record<string, () => void>> = {
    s: deeds.save,
    o: deeds.open,
    p: deeds.print,
    f: deeds.find,
  };
  window.addEventListener(
    'keydown',
    (event) => {
      if (document.querySelector('dialog[open]')) return;
      const taken = () => {
        event.preventDefault();
        event.stopPropagation();
      };
      const control = event.ctrlKey || event.metaKey;
      const deed = control && !event.shiftKey && !event.altKey ? ofThePage[event.key.toLowerCase()] : undefined;
      if (deed) {
        taken();
        // What was typed so far counts: it is saved, found and printed with the rest.
        if (isEditing(engine)) void endEditing(engine).then(deed);
        else deed();
        return;
      }
      const inGrid = grid.contains(event.target as Node);
      const typing = (event.target as HTMLElement).matches('input, textarea, select, [contenteditable="true"]');
      if (event.key === '?' && !control && !typing) {
        taken();
        return deeds.keys();
      }
      // While a cell or the formula line is being changed, these keys move in its text.
      if (!inGrid || (event.target as HTMLElement).matches('input, textarea') || isEditing(engine)) return;
      if (event.key === 'Escape') return deeds.escape();
      const sheet = engine.workbook.getActiveSheet();
      if (!sheet || event.shiftKey || event.altKey) return;
      if (control && (event.key === 'PageDown' || event.key === 'PageUp')) {
        taken();
        return nextSheet(engine, event.key === 'PageDown' ? 1 : -1);
      }
      const to = target(engine, sheet, event.key, control);
      if (!to) return;
      taken();
      void host.show(sheet.getName(), addressOf(to));
    },
    { capture: true },
  );
}

/** Where a key leads from the selected cell; null for a key that is not ours. */
function target(engine: Engine, sheet: Worksheet, key: string, control: boolean): CellPosition | null {
  const selection = engine.injector.get(engine.library.sheets.SheetsSelectionsService).getCurrentLastSelection();
  const row = selection?.range.startRow ?? 0;
  const column = selection?.range.startColumn ?? 0;
  const used = usedSize(engine, sheet);
  const lastRow = Math.max(0, used.rows - 1);
  const lastColumn = Math.max(0, used.columns - 1);
  const { startRow, startColumn } = sheet.getConfig().freeze;
  if (key === 'Home')
    return control ? { row: Math.max(0, startRow), column: Math.max(0, startColumn) } : { row, column: 0 };
  if (key === 'End')
    return control ? { row: lastRow, column: lastColumn } : { row, column: lastFilled(sheet, row, lastColumn) };
  if (control || (key !== 'PageDown' && key !== 'PageUp')) return null;
  const screen = rowsOnScreen(engine);
  const to = row + (key === 'PageDown' ? screen : -screen);
  return { row: Math.min(sheet.getRowCount() - 1, Math.max(0, to)), column };
}

function lastFilled(sheet: Worksheet, row: number, last: number): number {
  for (let column = last; column > 0; column--) {
    const cell = sheet.getCellRaw(row, column);
    if (cell && (cell.v ?? cell.f ?? cell.si ?? cell.p) != null && cell.v !== '' && sheet.getColVisible(column))
      return column;
  }
  return 0;
}

function rowsOnScreen({ api }: Engine): number {
  const range = api.getActiveWorkbook()?.getActiveSheet()?.getVisibleRange?.();
  return Math.max(1, range ? range.endRow - range.startRow : 20);
}

function nextSheet(engine: Engine, by: number): void {
  const shown = engine.workbook.getSheets().filter((sheet) => sheet.getConfig().hidden !== 1);
  const at = shown.findIndex((sheet) => sheet === engine.workbook.getActiveSheet());
  const next = shown[at + by];
  if (next) engine.api.getActiveWorkbook()?.getSheetBySheetId(next.getSheetId())?.activate();
}
