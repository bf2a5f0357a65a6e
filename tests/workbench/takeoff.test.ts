import { afterAll, beforeAll, expect, test } from 'vitest';
import { cellName, defaultStandards, withSettings } from '../../src/standards';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/arch-functions';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbench-host';
import { differences } from './differences';
import { exampleSheets } from './example';

/** What an upset ellipse solver or a sum in another order may differ by, relative. */
const WITHIN = 1e-9;

let engine: Engine;
let host: WorkbenchHost;

beforeAll(async () => {
  engine = startHeadless(ARCH_FUNCTIONS);
  host = new WorkbenchHost(engine);
  const written = await host.writeSheets(await exampleSheets(defaultStandards()), { replace: [] });
  if (!written.ok) throw new Error(written.message);
}, 60_000);
afterAll(() => engine.univer.dispose());

test('every formula of the example, calculated by the grid, gives what the takeoff gave', async () => {
  engine.api.getFormula().executeCalculation();
  await engine.settled();
  const sheets = await exampleSheets(defaultStandards());
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
    const before = await exampleSheets(defaultStandards());
    const standards = before.find(({ name }) => name === 'Standards')!;
    const ref = standards.names!.find(({ name }) => name === cellName(key))!.ref;
    const address = ref.slice(ref.lastIndexOf('!') + 1);
    const usual = defaultStandards()[key];

    const changed = withSettings(defaultStandards(), { [key]: value });
    if (!changed.ok) throw new Error(changed.message);
    const takeoff = (await exampleSheets(changed.value)).filter(({ name }) => name === 'Takeoff');
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
