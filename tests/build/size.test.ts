import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';

const WEB = 'dist/web/';
const zipped = (file: string) => gzipSync(readFileSync(WEB + file), { level: 9 }).length;

/** What a page loads before anything is clicked, in kB as a server sends it. */
describe('the built scripts stay small', () => {
  test('the worksheet functions alone are at most 40 kB', () => {
    expect(zipped('functions.js') / 1000).toBeLessThanOrEqual(40);
  });

  test("the pane's own script is at most 80 kB", () => {
    expect(zipped('taskpane.js') / 1000).toBeLessThanOrEqual(80);
  });

  test("the workbench's own script is at most 120 kB without the grid", () => {
    expect(zipped('workbench.js') / 1000).toBeLessThanOrEqual(120);
  });

  test('the .xlsx writer is in a file of its own, fetched when it is needed', () => {
    const writer = 'addWorksheet'; // a method name that minifying keeps
    for (const file of ['functions.js', 'taskpane.js', 'workbench.js']) {
      expect([file, readFileSync(WEB + file, 'utf8').includes(writer + '(')]).toEqual([file, false]);
    }
  });

  test('office.js and what it loads are shipped byte for byte', () => {
    const from = 'node_modules/@microsoft/office-js/dist/';
    const shipped = readdirSync(WEB + 'office', { recursive: true, withFileTypes: true }).filter((entry) =>
      entry.isFile(),
    );
    expect(shipped.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['office.js', 'o15apptofilemappingtable.js', 'excel-web-16.00.js', 'office_strings.js']),
    );
    for (const { parentPath, name } of shipped) {
      const path = `${parentPath}/${name}`.slice((WEB + 'office/').length);
      expect([path, readFileSync(WEB + 'office/' + path).equals(readFileSync(from + path))]).toEqual([path, true]);
    }
  });
});
