import { ok, refuse, type Result } from '../../../src/result';
import { asValues } from '../../../src/workbook/readBook';
import { usedSize, type Engine } from '../engine';
import { addSheets, openBook, replaceWorkbook } from '../openBook';
import { readGrid } from '../readGrid';
import { endEditing } from '../typing';
import { Autosave, bringBack, onChange } from './autosave';
import { bookOf, fileOf } from './beside';
import { Keep, type KeptJob, type RecentJob } from './keep';
import { holdPage, openPages } from './pages';
import { pickPlace, type Place } from './place';
import { textSheets, withoutExtension } from './textSheets';

/** What the page says of the job: its name, whether it has changes that are in no file, and what is under way. */
export interface JobState {
  readonly name: string;
  readonly changed: boolean;
  readonly working: string | null;
  /** Work that was not saved when the page was last left. */
  readonly left: KeptJob | null;
  readonly recent: readonly RecentJob[];
}

const NEW_NAME = 'New job';

/** The workbook in the grid as a document: a name, a place on disk, and whether all of it is there. */
export class Job {
  private state: JobState = { name: NEW_NAME, changed: false, working: null, left: null, recent: [] };
  private readonly listeners = new Set<() => void>();
  private place: Place | null = null;
  private keep: Keep | null = null;
  private autosave: Autosave | null = null;
  private readonly id = newId();
  private quiet = false;

  /** `again`: the pane is to start anew on another workbook. `say`: one sentence to the user. */
  constructor(
    private readonly engine: Engine,
    private readonly again: () => void,
    private readonly say: (sentence: string) => void,
  ) {
    onChange(engine, (_sheet, byHand) => {
      if (byHand && !this.quiet) this.touch();
    });
    addEventListener('beforeunload', (event) => {
      if (this.state.changed) event.preventDefault();
    });
    // A page that is left or hidden may be ended without another word.
    addEventListener('pagehide', () => void this.autosave?.flush());
  }

  get(): JobState {
    return this.state;
  }

