import type { Worksheet } from '@univerjs/core';
import type { Engine } from '../engine';

/** Narrow or low, as at twice the size: each line counts, and what is used less stands behind one button. The same as in workbench.css. */
export const TIGHT = '(max-width: 860px), (max-height: 480px)';

/** Of the rows that stand over a sheet's list, those that stay in sight where each line counts: the headings and their units. */
const ROWS_KEPT = 2;

/**
 * A Takeoff has five rows over its list, as tall as eight: on a small page they would leave room for two openings. There the
 * title and what else stands over the headings is put away, and can be shown. `startRow` stays, so that a saved file freezes
 * what it always did.
 */
export class FrozenRows {
  private readonly small = matchMedia(TIGHT);
  private whole = false;

  constructor(private readonly engine: Engine) {
    const { CommandType, ICommandService } = engine.library.core;
    this.small.addEventListener('change', () => this.fit());
    engine.injector.get(ICommandService).onCommandExecuted((command) => {
      if (/^sheet\.(operation\.set-worksheet-active|mutation\.insert-sheet)/.test(command.id)) this.fit();
      // Frozen anew by hand: as it was asked for.
      if (command.id === 'sheet.command.set-frozen' && command.type === CommandType.COMMAND) this.whole = true;
    });
    this.fit();
  }

  get shown(): boolean {
    return this.whole;
  }

  /** Shows the rows over the headings, or puts them away again. */
  toggle(): void {
    this.whole = !this.whole;
    this.fit();
  }

  private fit(): void {
    const sheet = this.engine.workbook.getActiveSheet();
    if (sheet) this.fitSheet(sheet);
  }

  private fitSheet(sheet: Worksheet): void {
    const { freeze } = sheet.getConfig();
    if (freeze.startRow <= ROWS_KEPT) return;
    const ySplit = this.small.matches && !this.whole ? ROWS_KEPT : freeze.startRow;
    if (ySplit === freeze.ySplit) return;
    this.engine.injector.get(this.engine.library.core.ICommandService).syncExecuteCommand(
      'sheet.mutation.set-frozen',
      { unitId: this.engine.workbook.getUnitId(), subUnitId: sheet.getSheetId(), ...freeze, ySplit },
      // A matter of this page, not of the workbook.
      { onlyLocal: true },
    );
  }
}
