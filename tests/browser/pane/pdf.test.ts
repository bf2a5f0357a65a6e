import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { packed } from '../../pdf/bombs';
import { drawn, SCHEDULE_ROWS, SCHEDULE_WIDTHS } from '../../pdf/plan';
import { heading, press } from './drive';
import { filled, readList, usePane } from './usePane';

const pane = usePane();

/** Checks run beside one another. */
const PATIENCE = { timeout: 30_000 };

const choose = (name: string, bytes: Uint8Array) => ({ name, mimeType: 'application/pdf', buffer: Buffer.from(bytes) });

test('a schedule in a PDF is shown on its page, framed, with its cells as read, and goes on like any list', async () => {
  const bytes = await drawn((sheet) => {
    sheet.table(SCHEDULE_ROWS, 50, 60, SCHEDULE_WIDTHS);
    sheet.say('XX', 52, 60 + 16 + 11.5);
  });
  await pane(async (page) => {
    const asked: string[] = [];
    const violations: string[] = [];
    page.on('request', (request) => void asked.push(new URL(request.url()).pathname));
    page.on(
      'console',
      (message) => void (/Content Security Policy/.test(message.text()) && violations.push(message.text())),
    );
    await page.setInputFiles('input[type=file]', choose('plan.pdf', bytes));
    await heading(page, 'Is this the schedule?');
    expect(asked).toContain('/pdf.min.mjs');
    await page.waitForSelector('.pdf-page canvas');
    const dark = await page.evaluate(() => {
      const canvas = document.querySelector<HTMLCanvasElement>('.pdf-page canvas')!;
      const { data } = canvas.getContext('2d')!.getImageData(100, 120, 400, 60);
      return data.filter((value, index) => index % 4 === 0 && value < 128).length;
    });
    expect(dark).toBeGreaterThan(100);
    expect(await page.locator('.pdf-cells tr').first().innerText()).toMatch(/Mark\s+Qty\s+Head\s+Width\s+Rise/);
    expect(await page.locator('.pdf-cells .why').innerText()).toMatch(/letters lie over one another in column 1/);
    await press(page, 'Show it on the page');
    await page.waitForSelector('.pdf-cells canvas');
    // A column line moved to the far side of "Head" gives its texts to the column before.
    const line = page.getByLabel('Line between columns 1 and 2');
    await line.focus();
    await page.keyboard.press('ArrowRight');
    await page.waitForFunction(() => document.querySelector('.page')?.getAttribute('aria-busy') === 'false');
    expect(await page.locator('.pdf-cells tr').first().innerText()).toMatch(/Mark\s+Qty\s+Head\s+Width\s+Rise/);
    await press(page, 'Read this table');
    await heading(page, 'What each column holds');
    await press(page, 'See the 3 openings');
    expect(violations).toEqual([]);
  });
});

test('frame and column lines are dragged with the mouse, and the cells are read anew; a row in doubt is shown as it stands', async () => {
  const bytes = await drawn(({ say, line, table }) => {
    table(SCHEDULE_ROWS, 50, 60, SCHEDULE_WIDTHS);
    say('XX', 52, 60 + 16 + 11.5);
    line(40, 300, 700, 300);
  });
  await pane(async (page) => {
    await page.setInputFiles('input[type=file]', choose('plan.pdf', bytes));
    await heading(page, 'Is this the schedule?');
    await page.waitForSelector('.pdf-page canvas');
    const cells = () =>
      page
        .locator('.pdf-cells tr:not(.why)')
        .evaluateAll((rows) => rows.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.textContent)));
    expect(await cells()).toHaveLength(4);
    const drag = async (label: string, points: { readonly x: number; readonly y: number }) => {
      const line = page.getByLabel(label, { exact: true });
      // While something is read, the pane says so above the picture.
      await page.waitForFunction(() => document.querySelector('.page')?.getAttribute('aria-busy') === 'false');
      await line.scrollIntoViewIfNeeded();
      const { x, y, width, height } = (await line.boundingBox())!;
      const picture = (await page.locator('.pdf-page').boundingBox())!;
      const scale = picture.width / 792;
      await page.mouse.move(x + width / 2, y + height / 2);
      await page.mouse.down();
      await page.mouse.move(x + width / 2 + 3, y + height / 2 + 3);
      await page.mouse.move(x + width / 2 + points.x * scale, y + height / 2 + points.y * scale, { steps: 4 });
      await page.mouse.up();
    };
    // The line between "Qty" and "Head" goes to the far side of "Head".
    await drag('Line between columns 2 and 3', { x: 66, y: 0 });
    await expect.poll(async () => (await cells())[0], PATIENCE).toEqual(['Mark', 'Qty Head', '', 'Width', 'Rise']);
    await drag('Line between columns 2 and 3', { x: -66, y: 0 });
    await expect.poll(async () => (await cells())[0], PATIENCE).toEqual(['Mark', 'Qty', 'Head', 'Width', 'Rise']);
    // The frame's lower side goes up past the last row.
    await drag('Frame, bottom', { x: 0, y: -16 });
    await expect
      .poll(async () => (await cells()).map(([mark]) => mark), PATIENCE)
      .toEqual(['Mark', expect.stringContaining('A'), 'A2']);
    await press(page, 'Show it on the page');
    const dark = () =>
      page.locator('.pdf-cells canvas').evaluate((canvas: HTMLCanvasElement) => {
        // As high as one row, not as the page, nor as a canvas on which nothing was drawn yet.
        if (canvas.height > 60) return 0;
        const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
        return data.filter((value, index) => index % 4 === 0 && value < 128).length;
      });
    await expect.poll(dark, PATIENCE).toBeGreaterThan(50);
  });
});

