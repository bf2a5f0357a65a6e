import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { TAKEOFF_COLUMNS } from '../../src/workbook/takeoff/columns';
import type { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { useBuilt } from './built';

declare const workbench: { readonly host: WorkbenchHost; readonly settled: () => Promise<void> };

/** Of the grid's own drawing: row numbers at the left, the scroll bar over the cells at the right. */
const ROW_HEADER = 46;
const SCROLL_BAR = 14;

const built = useBuilt();

/** The sheet and column (from 0) of the cell that a click at this place of the grid selects. */
async function columnAt(page: Page, x: number, y: number): Promise<unknown> {
  await page.mouse.click(x, y);
  await page.waitForTimeout(400);
  return page.evaluate(async () => {
    const at = await workbench.host.cellAt();
    return at.ok ? [at.value.sheet, at.value.column] : at.message;
  });
}

test('a filled workbook of 1280 pixels opens with all that an estimator looks at first beside the pane, without scrolling', async () => {
  const { page } = await built.workbench();
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.getByRole('button', { name: 'Open the example' }).click();
  await page.getByRole('button', { name: /^See the \d+ openings/ }).click();
  await page.getByRole('button', { name: 'Go on to fill the workbook' }).click();
  await page.getByRole('button', { name: 'Fill the workbook' }).click();
  await page.getByText('The workbook is filled').waitFor();
  await page.evaluate(() => workbench.settled());
  await page.waitForTimeout(1000);
  expect(await page.locator('#pane').isVisible()).toBe(true);
  const grid = (await page.locator('canvas[id^="univer-sheet-main-canvas"]').first().boundingBox())!;
  const middle = grid.y + grid.height / 2;
  expect(await columnAt(page, grid.x + ROW_HEADER + 4, middle)).toEqual(['Takeoff', 0]);
  const lookAt = TAKEOFF_COLUMNS.findIndex(({ key }) => key === 'lookAt');
  // What lies last before the scroll bar is the column behind it: none of it is cut.
  const last = grid.x + grid.width - SCROLL_BAR - 1;
  expect(last).toBeLessThan(1280 - 320);
  expect(await columnAt(page, last, middle)).toEqual(['Takeoff', lookAt + 1]);
  await page.setViewportSize({ width: 1440, height: 900 });
});
