import { it } from 'vitest';
import { fillButton, fits, heading, isAccessible, press } from './drive';
import { usePane } from './usePane';

const withPane = usePane();

/** In each of them the widths are gone through; colors are the same in all of them, so one is enough but for the first look. */
const LOOKS = [
  ['light', { colorScheme: 'light' }, [320, 420, 600]],
  ['dark', { colorScheme: 'dark' }, [320]],
  ['contrast', { colorScheme: 'dark', forcedColors: 'active' }, [600]],
  ['office-dark', { query: '?office=dark' }, [420]],
] as const;
const WIDTHS = [320, 420, 600];

it.each(LOOKS)('axe finds nothing and nothing runs over in any width: %s', async (look, options, looked) => {
  await withPane(
    async (page) => {
      const check = async (state: string) => {
        for (const width of WIDTHS) {
          await page.setViewportSize({ width, height: 760 });
          await fits(page);
          if (looked.some((one) => one === width)) await isAccessible(page, `${state}-${look}-${width}`);
        }
      };
      await check('list');
      await press(page, 'Open the example');
      await heading(page, 'What each column holds');
      await check('headings');
      await press(page, /^See the/);
      await heading(page, /openings as read/);
      await check('openings');
      await page.locator('.opening-line').first().click();
      await page.locator('.drawing').scrollIntoViewIfNeeded();
      await check('opening');
      await press(page, 'Go on to fill the workbook');
      await check('fill');
      await fillButton(page).click();
      await heading(page, 'The workbook is filled');
      await check('done');
      await press(page, 'Figure');
      await page.locator('.drawing').waitFor();
      await check('figure');
      await press(page, 'Cell');
      await check('cell');
      const row = await page.evaluate(() => globalThis.memory.written.get('Takeoff')?.body?.[0] ?? 0);
      await page.evaluate((at) => globalThis.memory.select('Takeoff', `B${at}`), row);
      await page.locator('.drawing').waitFor();
      await check('takeoff-row');
      await press(page, 'Shop');
      await heading(page, 'Shop');
      await check('shop');
      for (const summary of await page.locator('.settings > summary').all()) await summary.click();
      await check('shop-open');
    },
    { ...options },
  );
});
