import { existsSync } from 'node:fs';

const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** The browser that the tests drive: CHROMIUM_PATH, else one in a usual place; null where there is none. */
export function findChromium(): string | null {
  const given = process.env['CHROMIUM_PATH'];
  if (given) return existsSync(given) ? given : null;
  return USUAL_PLACES.find((path) => existsSync(path)) ?? null;
}
