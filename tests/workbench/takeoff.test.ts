import { afterAll, beforeAll, expect, test } from 'vitest';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import type { Sheet } from '../../src/workbook/sheet';
import { valueOf } from '../value';
import { differences } from './differences';
import { exampleSheets } from './example';

/** What an upset ellipse solver or a sum in another order may differ by, relative. */
const WITHIN = 1e-9;

let engine: Engine;
let host: WorkbenchHost;
// Made once: a busy machine may plan the boards otherwise a second time.
let sheets: readonly Sheet[];

beforeAll(async () => {
  engine = startHeadless(ARCH_FUNCTIONS);
  host = new WorkbenchHost(engine);
  sheets = await exampleSheets();
  valueOf(await host.writeSheets(sheets, { replace: [] }));
}, 60_000);
afterAll(() => engine.univer.dispose());

test('every formula of the example, calculated by the grid, gives what the takeoff gave', async () => {
  engine.api.getFormula().executeCalculation();
  await engine.settled();
  expect(sheets.flatMap(({ rows }) => rows.flat()).filter((cell) => cell?.formula).length).toBeGreaterThan(500);
  expect(await differences(host, sheets, WITHIN)).toEqual([]);
}, 60_000);
