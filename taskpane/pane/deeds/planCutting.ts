import { cellText, isBlank } from '../../../src/schedule/cell';
import type { Table } from '../../../src/schedule/opening';
import { readLength } from '../../../src/schedule/readLength';
import { readQuantity } from '../../../src/schedule/readQuantity';
import { ok, refuse, type Result } from '../../../src/result';
import type { StockOrder } from '../../../src/stock/order';
import type { StockPlan } from '../../../src/stock/plan';
import type { Standards } from '../../../src/standards';
import { count, withPoint } from '../format';
import { asTyped } from '../../../src/schedule/asTyped';
import { fail, tell, work, type Bench } from './bench';

/** A plan and what it is for. */
export interface Planned {
  readonly order: StockOrder;
  readonly plan: StockPlan;
}

/** The pieces in the selected cells on boards of these lengths, looked at for a moment. */
export function planSelection(bench: Bench, boards: string): Promise<Planned | null | undefined> {
  return work(
    bench,
    'Planning the cutting',
    async (signal) => {
      const table = await bench.host.readSelection();
      const { standards } = bench.store.get();
      const order = table.ok ? readPieces(table.value, withPoint(boards, bench.options.locale), standards) : table;
      if (!order.ok) {
        fail(bench, order.message);
        return null;
      }
      return look(bench, order.value, 2_000, signal);
    },
    true,
  );
}

/** Looks longer for a better plan or the proof that there is none. */
export function lookLonger(bench: Bench, { order }: Planned): Promise<Planned | null | undefined> {
  return work(bench, 'Looking for a better plan', (signal) => look(bench, order, 30_000, signal), true);
}

async function look(bench: Bench, order: StockOrder, deadlineMs: number, signal: AbortSignal): Promise<Planned | null> {
  const plan = await bench.core.plan(
    order,
    deadlineMs,
    ({ boards, elapsedMs }) =>
      bench.store.send({
        type: 'working',
        work: {
          what: `${count(boards, 'board')} so far`,
          done: Math.round(Math.min(elapsedMs, deadlineMs) / 1000),
          of: deadlineMs / 1000,
          canStop: true,
        },
      }),
    signal,
  );
  if (plan.ok) return { order, plan: plan.value };
  fail(bench, plan.message);
  return null;
}

/** Two columns, lengths and how many of each; rows above the first length are headings. */
export function readPieces(table: Table, boards: string, standards: Standards): Result<StockOrder> {
  const lengths: number[] = [];
  const quantities: number[] = [];
  for (const [at, row] of table.rows.entries()) {
    const filled = row.filter((cell) => !isBlank(cell));
    const [length, quantity = 1] = filled;
    if (length === undefined) continue;
    const read = readLength(length, {
      name: `Length in row ${table.firstRow + at}`,
      column: null,
      unit: standards.unit,
    });
    if (!read.ok && lengths.length === 0 && typeof length === 'string' && !/\d/.test(length)) continue;
    if (!read.ok) return read;
    const many = readQuantity(quantity);
    if (!many.ok) return refuse(`Row ${table.firstRow + at}: ${many.message}`);
    lengths.push(read.value);
    quantities.push(many.value);
  }
  if (lengths.length === 0) return refuse('Select the lengths and how many of each, in two columns.');
  const stock: number[] = [];
  for (const text of boards.split(/[,;]+/).filter((part) => part.trim() !== '')) {
    const read = asTyped(readLength(text.trim(), { name: 'Board length', column: null, unit: standards.unit }));
    if (!read.ok) return read;
    stock.push(read.value);
  }
  if (stock.length === 0) return refuse('Say which board lengths are on sale, such as 96, 120, 144.');
  return ok({ lengths, quantities, stock, kerf: standards.kerf, trim: standards.endTrim });
}

/** The plan from the selected cell on; filled cells are not written over. */
export function writePlan(bench: Bench, rows: readonly (readonly (string | number)[])[]): Promise<void> {
  return work(bench, 'Writing the plan', async () => {
    const at = await bench.host.cellAt();
    if (!at.ok) return fail(bench, at.message);
    const written = await bench.host.writeCells(at.value.sheet, at.value.address, rows, false);
    if (!written.ok) return fail(bench, written.message);
    tell(bench, `The plan stands on ${cellText(at.value.sheet)} from cell ${at.value.address} on.`);
  });
}
