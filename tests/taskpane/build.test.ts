import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { build } from '../../taskpane/pane/build/job';
import { assembler, inParts } from '../../taskpane/pane/build/parts';
import { readPieces } from '../../taskpane/pane/deeds/planCutting';
import { opening, scheduleOf } from './opening';

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

describe('pieces for a cutting plan', () => {
  const table = (rows: readonly (readonly (string | number | null)[])[]) => ({ name: 'Pieces', firstRow: 3, rows });

  it('are lengths and counts below a heading, boards as typed, kerf and trim from the standards', () => {
    const read = readPieces(
      table([
        ['Length', 'Qty'],
        ['2\'-0"', 3],
        [36.5, 1],
        [null, null],
      ]),
      "96, 10'",
      shop,
    );
    expect(read).toEqual({
      ok: true,
      value: { lengths: [24, 36.5], quantities: [3, 1], stock: [96, 120], kerf: 0.125, trim: 0.5 },
    });
  });

  it.each([
    [
      [
        ['Length', 'Qty'],
        ['long', 1],
      ],
      '96',
      'Select the lengths',
    ],
    [
      [
        [24, 1],
        ['long', 1],
      ],
      '96',
      'Length in row 4',
    ],
    [[[24, 1.5]], '96', 'Row 3: Quantity must be a whole number'],
    [[[24, 1]], 'eight feet', 'you typed "eight feet"'],
    [[[24, 1]], ' ', 'Say which board lengths'],
  ] as const)('are refused in a sentence: %j on boards %s', (rows, boards, sentence) => {
    const read = readPieces(table(rows), boards, shop);
    expect(!read.ok && read.message).toContain(sentence);
  });
});
