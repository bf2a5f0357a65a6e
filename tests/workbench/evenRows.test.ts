import { afterEach, expect, test } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { readBook } from '../../src/workbook/readBook';
import { TAKEOFF_COLUMNS } from '../../src/workbook/takeoff/columns';
import { TAKEOFF_HEAD_ROWS } from '../../src/workbook/takeoff/places';
import { workbookSheets } from '../../src/workbook/workbook';
import { writeXlsx } from '../../src/workbook/xlsx';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import type { Engine } from '../../taskpane/workbench/engine';
import { textCut } from '../../taskpane/workbench/evenRows';
import { startHeadless } from '../../taskpane/workbench/headless';
import { openBook } from '../../taskpane/workbench/openBook';
import { readGrid } from '../../taskpane/workbench/readGrid';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { opening, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';

const TEXT = 'Primed both sides, to be shipped with the doors of the second floor, not before the painters are there.';
const OPENINGS = [
  opening({ row: 2, mark: 'A', head: 'segmental', span: 36, rise: 8 }),
  opening({ row: 3, mark: 'B', head: 'segmental', span: 36, rise: 8, remarks: TEXT }),
];
const SHEETS = workbookSheets(scheduleOf(OPENINGS), takeoff(OPENINGS, defaultStandards()));
const FILE = valueOf(writeXlsx(SHEETS));
const REMARKS = TAKEOFF_COLUMNS.findIndex(({ key }) => key === 'remarks');
const PLAIN = TAKEOFF_HEAD_ROWS;
const LONG = TAKEOFF_HEAD_ROWS + 1;

const engines: Engine[] = [];
const start = () => {
  const engine = startHeadless(ARCH_FUNCTIONS);
  engines.push(engine);
  return engine;
};
afterEach(() => {
  for (const engine of engines.splice(0)) engine.univer.dispose();
});
const takeoffOf = ({ workbook }: Engine) => workbook.getSheetBySheetName('Takeoff')!;
const opened = async (file: Uint8Array) => {
  const engine = start();
  valueOf(await openBook(engine, valueOf(readBook(file)), async () => undefined));
  return engine;
};
const heightIn = (file: Uint8Array) => valueOf(readBook(file)).sheets[0]!.heights?.get(LONG);

test('a long text leaves its row of the Takeoff as high as the others, filled or opened, and is told whole', async () => {
  const filled = start();
  valueOf(await new WorkbenchHost(filled).writeSheets(SHEETS, { replace: [] }));
  for (const engine of [filled, await opened(FILE)]) {
    const sheet = takeoffOf(engine);
    expect(sheet.getRowHeight(LONG)).toBe(sheet.getRowHeight(PLAIN));
    const at = (column: number, value: string) => ({
      ...{ sheet: 'Takeoff', address: '', row: LONG, column, formula: '', value, error: null },
    });
    expect(textCut(sheet, at(REMARKS, TEXT))).toBe(TEXT);
    expect(textCut(sheet, at(1, 'B'))).toBeUndefined();
    // The sentence above the table runs on over cells without any.
    expect(textCut(sheet, { ...at(3, TEXT), row: 0 })).toBeUndefined();
  }
});

test('a file saved from the grid gives such a row room for its text, as the one that was opened; a height set by hand stays', async () => {
  expect(heightIn(FILE)).toBeGreaterThan(40);
  const engine = await opened(FILE);
  const save = async () => valueOf(writeXlsx((await readGrid(engine, async () => undefined)).sheets));
  const saved = await save();
  expect(heightIn(saved)).toBe(heightIn(FILE));
  const again = takeoffOf(await opened(saved));
  expect(again.getRowHeight(LONG)).toBe(again.getRowHeight(PLAIN));

  engine.api.getActiveWorkbook()!.getSheetByName('Takeoff')!.setRowHeight(LONG, 60);
  expect(takeoffOf(await opened(await save())).getRowHeight(LONG)).toBe(60);
});
