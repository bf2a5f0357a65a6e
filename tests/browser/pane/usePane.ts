import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { launchChromium } from '../launch';
import { fillButton, heading, openPane, press, type OpenPane } from './drive';
import { servePane, type PaneServer } from './server';

/** A short list: W3 lacks its rise. */
export const LIST = [
  ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
  ['W1', 2, 'segmental', 36, 6],
  ['W2', 1, 'half round', 36, null],
  ['W3', 1, 'segmental', 48, null],
];

type Options = Parameters<typeof openPane>[2] & { readonly sheets?: PaneServer['sheets'] };

/** For all tests of a file: the way to open the pane on a workbook in memory, do something in it, and close it. */
export function usePane(): (work: (page: Page, pane: OpenPane) => Promise<void>, options?: Options) => Promise<void> {
  let browser: Browser | undefined;
  let server: PaneServer | undefined;
  // A page of its own for every test would be most of the test's time; one that failed is not used again.
  let usual: OpenPane | undefined;
  beforeAll(async () => {
    [browser, server] = await Promise.all([launchChromium(), servePane()]);
  });
  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });
  return async (work, { sheets = { List: LIST }, ...others } = {}) => {
    server!.sheets = sheets;
    const { query, ...special } = others;
    if (Object.keys(special).length > 0) {
      const pane = await openPane(browser!, server!, others);
      await work(pane.page, pane);
      return pane.close();
    }
    const pane = usual ?? (await openPane(browser!, server!, others));
    if (usual !== undefined) await pane.again(query);
    usual = undefined;
    await work(pane.page, pane);
    expect(pane.complaints).toEqual([]);
    usual = pane;
  };
}

export async function readList(page: Page): Promise<void> {
  await press(page, 'Read it');
  await heading(page, 'What each column holds');
}

/** To the button that fills. */
export async function toFill(page: Page): Promise<void> {
  await readList(page);
  await press(page, 'See the 3 openings');
  await press(page, 'Go on to fill the workbook');
}

export async function filled(page: Page): Promise<void> {
  await toFill(page);
  await fillButton(page).click();
  await heading(page, 'The workbook is filled');
}
