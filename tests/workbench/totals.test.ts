import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { columnLetters } from '../../src/workbook/address';
import { TAKEOFF_COLUMNS, type ColumnKey } from '../../src/workbook/takeoff/columns';
import { TAKEOFF_HEAD_ROWS } from '../../src/workbook/takeoff/places';
import type { Bench } from '../../taskpane/pane/deeds/bench';
import { takeSheet } from '../../taskpane/pane/deeds/chooseList';
import { fill } from '../../taskpane/pane/deeds/fill';
import { followTotals } from '../../taskpane/pane/deeds/followTotals';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { benchOn, LIST } from '../taskpane/pane/bench';
import { valueOf } from '../value';

let engine: Engine;
let host: WorkbenchHost;
let bench: Bench;
let leave: () => void;
beforeAll(async () => {
  engine = startHeadless(ARCH_FUNCTIONS);
  host = new WorkbenchHost(engine);
  bench = benchOn(host);
  valueOf(await host.writeCells('Sheet1', 'A1', LIST, true));
  await takeSheet(bench, 'Sheet1');
  leave = followTotals(bench);
  await fill(bench, []);
}, 60_000);
afterAll(() => {
  leave();
  engine.univer.dispose();
});

const filled = () => bench.store.get().filled!;

async function type(at: number, key: ColumnKey, value: number): Promise<void> {
  const column = columnLetters(TAKEOFF_COLUMNS.findIndex((each) => each.key === key));
  valueOf(await host.writeCells('Takeoff', `${column}${TAKEOFF_HEAD_ROWS + 1 + at}`, [[value]], true));
}

async function priceOf(at: number): Promise<number> {
  const table = valueOf(await host.readSheet('Takeoff'))!;
  return Number(table.rows[TAKEOFF_HEAD_ROWS + at]![TAKEOFF_COLUMNS.findIndex(({ key }) => key === 'price')]);
}

test('the pane’s totals follow what is typed into the Takeoff', async () => {
  expect(filled()).toMatchObject({ openings: 3, priced: 2 });
  const before = filled().price! - (await priceOf(0));
  // Two of W1, at a hundred each.
  await type(0, 'priceAgreed', 100);
  await vi.waitFor(() => expect(filled().price).toBeCloseTo(before + 200, 9), 5000);
});

test('an opening that is completed in the Takeoff is priced in the pane, and no longer to be looked at for what it lacked', async () => {
  const lacking = () => filled().toLookAt.filter(({ said }) => said.includes('Rise is missing'));
  expect(lacking().map(({ mark }) => mark)).toEqual(['W3']);
  await type(2, 'rise', 8);
  await vi.waitFor(() => expect(filled().priced).toBe(3), 5000);
  expect(lacking()).toEqual([]);
});
