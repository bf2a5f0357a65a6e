import { afterEach, beforeEach, expect, test } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { readBook } from '../../src/workbook/readBook';
import { writeXlsx } from '../../src/workbook/xlsx';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { addSheets, openBook } from '../../taskpane/workbench/openBook';
import { readGrid } from '../../taskpane/workbench/readGrid';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { valueOf } from '../value';
import { differences, liveTakeoff } from './differences';
import { exampleSchedule, exampleSheets } from './example';

const breath = async () => undefined;
const engines: Engine[] = [];
let engine: Engine;
let host: WorkbenchHost;
const start = () => {
  const made = startHeadless(ARCH_FUNCTIONS);
  engines.push(made);
  return made;
};
beforeEach(() => {
  engine = start();
  host = new WorkbenchHost(engine);
});
afterEach(() => {
  for (const one of engines.splice(0)) one.univer.dispose();
});

const saved = async (from: Engine) => {
  const book = await readGrid(from, breath);
  return valueOf(writeXlsx(book.sheets, book.settings));
};

test('a takeoff with sheets and edits of the user’s own is saved, opened and saved again, cell by cell the same', async () => {
  await host.writeSheets(await exampleSheets(defaultStandards()), { replace: [] });
  await host.writeCells(
    'Sheet1',
    'B2',
    [
      ['=1/2', '1/2', '007'],
      ['=SUM(Stock!A1:A40)+Shop_reveal', '=ARCH.RADIUS(36,-1)', true],
      ['=ARCH.ORDINATES(36,6,9)', null, 12.5],
    ],
    true,
  );
  await host.saveSetting('pane', '{"a":"<&>\\n"}');
  const sheet = engine.api.getActiveWorkbook()!.getSheetByName('Sheet1')!;
  sheet.getRange('D2:D4').setFontWeight('bold').setBackgroundColor('#ffff00').setNumberFormat('0.00');
  sheet.getRange('B2').setFontColor('#c00000').setFontSize(16);
  sheet.setColumnWidth(1, 140).setRowHeight(1, 42).hideRows(6, 2).hideColumns(7, 1);
  sheet.getRange('F2:G3').merge();
  sheet.setName("Ann's notes");
  await engine.settled();

  const before = await readGrid(engine, breath);
  const file = await saved(engine);
  const again = start();
  await openBook(again, valueOf(readBook(file)), breath);
  await again.settled();
  const after = await readGrid(again, breath);
  for (const [at, one] of before.sheets.entries()) {
    const other = after.sheets[at]!;
    for (const [row, cells] of one.rows.entries())
      expect([one.name, row, other.rows[row]]).toEqual([one.name, row, cells]);
    expect({ ...other, rows: 0, names: new Set(other.names) }).toEqual({ ...one, rows: 0, names: new Set(one.names) });
  }
  expect(after.settings).toEqual(before.settings);
  expect(Buffer.from(await saved(again)).equals(Buffer.from(file))).toBe(true);
}, 60_000);

test('an opened takeoff goes on: an edited setting is followed to the total, and errors say why again', async () => {
  const sheets = await exampleSheets(defaultStandards());
  const file = valueOf(writeXlsx(sheets));
  const book = valueOf(readBook(file));
  expect(book.ours).toBe(true);
  await openBook(engine, book, breath);
  await engine.settled();
  expect(await host.sheetNames()).toEqual({ ok: true, value: sheets.map(({ name }) => name) });
  expect(await differences(host, sheets, 1e-9)).toEqual([]);
  const ref = sheets.flatMap(({ names }) => names ?? []).find(({ name }) => name === 'Shop_reveal')!.ref;
  await host.writeCells('Standards', ref.slice(ref.indexOf('!') + 1).replace(/^\$C\$/, 'B'), [[0.5]], true);
  await engine.settled();
  const { openings } = await exampleSchedule();
  const changed = liveTakeoff(openings, { ...defaultStandards(), reveal: 0.5 }, openings, defaultStandards());
  expect(await differences(host, [changed], 1e-9)).toEqual([]);
}, 60_000);

test('what is opened takes the place of everything: sheets, names, settings, and the way back', async () => {
  await host.writeSheets(await exampleSheets(defaultStandards()), { replace: [] });
  await host.saveSetting('old', '1');
  const other = { name: 'Only', rows: [[{ value: 'x' }]], widths: [9], frozenRows: 0, frozenColumns: 0, home: 'A1' };
  await openBook(engine, { sheets: [other], settings: { new: '2' } }, breath);
  await engine.settled();
  const now = await readGrid(engine, breath);
  expect(now.sheets.map(({ name, names }) => [name, names])).toEqual([['Only', undefined]]);
  expect(now.settings).toEqual({ new: '2' });
  expect(await engine.api.undo()).toBe(false);
});

test('sheets that are added stand behind the others under names that are free, and one undo takes them away', async () => {
  const sheet = { name: 'Sheet1', rows: [[{ value: 5 }]], widths: [], frozenRows: 0, frozenColumns: 0, home: 'A1' };
  expect(await addSheets(engine, [sheet, sheet], breath)).toEqual({ ok: true, value: ['Sheet1 (2)', 'Sheet1 (3)'] });
  expect(await host.readSheet('Sheet1 (3)')).toMatchObject({ value: { rows: [[5]] } });
  await engine.api.undo();
  expect(await host.sheetNames()).toEqual({ ok: true, value: ['Sheet1'] });
});
