import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import type { Serving } from '../../cli/serve';
import { launchChromium, serveBuilt } from './launch';

/** A browser and the built pages for all tests of a file; there once the first test begins. */
export interface Built {
  readonly browser: Browser;
  /** Where the pages are, with the slash at the end. */
  readonly address: string;
}

export function useBuilt(): Built {
  let browser: Browser | undefined;
  let serving: Serving | undefined;
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
  };
}
