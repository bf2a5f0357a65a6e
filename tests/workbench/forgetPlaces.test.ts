import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Cell, Sheet } from '../../src/workbook/sheet';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';

let engine: Engine;
let host: WorkbenchHost;
beforeEach(() => {
  engine = startHeadless([]);
  host = new WorkbenchHost(engine);
});
afterEach(() => engine.univer.dispose());

/** A sheet of rates, a name for all of them, and their sum by that name. */
function rates(...values: number[]): Sheet {
  const total = values.reduce((sum, value) => sum + value, 0);
  const row = (value: number): Cell[] => [{ value, style: 'input' }];
  return {
    name: 'Standards',
    widths: [10],
    frozenRows: 0,
    frozenColumns: 0,
    home: 'A1',
    rows: [[{ value: total, formula: 'SUM(Rates)' }], ...values.map(row)],
    names: [{ name: 'Rates', ref: `Standards!$A$2:$A$${1 + values.length}` }],
  };
}

const sums = async () => {
  await engine.settled();
  const read = await host.readSheet('Standards');
  return read.ok ? read.value?.rows[0]?.[0] : read.message;
};

test('a sheet written anew with fewer rows reads its names where they stand now, without a word on the console', async () => {
  const said = vi.spyOn(console, 'error');
  await host.writeSheets([rates(1, 2, 3, 4)], { replace: [] });
  await host.writeCells('Standards', 'A2', [[10]], true);
  expect(await sums()).toBe(19);

  await host.writeSheets([rates(5, 6)], { replace: ['Standards'] });
  await host.writeCells('Standards', 'A5', [[100]], true);
  await host.writeCells('Standards', 'A2', [[7]], true);
  expect(await sums()).toBe(13);

  await host.writeSheets([rates(1, 1, 1, 1, 1)], { replace: ['Standards'] });
  await host.writeCells('Standards', 'A6', [[9]], true);
  expect(await sums()).toBe(13);
  expect(said).not.toHaveBeenCalled();
  said.mockRestore();
});
