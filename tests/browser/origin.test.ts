import { describe, expect, test } from 'vitest';
import { useBuilt } from './built';
import { watch } from './launch';

const built = useBuilt();

describe('the pages, once built', () => {
  test('the workbench asks for nothing but what its own server gives, and nothing goes wrong in it', async () => {
    const page = await built.browser.newPage();
    const seen = watch(page, built.address);
    await page.goto(built.address);
    await page.locator('canvas[id^="univer-sheet-main-canvas"]').first().waitFor({ timeout: 60_000 });
    await page.waitForLoadState('networkidle');
    expect(seen).toEqual({ outside: [], errors: [] });
    await page.close();
  });

  test('the pane opened outside Excel says where it belongs, with office.js from our own server', async () => {
    const page = await built.browser.newPage();
    const seen = watch(page, built.address);
    await page.goto(built.address + 'taskpane.html');
    await page.waitForFunction(() => document.getElementById('pane')?.textContent?.includes('inside Excel'));
    expect(seen.outside).toEqual([]);
    await page.close();
  });

  test('a page cannot reach another server even if it tried', async () => {
    const page = await built.browser.newPage();
    await page.goto(built.address);
    const reached = await page.evaluate(() =>
      fetch('http://127.0.0.1:9/').then(
        () => 'reached',
        (error: Error) => error.name,
      ),
    );
    expect(reached).toBe('TypeError');
    const blocked = await page.evaluate(
      () =>
        new Promise((resolve) => {
          document.addEventListener('securitypolicyviolation', (event) => resolve(event.effectiveDirective));
          void fetch('http://127.0.0.1:9/').catch(() => undefined);
        }),
    );
    expect(blocked).toBe('connect-src');
    await page.close();
  });
});
