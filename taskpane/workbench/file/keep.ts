import type { IWorksheetData } from '@univerjs/core';
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';

/** A workbook as it was kept while it was worked on; its sheets stand under keys of their own. */
export interface KeptJob {
  readonly id: string;
  readonly name: string;
  /** Changes that are in no file yet. */
  readonly changed: boolean;
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly order: readonly string[];
  readonly styles: Readonly<Record<string, unknown>>;
  readonly names: readonly { readonly name: string; readonly ref: string }[];
  readonly settings: Readonly<Record<string, string>>;
}

export interface RecentJob {
  readonly name: string;
  readonly at: number;
  readonly bytes: Uint8Array;
}

interface Stores extends DBSchema {
  jobs: { key: string; value: KeptJob };
  sheets: { key: string; value: IWorksheetData };
  recent: { key: string; value: RecentJob };
}

const MOST_RECENT = 6;

/** What the browser keeps for the workbench. Nothing of it leaves this computer. */
export class Keep {
  private constructor(private readonly db: IDBPDatabase<Stores>) {}

  static async open(): Promise<Keep> {
    return new Keep(
      await openDB<Stores>('archwright-workbench', 1, {
        upgrade(db) {
          for (const store of ['jobs', 'sheets', 'recent'] as const) db.createObjectStore(store);
        },
      }),
    );
  }

  jobs(): Promise<KeptJob[]> {
    return this.db.getAll('jobs');
  }

  async sheets(job: KeptJob): Promise<IWorksheetData[]> {
    const found = await Promise.all(job.order.map((sheet) => this.db.get('sheets', `${job.id}/${sheet}`)));
    return found.filter((sheet) => sheet !== undefined);
  }

  /** All or nothing: the job's record, the sheets that changed, and those that are gone taken out. */
  async put(job: KeptJob, changed: readonly IWorksheetData[]): Promise<void> {
    const step = this.db.transaction(['jobs', 'sheets'], 'readwrite');
    const sheets = step.objectStore('sheets');
    const wanted = new Set(job.order.map((sheet) => `${job.id}/${sheet}`));
    const own = IDBKeyRange.bound(`${job.id}/`, `${job.id}/\uffff`);
    await Promise.all([
      step.objectStore('jobs').put(job, job.id),
      ...changed.map((sheet) => sheets.put(sheet, `${job.id}/${sheet.id}`)),
      sheets
        .getAllKeys(own)
        .then((keys) => Promise.all(keys.filter((key) => !wanted.has(key)).map((key) => sheets.delete(key)))),
      step.done,
    ]);
  }

  async forget(id: string): Promise<void> {
    const step = this.db.transaction(['jobs', 'sheets'], 'readwrite');
    await Promise.all([
      step.objectStore('jobs').delete(id),
      step.objectStore('sheets').delete(IDBKeyRange.bound(`${id}/`, `${id}/\uffff`)),
      step.done,
    ]);
  }

  /** Newest first. */
  async recent(): Promise<RecentJob[]> {
    const all = await this.db.getAll('recent');
    return all.sort((one, other) => other.at - one.at);
  }

  /** A job saved or opened last, under its name; only the newest few are kept. */
  async addRecent(job: RecentJob): Promise<void> {
    await this.db.put('recent', job, job.name);
    const older = (await this.recent()).slice(MOST_RECENT);
    await Promise.all(older.map(({ name }) => this.db.delete('recent', name)));
  }
}
