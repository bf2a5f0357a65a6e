import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { useBuilt } from './built';
import { watch } from './launch';

const built = useBuilt();

/** What office.js gives inside Excel, as far as starting needs it: two sheets, nothing else. */
const OFFICE = `
  const sheets = [{ name: 'Job', visibility: 'Visible' }, { name: '~before Gone', visibility: 'VeryHidden' }];
  const later = () => ({ add: () => ({ remove() {}, context: {} }) });
  const context = {
    sync: async () => {},
    workbook: {
      worksheets: {
        load() {},
        items: sheets,
        onChanged: later(),
        getItemOrNullObject: () => ({
          load() {},
          isNullObject: true,
          getUsedRangeOrNullObject: () => ({ load() {} }),
        }),
      },
      onSelectionChanged: later(),
      settings: { getItemOrNullObject: () => ({ load() {}, isNullObject: true }) },
    },
  };
  window.Excel = { run: async (...args) => args.at(-1)(context) };
  window.Office = {
    HostType: { Excel: 'Excel' },
    PlatformType: { Mac: 'Mac', iOS: 'iOS' },
    onReady: async () => ({ host: 'Excel' }),
    context: {
      contentLanguage: 'en-US',
      officeTheme: { bodyBackgroundColor: '#262626', bodyForegroundColor: '#ffffff' },
      requirements: { isSetSupported: () => false },
    },
  };
  window.associated = {};
  window.CustomFunctions = {
    associate: (name, run) => (window.associated[name] = run),
    Error: class extends Error { constructor(code, message) { super(message); this.code = code; } },
    ErrorCode: { invalidValue: '#VALUE!' },
  };
`;

describe('the add-in as Excel starts it', () => {
  test('registers every worksheet function, and mounts the pane in the colors of Excel', async () => {
    const page = await built.browser.newPage({ viewport: { width: 350, height: 700 } });
    const seen = watch(page, built.address);
    await page.route('**/office/office.js', (route) => route.fulfill({ contentType: 'text/javascript', body: OFFICE }));
    await page.goto(built.address + 'taskpane.html');
    await page.getByRole('heading', { level: 1 }).waitFor();

    const { functions } = JSON.parse(readFileSync('functions/functions.json', 'utf8')) as {
      functions: { id: string }[];
    };
    const registered = await page.evaluate(() => Object.keys((window as unknown as { associated: object }).associated));
    expect(registered.sort()).toEqual(functions.map(({ id }) => id).sort());
    const answers = await page.evaluate(() => {
      const { RADIUS } = (window as unknown as { associated: Record<string, (...args: unknown[]) => unknown> })
        .associated;
      try {
        return [RADIUS!(36, 6), RADIUS!(36, -3)];
      } catch (error) {
        return [RADIUS!(36, 6), (error as Error).message, (error as { code?: string }).code];
      }
    });
    expect(answers).toEqual([30, 'rise must be more than 0; got -3', '#VALUE!']);
    expect(await page.locator('#pane').getAttribute('data-theme')).toBe('dark');
    expect(await page.locator('#broken').isVisible()).toBe(false);
    expect(await page.locator('.notice').allInnerTexts()).toEqual([]);
    expect(seen).toEqual({ outside: [], errors: [] });
    await page.close();
  });
});
