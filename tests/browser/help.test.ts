import axeCore from 'axe-core';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serve, type Serving } from '../../cli/serve';
import { writeHelp } from '../../docs/buildHelp';
import { HELP_PAGES } from '../../docs/help';
import { launchChromium, watch } from './launch';

const folder = mkdtempSync(join(tmpdir(), 'archwright-help-'));
let browser: Browser;
let serving: Serving;

beforeAll(async () => {
  writeHelp(join(folder, 'docs'));
  serving = await serve(folder);
  browser = await launchChromium();
});
afterAll(async () => {
  await browser.close();
  await serving.close();
  rmSync(folder, { recursive: true });
});

test.each(HELP_PAGES.map(({ page }) => page))('axe finds nothing on %s, and it fits a narrow pane', async (name) => {
  const page = await browser.newPage({ viewport: { width: 640, height: 900 } });
  const { outside, errors } = watch(page, serving.address);
  await page.goto(`${serving.address}docs/${name}`);
  // As a script of the page's own: the server lets no other run.
  await page.evaluate(axeCore.source);
  const found = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as typeof globalThis & { axe: typeof axeCore };
    const { violations } = await axe.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
  });
  expect(found).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  expect(outside).toEqual([]);
  // The pages' icon is served beside them in the build, not here.
  expect(errors.filter((error) => !error.includes('404'))).toEqual([]);
  await page.close();
});
