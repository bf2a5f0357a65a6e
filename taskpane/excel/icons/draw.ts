/** `npm run icons`: draws the add-in's icons from the two drawings beside this file. Run after changing one. */
import { readFileSync, writeFileSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { findChromium } from '../../../tests/browser/chromium';

const here = new URL('.', import.meta.url);
const SIZES = [16, 32, 64, 80];

const executablePath = findChromium();
if (executablePath === null) throw new Error('No Chromium found: set CHROMIUM_PATH to one.');
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
try {
  for (const size of SIZES) {
    const drawing = readFileSync(new URL(size < 32 ? 'icon-small.svg' : 'icon.svg', here), 'utf8');
    const page = await browser.newPage({ viewport: { width: size, height: size } });
    await page.setContent(`<style>body{margin:0}svg{display:block;width:${size}px;height:${size}px}</style>${drawing}`);
    writeFileSync(new URL(`icon-${size}.png`, here), await page.screenshot({ omitBackground: true }));
    await page.close();
  }
} finally {
  await browser.close();
}
