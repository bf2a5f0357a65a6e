import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';

const WEB = 'dist/web/';
const zipped = (file: string) => gzipSync(readFileSync(WEB + file), { level: 9 }).length;

/** What a page loads before anything is clicked, in kB as a server sends it. */
describe('the built scripts stay small', () => {
  test('the worksheet functions alone are at most 52 kB', () => {
    expect(zipped('functions.js') / 1000).toBeLessThanOrEqual(52);
  });

  test("the pane's own script is at most 124 kB", () => {
    expect(zipped('taskpane.js') / 1000).toBeLessThanOrEqual(124);
  });

  test("the workbench's own script is at most 190 kB without the grid", () => {
    expect(zipped('workbench.js') / 1000).toBeLessThanOrEqual(190);
  });

  test('the .xlsx writer is in no script that a page loads before something is saved', () => {
    const mark = '[Content_Types].xml';
    const having = (folder: string) =>
      readdirSync(folder).filter((name) => /\.c?js$/.test(name) && readFileSync(folder + name, 'utf8').includes(mark));
    expect(having('dist/cli/').length).toBeGreaterThan(0);
    const atOnce = ['functions.js', 'taskpane.js', 'workbench.js'];
    expect(readdirSync(WEB)).toEqual(expect.arrayContaining(atOnce));
    expect(having(WEB).filter((name) => atOnce.includes(name))).toEqual([]);
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
