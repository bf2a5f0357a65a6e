import { expect, test } from 'vitest';
import { drawn, SCHEDULE_ROWS, SCHEDULE_WIDTHS } from '../../pdf/plan';
import { heading, press } from './drive';
import { filled, usePane } from './usePane';

const pane = usePane();

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
