import { ok, refuse, type Result } from '../../../src/result';
import type { MeaningKey } from '../../../src/schedule/meanings';
import type { Table } from '../../../src/schedule/opening';
import type { Selection } from '../../host';
import { fail, work, type Bench } from './bench';
import { pdfBytes, readOnlyTable, takePdf } from './choosePdf';
import { answersOf } from '../state';

/** Files past this are refused before a byte is read. */
export const MOST_MEGABYTES = 20;
const MEGABYTE = 1024 * 1024;

export async function listSheets({ host, store }: Bench): Promise<void> {
  const names = await host.sheetNames();
  // No list of sheets is no reason to stop: the other ways to choose a list still stand.
  store.send({ type: 'sheets listed', names: names.ok ? names.value : [] });
}

/** Where the filled Takeoff goes or another comes, by undo say, the pane is no longer past the filling. */
export function sheetCameOrWent(bench: Bench, name: string): void {
  const { work: under, filled } = bench.store.get();
  // A filling under way puts its sheets in itself.
  if (under !== null) return;
  if (name === 'Takeoff' && filled) bench.store.send({ type: 'unfilled' });
  void listSheets(bench);
}

export function takeSelection(bench: Bench): Promise<void> {
  return work(bench, 'Reading the selected cells', async () => {
    const selection = await bench.host.readSelection();
    if (!selection.ok) return fail(bench, selection.message);
    const taken = selection.value.single ? await wholeSheet(bench, selection.value) : selection.value;
    if (taken.hiddenRows) bench.store.send({ type: 'rows hidden', selection: taken });
    else await takeTable(bench, taken);
  });
}

/** A list goes on below a blank row, and its notes stand above one: a cell of it stands for all that its sheet holds. */
async function wholeSheet({ host }: Bench, { single: _single, ...region }: Selection): Promise<Selection> {
  const whole = await host.readSheet(region.name);
  if (!whole.ok || whole.value === null || whole.value.rows.length <= region.rows.length) return region;
  const { hiddenRows } = region;
  return { ...whole.value, ...(hiddenRows === undefined ? {} : { hiddenRows }) };
}

/** The selected cells of which some rows are hidden: read with them, or with blank rows in their places. */
export function takePartlyHidden(bench: Bench, hiddenToo: boolean): Promise<void> {
  return work(bench, 'Reading the selected cells', async () => {
    const selection = bench.store.get().partlyHidden;
    if (!selection) return;
    bench.store.send({ type: 'rows hidden', selection: null });
    const { hiddenRows = [], ...table } = selection;
    const hidden = new Set(hiddenToo ? [] : hiddenRows);
    const rows = table.rows.map((row, at) => (hidden.has(table.firstRow + at) ? row.map(() => null) : row));
    await takeTable(bench, { ...table, rows });
  });
}

export function takeSheet(bench: Bench, name: string): Promise<void> {
  return work(bench, `Reading sheet ${name}`, async () => {
    const table = await readListedSheet(bench, name);
    if (!table.ok) return fail(bench, table.message);
    await takeTable(bench, table.value);
  });
}

/** A sheet from the list of sheets, which may be older than the workbook. */
export async function readListedSheet({ host }: Bench, name: string): Promise<Result<Table>> {
  const table = await host.readSheet(name);
  if (!table.ok) return table;
  return table.value ? ok(table.value) : refuse(`Sheet "${name}" is not in this workbook any more.`);
}

export function takeFile(bench: Bench, file: File): Promise<void> {
  return work(
    bench,
    `Reading ${file.name}`,
    async (signal) => {
      const tooLarge = refusedSize(file);
      if (tooLarge !== null) return fail(bench, tooLarge);
      const pdf = await pdfBytes(file);
      if (pdf !== null) return takePdf(bench, file.name, pdf, signal);
      await takeTables(bench, file.name, await readFile(bench, file));
    },
    true,
  );
}

/** The tables of a file that the user gave. */
export async function readFile({ core }: Bench, file: File): Promise<Result<readonly Table[]>> {
  const tooLarge = refusedSize(file);
  if (tooLarge !== null) return refuse(tooLarge);
  return core.readTables(file.name, new Uint8Array(await file.arrayBuffer()));
}

