import type { Table } from '../../../src/schedule/opening';
import type { Revised } from '../state';
import { fail, tell, work, type Bench } from './bench';
import { readAnyFile, readListedSheet, readText } from './chooseList';
import { lookForSheets, takeoffBefore } from './fill';
import { takeoffAtHand } from './job';

export function reviseBySelection(bench: Bench): Promise<void> {
  return work(bench, 'Comparing the selected cells', async () => {
    const table = await bench.host.readSelection();
    return table.ok ? compareWith(bench, [table.value], 'The selected cells') : fail(bench, table.message);
  });
}

export function reviseBySheet(bench: Bench, name: string): Promise<void> {
  return work(bench, `Comparing sheet ${name}`, async () => {
    const table = await readListedSheet(bench, name);
    return table.ok ? compareWith(bench, [table.value], name) : fail(bench, table.message);
  });
}

export function reviseByFile(bench: Bench, file: File): Promise<void> {
  return work(bench, `Comparing ${file.name}`, async (signal) => {
    const tables = await readAnyFile(bench, file, 'schedule', signal);
    return tables.ok ? compareWith(bench, tables.value, file.name) : fail(bench, tables.message);
  });
}

/** Rows pasted with their headings. */
export function reviseByText(bench: Bench, text: string): Promise<void> {
  return work(bench, 'Comparing the pasted rows', async () => {
    const tables = await readText(bench, text);
    return tables.ok ? compareWith(bench, tables.value, 'Pasted rows') : fail(bench, tables.message);
  });
}

/** A revised list against the takeoff at hand. */
async function compareWith(bench: Bench, tables: readonly Table[], name: string): Promise<void> {
  const before = await takeoffAtHand(bench);
  if (!before.ok) return fail(bench, before.message);
  const { standards } = before.value;
  const [{ revisedList }, { keptFrom, NOTHING_KEPT }] = await Promise.all([
    import('../../../src/workbook/revisedList'),
    import('../../../src/workbook/refill'),
  ]);
  const list = revisedList(tables, name, standards);
  if (!list.ok) return fail(bench, list.message);
  const filled = await takeoffBefore(bench);
  if (!filled.ok) return fail(bench, filled.message);
  const kept = filled.value === null ? NOTHING_KEPT : keptFrom(filled.value, standards.unit);
  await show(bench, { ...list.value, before: before.value, kept, refused: [] });
}

async function show(bench: Bench, given: Omit<Revised, 'revision' | 'numbered' | 'said'>): Promise<void> {
  const { revise } = await import('../../../src/workbook/revise');
  const { revision, numbered, said } = revise(given);
  bench.store.send({ type: 'revision compared', revised: { ...given, revision, numbered, said } });
}

/** Two openings that only figures say are one are not. */
export function tellApart(bench: Bench, old: string, now: string): Promise<void> {
  return work(bench, 'Comparing again', async () => {
    const { revised } = bench.store.get();
    if (revised) await show(bench, { ...revised, refused: [...revised.refused, [old, now]] });
  });
}

/** Writes the Revision sheet. Gives true where one stands already and has to be asked about. */
export async function writeRevision(bench: Bench, replace: boolean): Promise<boolean> {
  const { revised } = bench.store.get();
  if (!revised) return false;
  const held = await lookForSheets(bench);
  if (!held.ok) {
    fail(bench, held.message);
    return false;
  }
  if (held.value.includes('Revision') && !replace) return true;
  await work(bench, 'Writing the Revision sheet', async () => {
    const { revisionSheet } = await import('../../../src/workbook/revisionSheet');
    const names = { old: 'the takeoff', now: revised.schedule.name };
    const sheet = revisionSheet(revised.revision, names, revised.before.standards.unit);
    const written = await bench.host.writeSheets([sheet], { replace: ['Revision'] });
    if (!written.ok) return fail(bench, written.message);
    tell(bench, 'The Revision sheet is written.');
  });
  return false;
}

/** The revised list stands in place of the one before, its openings under the numbers they had; filling writes it. */
export async function takeOver(bench: Bench): Promise<void> {
  const { revised } = bench.store.get();
  if (!revised) return;
  const { takenOver } = await import('../../../src/revision/takeOver');
  const schedule = takenOver(revised.schedule, revised.revision, revised.before);
  bench.store.send({ type: 'revision taken over', schedule, table: revised.table, ours: revised.ours });
  tell(
    bench,
    'The revised list is taken over. Fill the workbook: changes made there by hand are kept where they still apply.',
  );
}
