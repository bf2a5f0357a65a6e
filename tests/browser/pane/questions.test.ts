import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { fits, heading, isAccessible, press } from './drive';
import { usePane } from './usePane';

const HEADINGS = ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Radius', 'Remarks'];
const SHEETS = {
  List: [
    HEADINGS,
    ['W1', 1, 'segmental', 36, 6, 25, null],
    ['W2', 1, 'segmental', 40, 6, null, null],
    ['W2', 1, 'segmental', 40, 8, null, null],
    ['W3', 1, 'segmental', 48, 7, null, 'both sides'],
    ['W4', 1, 'segmental', 50, 7, null, 'existing to remain'],
    ['W5', 1, 'EYEBLOW', 50, 7, null, null],
    ['W6', 1, 'EYEBLOW', 54, 8, null, null],
    ['W7', 2, 'half round', 30, null, null, 'paint'],
  ],
  Metric: [
    ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
    ['W1', 1, 'segmental', 450, 80],
    ['W2', 1, 'segmental', 900, 150],
  ],
};
const withPane = usePane();

async function toOpenings(page: Page, sheet: string): Promise<void> {
  await page.getByLabel('Or a whole sheet').selectOption(sheet);
  await press(page, 'Read it');
  await heading(page, 'What each column holds');
  await press(page, /^See the \d+ openings/);
  await heading(page, /openings as read/);
}

const focused = (page: Page) =>
  page.evaluate(() => `${document.activeElement?.tagName} ${document.activeElement?.textContent?.trim()}`);

describe('the questions of a list', () => {
  for (const width of [320, 1440])
    it(`stand on one page and are answered a press each, ${width} wide`, async () => {
      await withPane(
        async (page) => {
          await toOpenings(page, 'List');
          await isAccessible(page, `questions-${width}`);
          await fits(page);
          await page.getByText('7 openings to look at').waitFor();
          await page.getByText('2 remarks that may change what is bought').waitFor();
          await page.getByLabel(/existing to remain/).selectOption('priced as listed');
          await press(page, 'Take these 2 answers');
          await page.getByText('2 remarks that may change').waitFor({ state: 'detached' });
          await page.getByText('5 openings to look at').waitFor();

          // The mark that stands twice: answered for both, and the next question has the focus.
          await press(page, 'keep both');
          await page.getByText('3 openings to look at').waitFor();
          await expect.poll(() => focused(page)).toMatch(/^SELECT|^BUTTON|^INPUT/);

          // Two rows whose head can't be read are answered together.
          await page.getByLabel('Head of all 2').selectOption('segmental');
          await page.getByText('1 opening to look at').waitFor();

          // A contradiction offers its candidates.
          await press(page, /^7\.6506/);
          await page.getByText('8 ready').waitFor();
          await expect.poll(() => focused(page)).toMatch(/^BUTTON Go on to fill/);

          await page.getByText('6 answers given').click();
          await isAccessible(page, `questions-answered-${width}`);
          await press(page, /^Take back the answer to: The mark/);
          await page.getByText('2 openings to look at').waitFor();
        },
        { sheets: SHEETS, width },
      );
    });

  it('ask the unit once, with two rows as they would read in each', async () => {
    await withPane(
      async (page) => {
        await toOpenings(page, 'Metric');
        await page.getByText('row 2: 17.72" × 3.15"; row 3: 35.43" × 5.91"').waitFor();
        await isAccessible(page, 'questions-unit-320');
        await fits(page);
        await press(page, /^millimeters/);
        await page.getByText('2 ready').waitFor();
        await page
          .getByText('span 17 23/32″')
          .or(page.getByText(/span\s17\.7165/))
          .first()
          .waitFor();
      },
      { sheets: SHEETS },
    );
  });

  it('are answered row by row where the rows differ', async () => {
    await withPane(
      async (page) => {
        await toOpenings(page, 'List');
        await page.getByText('Row by row').first().click();
        await press(page, /^leave out for row 3/);
        await page.getByText('7 openings as read').waitFor();
        await press(page, /^keep both/);
        await page.getByText('5 openings to look at').waitFor();
      },
      { sheets: SHEETS },
    );
  });
});
