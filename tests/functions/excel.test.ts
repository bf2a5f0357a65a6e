import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { METADATA } from '../../functions/metadata';
import { expectAnswer } from './answer';
import { CASES, REFUSALS } from './cases';
import { excelRuntime, type ExcelRuntime } from './excel';

describe('in Excel, by a stand-in for its custom functions runtime,', () => {
  let excel: ExcelRuntime;

  beforeEach(async () => {
    excel = excelRuntime();
    vi.stubGlobal('CustomFunctions', excel.CustomFunctions);
    vi.resetModules();
    await import('../../functions/register');
  });
  afterEach(() => vi.unstubAllGlobals());

  it('every function of functions.json has code associated with it', () => {
    expect([...excel.functions.keys()].sort()).toEqual(METADATA.map(({ name }) => name).sort());
  });

  it('every case of the table shows its answer', () => {
    for (const { name, args, answer, within } of CASES) expectAnswer(excel.cell(name, args), answer, within);
  });

  it("every refusal is Excel's own #VALUE! error with the sentence", () => {
    for (const { name, args, message } of REFUSALS) {
      if (/takes at most/.test(message)) continue; // Excel itself refuses a formula with too many arguments
      expect(excel.cell(name, args), name).toEqual({ code: '#VALUE!', message });
    }
  });
});
