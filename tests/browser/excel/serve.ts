import { readFileSync } from 'node:fs';
import { build } from 'esbuild';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { CellValue } from '../../../src/schedule/opening';
import { SCRIPT } from '../../excel/officeJs';
import type { Built } from '../built';
import { watch } from '../launch';

export type Sheets = Readonly<Record<string, readonly (readonly Exclude<CellValue, Date>[])[]>>;

/** Microsoft's code for Excel on the web, and the fake workbook behind it, as one script in place of office.js. */
export async function bundleOffice(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: ['tests/browser/excel/office.ts'],
    bundle: true,
    format: 'iife',
    write: false,
    logLevel: 'silent',
  });
  return `${readFileSync(SCRIPT, 'utf8')}\n${outputFiles[0]!.text}`;
}

/** The built add-in as Excel opens it beside a workbook of these sheets. Whatever the page complains about fails at `close`. */
export async function openAddIn({ browser, address }: Built, office: string, sheets: Sheets) {
  const context = await browser.newContext({ viewport: { width: 350, height: 760 }, reducedMotion: 'reduce' });
  const page = await context.newPage();
  const seen = watch(page, address);
  const body = `globalThis.sheetsAtStart = ${JSON.stringify(sheets)};\n${office}`;
  await page.route('**/office/office.js', (route) => route.fulfill({ contentType: 'text/javascript', body }));
  await page.goto(address + 'taskpane.html');
  await page.getByRole('heading', { level: 1 }).waitFor();
  return {
    page,
    async close() {
      expect(seen).toEqual({ outside: [], errors: [] });
      await context.close();
    },
  };
}

export interface HeldSheet {
  readonly name: string;
  readonly visibility: string;
  readonly protected: boolean;
  /** What each cell holds, formulas as `=…`, by address in the order of the alphabet. */
  readonly cells: readonly (readonly [string, string | number | boolean])[];
  readonly formats: readonly (readonly [string, string])[];
}

/** All that the workbook holds. */
export function held(
  page: Page,
): Promise<{ readonly sheets: readonly HeldSheet[]; readonly names: readonly (readonly [string, string])[] }> {
  return page.evaluate(() => {
    const sorted = <T>(map: Map<string, T>) => [...map].sort(([one], [other]) => (one < other ? -1 : 1));
    return {
      sheets: globalThis.fakeBook.sheets.map(({ name, visibility, protected: locked, cells, formats }) => ({
        name,
        visibility,
        protected: locked,
        cells: sorted(cells),
        formats: sorted(formats),
      })),
      names: sorted(globalThis.fakeBook.names),
    };
  });
}
