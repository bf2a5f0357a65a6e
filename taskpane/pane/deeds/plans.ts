import { planState } from '../../../src/workbook/takeoff/read';
import type { SheetName } from '../../../src/workbook/sheet';
import { PLANS_CURRENT, type Plans } from '../state';
import type { Bench } from './bench';

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
  const made = await core.renewPlan(
    { takeoff: takeoff.value, standards: standards.value, stock: stock.value, plain },
    signal,
  );
  // What was planned is older than the rows again; the next plan is under way.
  if (signal.aborted) return;
  if (!made.ok) return fail(made.message);
  const sheets = made.value.sheets.filter(({ name }) => name === 'Stock' || names.value.includes(name));
  const written = await host.writeSheets(sheets, { replace: ['Stock', 'Setups'], quiet: true, signal });
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
