import { readFileSync } from 'node:fs';
import { createContext, runInContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { METADATA } from '../../functions/metadata';
import { expectAnswer } from '../functions/answer';
import { CASES, REFUSALS } from '../functions/cases';
import { excelRuntime } from '../functions/excel';

describe('the built functions.js, in a page that has nothing but Excel’s runtime,', () => {
  const excel = excelRuntime();
  const page = createContext({ CustomFunctions: excel.CustomFunctions });
  runInContext('var self = globalThis, window = globalThis;', page);
  runInContext(readFileSync('dist/web/functions.js', 'utf8'), page);
  /** Arrays made in the other page are not ours by `instanceof`; as JSON they are. */
  const cell = (name: string, args: readonly unknown[]) =>
    JSON.parse(JSON.stringify(excel.cell(name, args))) as unknown;

  it('has every function of the built functions.json', () => {
    const built = JSON.parse(readFileSync('dist/web/functions.json', 'utf8')) as { functions: { id: string }[] };
    expect([...excel.functions.keys()].sort()).toEqual(METADATA.map(({ name }) => name).sort());
    expect(built.functions.map(({ id }) => id).sort()).toEqual([...excel.functions.keys()].sort());
  });

  it('shows the answer of every case of the table', () => {
    for (const { name, args, answer, within } of CASES) expectAnswer(cell(name, args), answer, within);
  });

  it('refuses in the same sentences', () => {
    for (const { name, args, message } of REFUSALS) {
      if (/takes at most/.test(message)) continue; // Excel itself refuses a formula with too many arguments
      expect(cell(name, args), name).toEqual({ code: '#VALUE!', message });
    }
  });
});
