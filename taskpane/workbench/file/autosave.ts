import type { ICellData, ICommandInfo, IStyleData, IWorksheetData } from '@univerjs/core';
import type { Result } from '../../../src/result';
import type { Engine } from '../engine';
import { replaceWorkbook } from '../openBook';
import { namesOf, settingsOf } from '../readGrid';
import { enterCells } from '../write';
import type { Keep, KeptJob } from './keep';

/** After a change so long is waited for more of them: a killed page loses no more. */
const GATHER_MS = 1500;

/** Changes of how a sheet is drawn, made by the grid itself. */
const NOT_BY_HAND = /auto-height|is-auto|dirty|set-worksheet-active|scroll|selection/;

/** Tells of every change of the workbook: `sheet` null for one of the workbook as a whole, `byHand` false for values that follow. */
export function onChange(engine: Engine, changed: (sheet: string | null, byHand: boolean) => void): void {
  const { CommandType, ICommandService } = engine.library.core;
  engine.injector.get(ICommandService).onCommandExecuted((command: Readonly<ICommandInfo>, options) => {
    if (command.type !== CommandType.MUTATION || options?.onlyLocal) return;
    const names = /^formula\.mutation\.(set|remove)-defined-name$/.test(command.id);
    if (!names && !command.id.startsWith('sheet.mutation.')) return;
    if (NOT_BY_HAND.test(command.id)) return;
    const { subUnitId, sheet } = (command.params ?? {}) as { subUnitId?: string; sheet?: { id: string } };
    changed(names ? null : (subUnitId ?? sheet?.id ?? null), !options?.['fromFormula']);
  });
}

/** Keeps the workbook in the browser while it is worked on. */
export class Autosave {
  private readonly dirty = new Set<string>();
  private timer: ReturnType<typeof setTimeout> | undefined;
  private writing: Promise<void> = Promise.resolve();

  constructor(
    private readonly engine: Engine,
    private readonly keep: Keep,
    private readonly about: () => { readonly id: string; readonly name: string; readonly changed: boolean },
  ) {
    onChange(engine, (sheet) => this.mark(sheet));
  }

  /** Something changed: of the sheet, or of the workbook as a whole. */
  mark(sheet: string | null): void {
    if (sheet !== null) this.dirty.add(sheet);
    this.timer ??= setTimeout(() => void this.flush(), GATHER_MS);
  }

  /** Writes what changed now. */
  flush(): Promise<void> {
    clearTimeout(this.timer);
    this.timer = undefined;
    const { workbook } = this.engine;
    const sheets = workbook.getSheets().filter((sheet) => this.dirty.has(sheet.getSheetId()));
    this.dirty.clear();
    const job: KeptJob = {
      ...this.about(),
      at: Date.now(),
      order: [...workbook.getSheetOrders()],
      styles: workbook.getSnapshot().styles,
      names: namesOf(this.engine).map(({ name, ref }) => ({ name, ref })),
      settings: settingsOf(this.engine),
    };
    const snapshots = sheets.map((sheet) => sheet.getSnapshot());
    this.writing = this.writing
      .then(() => this.keep.put(job, snapshots))
      .catch(() => {
        // Full or closed storage: tried again with the next change, all of these sheets too.
        for (const sheet of sheets) this.dirty.add(sheet.getSheetId());
      });
    return this.writing;
  }
}

/** Brings a kept workbook back into the grid. */
export async function bringBack(engine: Engine, keep: Keep, job: KeptJob): Promise<Result<void>> {
  const sheets = await keep.sheets(job);
  const ids = new Map<string, string>();
  const styles = engine.workbook.getStyles();
  for (const [id, style] of Object.entries(job.styles)) {
    if (style) ids.set(id, styles.setValue(style as IStyleData)!);
  }
  for (const sheet of sheets) restyle(sheet, ids);
  const opened = replaceWorkbook(engine, { sheets, names: job.names, settings: job.settings });
  if (!opened.ok) return opened;
  // A page may have been killed between an edit and what follows from it, and what a formula spills is not kept.
  for (const worksheet of engine.workbook.getSheets()) enterCells(engine, worksheet, () => true);
  return opened;
}

function restyle(sheet: IWorksheetData, ids: ReadonlyMap<string, string>): void {
  for (const row of Object.values(sheet.cellData)) {
    for (const cell of Object.values((row ?? {}) as Record<number, ICellData>)) {
      if (typeof cell.s === 'string') cell.s = ids.get(cell.s) ?? null;
    }
  }
}
