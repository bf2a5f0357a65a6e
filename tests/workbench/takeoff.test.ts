import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Schedule } from '../../src/schedule/opening';
import { cellName, defaultStandards, withSettings, type Standards } from '../../src/standards';
import type { Sheet } from '../../src/workbook/sheet';
import { core } from '../../taskpane/pane/loadCore';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/arch-functions';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbench-host';
import { differences } from './differences';

/** What an upset ellipse solver or a sum in another order may differ by, relative. */
const WITHIN = 1e-9;

let engine: Engine;
let host: WorkbenchHost;
let schedule: Schedule;

async function sheetsFor(standards: Standards): Promise<readonly Sheet[]> {
  const signal = new AbortController().signal;
  const made = await core.workbook(schedule, standards, { plain: false, signal });
  if (!made.ok) throw new Error(made.message);
  return made.value.sheets;
}

beforeAll(async () => {
  const tables = await core.readTables('schedule.csv', readFileSync('examples/schedule.csv'));
  if (!tables.ok) throw new Error(tables.message);
  const read = await core.readSchedule(tables.value[0]!, defaultStandards(), {});
  if (!read.ok) throw new Error(read.message);
  schedule = read.value;
  engine = startHeadless(ARCH_FUNCTIONS);
  host = new WorkbenchHost(engine);
  const written = await host.writeSheets(await sheetsFor(defaultStandards()), { replace: [] });
  if (!written.ok) throw new Error(written.message);
}, 60_000);
afterAll(() => engine.univer.dispose());

test('every formula of the example, calculated by the grid, gives what the takeoff gave', async () => {
  engine.api.getFormula().executeCalculation();
  await engine.settled();
  const sheets = await sheetsFor(defaultStandards());
  expect(sheets.flatMap(({ rows }) => rows.flat()).filter((cell) => cell?.formula).length).toBeGreaterThan(1000);
  expect(await differences(host, sheets, WITHIN)).toEqual([]);
}, 60_000);

test.each([
  ['reveal', 0.5],
  ['face', 4.25],
  ['margin', 0.375],
  ['shopRate', 80],
  ['pricing', 'margin'],
] as const)(
  'the setting %s changed to %s in its cell gives what a fresh takeoff gives',
  async (key, value) => {
    const before = await sheetsFor(defaultStandards());
    const standards = before.find(({ name }) => name === 'Standards')!;
    const ref = standards.names!.find(({ name }) => name === cellName(key))!.ref;
    const address = ref.slice(ref.lastIndexOf('!') + 1);
    const usual = defaultStandards()[key];

    const changed = withSettings(defaultStandards(), { [key]: value });
    if (!changed.ok) throw new Error(changed.message);
    const takeoff = (await sheetsFor(changed.value)).filter(({ name }) => name === 'Takeoff');
    expect(await differences(host, takeoff, WITHIN)).not.toEqual([]);

    await host.writeCells('Standards', address, [[value]], true);
    await engine.settled();
    expect(await differences(host, takeoff, WITHIN)).toEqual([]);

    await host.writeCells('Standards', address, [[usual]], true);
    await engine.settled();
    expect(
      await differences(
        host,
        before.filter(({ name }) => name === 'Takeoff'),
        WITHIN,
      ),
    ).toEqual([]);
  },
  60_000,
);
