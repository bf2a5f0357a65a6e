import type { PlanInputs } from '../../../src/workbook/renewPlan';
import { planState } from '../../../src/workbook/takeoff/read';
import type { SheetName } from '../../../src/workbook/sheet';
import { refuse, ok, type Result } from '../../../src/result';
import { PLANS_CURRENT, type Plans } from '../state';
import { fail as failed, tell, work, type Bench } from './bench';

/** Edits come in bursts; the plan waits for the end of one. */
const PAUSE_MS = 700;
const WATCHED: ReadonlySet<string> = new Set<SheetName>(['Takeoff', 'Standards']);

/**
 * Keeps a filled workbook's boards, set-ups and wood factors up to date with its rows: after an edit they are planned again
 * beside the page, and a new edit breaks a running plan off. Gives back the way to stop.
 */
export function keepPlans(bench: Bench): () => void {
  let pause: ReturnType<typeof setTimeout> | undefined;
  let running = new AbortController();
  /** Rows and settings that were planned already: a workbook that still calls the plan older is not planned for ever. */
  const tried = { inputs: '' };
  const soon = () => {
    running.abort();
    clearTimeout(pause);
    pause = setTimeout(() => {
      // Whoever is at work may be writing the very sheets; the plan waits.
      if (bench.store.get().work !== null) return soon();
      running = new AbortController();
      void renew(bench, running.signal, tried);
    }, PAUSE_MS);
  };
  const leave = bench.host.onEdit((sheet) => {
    if (WATCHED.has(sheet)) soon();
  });
  return () => {
    leave();
    running.abort();
    clearTimeout(pause);
  };
}

/** The sheets of the bench: written when they are asked for, and from then on renewed with the plan. */
const OF_THE_BENCH: readonly SheetName[] = ['Tickets', 'Purchase'];

/** Writes what each station of the bench needs, and the boards to buy, from the rows as they stand. */
export function writeTickets(bench: Bench): Promise<void> {
  return work(
    bench,
    'Writing the tickets',
    async (signal) => {
      const { host } = bench;
      const inputs = await planInputs(bench);
      if (!inputs.ok) return failed(bench, inputs.message);
      if (inputs.value === null) return failed(bench, 'Fill the workbook first: tickets are written from its rows.');
      for (const name of OF_THE_BENCH) {
        const held = await host.readSheet(name);
        if (!held.ok) return failed(bench, held.message);
        if (held.value !== null && held.value.rows.length > 0 && held.value.rows[0]![0] !== name)
          return failed(bench, `The sheet ${name} is one of your own: give it another name first.`);
      }
      const made = await bench.core.renewPlan({ ...inputs.value, tickets: true }, signal);
      if (!made.ok) return failed(bench, made.message);
      // With a plan that is older than the rows, all that is planned is written anew.
      const older = planState(inputs.value.takeoff) !== '';
      const sheets = made.value.sheets.filter(({ name }) => older || OF_THE_BENCH.includes(name));
      const written = await host.writeSheets(sheets, { replace: ['Stock', 'Setups', ...OF_THE_BENCH], signal });
      if (!written.ok) return failed(bench, written.message);
      await host.show('Tickets', 'A1');
      tell(bench, 'The sheets Tickets and Purchase are written; they follow the rows from now on.');
    },
    true,
  );
}

/** What a plan is made from, as the workbook has it; null where it is not filled. */
async function planInputs({ host }: Bench): Promise<Result<PlanInputs | null>> {
  const takeoff = await host.readSheet('Takeoff');
  const standards = await host.readSheet('Standards');
  const stock = await host.readSheet('Stock');
  const names = await host.sheetNames();
  if (!takeoff.ok) return takeoff;
  if (!standards.ok) return standards;
  if (!stock.ok) return stock;
  if (!names.ok) return names;
  if (takeoff.value === null) return ok(null);
  if (standards.value === null) return refuse('The sheet Standards is gone: fill the workbook again');
  const plain = names.value.includes('Working');
  return ok({ takeoff: takeoff.value, standards: standards.value, stock: stock.value, plain });
}