/** The same of a file that may be a PDF as well: of that the only table that reads like such a list. */
export async function readAnyFile(
  bench: Bench,
  file: File,
  kind: 'schedule' | 'quote',
  signal: AbortSignal,
): Promise<Result<readonly Table[]>> {
  const tooLarge = refusedSize(file);
  if (tooLarge !== null) return refuse(tooLarge);
  const pdf = await pdfBytes(file);
  if (pdf === null) return readFile(bench, file);
  const table = await readOnlyTable(bench, file.name, pdf, kind, signal);
  return table.ok ? ok([table.value]) : table;
}

function refusedSize(file: File): string | null {
  if (file.size <= MOST_MEGABYTES * MEGABYTE) return null;
  return `${file.name} is ${(file.size / MEGABYTE).toFixed(1)} MB; files up to ${MOST_MEGABYTES} MB can be read.`;
}

export function takeText(bench: Bench, text: string): Promise<void> {
  return work(bench, 'Reading the pasted text', async () =>
    takeTables(bench, 'The pasted text', await readText(bench, text)),
  );
}

/** The table of pasted text. */
export async function readText({ core }: Bench, text: string): Promise<Result<readonly Table[]>> {
  if (text.trim() === '') return refuse('Nothing was pasted: paste the rows of the schedule into the box first.');
  const { FROM_A_VIEWER, hasLostColumns } = await import('../../../src/pdf/pasted');
  if (hasLostColumns(text)) return refuse(FROM_A_VIEWER);
  // Rows copied from a spreadsheet or a mail come with tabs between the cells.
  const name = text.includes('\t') ? 'Pasted text.tsv' : 'Pasted text.csv';
  return core.readTables(name, new TextEncoder().encode(text));
}

export function takeExample(bench: Bench): Promise<void> {
  return work(bench, 'Opening the example', async () => {
    const { example, exampleSheet } = bench.options;
    const shown = exampleSheet === undefined ? null : await bench.host.readSheet(exampleSheet);
    if (shown?.ok && shown.value) return takeTable(bench, shown.value);
    const { name, bytes } = await example();
    await takeTables(bench, name, await bench.core.readTables(name, bytes));
  });
}

async function takeTables(bench: Bench, name: string, tables: Result<readonly Table[]>): Promise<void> {
  if (!tables.ok) return fail(bench, tables.message);
  const filled = tables.value.filter((table) => table.rows.length > 0);
  const [only] = filled;
  if (!only) return fail(bench, `${name} has no rows.`);
  if (filled.length === 1) return takeTable(bench, only);
  bench.store.send({ type: 'tables found', tables: filled });
}

/** One of the tables of a file that held several. */
export function takeOneOf(bench: Bench, table: Table): Promise<void> {
  return work(bench, `Reading ${table.name}`, () => takeTable(bench, table));
}

export async function takeTable(bench: Bench, table: Table): Promise<void> {
  const schedule = await bench.core.readSchedule(table, bench.store.get().standards, {});
  if (!schedule.ok) return fail(bench, schedule.message);
  bench.store.send({ type: 'table chosen', table });
  bench.store.send({ type: 'schedule read', schedule: schedule.value });
  bench.store.send({ type: 'working', work: null });
  bench.store.send({ type: 'stepped', step: 'headings' });
}

/** A column means something else than we understood: read the list again that way. */
export function chooseMeaning(bench: Bench, column: number, meaning: MeaningKey): Promise<void> {
  return work(bench, 'Reading the openings again', async () => {
    bench.store.send({ type: 'meaning chosen', column, meaning });
    await readAgain(bench);
  });
}

/** Reads the chosen table again, after a changed meaning or other standards, by the answers given. Gives false where it can't be read, which is told. */
export async function readAgain(bench: Bench): Promise<boolean> {
  const { table, standards, choices, answers, ours } = bench.store.get();
  if (!table) return true;
  const schedule = await bench.core.readSchedule(table, standards, choices, answersOf(answers), ours);
  if (!schedule.ok) {
    fail(bench, schedule.message);
    return false;
  }
  bench.store.send({ type: 'schedule read', schedule: schedule.value });
  return true;
}