test('a revised list in a PDF is compared with the takeoff at hand', async () => {
  const bytes = await drawn((sheet) => sheet.table(SCHEDULE_ROWS, 50, 60, SCHEDULE_WIDTHS));
  const before = SCHEDULE_ROWS.map((cells) => cells.map((cell) => (cell === '42' ? '40' : cell)));
  await pane(
    async (page) => {
      await filled(page);
      await press(page, 'Job');
      await page.getByLabel('Compare a file').setInputFiles(choose('revised.pdf', bytes));
      await page.getByText('0 openings added, 0 dropped, 1 changed, 0 renamed, 2 unchanged.').waitFor();
    },
    { sheets: { List: before } },
  );
});

test('a quote in a PDF is checked line by line like one from a spreadsheet', async () => {
  const quote = [
    ['Item', 'Mark', 'Qty', 'Length', 'Unit price', 'Amount'],
    ['1', 'W1', '2', '47 1/2', '100.00', '200.00'],
    ['2', 'W9', '1', '60', '100.00', '100.00'],
  ];
  const bytes = await drawn((sheet) => sheet.table(quote, 50, 60, [40, 50, 40, 60, 70, 70]));
  await pane(async (page) => {
    await readList(page);
    await press(page, 'Quote');
    await page.getByLabel('Choose a file').setInputFiles(choose('quote.pdf', bytes));
    await page.locator('.opening').first().waitFor();
    expect(await page.locator('main').innerText()).toMatch(
      /quote\.pdf, page 1[^]*W1 row 2 differs[^]*W9 is no opening/,
    );
  });
});

test('nothing of the PDF reader is loaded before a PDF is chosen, and one that is no list is refused in words', async () => {
  const bytes = await drawn((sheet) =>
    sheet.say('Dear builder, thank you for your interest in arched casings.', 50, 50),
  );
  await pane(async (page) => {
    expect(
      await page.evaluate(
        () => performance.getEntriesByType('resource').filter(({ name }) => name.endsWith('.mjs')).length,
      ),
    ).toBe(0);
    await page.setInputFiles('input[type=file]', choose('letter.pdf', bytes));
    await page.waitForFunction(() => document.body.innerText.includes('No schedule was found on its page'));
  });
});

test('a page that takes too long is stopped in a sentence while the pane still answers, and the next file reads fine', async () => {
  const slow = packed('q 1 0 0 1 0 0 cm 0 0 m 9 9 l S Q\n', 4_000_000);
  const fine = await drawn((sheet) => sheet.table(SCHEDULE_ROWS, 50, 60, SCHEDULE_WIDTHS));
  await pane(async (page) => {
    const worked = await workOf(page);
    await page.setInputFiles('input[type=file]', choose('slow.pdf', slow));
    await page.getByLabel('Reading page 1 of 1').waitFor();
    await page.getByText('slow.pdf: It takes longer than 8 seconds to read').waitFor();
    // Telling the news is little work; a page that read the file itself would work on it for more than 8 seconds.
    expect(await worked()).toBeLessThan(3);
    await page.setInputFiles('input[type=file]', choose('plan.pdf', fine));
    await heading(page, 'Is this the schedule?');
  });
});

/** Seconds of the processor that the page's own thread has worked since: a machine that is busy with other things adds none. */
async function workOf(page: Page): Promise<() => Promise<number>> {
  const browser = await page.context().newCDPSession(page);
  await browser.send('Performance.enable', { timeDomain: 'threadTicks' });
  const all = async () => {
    const { metrics } = await browser.send('Performance.getMetrics');
    return metrics.find(({ name }) => name === 'TaskDuration')!.value;
  };
  const before = await all();
  return async () => (await all()) - before;
}
