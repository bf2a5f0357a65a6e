import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { ok } from '../../src/result';
import { readSchedule } from '../../src/schedule/readSchedule';
import { readTables } from '../../src/schedule/readTables';
import { defaultStandards } from '../../src/standards';
import { addressOf, columnLetters } from '../../src/workbook/address';
import type { Cell, Sheet } from '../../src/workbook/sheet';
import { spilledColumns } from '../../src/workbook/spilled';
import { TAKEOFF_COLUMNS } from '../../src/workbook/takeoff/columns';
import { TAKEOFF_HEAD_ROWS } from '../../src/workbook/takeoff/places';
import type { Host } from '../../taskpane/host';
import { build } from '../../taskpane/pane/build/job';
import { assembler } from '../../taskpane/pane/build/parts';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { sameValue } from '../figures';
import { valueOf } from '../value';
import { differences } from '../workbench/differences';
import { useBuilt } from './built';
import { bundleOffice, held, openAddIn, type HeldSheet, type Sheets } from './excel/serve';
import { fillButton, fits, heading, isAccessible, press } from './pane/drive';

const JOB: Sheets = {
  Job: [
    ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
    ['W1', 2, 'segmental', 36, 6],
    ['W2', 1, 'half round', 36, null],
    ['W3', 1, 'segmental', 48, null],
  ],
};
/** What calculation in another order may differ by, relative. */
const WITHIN = 1e-9;
/** What the last digits of a sine may differ by between two JavaScript engines, carried through an opening; relative. */
const ACROSS_ENGINES = 1e-12;

const built = useBuilt();
let office: string;
beforeAll(async () => {
  office = await bundleOffice();
});

async function withAddIn(sheets: Sheets, work: (page: Page) => Promise<void>): Promise<void> {
  const addIn = await openAddIn(built, office, sheets);
  await work(addIn.page);
  await addIn.close();
}

/** Reads the list that stands in the workbook, types the missing rise, and comes to the button that fills. */
async function toFill(page: Page): Promise<void> {
  await press(page, 'Read the selected cells');
  await heading(page, 'What each column holds');
  await press(page, 'See the 3 openings');
  await typeRise(page, 'W3', '6 1/2');
  await press(page, 'Go on to fill the workbook');
}

async function filled(page: Page): Promise<void> {
  await toFill(page);
  await fillButton(page).click();
  await heading(page, 'The workbook is filled');
}

/** Back to the list and down the steps again: the same list is filled anew. */
async function toFillAgain(page: Page): Promise<void> {
  await press(page, /^List/);
  await page.evaluate(() => {
    globalThis.fakeBook.active = 'Job';
    globalThis.fakeBook.selected = 'A1';
  });
  await toFill(page);
}

async function typeRise(page: Page, mark: string, text: string): Promise<void> {
  const rise = page.getByLabel(`Rise of ${mark}`);
  await rise.fill(text);
  await rise.press('Enter');
  await page.getByRole('button', { name: new RegExp(`^${mark}.*changed by you`) }).waitFor();
}

/** Types into the fake workbook as its user would. */
function typeInto(page: Page, sheet: string, address: string, value: string | number): Promise<void> {
  return page.evaluate((at) => void globalThis.fakeBook.sheet(at.sheet).cells.set(at.address, at.value), {
    sheet,
    address,
    value,
  });
}

async function cellsOf(page: Page, name: string): Promise<ReadonlyMap<string, string | number | boolean>> {
  return new Map((await held(page)).sheets.find((sheet) => sheet.name === name)?.cells ?? []);
}

const takeoffCell = (key: string, opening: number) =>
  `${columnLetters(TAKEOFF_COLUMNS.findIndex((column) => column.key === key))}${TAKEOFF_HEAD_ROWS + 1 + opening}`;

