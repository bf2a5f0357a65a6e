/**
 * The pane and the workbench in Chromium, from a local server: script sizes as sent, the time until the pane can be used,
 * the time to read and to fill 24, 1,000 and 10,000 openings, and the longest time the page stood still meanwhile. Needs a
 * build (`npm run build`).
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { serve } from '../cli/serve';
import { USABLE } from '../taskpane/pane/usable';
import { launchChromium } from '../tests/browser/launch';
import { servePane } from '../tests/browser/pane/server';
import { buildersList } from './lists/buildersList';

const WEB = 'dist/web/';
const ROUNDS = 5;

function printSizes(): void {
  console.log('script                        kB gzipped');
  const files = readdirSync(WEB).filter((name) => /\.(?:js|css)$/.test(name));
  for (const name of files) {
    const size = gzipSync(readFileSync(WEB + name), { level: 9 }).length / 1000;
    console.log(name.padEnd(30) + size.toFixed(1).padStart(10));
  }
}

/** Longest time, in ms, that the page could not answer since the last asking. */
async function watchStalls(page: Page): Promise<() => Promise<number>> {
  // As text: the runner of this file marks functions by a name that a page doesn't know.
  await page.evaluate(`{
    globalThis.longest = 0;
    let last = performance.now();
    const tick = () => {
      const now = performance.now();
      globalThis.longest = Math.max(globalThis.longest, now - last);
      last = now;
      setTimeout(tick, 0);
    };
    tick();
  }`);
  return () => page.evaluate<number>('{ const stall = globalThis.longest; globalThis.longest = 0; stall; }');
}

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();

async function timed(work: () => Promise<unknown>): Promise<number> {
  const began = performance.now();
  await work();
  return performance.now() - began;
}

/** From the list chosen to the workbook filled, as a user presses the buttons. */
async function readAndFill(page: Page, choose: () => Promise<void>): Promise<string> {
  const stalled = await watchStalls(page);
  const heading = (name: string | RegExp) =>
    page.getByRole('heading', { level: 1, name }).waitFor({ timeout: 180_000 });
  const read = await timed(async () => {
    await choose();
    await heading('What each column holds');
  });
  const readStall = await stalled();
  const listed = await timed(async () => {
    await press(page, /^See the/);
    await heading(/openings? as read/);
  });
  await press(page, 'Go on to fill the workbook');
  await stalled();
  const filled = await timed(async () => {
    await page.locator('.next').getByRole('button', { name: 'Fill the workbook' }).click();
    await heading('The workbook is filled');
  });
  const fillStall = await stalled();
  const ms = (time: number) => Math.round(time).toLocaleString('en-US').padStart(8);
  return ms(read) + ms(listed) + ms(filled) + '   ' + ms(readStall) + ms(fillStall);
}

async function benchPane(browser: Browser): Promise<void> {
  const server = await servePane();
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const page = await browser.newPage({ viewport: { width: 350, height: 760 } });
    await page.goto(server.address);
    await page.getByRole('button', { name: 'Read the selected cells' }).waitFor();
    const [mark] = await page.evaluate(
      (name) => performance.getEntriesByName(name).map((one) => one.startTime),
      USABLE,
    );
    times.push(mark ?? NaN);
    await page.close();
  }
  console.log(`\nthe pane can be used after ${times.map((time) => Math.round(time)).join(', ')} ms of opening`);
  console.log('\nin memory        read    list    fill ms   longest stall: read    fill');
  for (const openings of [24, 1_000, 10_000]) {
    server.sheets = { List: buildersList(openings) };
    const page = await browser.newPage({ viewport: { width: 350, height: 760 } });
    await page.goto(server.address);
    await page.getByRole('heading', { level: 1 }).waitFor();
    console.log(openings.toLocaleString('en-US').padEnd(13) + (await readAndFill(page, () => press(page, 'Read it'))));
    await page.close();
  }
  await server.close();
}

async function benchWorkbench(browser: Browser): Promise<void> {
  const serving = await serve(WEB);
  console.log('\nworkbench       ready    read    list    fill ms   longest stall: read    fill');
  for (const openings of [24, 1_000, 10_000]) {
    const page = await browser.newPage({ viewport: { width: 1200, height: 800 } });
    const ready = await timed(async () => {
      await page.goto(serving.address, { waitUntil: 'commit' });
      await page.getByRole('button', { name: 'Read the selected cells' }).waitFor({ timeout: 60_000 });
    });
    const text = buildersList(openings)
      .map((row) => row.join('\t'))
      .join('\n');
    const choose = async () => {
      const file = { name: 'list.tsv', mimeType: 'text/tab-separated-values', buffer: Buffer.from(text) };
      await page.locator('#pane input[type=file]').setInputFiles(file);
    };
    const times = await readAndFill(page, choose).catch((error: Error) => error.message.split('\n')[0]);
    console.log(openings.toLocaleString('en-US').padEnd(13) + Math.round(ready).toString().padStart(8) + times);
    await page.close();
  }
  await serving.close();
}

export async function run(args: readonly string[]): Promise<void> {
  if (!existsSync(WEB + 'taskpane.js')) throw new Error('Nothing is built yet: run npm run build first.');
  printSizes();
  const browser = await launchChromium();
  try {
    if (!args.includes('workbench')) await benchPane(browser);
    if (!args.includes('pane')) await benchWorkbench(browser);
  } finally {
    await browser.close();
  }
}
