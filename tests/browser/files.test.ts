import { readFileSync } from 'node:fs';
import exceljs from 'exceljs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { writeXlsx } from '../../src/workbook/xlsx';
import type { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { valueOf } from '../value';
import { exampleSheets } from '../workbench/example';
import { useBuilt } from './built';
import { watch } from './launch';

declare const workbench: { readonly host: WorkbenchHost; readonly settled: () => Promise<void> };

const built = useBuilt();

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
const show = (page: Page, sheet: string, cell: string) =>
  page.evaluate(([name, at]) => workbench.host.show(name!, at!), [sheet, cell]);
const rows = (page: Page, sheet: string) =>
  page.evaluate(async (name) => {
    await workbench.settled();
    const read = await workbench.host.readSheet(name);
    return read.ok ? (read.value?.rows ?? null) : null;
  }, sheet);
/** The last digits hang on the way of calculating. */
const rounded = (cells: readonly (readonly unknown[])[] | null) =>
  cells?.map((row) => row.map((value) => (typeof value === 'number' ? Number(value.toPrecision(10)) : value)));
const sheetNames = (page: Page) =>
  page.evaluate(async () => {
    const names = await workbench.host.sheetNames();
    return names.ok ? names.value : [];
  });

/** Lets a file go over a part of the page, as from the desktop. */
async function drop(page: Page, over: string, name: string, bytes: Uint8Array): Promise<void> {
  const files = await page.evaluateHandle(
    ([title, base64]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([Uint8Array.from(atob(base64!), (sign) => sign.charCodeAt(0))], title!));
      return transfer;
    },
    [name, Buffer.from(bytes).toString('base64')],
  );
  await page.dispatchEvent(over, 'dragover', { dataTransfer: files });
  expect(await page.evaluate(() => document.body.classList.contains('wb-dropping'))).toBe(true);
  await page.dispatchEvent(over, 'drop', { dataTransfer: files });
}

async function foreign(): Promise<Uint8Array> {
  const book = new exceljs.Workbook();
  const sheet = book.addWorksheet('Prices');
  sheet.addRow(['Wood', 'Board foot']);
  sheet.addRow(['=red oak', 6.5]);
  sheet.addRow(['poplar', { formula: 'B2-2', result: 4.5 }]);
  return new Uint8Array(await book.xlsx.writeBuffer());
}

test('files of every kind are dropped anywhere and opened; rows are sorted and shown; a filling is undone; a recent job is back', async () => {
  const context = await built.browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  const seen = watch(page, built.address);
  page.on('dialog', (dialog) => void dialog.accept());
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await page.goto(built.address);
  await page.waitForFunction(() => 'workbench' in globalThis, null, { timeout: 60_000 });

  // Text: a sheet of values, in place of the empty one; its name is the job's.
  await drop(page, '.wb-bar', 'marks.csv', Buffer.from('Mark,Qty\nB,2\nA,10\nC,2\n'));
  await page.getByText('marks.csv stands in a sheet of its own.').waitFor();
  expect(await sheetNames(page)).toEqual(['marks']);
  expect(await page.locator('#wb-job').inputValue()).toBe('marks');

  // Another program's workbook: values, and text stays text.
  await drop(page, '#grid', 'prices.xlsx', await foreign());
  await page.getByText('prices.xlsx stands in a sheet of its own, as values.').waitFor();
  expect(await rows(page, 'Prices')).toEqual([
    ['Wood', 'Board foot'],
    ['=red oak', 6.5],
    ['poplar', 4.5],
  ]);

  // Sorted by the column of the selected cell, and back.
  const listed = await rows(page, 'marks');
  await show(page, 'marks', 'B2');
  await press(page, /^Sort/);
  await page.getByText('3 rows by Qty').waitFor();
  await press(page, 'Largest or Z first');
  expect(await rows(page, 'marks')).toEqual([
    ['Mark', 'Qty'],
    ['A', 10],
    ['B', 2],
    ['C', 2],
  ]);
  await press(page, /^Sort/);
  await press(page, /^Show only rows with 10/);
  await page.getByText(/^1 row with 10 in Qty/).waitFor();
  const hidden = () =>
    page.evaluate(async () => {
      await workbench.host.show('marks', 'B2');
      const selected = await workbench.host.readSelection();
      return selected.ok ? (selected.value.hiddenRows ?? []) : selected.message;
    });
  expect(await hidden()).toEqual([3, 4]);
  await press(page, /^Sort/);
  await press(page, 'Show all rows');
  expect(await hidden()).toEqual([]);
  await press(page, 'Undo');
  await expect.poll(hidden).toEqual([3, 4]);
  await press(page, 'Undo');
  await press(page, 'Undo');
  await expect.poll(() => rows(page, 'marks')).toEqual(listed);

  // A takeoff that the command wrote takes the place of all, and goes on as if it had been filled here.
  const sheets = await exampleSheets(defaultStandards());
  await drop(page, '#pane nav', 'takeoff.xlsx', valueOf(writeXlsx(sheets)));
  await press(page, 'Go on without saving');
  await page.getByText('takeoff.xlsx is open.').waitFor();
  expect(await sheetNames(page)).toEqual(sheets.map(({ name }) => name));
  const before = await rows(page, 'Takeoff');
  const words = await rows(page, 'Schedule');
  await page.getByRole('heading', { name: '27 openings as read' }).waitFor();
  await press(page, 'Go on to fill the workbook');
  await page.locator('#fill').click();
  await press(page, 'Write over');
  await page.getByRole('heading', { name: 'The workbook is filled' }).waitFor();
  expect(rounded(await rows(page, 'Takeoff'))).toEqual(rounded(before));
  expect(await rows(page, 'Schedule')).toEqual(words);

  // The filling is undone: the pane stands before it again.
  await press(page, 'Undo');
  await page.getByRole('heading', { name: 'The workbook is filled' }).waitFor({ state: 'detached' });
  await page.locator('#fill').waitFor();

  // Saved, changed, and the one that was saved is back from the list of recent jobs.
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
  expect(readFileSync(await download.path()).length).toBeGreaterThan(1000);
  await page.evaluate(() => workbench.host.writeCells('Takeoff', 'B6', [['changed']], true));
  await page.getByText('• not saved').waitFor();
  await press(page, /^File/);
  await press(page, /^takeoff /);
  await press(page, 'Go on without saving');
  await page.getByText('takeoff.xlsx is open.').waitFor();
  expect(rounded(await rows(page, 'Takeoff'))).toEqual(rounded(before));
  expect(seen).toEqual({ outside: [], errors: [] });
  await context.close();
}, 120_000);
