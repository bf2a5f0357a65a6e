import { chromium, type Browser, type Page } from 'playwright-core';
import { serve, type Serving } from '../../cli/serve';
import { findChromium } from './chromium';

/** Starts the browser of the tests, or says exactly what to install. */
export async function launchChromium(): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === null) {
    throw new Error(
      'No Chromium was found. Install it (Debian: apt-get install chromium), or set CHROMIUM_PATH to one.',
    );
  }
  // Containers give the browser's own sandbox no room; the pages are ours.
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-dev-shm-usage'] });
  browser.newContext = patient(browser.newContext.bind(browser));
  browser.newPage = patient(browser.newPage.bind(browser));
  return browser;
}

/** How long anything on a page is waited for: other checks run beside the browser. */
const PATIENCE = 90_000;

/** The same, with that much patience. */
function patient<A extends unknown[], T extends { setDefaultTimeout(ms: number): void }>(
  make: (...args: A) => Promise<T>,
) {
  return async (...args: A): Promise<T> => {
    const made = await make(...args);
    made.setDefaultTimeout(PATIENCE);
    return made;
  };
}

/** The built pages on a port of their own. */
export function serveBuilt(): Promise<Serving> {
  return serve('dist/web');
}

/** Everything a page asked for outside its own origin, and everything that went wrong in it, filled as it happens. */
export function watch(page: Page, origin: string): { readonly outside: string[]; readonly errors: string[] } {
  const seen = { outside: [] as string[], errors: [] as string[] };
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(origin) && !/^(data|blob):/.test(url)) seen.outside.push(url);
  });
  page.on('pageerror', (error) => seen.errors.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') seen.errors.push(message.text());
  });
  return seen;
}

/** Ctrl+O. A browser opens its file dialog only soon after a key: on a machine that is busy the key is pressed again. */
export async function openByKey(page: Page, path: string): Promise<void> {
  for (let presses = 1; ; presses++) {
    const asked = page.waitForEvent('filechooser', { timeout: 10_000 }).catch((error: unknown) => {
      if (presses === 3) throw error;
      return null;
    });
    await page.keyboard.press('Control+o');
    const chooser = await asked;
    if (chooser) return chooser.setFiles(path);
  }
}