describe('the example in Excel', () => {
  test('goes by way of a rise typed in place to five sheets of ARCH formulas that give the figures of the core', async () => {
    await withAddIn({ Sheet1: [] }, async (page) => {
      await isAccessible(page, 'excel-list');
      expect(await page.locator('#pane').boundingBox()).toMatchObject({ x: 0, y: 0, width: 350 });
      await press(page, 'Open the example');
      await heading(page, 'What each column holds');
      await isAccessible(page, 'excel-headings');
      await press(page, 'See the 27 openings');
      await isAccessible(page, 'excel-openings');
      await typeRise(page, 'W19', '18');
      await page.getByText('6 openings to look at').waitFor();
      await press(page, 'Go on to fill the workbook');
      await isAccessible(page, 'excel-fill');

      // Held once the cells are there and only protecting the sheets is left.
      await page.evaluate(() =>
        globalThis.beforeSync(
          (book) => book.sheets.filter(({ name, cells }) => name !== 'Sheet1' && cells.size > 0).length === 5,
          () => new Promise((resume) => (globalThis.letGo = resume)),
        ),
      );
      await fillButton(page).click();
      const progress = page.getByRole('progressbar', { name: 'Writing the sheets' });
      await progress.waitFor();
      const bar = await progress.evaluate((one: HTMLProgressElement) => ({ value: one.value, max: one.max }));
      const built = await builtSheets(page);
      const rows = built.reduce((sum, sheet) => sum + sheet.rows.length, 0);
      expect(bar).toEqual({ value: rows, max: rows });
      await isAccessible(page, 'excel-filling');
      await page.evaluate(() => globalThis.letGo());
      await heading(page, 'The workbook is filled');
      await fits(page);
      await isAccessible(page, 'excel-filled');

      const { sheets, names } = await held(page);
      expect(sheets.map(({ name }) => name).sort()).toEqual(['Sheet1', ...built.map(({ name }) => name)].sort());
      for (const sheet of built) expect(entries(sheets, sheet.name), sheet.name).toEqual(entriesOf(sheet));
      expect(Object.fromEntries(names)).toEqual(
        Object.fromEntries(built.flatMap((sheet) => sheet.names ?? []).map(({ name, ref }) => [name, `=${ref}`])),
      );
      const formulas = Object.values(entries(sheets, 'Takeoff')).filter((entry) => String(entry).startsWith('='));
      expect(formulas.filter((formula) => String(formula).includes('ARCH.')).length).toBeGreaterThan(100);
      expect(await calculatedDifferences(sheets, built)).toEqual([]);
      // Which of several good cutting plans is found depends on the clock; all other sheets must be the core's own.
      const own = (await coreSheets('W19', '18')).filter(({ name }) => name !== 'Stock');
      for (const sheet of own) expect(apart(entries(sheets, sheet.name), entriesOf(sheet)), sheet.name).toEqual([]);
      expect(await differences(valuesOf(built), own, ACROSS_ENGINES)).toEqual([]);

      await page.locator('button.troubled').first().click();
      await expect.poll(() => page.evaluate(() => globalThis.fakeBook.active)).toBe('Takeoff');
      expect(await page.evaluate(() => globalThis.fakeBook.selected)).toMatch(/^B\d+$/);
    });
  });
});

/** The example's workbook as the core gives it, with one rise typed. */
async function coreSheets(mark: string, rise: string): Promise<readonly Sheet[]> {
  const standards = defaultStandards();
  const [table] = valueOf(await readTables('schedule.csv', new Uint8Array(readFileSync('examples/schedule.csv'))));
  const { row } = valueOf(readSchedule(table!, standards, {})).openings.find((opening) => opening.mark === mark)!;
  const schedule = valueOf(readSchedule(table!, standards, {}, { answers: { [`rise@${row}`]: rise } }));
  return build({ schedule, standards, plain: false, before: null }).sheets;
}

/** The workbook as it was built in the worker beside the page. */
async function builtSheets(page: Page): Promise<readonly Sheet[]> {
  const assemble = assembler();
  for (const part of await page.evaluate(() => globalThis.workerSaid)) {
    const built = assemble(part);
    if (built) return built.sheets;
  }
  throw new Error('the worker has not built a workbook');
}

/** The values that were computed together with the formulas. */
function valuesOf(sheets: readonly Sheet[]): Pick<Host, 'readSheet'> {
  return {
    readSheet: async (name) => {
      const found = sheets.find((sheet) => sheet.name === name);
      const rows = found?.rows.map((cells) => cells.map((cell) => (cell?.value === '' ? null : (cell?.value ?? null))));
      return ok(rows ? { name, firstRow: 1, rows } : null);
    },
  };
}

type Entries = Record<string, string | number | boolean>;

function entries(sheets: readonly HeldSheet[], name: string): Entries {
  return Object.fromEntries(sheets.find((sheet) => sheet.name === name)?.cells ?? []);
}

function entriesOf(sheet: Sheet): Entries {
  const found: Entries = {};
  // What a formula spills is Excel's to put there: the fake, which calculates nothing, holds none of it.
  const spilledIn = spilledColumns();
  for (const [row, cells] of sheet.rows.entries()) {
    const spilled = spilledIn(cells, row);
    for (const [column, cell] of cells.entries()) {
      if (cell === null || spilled.has(column)) continue;
      const entry = cell.formula === undefined ? cell.value : `=${cell.formula}`;
      if (entry !== null && entry !== '') found[addressOf({ row, column })] = entry;
    }
  }
  return found;
}

/** The cells that one side has otherwise than the other, with both entries. */
function apart(written: Entries, own: Entries): string[] {
  return [...new Set([...Object.keys(written), ...Object.keys(own)])]
    .filter((address) => !sameValue(written[address], own[address], ACROSS_ENGINES))
    .map((address) => `${address}: ${String(written[address])} for ${String(own[address])}`);
}

/** The fake does not calculate: its formulas are given, without values, to the grid's engine, and compared with the core. */
async function calculatedDifferences(sheets: readonly HeldSheet[], expected: readonly Sheet[]): Promise<string[]> {
  const engine = startHeadless(ARCH_FUNCTIONS);
  try {
    const host = new WorkbenchHost(engine);
    const inExcel = expected.map((sheet): Sheet => {
      const found = entries(sheets, sheet.name);
      const rows = sheet.rows.map((cells, row) =>
        cells.map((_, column): Cell | null => {
          const entry = found[addressOf({ row, column })];
          if (entry === undefined) return null;
          const isFormula = typeof entry === 'string' && entry.startsWith('=');
          return isFormula ? { value: null, formula: entry.slice(1) } : { value: entry };
        }),
      );
      return { ...sheet, rows };
    });
    valueOf(await host.writeSheets(inExcel, { replace: [] }));
    engine.api.getFormula().executeCalculation();
    await engine.settled();
    return await differences(host, expected, WITHIN);
  } finally {
    engine.univer.dispose();
  }
}

