import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { fillButton, heading, isAccessible, press } from './drive';
import { filled, LIST, readList, toFill, usePane } from './usePane';

const withPane = usePane();

/** What holds the focus; the page itself, which has it between two renderings, is nothing. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const at = document.activeElement;
    return at === null || at === document.body ? '' : `${at.tagName} ${at.id} ${at.textContent}`;
  });

describe('first use', () => {
  it('takes the example from one click to a filled workbook and to the row that needs something', async () => {
    await withPane(async (page) => {
      await press(page, 'Open the example');
      await heading(page, 'What each column holds');
      await press(page, /^See the \d+ openings/);
      await press(page, 'Go on to fill the workbook');
      await fillButton(page).click();
      await heading(page, 'The workbook is filled');
      await page.locator('button.troubled').first().click();
      const at = await page.evaluate(() => globalThis.memory.cellAt());
      expect(at).toMatchObject({ ok: true, value: { sheet: 'Takeoff' } });
    });
  });

  it('offers the example no more once a takeoff stands in the workbook', async () => {
    await withPane(async (page) => {
      await filled(page);
      await press(page, /^List/);
      expect(await page.getByText('First time here?').count()).toBe(0);
    });
  });
});

describe('headings', () => {
  it('change by a drop-down, and the openings with them', async () => {
    await withPane(async (page) => {
      await readList(page);
      await page.getByLabel('Rise', { exact: true }).selectOption('Not used');
      await page.getByText('One column is not used').waitFor();
      await press(page, 'See the 3 openings');
      await page.getByText('2 openings to look at').waitFor();
    });
  });

  it('keep the focus on the drop-down that was changed', async () => {
    await withPane(async (page) => {
      await readList(page);
      const width = page.getByLabel('Width', { exact: true });
      await width.focus();
      await width.selectOption('Rough opening, width');
      await press(page, 'See the 3 openings');
      await page.getByText('span 34″').first().waitFor();
      await press(page, /^Headings/);
      await width.focus();
      await width.selectOption('Width of the opening');
      await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('meaning-3');
    });
  });
});

describe('openings', () => {
  it('take a missing rise where they stand, and say why they do not take another text', async () => {
    await withPane(async (page) => {
      await readList(page);
      await press(page, 'See the 3 openings');
      const rise = page.getByLabel('Rise of W3');
      await rise.fill('about six');
      await rise.press('Enter');
      await page.getByText('you typed "about six"').waitFor();
      expect(await rise.getAttribute('aria-invalid')).toBe('true');
      await isAccessible(page, 'openings-refused-320');
      await rise.fill('');
      await rise.press('Enter');
      await page.getByText('you typed "about six"').waitFor({ state: 'detached' });
      await rise.fill('6 1/2');
      await rise.press('Enter');
      await page.getByText('3 ready').waitFor();
      expect(await page.getByText('to look at').count()).toBe(0);
      await expect.poll(() => focused(page)).toMatch(/^BUTTON .*Go on to fill/);
    });
  });

  it('show the opening to scale, and the drawing follows the figures', async () => {
    await withPane(async (page) => {
      await readList(page);
      await press(page, 'See the 3 openings');
      await press(page, /^W1/);
      const drawing = page.locator('.drawing');
      await drawing.getByText('R 30').waitFor();
      const rise = page.getByLabel('Rise of W1');
      await rise.fill('12');
      await rise.press('Enter');
      await drawing.getByText('R 19 1/2').waitFor();
      await page.getByText('changed by you').waitFor();
      await press(page, 'Put back what the list says');
      await drawing.getByText('R 30').waitFor();
      expect(await rise.inputValue()).toBe('6');
    });
  });

  it('list a thousand a page at a time, attention first', async () => {
    const many = Array.from({ length: 1000 }, (_, at) => [
      `M${at}`,
      1,
      'segmental',
      36 + (at % 40),
      at === 999 ? null : 6,
    ]);
    await withPane(
      async (page) => {
        await readList(page);
        await press(page, 'See the 1,000 openings');
        await page.getByRole('heading', { level: 3, name: /M999/ }).waitFor();
        expect(await page.locator('.openings > li').count()).toBe(50);
        await press(page, /^Show more/);
        await expect.poll(() => page.locator('.openings > li').count()).toBe(100);
      },
      { sheets: { List: [LIST[0]!, ...many] } },
    );
  });
});

describe('filling', () => {
  it('asks before it writes over, with the harmless answer in focus, and Escape leaves all as it is', async () => {
    await withPane(
      async (page) => {
        await toFill(page);
        await fillButton(page).click();
        const ask = page.getByRole('alertdialog', { name: 'This workbook already has Takeoff' });
        await ask.waitFor();
        expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Leave as it is');
        await isAccessible(page, 'ask-320');
        await page.keyboard.press('Escape');
        await ask.waitFor({ state: 'detached' });
        await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('fill');
        expect(await page.evaluate(() => globalThis.memory.cell('Takeoff', 'A1')?.value)).toBe('mine');
        await fillButton(page).click();
        await press(page, 'Write over');
        await heading(page, 'The workbook is filled');
      },
      { sheets: { List: LIST, Takeoff: [['mine']] } },
    );
  });

  it('stops when told to and leaves the workbook as it was', async () => {
    await withPane(async (page) => {
      await toFill(page);
      // A workbook that takes its time: a stop can come between two sheets.
      await page.evaluate(() => {
        const write = globalThis.memory.writeSheets.bind(globalThis.memory);
        globalThis.memory.writeSheets = async (sheets, options) => {
          options.onProgress?.(1, 10);
          while (!options.signal?.aborted) await new Promise((resume) => setTimeout(resume, 20));
          return write(sheets, options);
        };
      });
      await fillButton(page).click();
      await page.getByRole('progressbar').waitFor();
      await page.getByText('1 of 10').waitFor();
      await isAccessible(page, 'filling-320');
      await press(page, 'Stop');
      await page.getByRole('alert').getByText('Stopped. The workbook is as it was.').waitFor();
      expect(await page.evaluate(() => globalThis.memory.sheetNames())).toEqual({ ok: true, value: ['List'] });
    });
  });

  it.each([
    ['a cell is being edited', { editing: true }, 'A cell is being edited. Press Enter or Escape in the sheet'],
    ['a sheet cannot be written', { failAfterSheets: 1 }, 'could not be written. The workbook is as it was.'],
  ])('says so in the pane when %s', async (_what, faults, sentence) => {
    await withPane(async (page) => {
      await toFill(page);
      await page.evaluate((faulty) => Object.assign(globalThis.memory.faults, faulty), faults);
      await fillButton(page).click();
      await page.getByRole('alert').getByText(sentence).waitFor();
      await isAccessible(page, `host-refused-${Object.keys(faults)[0]}`);
    });
  });

  it('writes plain formulas when they are chosen', async () => {
    await withPane(async (page) => {
      await toFill(page);
      await page.getByLabel('Plain formulas').check();
      await fillButton(page).click();
      await heading(page, 'The workbook is filled');
      const text = await page.evaluate(async () => JSON.stringify(await globalThis.memory.readFormulas('Takeoff')));
      expect(text).not.toContain('ARCH.');
    });
  });
});

describe('by keyboard alone', () => {
  it('the example is read, fixed and filled', async () => {
    await withPane(async (page) => {
      const tabTo = async (name: RegExp) => {
        for (let press = 0; press < 120; press += 1) {
          await page.keyboard.press('Tab');
          const at = await page.evaluate(() => document.activeElement?.textContent ?? '');
          if (name.test(at)) return;
        }
        throw new Error(`Tab never came to ${name}`);
      };
      await tabTo(/^Read it/);
      await page.keyboard.press('Enter');
      await heading(page, 'What each column holds');
      await expect.poll(() => focused(page)).toMatch(/^H1 /);
      await tabTo(/^See the/);
      await page.keyboard.press('Enter');
      await heading(page, /openings as read/);
      await expect.poll(() => focused(page)).toMatch(/^H1 .*openings as read/);
      await page.keyboard.press('Tab');
      expect(await focused(page)).toMatch(/^INPUT rise-/);
      await page.keyboard.type('8');
      await page.keyboard.press('Enter');
      await expect.poll(() => focused(page)).toMatch(/^BUTTON .*Go on to fill/);
      await page.keyboard.press('Enter');
      await heading(page, 'Fill the workbook');
      await tabTo(/^Fill the workbook$/);
      await page.keyboard.press('Enter');
      await heading(page, 'The workbook is filled');
    });
  });
});