/** Plans again at once, because the user asks for it. */
export function bringUpToDate(bench: Bench): Promise<void> {
  return renew(bench, new AbortController().signal, { inputs: '' });
}

async function renew(bench: Bench, signal: AbortSignal, tried: { inputs: string }): Promise<void> {
  const { host, core, store } = bench;
  const send = (plans: Partial<Plans>) => store.send({ type: 'plans', plans: { ...store.get().plans, ...plans } });
  const fail = (failed: string) => send({ failed, renewing: false });
  const takeoff = await host.readSheet('Takeoff');
  if (!takeoff.ok || takeoff.value === null || signal.aborted) return;
  const older = planState(takeoff.value);
  if (older === '') {
    if (store.get().plans.older !== '') send({ ...PLANS_CURRENT, moved: store.get().plans.moved });
    return;
  }
  send({ older, renewing: true, failed: '' });
  const names = await host.sheetNames();
  const standards = await host.readSheet('Standards');
  const stock = await host.readSheet('Stock');
  if (signal.aborted) return send({ renewing: false });
  if (!names.ok) return fail(names.message);
  if (!standards.ok) return fail(standards.message);
  if (!stock.ok) return fail(stock.message);
  if (standards.value === null) return fail('The sheet Standards is gone: fill the workbook again.');
  const { readFactors } = await import('../../../src/workbook/planBlock');
  const before = readFactors(stock.value);
  // A sheet of that name that holds no plan is not ours to write over.
  if (stock.value !== null && before.length === 0 && stock.value.rows.length > 0)
    return fail('The sheet Stock holds no plan of ours: fill the workbook again.');
  const inputs = JSON.stringify([takeoff.value.rows, standards.value.rows]);
  if (inputs === tried.inputs) return send({ renewing: false });
  const plain = names.value.includes('Working');
  // A sheet of one of these names with another title is the user's own.
  const owns = async (name: SheetName) => {
    const held = names.value.includes(name) ? await host.readSheet(name) : null;
    return held?.ok === true && held.value?.rows[0]?.[0] === name;
  };
  const kept: SheetName[] = [];
  for (const name of OF_THE_BENCH) if (await owns(name)) kept.push(name);
  const tickets = kept.length > 0;
  const made = await core.renewPlan(
    { takeoff: takeoff.value, standards: standards.value, stock: stock.value, plain, tickets },
    signal,
  );
  // What was planned is older than the rows again; the next plan is under way.
  if (signal.aborted) return;
  if (!made.ok) return fail(made.message);
  const sheets = made.value.sheets.filter(
    ({ name }) => name === 'Stock' || (OF_THE_BENCH.includes(name) ? kept.includes(name) : names.value.includes(name)),
  );
  const written = await host.writeSheets(sheets, { replace: ['Stock', 'Setups', ...kept], quiet: true, signal });
  if (signal.aborted) return;
  if (!written.ok) return fail(written.message);
  tried.inputs = inputs;
  const after = await host.readSheet('Stock');
  const now = after.ok ? readFactors(after.value) : [];
  send({
    ...{ older: '', renewing: false, moved: made.value.said },
    before: now.flatMap(({ wood, heldAt }) => {
      const was = before.find((each) => each.wood.toLowerCase() === wood.toLowerCase());
      return was ? [{ address: heldAt, factor: was.factor }] : [];
    }),
  });
}

/** A job is quoted already: the factors from before the last plan stay, on the Stock sheet, until they are cleared there. */
export async function holdFactors(bench: Bench): Promise<void> {
  const { host, store } = bench;
  for (const { address, factor } of store.get().plans.before) {
    const written = await host.writeCells('Stock', address, [[factor]], true);
    if (!written.ok) return store.send({ type: 'told', notice: { tone: 'error', text: written.message } });
  }
  store.send({ type: 'plans', plans: PLANS_CURRENT });
  store.send({
    type: 'told',
    notice: {
      tone: 'done',
      text: 'The wood factors from before are held. To let them follow the plan, clear “Held at” on the Stock sheet.',
    },
  });
}
