import type { SheetName } from '../../../src/workbook/sheet';
import { count } from '../format';
import { OUR_SHEETS } from '../ourSheets';
import { loadShop } from './shop';
import type { BuildJob } from '../build/job';
import { breathe, fail, work, type Bench } from './bench';

let stopper = new AbortController();

/** Asks whatever is under way to stop; the workbook is left as it was. */
export function stop(): void {
  stopper.abort();
}

/** What the next stop will stop. */
export function newStop(): AbortSignal {
  stopper = new AbortController();
  return stopper.signal;
}

/** Which of our sheets already hold something: they are never written over unasked. */
export async function lookForSheets({ host, store }: Bench): Promise<readonly SheetName[]> {
  const names = await host.sheetNames();
  if (!names.ok) return [];
  store.send({ type: 'sheets listed', names: names.value });
  const held: SheetName[] = [];
  for (const [name] of OUR_SHEETS) {
    if (!names.value.includes(name)) continue;
    const table = await host.readSheet(name);
    if (table.ok && table.value && table.value.rows.some((row) => row.some((cell) => cell !== null && cell !== '')))
      held.push(name);
  }
  return held;
}

export function fill(bench: Bench, replace: readonly SheetName[]): Promise<void | undefined> {
  const { store, host, core } = bench;
  return work(
    bench,
    'Filling the workbook',
    async () => {
      const { schedule, plain } = store.get();
      if (!schedule) return fail(bench, 'Choose a list of openings first.');
      // The Check sheet is written from the quote's own page.
      const held = (await lookForSheets(bench)).filter((name) => name !== 'Check');
      if (held.some((name) => !replace.includes(name))) {
        store.send({ type: 'sheets in the way', names: held });
        return;
      }
      // The Standards sheet may have been changed since the pane was opened.
      await loadShop(bench);
      if (store.get().notice) return;
      const signal = newStop();
      const doing = (what: string, done: number, of: number | null) =>
        store.send({ type: 'working', work: { what, done, of, canStop: true } });
      doing(`Working out ${count(schedule.openings.length, 'opening')}`, 0, null);
      await breathe();
      const job = { schedule, standards: store.get().standards, plain, before: await takeoffBefore(bench) };
      const built = await core.workbook(job, signal);
      if (!built.ok) return fail(bench, built.message);
      const written = await host.writeSheets(built.value.sheets, {
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

/** The Takeoff sheet as it stands, for what its user did to it; null where there is none. */
export async function takeoffBefore({ host }: Bench): Promise<BuildJob['before']> {
  const values = await host.readSheet('Takeoff');
  const formulas = await host.readFormulas('Takeoff');
  if (!values.ok || !formulas.ok || !values.value || !formulas.value) return null;
  return { values: values.value, formulas: formulas.value };
}

export async function show(bench: Bench, sheet: string, address: string): Promise<void> {
  const shown = await bench.host.show(sheet, address);
  if (!shown.ok) fail(bench, shown.message);
}
