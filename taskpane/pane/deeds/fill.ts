import { ok, type Result } from '../../../src/result';
import type { SheetName } from '../../../src/workbook/sheet';
import type { BuildJob } from '../build/job';
import { count } from '../format';
import { OUR_SHEETS } from '../ourSheets';
import { breathe, fail, work, type Bench } from './bench';
import { loadJob } from './job';
import { loadShop } from './shop';

/** Written from pages of their own. */
const OWN_PAGES: readonly SheetName[] = ['Check', 'Proposal', 'Revision', 'Tickets', 'Purchase'];

/** Which of our sheets already hold something: they are never written over unasked. */
export async function lookForSheets({ host, store }: Bench): Promise<Result<readonly SheetName[]>> {
  const names = await host.sheetNames();
  if (!names.ok) return names;
  store.send({ type: 'sheets listed', names: names.value });
  const held: SheetName[] = [];
  for (const [name] of OUR_SHEETS) {
    if (!names.value.includes(name)) continue;
    const filled = await host.isFilled(name);
    if (!filled.ok) return filled;
    if (filled.value) held.push(name);
  }
  return ok(held);
}

export function fill(bench: Bench, replace: readonly SheetName[]): Promise<void> {
  const { store, host, core } = bench;
  return work(
    bench,
    'Filling the workbook',
    async (signal) => {
      const held = await lookForSheets(bench);
      if (!held.ok) return fail(bench, held.message);
      const inTheWay = held.value.filter((name) => !OWN_PAGES.includes(name));
      if (inTheWay.some((name) => !replace.includes(name))) {
        const typedOver = await figuresTypedOver(bench);
        if (!typedOver.ok) return fail(bench, typedOver.message);
        store.send({ type: 'sheets in the way', names: inTheWay, typedOver: typedOver.value });
        return;
      }
      // The Standards sheet may have been changed since the pane was opened.
      if (!(await loadShop(bench))) return;
      if (!(await loadJob(bench))) return;
      const { schedule, standards, plain, job, scheduleStands } = store.get();
      if (!schedule) return fail(bench, 'Choose a list of openings first.');
      const before = await takeoffBefore(bench);
      if (!before.ok) return fail(bench, before.message);
      const doing = (what: string, done: number, of: number | null) =>
        store.send({ type: 'working', work: { what, done, of, canStop: true } });
      doing(`Working out ${count(schedule.openings.length, 'opening')}`, 0, null);
      await breathe();
      const given = { schedule, standards, plain, job, before: before.value };
      const built = await core.workbook(given, signal, (step) => doing(step, 0, null));
      if (!built.ok) return fail(bench, built.message);
      // The rows came from the Takeoff itself: what the builder wrote stands on the Schedule sheet alone.
      const stands = scheduleStands && held.value.includes('Schedule');
      const sheets = built.value.sheets.filter(({ name }) => !stands || name !== 'Schedule');
      const written = await host.writeSheets(sheets, {
        replace,
        onProgress: (done, of) => doing('Writing the sheets', done, of),
        signal,
      });
      if (!written.ok) return fail(bench, written.message);
      store.send({ type: 'filled', filled: built.value.filled });
    },
    true,
  );
}

/** Figures of the Takeoff that somebody typed over, as mark and heading: a filling writes their formulas again. */
async function figuresTypedOver(bench: Bench): Promise<Result<readonly string[]>> {
  const before = await takeoffBefore(bench);
  if (!before.ok) return before;
  if (before.value === null) return ok([]);
  const { keptFrom } = await import('../../../src/workbook/refill');
  const { typedOver } = keptFrom(before.value, bench.store.get().standards.unit);
  return ok(typedOver.map(({ mark, heading }) => `${mark} ${heading}`.trim()));
}

/** The Takeoff sheet as it stands, for what its user did to it; null where there is none. */
export async function takeoffBefore({ host }: Bench): Promise<Result<BuildJob['before']>> {
  const values = await host.readSheet('Takeoff');
  if (!values.ok) return values;
  const formulas = await host.readFormulas('Takeoff');
  if (!formulas.ok) return formulas;
  const schedule = await host.readSheet('Schedule');
  if (!schedule.ok) return schedule;
  const stock = await host.readSheet('Stock');
  if (!stock.ok) return stock;
  if (!values.value || !formulas.value) return ok(null);
  return ok({ values: values.value, formulas: formulas.value, schedule: schedule.value, stock: stock.value });
}

export async function show(bench: Bench, sheet: string, address: string): Promise<void> {
  const shown = await bench.host.show(sheet, address);
  if (!shown.ok) fail(bench, shown.message);
}
