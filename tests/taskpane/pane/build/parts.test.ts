import { describe, expect, it } from 'vitest';
import { build } from '../../../../taskpane/pane/build/job';
import { assembler, inParts } from '../../../../taskpane/pane/build/parts';
import { defaultStandards } from '../../../../src/standards';
import { opening, scheduleOf } from '../opening';

const shop = defaultStandards();

describe('a workbook on its way from the worker', () => {
  it('comes out as it was built, a few hundred rows at a time', () => {
    const many = Array.from({ length: 700 }, (_, at) => opening({ row: at + 2, mark: `W${at}`, span: 30 + (at % 20) }));
    const built = build({ schedule: scheduleOf(many), standards: shop, plain: false, before: null });
    const assemble = assembler();
    const results = [...inParts(built)].map((part) => {
      if (part.kind === 'rows') expect(part.rows.length).toBeLessThanOrEqual(200);
      // What a worker posts is cloned: nothing in it may be a function.
      return assemble(structuredClone(part));
    });
    expect(results.slice(0, -1).every((result) => result === null)).toBe(true);
    expect(results.at(-1)).toEqual(built);
  });
});
