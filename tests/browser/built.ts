import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import type { Serving } from '../../cli/serve';
import { launchChromium, serveBuilt, watch } from './launch';

/** A browser and the built pages for all tests of a file; there once the first test begins. */
export interface Built {
  readonly browser: Browser;
  /** Where the pages are, with the slash at the end. */
  readonly address: string;
  /**
   * The workbench as somebody sees it who opens it for the first time. The page is one for all tests of a file, cleared of
   * all that was kept: starting another for each would be most of the test's time.
   */
  workbench(query?: string): Promise<{ readonly page: Page; readonly seen: ReturnType<typeof watch> }>;
}

export function useBuilt(): Built {
  let browser: Browser | undefined;
  let serving: Serving | undefined;
  let page: Page | undefined;
  beforeAll(async () => {
    [browser, serving] = await Promise.all([launchChromium(), serveBuilt()]);
  });
  afterAll(async () => {
    await browser?.close();
    await serving?.close();
  });
  return {
    get browser() {
      return browser!;
    },
    get address() {
      return serving!.address;
    },
    async workbench(query = '') {
      const { address } = serving!;
      if (page === undefined) {
        page = await browser!.newPage({ viewport: { width: 1440, height: 900 } });
        page.on('dialog', (dialog) => void (dialog.type() === 'beforeunload' ? dialog.accept() : dialog.dismiss()));
      }
      await page.goto('about:blank');
      const session = await page.context().newCDPSession(page);
      await session.send('Storage.clearDataForOrigin', { origin: new URL(address).origin, storageTypes: 'all' });
      await session.detach();
      page.removeAllListeners('request');
      page.removeAllListeners('pageerror');
      page.removeAllListeners('console');
      const seen = watch(page, address);
      await page.goto(address + query);
      await page.waitForFunction(() => 'workbench' in globalThis, null, { timeout: 60_000 });
      return { page, seen };
    },
  };
}
