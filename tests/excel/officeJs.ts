import { readFileSync } from 'node:fs';
import { createContext, runInContext } from 'node:vm';
import type { FakeWorkbook } from './fakeExcel';

/** Microsoft's own code, as the add-in ships it. */
export const SCRIPT = 'node_modules/@microsoft/office-js/dist/excel-web-16.00.js';

interface OfficeWindow {
  Excel: unknown;
  OSF: { DDA: { RichApi: object } };
  Office?: unknown;
}

let loaded: OfficeWindow | null = null;

/** Microsoft's code in a room of its own, with as much of a page as it looks at while it starts. */
function officeWindow(): OfficeWindow {
  if (loaded) return loaded;
  const nothing = () => undefined;
  const page: Record<string, unknown> = {
    ...{ JSON, Error, Promise, console, setTimeout, clearTimeout, performance, URL },
    setInterval: () => 0,
    clearInterval: nothing,
    addEventListener: nothing,
    removeEventListener: nothing,
    navigator: { userAgent: 'Node' },
    location: { href: 'https://localhost/', search: '', hash: '' },
    document: { createElement: () => ({}), getElementsByTagName: () => [], addEventListener: nothing, cookie: '' },
    sessionStorage: null,
    localStorage: null,
  };
  for (const name of ['window', 'self', 'top', 'parent', 'globalThis']) page[name] = page;
  runInContext(readFileSync(SCRIPT, 'utf8'), createContext(page), { filename: SCRIPT });
  loaded = page as unknown as OfficeWindow;
  return loaded;
}

/** Puts Microsoft's `Excel` where the adapter looks for it, with this workbook at the other end of the line. */
export function install(book: FakeWorkbook): void {
  const office = officeWindow();
  office.OSF.DDA.RichApi = book.line();
  office.Office = book.office();
  Object.assign(globalThis, { Excel: office.Excel, Office: office.Office });
}
