/**
 * `npm run screenshots`: the pictures of the README and of guide.md, taken of the running workbench while the guide's job
 * is done in it. Needs a build (`npm run build`) and Chromium.
 */
import { mkdirSync, rmSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { launchChromium, serveBuilt } from '../tests/browser/launch';
import { addressOf, type CellPosition } from '../src/workbook/address';
import type { WorkbenchHost } from '../taskpane/workbench/workbenchHost';

declare const workbench: { readonly host: WorkbenchHost; readonly settled: () => Promise<void> };

const HERE = fileURLToPath(new URL('./screenshots/', import.meta.url));
/** A picture that a reader waits for is of no use. */
const MOST_BYTES = 250_000;

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).first().click();
const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();

async function show(page: Page, sheet: string, address: string): Promise<void> {
  await page.evaluate(([name, at]) => workbench.host.show(name!, at!), [sheet, address]);
  await page.evaluate(() => workbench.settled());
}

/** Takes the picture once the grid and the pane stand still. */
async function take(page: Page, name: string): Promise<void> {
  await page.evaluate(() => workbench.settled());
  await page.mouse.move(640, 20);
  await page.waitForTimeout(500);
  const path = `${HERE}${name}.png`;
  await page.screenshot({ path });
  const { size } = statSync(path);
  console.log(`${name}.png ${Math.round(size / 1000)} kB`);
  if (size > MOST_BYTES) throw new Error(`${name}.png is ${size} bytes; at most ${MOST_BYTES} are wanted.`);
}

/** Row and column (from 0) of the first cell of a sheet that holds exactly this text. */
async function find(page: Page, sheet: string, text: string): Promise<CellPosition> {
  const at = await page.evaluate(
    async ([name, wanted]) => {
      const read = await workbench.host.readSheet(name!);
      const rows = read.ok && read.value ? read.value.rows : [];
      const row = rows.findIndex((cells) => cells.includes(wanted!));
      return { row, column: rows[row]?.indexOf(wanted!) ?? -1 };
    },
    [sheet, text],
  );
  if (at.row < 0) throw new Error(`No cell of ${sheet} says "${text}".`);
  return at;
}

async function guide(page: Page): Promise<void> {
  await take(page, '1-schedule');

  await press(page, 'Open the example');
  await heading(page, 'What each column holds');
  await take(page, '2-headings');

  await press(page, /^See the \d+ openings/);
  await heading(page, /openings as read/);
  await take(page, '3-openings');

  await press(page, 'Go on to fill the workbook');
  await press(page, 'Fill the workbook');
  await heading(page, 'The workbook is filled');
  await take(page, '4-filled');

  await press(page, 'Cell');
  const { row } = await find(page, 'Takeoff', 'W3');
  const { column } = await find(page, 'Takeoff', 'Long point');
  await show(page, 'Takeoff', addressOf({ row, column }));
  await page.locator('.drawing').waitFor();
  await take(page, 'workbench');

  await press(page, 'Takeoff');
  await show(page, 'Setups', 'B6');
  await take(page, '5-setups');

  await press(page, 'Quote');
  await heading(page, 'Check a quote');
  await page.locator('input[type=file]').setInputFiles('examples/quote.csv');
  await page.locator('.verdicts').waitFor();
  await press(page, 'Write it to the Check sheet');
  await page.waitForFunction(async () => {
    const read = await workbench.host.readSheet('Check');
    return read.ok && read.value !== null && read.value.rows.length > 0;
  });
  await show(page, 'Check', 'A1');
  await take(page, '6-quote');
}

async function main(): Promise<void> {
  rmSync(HERE, { recursive: true, force: true });
  mkdirSync(HERE, { recursive: true });
  const [browser, serving] = await Promise.all([launchChromium(), serveBuilt()]);
  try {
    const page = await browser.newPage({
      viewport: { width: 1360, height: 820 },
      locale: 'en-US',
      colorScheme: 'light',
    });
    await page.goto(serving.address + '?example');
    await page.waitForFunction(() => 'workbench' in globalThis, null, { timeout: 60_000 });
    await guide(page);
  } finally {
    await browser.close();
    await serving.close();
  }
}

await main();
