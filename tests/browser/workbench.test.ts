import axeCore from 'axe-core';
import type { Page } from 'playwright-core';
import { beforeEach, afterEach, expect, test } from 'vitest';
import { cellName, defaultStandards, withSettings } from '../../src/standards';
import { readAddress } from '../../src/workbook/address';
import type { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { differences, liveTakeoff } from '../workbench/differences';
import { exampleSchedule, exampleSheets } from '../workbench/example';
import { useBuilt } from './built';
import type { watch } from './launch';

declare const workbench: { readonly host: WorkbenchHost; readonly settled: () => Promise<void> };

/** Of the grid's own drawing, at its usual zoom. */
const ROW_HEADER = 46;
const COLUMN_HEADER = 20;
const CELL = { width: 88, height: 24 };

const built = useBuilt();
let page: Page;
let seen: ReturnType<typeof watch>;
beforeEach(async () => {
  ({ page, seen } = await built.workbench());
});
afterEach(() => {
  expect(seen).toEqual({ outside: [], errors: [] });
});

/** Clicks a cell of a fresh sheet. */
async function click(row: number, column: number): Promise<void> {
  const canvas = (await page.locator('canvas[id^="univer-sheet-main-canvas"]').first().boundingBox())!;
  await page.mouse.click(
    canvas.x + ROW_HEADER + (column + 0.5) * CELL.width,
    canvas.y + COLUMN_HEADER + (row + 0.5) * CELL.height,
  );
}
async function type(row: number, column: number, text: string): Promise<void> {
  await click(row, column);
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await page.evaluate(() => workbench.settled());
}
const shown = (sheet: string) =>
  page.evaluate(async (name) => {
    const read = await workbench.host.readSheet(name);
    return read.ok ? (read.value?.rows ?? null) : null;
  }, sheet);
/** The page's host, as far as a comparison needs it. */
const pageHost = { readSheet: (name: string) => page.evaluate((sheet) => workbench.host.readSheet(sheet), name) };

test('a worksheet function calculates when it is typed, spills, and says in words why not', async () => {
  await type(0, 0, '=ARCH.RADIUS(36,6)');
  await type(1, 0, '=arch.radius("3\'","6 1/2""")');
  await type(3, 0, '=ARCH.ORDINATES(36,6,9)');
  await type(0, 3, '=ARCH.RADIUS(36,-3)');
  const rows = (await shown('Sheet1'))!;
  expect(rows[0]![0]).toBe(30);
  expect(rows[1]![0]).toBeCloseTo((36 ** 2 / 4 + 6.5 ** 2) / 13, 12);
  expect(rows.slice(3).map((row) => row.slice(0, 2))).toEqual([
    [0, 6],
    [9, expect.closeTo(Math.sqrt(900 - 81) - 24, 12)],
    [18, 0],
  ]);
  await click(0, 3);
  await expect.poll(() => page.locator('#wb-status').textContent()).toBe('D1: rise must be more than 0; got -3');
});

test('a fraction typed into a cell is a number, not a date', async () => {
  await type(0, 0, '1/2');
  await type(1, 0, '20 5/16');
  await type(2, 0, '=SUM(A1:A2)');
  expect(await shown('Sheet1')).toEqual([[0.5], [20.3125], [20.8125]]);
});

test('typing =ARCH. offers the functions, and an opened bracket shows the arguments', async () => {
  await click(0, 0);
  await page.keyboard.type('=ARCH.RAD');
  await page.getByText('ARCH.RADIUS').first().waitFor();
  await page.keyboard.type('IUS(');
  await page.getByText('rise', { exact: true }).first().waitFor();
  await page.keyboard.press('Escape');
});

test('the example filled from the pane is what the core gives, and follows a setting typed into its cell', async () => {
  await page.getByRole('button', { name: 'Open the example' }).click();
  await page.getByRole('button', { name: /^See the \d+ openings/ }).click();
  await page.getByRole('button', { name: 'Go on to fill the workbook' }).click();
  await page.getByRole('button', { name: 'Fill the workbook' }).click();
  await page.getByText('The workbook is filled').waitFor();

  const before = await exampleSheets(defaultStandards());
  expect(await differences(pageHost, before, 1e-9)).toEqual([]);

  const ref = before.flatMap(({ names }) => names ?? []).find(({ name }) => name === cellName('reveal'))!.ref;
  // Beside the value in use stands the one that is typed.
  const address = ref.slice(ref.lastIndexOf('!') + 1).replace(/^\$C\$/, 'B');
  expect(readAddress(address).ok).toBe(true);
  await page.evaluate((cell) => workbench.host.show('Standards', cell), address);
  // The grid takes keys once it has been clicked; the click lands on the selected sheet, the name box goes to the cell.
  await click(0, 1);
  await page.evaluate((cell) => workbench.host.show('Standards', cell), address);
  await page.keyboard.type('1/2');
  await page.keyboard.press('Enter');
  await page.evaluate(() => workbench.settled());

  const changed = withSettings(defaultStandards(), { reveal: 0.5 });
  if (!changed.ok) throw new Error(changed.message);
  const { openings } = await exampleSchedule();
  const after = liveTakeoff(openings, changed.value, openings, defaultStandards());
  expect(await differences(pageHost, [after], 1e-9)).toEqual([]);
});

test('a value outside its limits is refused in the line above the grid, and the old one stays', async () => {
  await page.getByRole('button', { name: 'Open the example' }).click();
  await page.getByRole('button', { name: /^See the \d+ openings/ }).click();
  await page.getByRole('button', { name: 'Go on to fill the workbook' }).click();
  await page.getByRole('button', { name: 'Fill the workbook' }).click();
  await page.getByText('The workbook is filled').waitFor();
  const standards = (await shown('Standards'))!;
  const row = standards.findIndex(([label]) => label === 'Reveal');
  await page.evaluate((cell) => workbench.host.show('Standards', cell), 'A1');
  await click(0, 1);
  await page.evaluate((cell) => workbench.host.show('Standards', cell), `B${row + 1}`);
  await page.keyboard.type('99');
  await page.keyboard.press('Enter');
  await page.evaluate(() => workbench.settled());
  expect((await shown('Standards'))![row]![1]).toBe(standards[row]![1]);
  expect(await page.locator('#wb-status').textContent()).toMatch(/0 to 6/);
});

test('F6 goes from the grid to the pane, the bar and back, and the pane can be put away', async () => {
  await click(0, 0);
  await page.keyboard.press('F6');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('pane');
  await page.keyboard.press('F6');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('File');
  await page.keyboard.press('F6');
  expect(await page.evaluate(() => document.getElementById('grid')!.contains(document.activeElement))).toBe(true);
  await page.getByRole('button', { name: 'Hide pane' }).click();
  expect(await page.locator('#pane').isVisible()).toBe(false);
  await page.getByRole('button', { name: 'Show pane' }).click();
  expect(await page.locator('#pane').isVisible()).toBe(true);
  await page.locator('#wb-divider').focus();
  await page.keyboard.press('ArrowLeft');
  expect(await page.locator('#wb-divider').getAttribute('aria-valuenow')).toBe('350');
});

test("the whole page, the grid library's parts among it, has no fault that an accessibility checker finds", async () => {
  await page.evaluate(axeCore.source);
  const faults = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as typeof globalThis & { axe: typeof axeCore };
    const { violations } = await axe.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
  });
  expect(faults).toEqual([]);
});
