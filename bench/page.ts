/**
 * The built workbench in Chromium, used by keys and buttons as a person uses it: a list is read and filled, a span and a
 * setting are typed, rows are sorted, that is undone, the job is saved. Of each: how long from the key until the values stand
 * in the cells, until the page was drawn with what was typed or the word that it calculates, and for how long it took nothing
 * else or drew no picture. The time of a filling is told without that of its plan, too. What follows by itself, the plan made
 * anew and the workbook kept in the browser, is watched, too. Beside the clock stands the time that the page's thread was at
 * work, which a busy machine doesn't lengthen.
 * `npm run bench -- page [OPENINGS…]`, after `npm run build`.
 */
import { existsSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import type { Browser, Page } from 'playwright-core';
import { serve } from '../cli/serve';
import { cellName, defaultStandards } from '../src/standards';
import { takeoff } from '../src/takeoff/takeoff';
import { TAKEOFF_HEAD_ROWS } from '../src/workbook/takeoff/places';
import { workbookSheets } from '../src/workbook/workbook';
import { launchChromium } from '../tests/browser/launch';
import { scheduleOf } from '../tests/takeoff/openings';
import { buildersList } from './lists/buildersList';
import { Watch, type Span, type Watched } from './page/watch';

const WEB = 'dist/web/';
/** In ms, on a quiet machine of two cores. */
const LATER_GOALS: Readonly<Record<number, number>> = { 100: 200, 300: 400, 1000: 1000 };
const SETTING_GOALS: Readonly<Record<number, number>> = { 1000: 2000 };
const FILLING_GOALS: Readonly<Record<number, number>> = { 1000: 2000 };
const ANSWER_GOAL = 100;
const STANDSTILL_GOAL = 200;
const ROW = TAKEOFF_HEAD_ROWS + 1;
const SPAN_OF_THE_FIRST = `F${ROW}`;

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();

function line(what: string, { clock, work }: { readonly clock: number; readonly work?: number }, goal?: number): void {
  const ms = (time: number) => `${Math.round(time).toLocaleString('en-US')} ms`.padStart(9);
  const missed =
    goal === undefined || clock <= goal
      ? ''
      : work !== undefined && work > goal
        ? '   MISSED'
        : '   missed by the clock';
  const thread = work === undefined ? ''.padEnd(19) : `   at work${ms(work)}`;
  console.log(`  ${what.padEnd(44)}${ms(clock)}${thread}${goal === undefined ? '' : `   goal ${ms(goal)}`}${missed}`);
}

function still(what: string, { task, picture }: Watched): void {
  line(`${what}: longest task`, task, STANDSTILL_GOAL);
  line(`${what}: longest without a picture`, picture, STANDSTILL_GOAL);
}

/** One workbench page with a job of so many openings. */
class Used {
  private constructor(
    readonly page: Page,
    readonly watch: Watch,
  ) {}

  static async at(browser: Browser, address: string): Promise<Used> {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    // The browser's own file dialog can't be driven: a page without it saves to the downloads.
    await page.addInitScript('Reflect.deleteProperty(window, "showSaveFilePicker")');
    await page.goto(address);
    await page.waitForFunction(() => 'workbench' in globalThis, null, { timeout: 60_000 });
    return new Used(page, await Watch.on(page));
  }

  /** Shows a cell, selects it and gives the grid the keys. */
  async goTo(sheet: string, cell: string): Promise<void> {
    const show = `workbench.host.show(${JSON.stringify(sheet)}, ${JSON.stringify(cell)})`;
    await this.page.evaluate(show);
    const canvas = await this.canvas();
    // The grid takes keys once it has been clicked; the click lands on some cell, the name box goes to the cell.
    await this.page.mouse.click(canvas.x + 200, canvas.y + 200);
    await this.page.evaluate(show);
    await this.page.waitForTimeout(500);
  }

  async canvas(): Promise<{ x: number; y: number }> {
    return (await this.page.locator('canvas[id^="univer-sheet-main-canvas"]').first().boundingBox())!;
  }

  /** Types into a cell, and waits for what follows. */
  async typed(sheet: string, cell: string, text: string): Promise<Watched> {
    await this.goTo(sheet, cell);
    return this.watch.during(async () => {
      const edits = await this.page.evaluate<number>('edits');
      await this.page.keyboard.type(text);
      await this.page.keyboard.press('Enter');
      await this.watch.until(`edits > ${edits}`, 50);
      await this.page.waitForTimeout(300);
    });
  }

  /** Until the plan is made anew and the workbook is kept. */
  async afterwards(): Promise<Watched> {
    return this.watch.during(async () => {
      await this.page.waitForTimeout(1200);
      await this.watch.until(
        `workbench.host.readSheet('Stock').then(({ value }) => !/older/.test(value.rows[0].join(' ')))`,
        500,
      );
      await this.page.waitForTimeout(2500);
    });
  }

  async deed(what: string, deed: () => Promise<unknown>, beforeItsPlan?: number): Promise<void> {
    const began = performance.now();
    let clock = 0;
    const seen = await this.watch.during(async () => {
      await deed();
      await this.page.evaluate('workbench.settled()');
      clock = performance.now() - began;
      await this.page.waitForTimeout(300);
    });
    line(what, { clock });
    if (seen.planning > 0) line(`${what}: before its plan`, { clock: clock - seen.planning }, beforeItsPlan);
    still(what, seen);
  }
}

async function measure(browser: Browser, address: string, count: number): Promise<void> {
  const used = await Used.at(browser, address);
  const { page } = used;
  console.log(`${count} openings`);
  const text = buildersList(count)
    .map((row) => row.join('\t'))
    .join('\n');
  const list = { name: 'list.tsv', mimeType: 'text/tab-separated-values', buffer: Buffer.from(text) };
  await used.deed('the list read', async () => {
    await page.locator('#pane input[type=file]').setInputFiles(list);
    await press(page, /^See the/);
    await page.getByRole('heading', { level: 1, name: /openings? as read/ }).waitFor();
  });
  await press(page, 'Go on to fill the workbook');
  const fill = async () => {
    await page.locator('#fill').click();
    await page.getByText('The workbook is filled').waitFor({ timeout: 180_000 });
  };
  await used.deed('filled', fill, FILLING_GOALS[count]);

  const goal = LATER_GOALS[count];
  const first = await used.typed('Takeoff', SPAN_OF_THE_FIRST, '41');
  line('a span at once after filling', first.values!, goal === undefined ? undefined : 2 * goal);
  line('that edit: answered', first.answer!, ANSWER_GOAL);
  still('that edit', first);
  still('plan made anew, workbook kept', await used.afterwards());

  const later: Watched[] = [];
  for (const span of ['42', '43', '44', '45', '46']) {
    later.push(await used.typed('Takeoff', SPAN_OF_THE_FIRST, span));
    await used.afterwards();
  }
  const [values, answers] = [later.map((each) => each.values!), later.map(({ answer }) => answer!)];
  line('a span, later (middle of five)', middle(values), goal);
  line('later edits: answered (slowest)', longest(answers), ANSWER_GOAL);
  still('later edits', {
    ...later[0]!,
    task: longest(later.map(({ task }) => task)),
    picture: longest(later.map((each) => each.picture)),
  });

  await used.typed('Takeoff', SPAN_OF_THE_FIRST, '47');
  const meanwhile = await used.typed('Takeoff', SPAN_OF_THE_FIRST, '48');
  line('a span, while the plan is made', meanwhile.values!, goal);
  await used.afterwards();

  const setting = await used.typed('Standards', revealCell(), '0.25');
  line('the reveal of the shop', setting.values!, SETTING_GOALS[count]);
  line('that edit: answered', setting.answer!, ANSWER_GOAL);
  still('that edit', setting);
  still('plan made anew, workbook kept', await used.afterwards());

  await used.goTo('Takeoff', SPAN_OF_THE_FIRST);
  await used.deed('sorted by span', async () => {
    await press(page, 'Sort');
    await press(page, 'Largest or Z first');
  });
  await used.afterwards();
  await used.deed('undone', () => press(page, 'Undo'));
  await used.afterwards();
  await used.goTo('Takeoff', SPAN_OF_THE_FIRST);
  await used.deed('a row deleted', async () => {
    const { x, y } = await used.canvas();
    await page.mouse.click(x + 20, y + 396, { button: 'right' });
    await page.getByText('Delete Selected Row').click();
  });
  await used.afterwards();
  await used.deed('saved', async () => {
    await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
  });
  await page.close();
}

function middle(spans: readonly Span[]): Span {
  const sorted = (of: (span: Span) => number) =>
    spans.map(of).sort((one, other) => one - other)[Math.floor(spans.length / 2)]!;
  return { clock: sorted(({ clock }) => clock), work: sorted(({ work }) => work) };
}

function longest(spans: readonly Span[]): Span {
  return { clock: Math.max(...spans.map(({ clock }) => clock)), work: Math.max(...spans.map(({ work }) => work)) };
}

/** Where a reveal is typed on Standards. */
function revealCell(): string {
  const sheets = workbookSheets(scheduleOf([]), takeoff([], defaultStandards()));
  const { ref } = sheets.flatMap(({ names = [] }) => names).find(({ name }) => name === cellName('reveal'))!;
  return ref.replace(/^.*\$C\$/, 'B');
}

export async function run(args: readonly string[]): Promise<void> {
  if (!existsSync(`${WEB}workbench.js`)) throw new Error('Nothing is built yet: run npm run build first.');
  const serving = await serve(WEB);
  const browser = await launchChromium();
  try {
    for (const count of args.length > 0 ? args.map(Number) : [100, 300, 1000])
      await measure(browser, serving.address, count);
  } finally {
    await browser.close();
    await serving.close();
  }
  console.log(`load of the machine in the last minute: ${loadavg()[0]!.toFixed(1)} on ${cpus().length} cores`);
}
