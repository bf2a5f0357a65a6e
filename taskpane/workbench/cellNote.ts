import type { IDisposable } from '@univerjs/core';
import type { Engine } from './engine';
import type { CellPlace } from './typing';

const WIDTH = 320;
const LINE_CHARACTERS = 44;
const LINE_PX = 20;
const FRAME_PX = 56;
/** More would hide the sheet; the oldest goes. */
const MOST = 3;

interface Note {
  readonly place: CellPlace;
  readonly sentence: string;
  /** Takes it off the screen; null while another sheet is shown. */
  drawn: IDisposable | null;
}

/** Sentences that stand at cells until what is typed there is right; each only while its own sheet is shown. */
export class CellNotesShown {
  private readonly notes = new Map<string, Note>();

  constructor(private readonly engine: Engine) {
    const { core, sheets } = engine.library;
    engine.injector.get(core.ICommandService).onCommandExecuted(({ id }) => {
      if (id === sheets.SetWorksheetActiveOperation.id) this.sheetShown();
    });
  }

  show(place: CellPlace, sentence: string): void {
    this.hide(place);
    const note: Note = { place, sentence, drawn: null };
    this.notes.set(keyOf(place), note);
    this.draw(note);
    const [oldest] = this.notes.keys();
    if (this.notes.size > MOST && oldest !== undefined) this.take(oldest);
  }

  hide(place: CellPlace): void {
    this.take(keyOf(place));
  }

  clear(): void {
    for (const key of [...this.notes.keys()]) this.take(key);
  }

  private sheetShown(): void {
    for (const note of this.notes.values()) {
      note.drawn?.dispose();
      note.drawn = null;
      this.draw(note);
    }
  }

  private draw(note: Note): void {
    const sheet = this.engine.workbook.getActiveSheet();
    const { place, sentence } = note;
    if (sheet?.getName() !== place.sheet) return;
    const range = this.engine.api
      .getActiveWorkbook()
      ?.getSheetBySheetId(sheet.getSheetId())
      ?.getRange(place.row, place.column) as { attachAlertPopup?: (alert: object) => IDisposable } | undefined;
    note.drawn =
      range?.attachAlertPopup?.({
        title: 'Not taken',
        message: sentence,
        // A warning: the cell itself is as it was.
        type: 1,
        width: WIDTH,
        height: FRAME_PX + LINE_PX * Math.ceil(sentence.length / LINE_CHARACTERS),
      }) ?? null;
  }

  private take(key: string): void {
    this.notes.get(key)?.drawn?.dispose();
    this.notes.delete(key);
  }
}

function keyOf({ sheet, row, column }: CellPlace): string {
  return `${sheet}!${row},${column}`;
}
