import type { IDisposable } from '@univerjs/core';
import type { Engine } from './engine';
import type { CellPlace } from './typing';

const WIDTH = 320;
const LINE_CHARACTERS = 44;
const LINE_PX = 20;
const FRAME_PX = 56;
/** More would hide the sheet; the oldest goes. */
const MOST = 3;

/** Sentences that stand at cells until what is typed there is right. */
export class CellNotesShown {
  private readonly shown = new Map<string, IDisposable>();

  constructor(private readonly engine: Engine) {}

  show(place: CellPlace, sentence: string): void {
    this.hide(place);
    const sheet = this.engine.workbook.getSheetBySheetName(place.sheet);
    if (!sheet) return;
    const range = this.engine.api
      .getActiveWorkbook()
      ?.getSheetBySheetId(sheet.getSheetId())
      ?.getRange(place.row, place.column) as { attachAlertPopup?: (alert: object) => IDisposable } | undefined;
    const note = range?.attachAlertPopup?.({
      title: 'Not taken',
      message: sentence,
      // A warning: the cell itself is as it was.
      type: 1,
      width: WIDTH,
      height: FRAME_PX + LINE_PX * Math.ceil(sentence.length / LINE_CHARACTERS),
    });
    if (note) this.shown.set(keyOf(place), note);
    const [oldest] = this.shown.keys();
    if (this.shown.size > MOST && oldest !== undefined) this.take(oldest);
  }

  hide(place: CellPlace): void {
    this.take(keyOf(place));
  }

  clear(): void {
    for (const key of [...this.shown.keys()]) this.take(key);
  }

  private take(key: string): void {
    this.shown.get(key)?.dispose();
    this.shown.delete(key);
  }
}

function keyOf({ sheet, row, column }: CellPlace): string {
  return `${sheet}!${row},${column}`;
}
