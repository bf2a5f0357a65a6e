import type { Table } from '../../../src/schedule/opening';
import type { FactorRow } from '../../../src/workbook/planBlock';
import type { PlanInputs } from '../../../src/workbook/renewPlan';
import { planState } from '../../../src/workbook/takeoff/read';
import type { Picture, SheetName } from '../../../src/workbook/sheet';
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
      const takeoff = await host.readSheet('Takeoff');
      if (!takeoff.ok) return failed(bench, takeoff.message);
      if (takeoff.value === null) return failed(bench, 'Fill the workbook first: tickets are written from its rows.');
      const given = await planInputs(bench, takeoff.value);
      if (!given.ok) return failed(bench, given.message);
      for (const name of OF_THE_BENCH) {
        const holder = await holderOf(bench, name);
        if (!holder.ok) return failed(bench, holder.message);
        if (holder.value === 'theirs')
          return failed(bench, `The sheet ${name} is one of your own: give it another name first.`);
      }
      const made = await bench.core.renewPlan({ ...given.value.inputs, tickets: true }, signal);
      if (!made.ok) return failed(bench, made.message);
      // With a plan that is older than the rows, all that is planned is written anew.
      const older = planState(takeoff.value) !== '';
      const sheets = made.value.sheets.filter(({ name }) => older || OF_THE_BENCH.includes(name));
      const written = await host.writeSheets(sheets, { replace: ['Stock', 'Setups', ...OF_THE_BENCH], signal });
      if (!written.ok) return failed(bench, written.message);
      await host.show('Tickets', 'A1');
      tell(bench, 'The sheets Tickets and Purchase are written; they follow the rows from now on.');
    },
    true,
  );
}

/** Boards cut alike as they are drawn, with what each is in words. */
export type DrawnBoard = Pick<Picture, 'caption' | 'scene'>;

/** The boards of the workbook's cutting plan, drawn; undefined where there is none that is current, which is told. */
export function drawBoards(bench: Bench): Promise<readonly DrawnBoard[] | undefined> {
  return work(
    bench,
    'Drawing the boards',
    async (signal) => {
      const takeoff = await bench.host.readSheet('Takeoff');
      const fail = (message: string) => {
        failed(bench, message);
        return undefined;
      };
      if (!takeoff.ok) return fail(takeoff.message);
      if (takeoff.value === null) return fail('Fill the workbook first: boards are planned from its rows.');
      const older = planState(takeoff.value);
      if (older !== '') return fail(`${older} Bring it up to date, then its boards can be drawn.`);
      const given = await planInputs(bench, takeoff.value);
      if (!given.ok) return fail(given.message);
      // The same rows and settings give the same plan: it is the one on Stock.
      const made = await bench.core.renewPlan({ ...given.value.inputs, pictures: true }, signal);
      if (!made.ok) return fail(made.message);
      return made.value.sheets.find(({ name }) => name === 'Stock')?.pictures ?? [];
    },
    true,
  );
}

/** What a plan is made from, and what stands where it goes. */
export interface Given {
  readonly inputs: Omit<PlanInputs, 'tickets' | 'pictures' | 'savings'>;
  readonly names: readonly string[];
  /** The factors of the plan before. */
  readonly before: readonly FactorRow[];
}

/** What the plan of a filled Takeoff is made from; refused where a sheet of ours is gone, or another stands in its place. */
export async function planInputs({ host }: Bench, takeoff: Table): Promise<Result<Given>> {
  const standards = await host.readSheet('Standards');
  const stock = await host.readSheet('Stock');
  const names = await host.sheetNames();
  if (!standards.ok) return standards;
  if (!stock.ok) return stock;
  if (!names.ok) return names;
  if (standards.value === null) return refuse('The sheet Standards is gone: fill the workbook again.');
  const { readFactors } = await import('../../../src/workbook/planBlock');
  const before = readFactors(stock.value);
  // A sheet of that name that holds no plan is not ours to write over.
  if (stock.value !== null && before.length === 0 && stock.value.rows.length > 0)
    return refuse('The sheet Stock holds no plan of ours: fill the workbook again.');
  const plain = names.value.includes('Working');
  const inputs = { takeoff, standards: standards.value, stock: stock.value, plain };
  return ok({ inputs, names: names.value, before });
}

/** Whose a sheet of this name is: one with another title than its name is the user's own. */
async function holderOf({ host }: Bench, name: SheetName): Promise<Result<'ours' | 'theirs' | 'nobody'>> {
  const held = await host.readSheet(name);
  if (!held.ok) return held;
  const [first] = held.value?.rows ?? [];
  return ok(first === undefined ? 'nobody' : first[0] === name ? 'ours' : 'theirs');
}

/** Tells `told` how the plan stands: in the workbook as it is found, and whenever that changes. Gives back the way to stop. */
export function tellPlans(bench: Bench, told: NonNullable<Bench['options']['onPlans']>): () => void {
  const { host, store } = bench;
  let last: Plans | null = null;
  const tellOf = () => {
    const { plans } = store.get();
    if (plans === last) return;
    last = plans;
    told(plans, () => void bringUpToDate(bench));
  };
  tellOf();
  void host.readSheet('Takeoff').then((takeoff) => {
    const older = takeoff.ok && takeoff.value ? planState(takeoff.value) : '';
    const { plans } = store.get();
    if (older !== '' && !plans.renewing) store.send({ type: 'plans', plans: { ...plans, older } });
  });
  return store.listen(tellOf);
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
  const given = await planInputs(bench, takeoff.value);
  if (signal.aborted) return send({ renewing: false });
  if (!given.ok) return fail(given.message);
  const { inputs, names, before } = given.value;
  const rows = JSON.stringify([inputs.takeoff.rows, inputs.standards.rows]);
  if (rows === tried.inputs) return send({ renewing: false });
  const kept: SheetName[] = [];
  for (const name of OF_THE_BENCH) {
    const holder = await holderOf(bench, name);
    if (holder.ok && holder.value === 'ours') kept.push(name);
  }
  const made = await core.renewPlan({ ...inputs, tickets: kept.length > 0 }, signal);
  // What was planned is older than the rows again; the next plan is under way.
  if (signal.aborted) return;
  if (!made.ok) return fail(made.message);
  const sheets = made.value.sheets.filter(
    ({ name }) => name === 'Stock' || (OF_THE_BENCH.includes(name) ? kept.includes(name) : names.includes(name)),
  );
  const written = await host.writeSheets(sheets, { replace: ['Stock', 'Setups', ...kept], quiet: true, signal });
  if (signal.aborted) return;
  if (!written.ok) return fail(written.message);
  tried.inputs = rows;
  const after = await host.readSheet('Stock');
  const { readFactors } = await import('../../../src/workbook/planBlock');
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