  listen(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private set(change: Partial<JobState>): void {
    this.state = { ...this.state, ...change };
    document.title = `${this.state.changed ? '• ' : ''}${this.state.name} – Archwright workbench`;
    for (const listener of [...this.listeners]) listener();
  }

  /** A change by hand, of cells or of what the pane keeps with them. */
  touch(): void {
    this.autosave?.mark(null);
    if (!this.state.changed) this.set({ changed: true });
  }

  /** The browser's storage, where it gives any; looks for work that was left unsaved. */
  async start(): Promise<void> {
    this.set({});
    try {
      this.keep = await Keep.open();
    } catch {
      this.say('This browser keeps nothing for the page: save the job to a file before you leave.');
      return;
    }
    const jobs = await this.keep.jobs();
    const open = await openPages();
    const left = jobs.filter((job) => job.changed && !open.has(job.id)).sort((one, other) => other.at - one.at)[0];
    for (const job of jobs) if (job !== left && !open.has(job.id)) await this.keep.forget(job.id);
    holdPage(this.id);
    this.autosave = new Autosave(this.engine, this.keep, () => ({
      id: this.id,
      name: this.state.name,
      changed: this.state.changed,
    }));
    this.set({ left: left ?? null, recent: await this.keep.recent() });
  }

  rename(name: string): void {
    const trimmed = name.trim() || NEW_NAME;
    if (trimmed === this.state.name) return;
    this.set({ name: trimmed });
    this.place = null;
    this.touch();
  }

  /** Brings back what was left unsaved, or forgets it. */
  async takeLeft(back: boolean): Promise<void> {
    const { left } = this.state;
    if (!left || !this.keep) return;
    if (back) {
      const opened = await this.during(`Bringing back ${left.name}`, () => bringBack(this.engine, this.keep!, left));
      if (!opened.ok) return this.say(opened.message);
      this.set({ name: left.name, changed: true });
      this.everySheet();
      await this.autosave?.flush();
      this.again();
      this.say(`${left.name} is back as it was ${ago(left.at)}. Save it to a file to keep it.`);
    }
    await this.keep.forget(left.id);
    this.set({ left: null });
  }

  /** Writes the job to its file; asks for a place the first time, and for a copy. Gives whether it is written. */
  async save(copy = false): Promise<boolean> {
    if (this.state.working !== null) return false;
    if (this.place === null || copy) {
      const picked = await pickPlace(`${fileName(this.state.name)}.xlsx`);
      if (picked === null) return false;
      this.place = picked;
      if (picked.name !== null) this.set({ name: withoutExtension(picked.name) });
    }
    const { place } = this;
    const written = await this.during('Saving', async () => {
      await endEditing(this.engine);
      await this.engine.settled();
      this.set({ changed: false });
      const file = await fileOf(await readGrid(this.engine, breath));
      if (!file.ok) return file;
      const put = await place.write(file.value);
      if (put.ok) await this.remember(file.value);
      return put;
    });
    if (!written.ok) {
      this.set({ changed: true });
      this.say(written.message);
      return false;
    }
    this.autosave?.mark(null);
    this.say(`Saved: ${place.name ?? `${fileName(this.state.name)}.xlsx`}.`);
    return true;
  }

  /** The bytes of the job's file, for a test or another place. */
  async bytes(): Promise<Result<Uint8Array>> {
    return fileOf(await readGrid(this.engine, breath));
  }

  /**
   * A file: a workbook of ours takes the place of what is there, after `mayReplace` says so; the sheets of any other are
   * added as values.
   */
  async open(name: string, bytes: Uint8Array, mayReplace: () => Promise<boolean>): Promise<void> {
    const opened = await this.during(`Opening ${name}`, () => this.take(name, bytes, mayReplace));
    if (!opened.ok) this.say(opened.message);
    else if (opened.value !== '') this.say(opened.value);
  }

  private async take(name: string, bytes: Uint8Array, mayReplace: () => Promise<boolean>): Promise<Result<string>> {
    const isZip = bytes[0] === 0x50 && bytes[1] === 0x4b;
    const book = isZip ? await bookOf(bytes) : null;
    if (book && !book.ok) return refuse(`${name} can't be opened. ${book.message}`);
    if (book?.ok && book.value.ours) {
      if (!(await mayReplace())) return ok('');
      const replaced = await this.replaced(() => openBook(this.engine, book.value, breath), withoutExtension(name));
      if (replaced.ok) await this.remember(bytes);
      return replaced.ok ? ok(`${name} is open.`) : replaced;
    }
    const sheets = book?.ok ? ok(asValues(book.value).sheets) : await textSheets(name, bytes);
    if (!sheets.ok) return sheets;
    const blank = this.isBlank();
    const added = await addSheets(this.engine, sheets.value, breath);
    if (!added.ok) return added;
    if (blank) {
      this.engine.api.getActiveWorkbook()?.deleteSheet(blank);
      this.set({ name: withoutExtension(name) });
    }
    const sheet = this.engine.workbook.getSheetBySheetName(added.value[0] ?? '');
    if (sheet) this.engine.api.getActiveWorkbook()?.getSheetBySheetId(sheet.getSheetId())?.activate();
    const formulas =
      book?.ok && book.value.sheets.some(({ rows }) => rows.some((row) => row.some((cell) => cell?.formula)));
    return ok(
      `${name} stands in ${added.value.length === 1 ? 'a sheet' : `${added.value.length} sheets`} of its own${formulas ? ', as values' : ''}.`,
    );
  }

  async openRecent(recent: RecentJob, mayReplace: () => Promise<boolean>): Promise<void> {
    await this.open(`${recent.name}.xlsx`, recent.bytes, mayReplace);
  }

  /** An empty workbook. */
  async startNew(mayReplace: () => Promise<boolean>): Promise<void> {
    if (!(await mayReplace())) return;
    const sheet = this.engine.library.core.mergeWorksheetSnapshotWithDefault({
      id: this.engine.library.core.generateRandomId(8),
      name: 'Sheet1',
      rowCount: 200,
      columnCount: 30,
    });
    const started = await this.replaced(
      async () => replaceWorkbook(this.engine, { sheets: [sheet], names: [], settings: {} }),
      NEW_NAME,
    );
    if (!started.ok) this.say(started.message);
  }

  private async replaced(deed: () => Promise<Result<void>>, name: string): Promise<Result<void>> {
    this.quiet = true;
    try {
      const done = await deed();
      if (!done.ok) return done;
      this.place = null;
      this.set({ name, changed: false });
      this.everySheet();
      this.again();
      // What follows from opening (errors that get their sentences back) is no change of the user's.
      await this.engine.settled();
      return done;
    } finally {
      this.quiet = false;
    }
  }

  private everySheet(): void {
    for (const sheet of this.engine.workbook.getSheets()) this.autosave?.mark(sheet.getSheetId());
  }

  private async remember(bytes: Uint8Array): Promise<void> {
    if (!this.keep) return;
    try {
      await this.keep.addRecent({ name: this.state.name, at: Date.now(), bytes });
      this.set({ recent: await this.keep.recent() });
    } catch {
      // A full storage is no reason to call the saved file not saved.
    }
  }

  /** The id of the only sheet, where it is still empty. */
  private isBlank(): string | null {
    const sheets = this.engine.workbook.getSheets();
    const [only] = sheets;
    return only && sheets.length === 1 && usedSize(this.engine, only).rows === 0 ? only.getSheetId() : null;
  }

  private async during<T>(what: string, deed: () => Promise<Result<T>>): Promise<Result<T>> {
    this.set({ working: what });
    try {
      return await deed();
    } catch (thrown) {
      return refuse(`${what} failed: ${thrown instanceof Error ? thrown.message : String(thrown)}.`);
    } finally {
      this.set({ working: null });
    }
  }
}

function breath(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}

function fileName(name: string): string {
  return name.replace(/[\\/:*?"<>|]/g, ' ').trim() || NEW_NAME;
}

function newId(): string {
  return Math.random().toString(36).slice(2) + Date.now().toString(36);
}

export function ago(at: number): string {
  const minutes = Math.round((Date.now() - at) / 60_000);
  if (minutes < 1) return 'a moment ago';
  if (minutes < 60) return minutes === 1 ? 'a minute ago' : `${minutes} minutes ago`;
  return `on ${new Date(at).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' })}`;
}
