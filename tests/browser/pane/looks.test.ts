import { describe, it } from 'vitest';
import { fillButton, fits, heading, isAccessible, press } from './drive';
import { usePane } from './usePane';

const withPane = usePane();

describe('in every look and width', () => {
  const looks = [
    ['light', { colorScheme: 'light' }],
    ['dark', { colorScheme: 'dark' }],
    ['contrast', { colorScheme: 'dark', forcedColors: 'active' }],
    ['office-dark', { query: '?office=dark' }],
  ] as const;

  it.each(looks.flatMap(([look, options]) => [320, 420, 600].map((width) => [look, width, options] as const)))(
    'axe finds nothing and nothing runs over: %s at %i px',
    async (look, width, options) => {
      await withPane(
        async (page) => {
          const check = async (state: string) => {
            await fits(page);
            await isAccessible(page, `${state}-${look}-${width}`);
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
        { width, ...options },
      );
    },
  );
});
