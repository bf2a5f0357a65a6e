import { readFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axeCore from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, expect, test } from 'vitest';
import { readBook } from '../../src/workbook/readBook';
import type { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { valueOf } from '../value';
import { useBuilt } from './built';
import { openByKey, watch } from './launch';

declare const workbench: { readonly host: WorkbenchHost; readonly settled: () => Promise<void> };

const built = useBuilt();
const folder = mkdtempSync(join(tmpdir(), 'archwright-keys-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const LIST = 'Mark,Qty,Head,Width,Rise\nW1,2,segmental,36,6\nW2,1,half round,36,\nW3,1,segmental,48,\n';
/** W2's figure is measured along the inside edge: pi times 18 3/16. */
const QUOTE = 'Mark,Length\nW1,43.36\nW2,57.14\n';

/** Openings that stand on a page at twice the size, under its headings. */
const ROWS_AT_TWICE = 6;

/** What the focused control is called, as far as the walk needs it. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const at = document.activeElement as HTMLInputElement | null;
    // A heading takes the focus on a new page, and does nothing.
    if (!at || at.matches('h1')) return '';
    const label = at.labels?.[0]?.textContent ?? '';
    return (at.getAttribute('aria-label') ?? label ?? '').trim() || (at.textContent ?? '').trim();
  });

/** Tab until the control of this name has the focus; nobody tabs more often than there are controls on the page. */
async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  const passed: string[] = [];
  for (let presses = 0; presses < 60; presses++) {
    const at = await focused(page);
    if (typeof name === 'string' ? at === name : name.test(at)) return;
    passed.push(at);
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab does not come to ${String(name)}, only to: ${passed.join(' | ')}`);
}

async function press(page: Page, name: string | RegExp): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Enter');
}

/** F6 until the focus is within `place`. */
async function goTo(page: Page, place: '#grid' | '#pane' | '#wb-bar'): Promise<void> {
  for (let presses = 0; presses < 4; presses++) {
    if (await page.evaluate((one) => document.querySelector(one)!.contains(document.activeElement), place)) return;
    await page.keyboard.press('F6');
  }
  throw new Error(`F6 does not come to ${place}`);
}

const cell = (page: Page) =>
  page.evaluate(async () => {
    const at = await workbench.host.cellAt();
    if (!at.ok) return at.message;
    await workbench.settled();
    const now = await workbench.host.cellAt();
    return now.ok ? `${now.value.sheet}!${now.value.address}` : now.message;
  });
const valueAt = (page: Page) =>
  page.evaluate(async () => {
    await workbench.settled();
    const at = await workbench.host.cellAt();
    return at.ok ? at.value.value : null;
  });

async function isAccessible(page: Page): Promise<void> {
  const faults = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as typeof globalThis & { axe: typeof axeCore };
    const { violations } = await axe.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
  });
  expect(faults).toEqual([]);
}

async function openByKeys(page: Page, name: string, text: string): Promise<void> {
  const path = join(folder, name);
  writeFileSync(path, text);
  await openByKey(page, path);
  await page.getByText(`${name} stands in a sheet of its own`).waitFor();
}

test('a whole job is done by keys alone: list, answer, filling, an edit, a quote, print, save', async () => {
  const context = await built.browser.newContext({ viewport: { width: 1280, height: 720 }, colorScheme: 'dark' });
  const page = await context.newPage();
  const seen = watch(page, built.address);
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await page.goto(built.address);
  await page.waitForFunction(() => 'workbench' in globalThis, null, { timeout: 60_000 });
  await page.evaluate(axeCore.source);

  await openByKeys(page, 'list.csv', LIST);
  await goTo(page, '#pane');
  await press(page, /^Read it/);
  await page.getByRole('heading', { name: 'What each column holds' }).waitFor();
  await press(page, 'See the 3 openings');
  await page.getByRole('heading', { name: '3 openings as read' }).waitFor();
  await tabTo(page, /^Rise/);
  await page.keyboard.type('8');
  await page.keyboard.press('Enter');
  await page.getByText('3 ready').waitFor();
  await press(page, 'Go on to fill the workbook');
  await press(page, /^Fill the workbook/);
  await page.getByRole('heading', { name: 'The workbook is filled' }).waitFor();
  await isAccessible(page);

  // Round the sheet, and a span typed into its cell.
  await goTo(page, '#grid');
  await page.keyboard.press('Control+Home');
  expect(await cell(page)).toBe('Takeoff!C6');
  await page.keyboard.press('End');
  expect(await cell(page)).toMatch(/^Takeoff!\w+6$/);
  await page.keyboard.press('Home');
  expect(await cell(page)).toBe('Takeoff!A6');
  await page.keyboard.press('PageDown');
  expect(Number((await cell(page)).replace(/\D/g, ''))).toBeGreaterThan(12);
  await page.keyboard.press('PageUp');
  expect(Number((await cell(page)).replace(/\D/g, ''))).toBeLessThan(8);
  await page.keyboard.press('Control+PageDown');
  expect(await cell(page)).toMatch(/^Stock!/);
  await page.keyboard.press('Control+PageUp');
  await page.keyboard.press('Control+Home');
  for (let right = 0; right < 3; right++) await page.keyboard.press('ArrowRight');
  expect([await cell(page), await valueAt(page)]).toEqual(['Takeoff!F6', 36]);
  await page.keyboard.type('abc');
  await page.keyboard.press('Enter');
  await page.getByText('Not taken').waitFor();
  expect(
    await page
      .locator('#pane')
      .getByText(/^Span: "abc" is not a dimension/)
      .isVisible(),
  ).toBe(true);
  // It stands at its own cell, not on every sheet.
  await page.keyboard.press('Control+PageDown');
  await page.getByText('Not taken').waitFor({ state: 'detached' });
  await page.keyboard.press('Control+PageUp');
  await page.getByText('Not taken').waitFor();
  await page.keyboard.type('40 1/2');
  await page.keyboard.press('Enter');
  await page.getByText('Not taken').waitFor({ state: 'detached' });
  await page.keyboard.press('ArrowUp');
  expect([await cell(page), await valueAt(page)]).toEqual(['Takeoff!F6', 40.5]);
  for (const [key, span] of [
    ['z', 36],
    ['y', 40.5],
    ['z', 36],
  ] as const) {
    await page.keyboard.press(`Control+${key}`);
    expect(await valueAt(page)).toBe(span);
  }
  await page.keyboard.press('Control+End');
  expect(await cell(page)).toMatch(/^Takeoff!A[A-Z]\d+$/);
  // The other way round the page.
  await page.keyboard.press('Shift+F6');
  expect(await page.evaluate(() => document.querySelector('#wb-bar')!.contains(document.activeElement))).toBe(true);
  await page.keyboard.press('F6');

  // A quote against it.
  await openByKeys(page, 'quote.csv', QUOTE);
  await goTo(page, '#pane');
  await press(page, 'Quote');
  await tabTo(page, 'Or a whole sheet');
  await page.keyboard.type('quote');
  await press(page, /^Read it/);
  await page
    .getByText(/measured along the inside edge/)
    .first()
    .waitFor();

  await press(page, 'Write it to the Check sheet');
  await page.getByText(/^The Check sheet is written/).waitFor();

  // The keys are listed, and found.
  await goTo(page, '#wb-bar');
  await page.keyboard.press('?');
  await page.getByRole('dialog', { name: 'Keys' }).waitFor();
  await isAccessible(page);
  // In one breath: the list that goes away doesn't take the focus back from the field that comes.
  await Promise.all([page.keyboard.press('Escape'), page.keyboard.press('Control+f')]);
  await page.locator('#wb-find-text:focus').waitFor();
  await page.evaluate(() => new Promise((resume) => setTimeout(resume, 200)));
  await page.keyboard.type('W3');
  expect(await page.locator('#wb-find-text').inputValue()).toBe('W3');
  await page.keyboard.press('Enter');
  await page.getByText(/^1 of \d+: /).waitFor();
  // From the sheet the key goes back to the field.
  await goTo(page, '#grid');
  await page.keyboard.press('Control+f');
  await page.locator('#wb-find-text:focus').waitFor();
  await page.keyboard.press('Escape');

  await page.keyboard.press('Control+p');
  const preview = page.getByRole('region', { name: 'Preview' });
  await tabTo(page, 'Takeoff');
  if (!(await page.getByRole('checkbox', { name: 'Takeoff' }).isChecked())) await page.keyboard.press('Space');
  await preview.getByText('W3').first().waitFor();
  await isAccessible(page);
  await page.keyboard.press('Escape');

  // What is typed and not entered yet is saved with the rest.
  await goTo(page, '#grid');
  await page.evaluate(() => workbench.host.show('Takeoff', 'F6'));
  await page.keyboard.type('41');
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
  const book = valueOf(readBook(new Uint8Array(readFileSync(await download.path()))));
  expect(book.sheets.map(({ name }) => name)).toEqual(
    expect.arrayContaining(['list', 'quote', 'Takeoff', 'Stock', 'Check']),
  );
  const takeoff = book.sheets.find(({ name }) => name === 'Takeoff')!;
  expect([takeoff.rows[5], takeoff.rows[7]].map((row) => row!.slice(5, 7).map((one) => one?.value))).toEqual([
    [41, 6],
    [48, 8],
  ]);

  // At twice the size everything is still at hand: nothing of the bar stands outside the page or over another part.
  for (const viewport of [
    { width: 640, height: 360 },
    { width: 320, height: 568 },
  ]) {
    await page.setViewportSize(viewport);
    await goTo(page, '#grid');
    expect(await page.evaluate(overlaps)).toEqual([]);
    const sheet = (await page.locator('#grid canvas[id^="univer-sheet-main-canvas"]').first().boundingBox())!;
    expect(sheet.height).toBeGreaterThan(viewport.height / 2);
    await page.keyboard.press('Control+Home');
    await page.keyboard.press('PageDown');
    expect(Number((await cell(page)).replace(/\D/g, ''))).toBeGreaterThanOrEqual(6 + ROWS_AT_TWICE);
    await isAccessible(page);
  }
  expect(seen).toEqual({ outside: [], errors: [] });
  await context.close();
}, 240_000);

/** In the page: buttons of the bar that stand outside it, and pairs that stand over one another. */
function overlaps(): string[] {
  const parts = [...document.querySelectorAll<HTMLElement>('.wb-bar :is(button, input, select, a)')].filter(
    (part) => part.offsetParent !== null,
  );
  const boxes = parts.map((part) => [part.textContent || part.id, part.getBoundingClientRect()] as const);
  const out = boxes
    .filter(([, { left, right }]) => left < 0 || right > innerWidth)
    .map(([name]) => `${name} is outside`);
  const over = boxes.flatMap(([name, one], at) =>
    boxes
      .slice(at + 1)
      .filter(
        ([, other]) =>
          one.left < other.right - 1 &&
          other.left < one.right - 1 &&
          one.top < other.bottom - 1 &&
          other.top < one.bottom - 1,
      )
      .map(([other]) => `${name} and ${other}`),
  );
  return [...out, ...over];
}
