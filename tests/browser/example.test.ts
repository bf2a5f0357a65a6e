import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { useBuilt } from './built';

declare const workbench: { readonly host: WorkbenchHost };

const built = useBuilt();

const rowsOf = (page: Page, sheet: string) =>
  page.evaluate(async (name) => {
    const read = await workbench.host.readSheet(name);
    return read.ok ? (read.value?.rows ?? null) : null;
  }, sheet);
const pressed = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();

test.each(['Open the example', 'Read the selected cells', /^Read it/])(
  'the address that npm start prints shows the example schedule, one click from its columns: %s',
  async (button) => {
    const { page, seen } = await built.workbench('?example');
    const rows = (await rowsOf(page, 'Example schedule'))!;
    expect(rows[4]!.slice(0, 4)).toEqual(['Mark', 'Qty', 'Head', 'Width']);
    expect(rows[7]!.slice(0, 4)).toEqual(['W1', 2, 'half round', 36]);
    expect(await page.locator('#wb-status').textContent()).toContain('made-up schedule');
    await pressed(page, button);
    await page.getByText('Headings found in row 5, 27 openings below').waitFor();
    expect(seen).toEqual({ outside: [], errors: [] });
  },
);

test('a figure changed in the example’s sheet counts when the example is opened', async () => {
  const { page } = await built.workbench('?example');
  await page.evaluate(() => workbench.host.writeCells('Example schedule', 'D26', [[40]], true));
  await pressed(page, 'Open the example');
  await pressed(page, /^See the \d+ openings/);
  await page.getByRole('heading', { level: 3, name: 'W12' }).waitFor();
  expect(await page.getByRole('heading', { level: 3, name: 'W14' }).count()).toBe(0);
});

test('without ?example the workbook starts empty', async () => {
  const { page } = await built.workbench('');
  expect(await page.evaluate(async () => workbench.host.sheetNames())).toEqual({ ok: true, value: ['Sheet1'] });
  expect(await rowsOf(page, 'Sheet1')).toEqual([]);
});
