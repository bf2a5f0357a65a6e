import { describe, expect, it } from 'vitest';
import { readPieces } from '../../../../taskpane/pane/deeds/planCutting';
import { defaultStandards } from '../../../../src/standards';

const shop = defaultStandards();

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
