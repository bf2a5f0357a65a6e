import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readBook } from '../../src/workbook/readBook';
import type { Job } from '../../taskpane/workbench/file/job';
import type { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { valueOf } from '../value';
import { useBuilt } from './built';
import { openByKey, watch } from './launch';

declare const workbench: { readonly host: WorkbenchHost; readonly job: Job; readonly settled: () => Promise<void> };

const built = useBuilt();

const ready = (page: Page) => page.waitForFunction(() => 'workbench' in globalThis, null, { timeout: 60_000 });
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
const sheets = (page: Page) =>
  page.evaluate(async () => {
    const names = await workbench.host.sheetNames();
    const all: Record<string, unknown> = {};
    for (const name of names.ok ? names.value : []) {
      const read = await workbench.host.readFormulas(name);
      const values = await workbench.host.readSheet(name);
      all[name] = [read.ok && read.value?.rows, values.ok && values.value?.rows];
    }
    return all;
  });

async function saved(page: Page): Promise<{ path: string; bytes: Uint8Array; name: string }> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
  const path = await download.path();
  return { path, bytes: new Uint8Array(readFileSync(path)), name: download.suggestedFilename() };
}

test('a job is saved, survives a killed page, is opened again, and saved again is the same file', async () => {
  const context = await built.browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  const seen = watch(page, built.address);
  page.on('dialog', (dialog) => void dialog.accept());
  // The browser's own file dialog can't be driven: a page without it saves to the downloads.
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await page.goto(built.address);
  await ready(page);
  await press(page, 'Open the example');
  await press(page, /^See the \d+ openings/);
  await press(page, 'Go on to fill the workbook');
  await page.locator('#fill').click();
  await page.getByText('The workbook is filled').waitFor();
  await page.evaluate(() => workbench.host.writeCells('Sheet1', 'B3', [['mine', '=SUM(1,2)', '1/2']], true));
  await page.locator('#wb-job').fill('House on the hill');
  await page.locator('#wb-job').press('Enter');
  await page.getByText('• not saved').waitFor();
  expect(await page.title()).toBe('• House on the hill – Archwright workbench');

  // Killed within five seconds of the last change, nothing is lost.
  await page.waitForTimeout(4000);
  await page.evaluate(() => workbench.settled());
  const before = await sheets(page);
  await page.goto('about:blank');
  await page.goto(built.address);
  await ready(page);
  await page.getByText('House on the hill was not saved').waitFor();
  await press(page, 'Bring it back');
  await page.getByText(/is back as it was/).waitFor();
  await page.evaluate(() => workbench.settled());
  await expect.poll(() => sheets(page), { timeout: 20_000, interval: 500 }).toEqual(before);

  const first = await saved(page);
  expect(first.name).toBe('House on the hill.xlsx');
  await page.getByText('Saved: House on the hill.xlsx').waitFor();
  expect(await page.title()).toBe('House on the hill – Archwright workbench');
  expect(valueOf(readBook(first.bytes)).sheets.map(({ name }) => name)).toEqual(Object.keys(before));

  await page.evaluate(() => workbench.host.writeCells('Sheet1', 'B3', [['other']], true));
  await openByKey(page, first.path);
  await press(page, 'Go on without saving');
  await page.getByText('is open.').waitFor();
  await page.evaluate(() => workbench.settled());
  await expect.poll(() => sheets(page), { timeout: 20_000, interval: 500 }).toEqual(before);
  const second = await saved(page);
  expect(Buffer.from(second.bytes).equals(Buffer.from(first.bytes))).toBe(true);

  // The list is there again: filling goes on where it was.
  await page.getByRole('heading', { name: /openings as read/ }).waitFor();
  await press(page, 'Go on to fill the workbook');
  await page.locator('#fill').click();
  await press(page, 'Write over');
  await page.getByText('The workbook is filled').waitFor();

  // With the pane put away a plan that could not be made anew is told over the sheet, with the way to try again.
  await page.getByRole('button', { name: 'Hide pane' }).click();
  const strip = page.getByRole('status', { name: 'Boards and set-ups' });
  await expect.poll(() => strip.textContent()).toBe('');
  const factors = await page.evaluate(async () => {
    const stock = await workbench.host.readSheet('Stock');
    const rows = stock.ok ? (stock.value?.rows ?? []) : [];
    const address = `A${1 + rows.findIndex(([first]) => String(first).startsWith('Wood factors'))}`;
    const [title] = rows[Number(address.slice(1)) - 1]!;
    await workbench.host.writeCells('Stock', address, [['Mine']], true);
    await workbench.host.writeCells('Takeoff', 'F6', [[40]], true);
    return { address, title: String(title) };
  });
  await strip.getByText('The sheet Stock holds no plan of ours: fill the workbook again.').waitFor();
  expect(await strip.textContent()).toMatch(/older than row W1/);
  await page.evaluate(({ address, title }) => workbench.host.writeCells('Stock', address, [[title]], true), factors);
  await strip.getByRole('button', { name: 'Bring up to date' }).click();
  await expect.poll(() => strip.textContent(), { timeout: 30_000 }).toBe('');
  await page.getByRole('button', { name: 'Show pane' }).click();

  // Paper has the sheets and nothing of the grid.
  await page.keyboard.press('Control+p');
  await page.getByRole('region', { name: 'Preview' }).getByText('W12').first().waitFor();
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('canvas').first().isVisible()).toBe(false);
  expect(await page.locator('.wb-paper table').first().isVisible()).toBe(true);
  await page.emulateMedia({ media: 'screen' });
  await page.keyboard.press('Escape');

  // Drawings too, a page each.
  await press(page, 'Drawings');
  await press(page, 'List the pairs of guides');
  await press(page, /^Print all \d+ pairs$/);
  await page.locator('.wb-drawn svg').first().waitFor();
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.wb-drawn svg').count()).toBeGreaterThan(10);
  expect((await page.locator('.wb-drawn svg').first().boundingBox())!.height).toBeGreaterThan(100);
  expect(seen).toEqual({ outside: [], errors: [] });
  await context.close();
}, 240_000);
