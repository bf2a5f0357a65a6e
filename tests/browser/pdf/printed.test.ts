import { degrees, PDFDocument } from 'pdf-lib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { score } from '../../pdf/score';
import { launchChromium } from '../launch';
import { PAGES, type Printed } from './pages';

let browser: Browser | undefined;
let page: Page | undefined;
beforeAll(async () => {
  browser = await launchChromium();
  page = await browser.newPage();
});
afterAll(() => browser?.close());

async function print({ html, turned }: Printed): Promise<Uint8Array> {
  await page!.setContent(html);
  const bytes = await page!.pdf({ preferCSSPageSize: true, printBackground: true });
  if (!turned) return bytes;
  const document = await PDFDocument.load(bytes);
  document.getPages().forEach((each) => each.setRotation(degrees(90)));
  return document.save();
}

describe('a schedule printed by a browser is read as its author has it, or asked about', () => {
  test.each(Object.entries(PAGES))('%s', async (_name, printed) => {
    const { asked, right, ...others } = await score(await print(printed), printed.headings, printed.rows);
    expect(others).toMatchObject({ wrong: [], lost: [], refused: null });
    expect(right).toBe(printed.rows.length - asked);
    expect(asked).toBeLessThanOrEqual(printed.asked ?? 0);
  });
});
