import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { Page, Response } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { drawn, SCHEDULE_ROWS, SCHEDULE_WIDTHS } from '../pdf/plan';
import { useBuilt } from './built';
import { bundleOffice, openAddIn } from './excel/serve';
import { heading, press } from './pane/drive';

const built = useBuilt();
let bytes: Uint8Array;
let office: string;
beforeAll(async () => {
  bytes = await drawn((sheet) => sheet.table(SCHEDULE_ROWS, 50, 60, SCHEDULE_WIDTHS));
  office = await bundleOffice();
});

/** Chooses a PDF, and gives what was loaded for it: kB as a server sends them, by name. */
async function loadedFor(page: Page): Promise<Record<string, number>> {
  const answers: Response[] = [];
  const note = (answer: Response) => void answers.push(answer);
  page.context().on('response', note);
  const buffer = Buffer.from(bytes);
  await page.setInputFiles('input[type=file]', { name: 'plan.pdf', mimeType: 'application/pdf', buffer });
  await heading(page, 'Is this the schedule?');
  await page.waitForSelector('.pdf-page canvas');
  // A frame moved is read again by the same scripts.
  await page.getByLabel('Line between columns 1 and 2').focus();
  await page.keyboard.press('ArrowRight');
  await page.waitForFunction(() => document.querySelector('.page')?.getAttribute('aria-busy') === 'false');
  page.context().off('response', note);
  const sizes: Record<string, number> = {};
  // A worker's answers can't be asked for what they held: the same files are read where they are served from.
  for (const answer of answers) {
    const name = new URL(answer.url()).pathname.split('/').at(-1)!;
    if (/\.m?js$/.test(name)) sizes[name] = gzipSync(readFileSync(`dist/web/${name}`), { level: 9 }).length / 1000;
  }
  await press(page, 'Read this table');
  await heading(page, 'What each column holds');
  return sizes;
}

const sum = (sizes: Record<string, number>) => Object.values(sizes).reduce((total, size) => total + size, 0);

test('the workbench reads a PDF by at most 560 kB more of scripts', async () => {
  const { page, seen } = await built.workbench();
  const sizes = await loadedFor(page);
  expect(Object.keys(sizes)).toEqual(expect.arrayContaining(['pdf.min.mjs', 'pdf.worker.min.mjs', 'workbench-pdf.js']));
  expect(sum(sizes)).toBeGreaterThan(500);
  expect(sum(sizes)).toBeLessThanOrEqual(560);
  expect(seen).toEqual({ outside: [], errors: [] });
});

test('the pane in Excel reads a PDF by at most 560 kB more of scripts', async () => {
  const { page, close } = await openAddIn(built, office, { Job: [['nothing']] });
  const sizes = await loadedFor(page);
  expect(Object.keys(sizes)).toEqual(expect.arrayContaining(['pdf.min.mjs', 'pdf.worker.min.mjs', 'taskpane-pdf.js']));
  expect(sum(sizes)).toBeGreaterThan(500);
  expect(sum(sizes)).toBeLessThanOrEqual(560);
  await close();
});
