import { expect, test } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { readTakeoff } from '../../src/workbook/takeoff/read';
import { workbookSheets } from '../../src/workbook/workbook';
import { excelHost } from '../../taskpane/excel/excelHost';
import { takeSegments } from '../../taskpane/pane/deeds/segments';
import { opening, scheduleOf } from '../takeoff/openings';
import { benchOn } from '../taskpane/pane/bench';
import { valueOf } from '../value';
import { FakeWorkbook } from './fakeExcel';
import { install } from './officeJs';

test('numbers of segments that cost less are written into the Takeoff in Excel, for their openings only', async () => {
  install(new FakeWorkbook());
  const host = excelHost();
  const list = [1, 2, 3].map((no) =>
    opening({ no, row: no + 1, mark: `W${no}`, head: 'segmental', span: 30 + no, rise: 8 }),
  );
  // The workbook at hand calculates nothing: figures stand in it as values.
  const sheets = workbookSheets(scheduleOf(list), takeoff(list, defaultStandards())).map((sheet) => ({
    ...sheet,
    rows: sheet.rows.map((row) => row.map((cell) => (cell === null ? null : { value: cell.value }))),
  }));
  valueOf(await host.writeSheets(sheets, { replace: [] }));
  const { rows } = valueOf(await host.readSheet('Takeoff'))!;
  const change = { nos: [1, 3], marks: ['W1', 'W3'], from: 2, to: 3, saved: 4 };
  expect(await takeSegments(benchOn(host), { savings: { changes: [change], saved: 4 }, rows })).toBe(true);
  const after = readTakeoff(valueOf(await host.readSheet('Takeoff'))!, null, 'in')!;
  expect(after.map(({ no, inputs }) => [no, inputs.segmentsWanted])).toEqual([
    [1, 3],
    [2, null],
    [3, 3],
  ]);
});