describe('filling again in Excel', () => {
  test('asks first; left alone nothing changes, written over a figure and a column made by hand stay', async () => {
    await withAddIn(JOB, async (page) => {
      await filled(page);
      const rise = takeoffCell('rise', 0);
      await typeInto(page, 'Takeoff', rise, 7);
      const own = columnLetters(TAKEOFF_COLUMNS.length);
      await typeInto(page, 'Takeoff', `${own}${TAKEOFF_HEAD_ROWS}`, 'Room');
      await typeInto(page, 'Takeoff', `${own}${TAKEOFF_HEAD_ROWS + 1}`, 'hall');
      const before = await held(page);

      await toFillAgain(page);
      await fillButton(page).click();
      const ask = page.getByRole('alertdialog', { name: /^This workbook already has Takeoff/ });
      await ask.waitFor();
      await isAccessible(page, 'excel-ask');
      await press(page, 'Leave as it is');
      await ask.waitFor({ state: 'detached' });
      expect(await held(page)).toEqual(before);

      await fillButton(page).click();
      await press(page, 'Write over');
      await heading(page, 'The workbook is filled');
      await page.getByText('1 figure of yours came up again').click();
      await page.getByText('W1: kept rise 7 from the workbook; the list says 6.').waitFor();
      await isAccessible(page, 'excel-filled-again');
      const takeoff = await cellsOf(page, 'Takeoff');
      expect(takeoff.get(rise)).toBe(7);
      expect([...takeoff.values()]).toEqual(expect.arrayContaining(['Room', 'hall']));
      expect((await held(page)).sheets.map(({ name }) => name)).toEqual(before.sheets.map(({ name }) => name));
    });
  });
});

describe('a change that Excel refuses', () => {
  test('half-way through writing over leaves the workbook whole, and the pane says so', async () => {
    await withAddIn(JOB, async (page) => {
      await filled(page);
      await typeInto(page, 'Takeoff', takeoffCell('rise', 0), 7);
      const before = await held(page);
      await toFillAgain(page);
      // The request that carries the cells is the first one after the copies are made: it fails after 40 commands.
      await page.evaluate(() =>
        globalThis.beforeSync(
          (book) => book.sheets.some(({ name }) => name === '~before Takeoff'),
          (book) => void (book.fault = { sync: 1, after: 40, code: 'AccessDenied' }),
        ),
      );
      await fillButton(page).click();
      await press(page, 'Write over');
      const told = page.getByRole('alert').filter({ hasText: 'Excel refused the change' });
      await told.waitFor();
      expect(await told.innerText()).toMatch(/protected or open for reading only.*The workbook is as it was\./);
      await isAccessible(page, 'excel-refused');
      expect(await page.evaluate(() => globalThis.fakeBook.fault)).toBeNull();
      expect(await held(page)).toEqual(before);

      // Nothing of the failure is left: the same press works now.
      await press(page, 'Write over');
      await heading(page, 'The workbook is filled');
      expect((await cellsOf(page, 'Takeoff')).get(takeoffCell('rise', 0))).toBe(7);
    });
  });

  test('a stop while the sheets are written takes them back', async () => {
    await withAddIn(JOB, async (page) => {
      const before = await held(page);
      await toFill(page);
      await page.evaluate(() =>
        globalThis.beforeSync(
          (book) => book.names.size > 0,
          () => new Promise((resume) => (globalThis.letGo = resume)),
        ),
      );
      await fillButton(page).click();
      await page.waitForFunction(() => 'letGo' in globalThis);
      await press(page, 'Stop');
      await page.evaluate(() => globalThis.letGo());
      await page.getByRole('alert').getByText('Stopped. The workbook is as it was.').waitFor();
      expect(await held(page)).toEqual(before);
    });
  });

  test('while a cell is being edited is told in words, for reading and for filling, and works once the edit is over', async () => {
    await withAddIn(JOB, async (page) => {
      const edit = (editing: boolean) => page.evaluate((now) => void (globalThis.fakeBook.editing = now), editing);
      const told = page.getByRole('alert').getByText('A cell is being edited');
      await edit(true);
      await press(page, 'Read the selected cells');
      await told.waitFor();
      expect(await told.innerText()).toContain('Press Enter or Escape in the sheet, then try again.');
      await isAccessible(page, 'excel-editing');
      await edit(false);
      await toFill(page);
      expect(await told.count()).toBe(0);

      const before = await held(page);
      await edit(true);
      await fillButton(page).click();
      await told.waitFor();
      expect(await held(page)).toEqual(before);
      await edit(false);
      await fillButton(page).click();
      await heading(page, 'The workbook is filled');
    });
  });
});
