import type { Table } from '../../../src/schedule/opening';
import type { MeaningKey } from '../../../src/schedule/meanings';
import { fail, work, type Bench } from './bench';

/** Files past this are refused before a byte is read: 20 MB. */
export const MOST_BYTES = 20 * 1024 * 1024;

export async function listSheets({ host, store }: Bench): Promise<void> {
  const names = await host.sheetNames();
  // No list of sheets is no reason to stop: the other ways to choose a list still stand.
  store.send({ type: 'sheets listed', names: names.ok ? names.value : [] });
}

export function takeSelection(bench: Bench): Promise<void | undefined> {
  return work(bench, 'Reading the selected cells', async () => {
    const table = await bench.host.readSelection();
    if (!table.ok) return fail(bench, table.message);
    await takeTable(bench, table.value);
  });
}

export function takeSheet(bench: Bench, name: string): Promise<void | undefined> {
  return work(bench, `Reading sheet ${name}`, async () => {
    const table = await bench.host.readSheet(name);
    if (!table.ok) return fail(bench, table.message);
    if (table.value === null) return fail(bench, `Sheet "${name}" is not in this workbook any more.`);
    await takeTable(bench, table.value);
  });
}

export function takeFile(bench: Bench, file: File): Promise<void | undefined> {
  return work(bench, `Reading ${file.name}`, async () => {
    if (file.size > MOST_BYTES) {
      const size = (file.size / 1024 / 1024).toFixed(1);
      return fail(bench, `${file.name} is ${size} MB; files up to 20 MB can be read.`);
    }
    await takeBytes(bench, file.name, new Uint8Array(await file.arrayBuffer()));
  });
}

export function takeText(bench: Bench, text: string): Promise<void | undefined> {
  return work(bench, 'Reading the pasted text', async () => {
    if (text.trim() === '')
      return fail(bench, 'Nothing was pasted: paste the rows of the schedule into the box first.');
    // Rows copied from a spreadsheet or a mail come with tabs between the cells.
    const name = text.includes('\t') ? 'Pasted text.tsv' : 'Pasted text.csv';
    await takeBytes(bench, name, new TextEncoder().encode(text));
  });
}

export function takeExample(bench: Bench): Promise<void | undefined> {
  return work(bench, 'Opening the example', async () => {
    const { example, exampleSheet } = bench.options;
    const shown = exampleSheet === undefined ? null : await bench.host.readSheet(exampleSheet);
    if (shown?.ok && shown.value) return takeTable(bench, shown.value);
    const { name, bytes } = await example();
    await takeBytes(bench, name, bytes);
  });
}

async function takeBytes(bench: Bench, name: string, bytes: Uint8Array): Promise<void> {
  const tables = await bench.core.readTables(name, bytes);
  if (!tables.ok) return fail(bench, tables.message);
  const filled = tables.value.filter((table) => table.rows.length > 0);
  const [only] = filled;
  if (!only) return fail(bench, `${name} has no rows.`);
  if (filled.length === 1) return takeTable(bench, only);
  bench.store.send({ type: 'tables found', tables: filled });
}

/** One of the tables of a file that held several. */
export function takeOneOf(bench: Bench, table: Table): Promise<void | undefined> {
  return work(bench, `Reading ${table.name}`, () => takeTable(bench, table));
}

async function takeTable(bench: Bench, table: Table): Promise<void> {
  const schedule = await bench.core.readSchedule(table, bench.store.get().standards, {});
  if (!schedule.ok) return fail(bench, schedule.message);
  bench.store.send({ type: 'table chosen', table });
  bench.store.send({ type: 'schedule read', schedule: schedule.value });
  bench.store.send({ type: 'working', work: null });
  bench.store.send({ type: 'stepped', step: 'headings' });
}

/** A column means something else than we understood: read the list again that way. */
export function chooseMeaning(bench: Bench, column: number, meaning: MeaningKey): Promise<void | undefined> {
  bench.store.send({ type: 'meaning chosen', column, meaning });
  return readAgain(bench);
}

/** Reads the chosen table again, after a changed meaning or a changed standard. */
export function readAgain(bench: Bench): Promise<void | undefined> {
  return work(bench, 'Reading the openings again', async () => {
    const { table, standards, choices } = bench.store.get();
    if (!table) return;
    const schedule = await bench.core.readSchedule(table, standards, choices);
    if (!schedule.ok) return fail(bench, schedule.message);
    bench.store.send({ type: 'schedule read', schedule: schedule.value });
  });
}
