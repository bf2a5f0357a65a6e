import { expect, test } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import type { Sheet } from '../../src/workbook/sheet';
import { workbookSheets } from '../../src/workbook/workbook';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import { startHeadless } from '../../taskpane/workbench/headless';
import { readGrid } from '../../taskpane/workbench/readGrid';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { valueOf } from '../value';
import { exampleSchedule } from '../workbench/example';
import { compare } from './compare';

test('a job saved in the workbench, its edits and the user’s own cells included, calculates alike in LibreOffice Calc', async () => {
  const schedule = await exampleSchedule();
  const engine = startHeadless(ARCH_FUNCTIONS);
  const host = new WorkbenchHost(engine);
  const sheets = workbookSheets(schedule, takeoff(schedule.openings, defaultStandards()), { plain: true });
  valueOf(await host.writeSheets(sheets, { replace: [] }));
  valueOf(await host.writeCells('Sheet1', 'B2', [['=Takeoff!F6*2', '=SUM(Takeoff!F6:F9)', '=B2&" in"']], true));
  // A span and a setting typed over: what is saved are the figures that the grid made of them.
  valueOf(await host.writeCells('Takeoff', 'F6', [[40.5]], true));
  valueOf(await host.writeCells('Standards', 'B8', [[0.25]], true));
  await engine.settled();
  const saved = await readGrid(engine, async () => undefined);
  engine.univer.dispose();

  const own = saved.sheets.find(({ name }) => name === 'Sheet1')!;
  expect(own.rows[1]![1]!.value).toBe(81);
  const result = await compare(saved.sheets as readonly Sheet[]);
  expect(result.differences).toEqual([]);
  expect(result.cells).toBeGreaterThan(1000);
});
