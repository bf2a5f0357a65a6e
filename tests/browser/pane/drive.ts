import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { PaneServer } from './server';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const SHOTS = 'artifacts/pane';

/** A pane in a page of its own. Whatever the page complains about, the content policy included, fails the test at `close`. */
export interface OpenPane {
  readonly page: Page;
  readonly complaints: string[];
  /** Loads the page anew, with nothing kept, as for somebody else. */
  again(query?: string): Promise<void>;
  close(): Promise<void>;
}

export async function openPane(
  browser: Browser,
  server: PaneServer,
  options: BrowserContextOptions & { readonly query?: string; readonly width?: number } = {},
): Promise<OpenPane> {
  const { query = '', width = 320, ...others } = options;
  const context = await browser.newContext({ viewport: { width, height: 760 }, reducedMotion: 'reduce', ...others });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('request', (request) => {
    const { protocol, host } = new URL(request.url());
    if (protocol.startsWith('http') && host !== new URL(server.address).host) complaints.push(`asked ${request.url()}`);
  });
  const load = async (at: string) => {
    await page.goto(server.address + at);
    await page.locator('h1').waitFor();
  };
  await load(query);
  return {
    page,
    complaints,
    async again(at = '') {
      expect(complaints).toEqual([]);
      await page.evaluate(() => {
        localStorage.clear();
        sessionStorage.clear();
      });
      await load(at);
    },
    async close() {
      expect(complaints).toEqual([]);
      await context.close();
    },
  };
}

export const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();
export const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
/** The button that fills, not the step of that name. */
export const fillButton = (page: Page) => page.locator('.next').getByRole('button', { name: 'Fill the workbook' });

/** Axe finds nothing on the page as it stands; a picture of it is kept. */
export async function isAccessible(page: Page, shot: string): Promise<void> {
  await page.screenshot({ path: `${SHOTS}/${shot}.png` });
  // The content policy forbids added script tags; the debugger's own evaluation is not bound by it.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(AXE);
  const found = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string; failureSummary: string }[] }[] }> };
    };
    const { violations } = await axe.run();
    return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html}\n${node.failureSummary}`));
  });
  expect(found, shot).toEqual([]);
}

/** Nothing is wider than the pane, so that it never scrolls sideways. */
export async function fits(page: Page): Promise<void> {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(over).toBe(0);
}
