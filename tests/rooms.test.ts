import { readdirSync } from 'node:fs';
import { ESLint } from 'eslint';
import tseslint from 'typescript-eslint';
import { describe, expect, test } from 'vitest';

// The configuration is plain JavaScript, which has no types to import.
const { ROOMS } = (await import(new URL('../eslint.config.js', import.meta.url).href)) as { ROOMS: string[][] };
const rooms = ROOMS.flat();
const complaints = async (source: string, filePath: string) => {
  // The sources tried here are in no file, so nothing is known of their types.
  const eslint = new ESLint({ overrideConfig: [tseslint.configs.disableTypeChecked] });
  const [result] = await eslint.lintText(source, { filePath });
  return result!.messages.map(({ ruleId }) => ruleId);
};

describe('the rooms of the core', () => {
  test('every file and folder of src/ has its place in the order', () => {
    const found = readdirSync('src', { withFileTypes: true })
      .filter(({ name }) => !name.endsWith('.json'))
      .map((entry) => (entry.isDirectory() ? `${entry.name}/` : entry.name.replace(/\.ts$/, '')));
    expect(found.sort()).toEqual([...rooms].sort());
  });

  test.each([
    ["import { takeoff } from '../takeoff/takeoff';\nexport const x = takeoff;\n", 'src/head/x.ts'],
    ["import { makeHead } from './head/makeHead';\nexport const x = makeHead;\n", 'src/arc.ts'],
    ["import type { Standards } from '../standards';\nexport type X = Standards;\n", 'src/blank/x.ts'],
    ["export { call } from '../../functions/call';\n", 'src/workbook/x.ts'],
    ["import { readFileSync } from 'node:fs';\nexport const x = readFileSync;\n", 'src/schedule/x.ts'],
  ])('an import that goes up or out is an error: %j in %s', async (source, file) => {
    expect(await complaints(source, file)).toEqual(['no-restricted-imports']);
  });

  test.each(['document.title', 'process.argv', 'Office.context', 'window.name'])(
    '%s is an error in the core',
    async (use) => {
      expect(await complaints(`export const x = ${use};\n`, 'src/takeoff/x.ts')).toEqual(['no-restricted-globals']);
    },
  );

  test('an import that goes down is none', async () => {
    const source = "import { makeHead } from '../head/makeHead';\nexport const x = makeHead;\n";
    expect(await complaints(source, 'src/takeoff/x.ts')).toEqual([]);
  });
});
