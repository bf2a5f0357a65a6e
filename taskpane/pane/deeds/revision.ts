import type { Table } from '../../../src/schedule/opening';
import { takeoff } from '../../../src/takeoff/takeoff';
import type { Revised } from '../state';
import { fail, tell, work, type Bench } from './bench';
import { readFile, readListedSheet } from './chooseList';
import { lookForSheets } from './fill';
import { takeoffAtHand } from './job';

export function reviseBySelection(bench: Bench): Promise<void> {
  return work(bench, 'Comparing the selected cells', async () => {
    const table = await bench.host.readSelection();
    return table.ok ? compareWith(bench, table.value) : fail(bench, table.message);
  });
}

export function reviseBySheet(bench: Bench, name: string): Promise<void> {
  return work(bench, `Comparing sheet ${name}`, async () => {
    const table = await readListedSheet(bench, name);
    return table.ok ? compareWith(bench, table.value) : fail(bench, table.message);
  });
}

export function reviseByFile(bench: Bench, file: File): Promise<void> {
  return work(bench, `Comparing ${file.name}`, async () => {
    const tables = await readFile(bench, file);
    if (!tables.ok) return fail(bench, tables.message);
    const { chooseTable } = await import('../../../src/schedule/readTables');
    const table = chooseTable(tables.value);
    return table ? compareWith(bench, table) : fail(bench, `${file.name} has no rows.`);
  });
}

/** A revised list against the takeoff at hand. */
async function compareWith(bench: Bench, table: Table): Promise<void> {
  const before = await takeoffAtHand(bench);
  if (!before.ok) return fail(bench, before.message);
  const { standards } = bench.store.get();
  const schedule = await bench.core.readSchedule(table, standards, {});
  if (!schedule.ok) return fail(bench, schedule.message);
  await show(bench, { table, schedule: schedule.value, before: before.value, refused: [] });
}

async function show(bench: Bench, revised: Omit<Revised, 'revision'>): Promise<void> {
  const [{ compareTakeoffs }, { planTakeoff }] = await Promise.all([
    import('../../../src/revision/listed'),
    import('../../../src/takeoff/planned'),
  ]);
  const { before, schedule, refused } = revised;
  const { taken } = planTakeoff(takeoff(schedule.openings, before.standards));
  bench.store.send({
    type: 'revision compared',
    revised: { ...revised, revision: compareTakeoffs(before, taken, { refused }) },
  });
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
  bench.store.send({ type: 'revision taken over', schedule, table: revised.table });
  tell(
    bench,
    'The revised list is taken over. Fill the workbook: changes made there by hand are kept where they still apply.',
  );
}
