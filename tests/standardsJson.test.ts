import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../src/standards';
import { readStandardsJson, standardsJson } from '../src/standardsJson';
import { UNITS } from '../src/unit';
import { refusalOf, valueOf } from './value';

const BOARD = { species: 'Alder', quarters: 4, thickness: 0.8125, width: 7.25, length: 96, pricePerBoardFoot: 4.2 };

describe('settings as JSON', () => {
  it.each(UNITS)('come back as they were, kept in %s', (unit) => {
    const standards = { ...defaultStandards(unit), stock: [{ ...BOARD, onHand: 3 }] };
    expect(valueOf(readStandardsJson(standardsJson(standards), 'shop.json'))).toEqual(standards);
  });

  it('are written with an entry on each line, for a person to read', () => {
    expect(standardsJson(defaultStandards()).split('\n').slice(0, 3)).toEqual([
      '{',
      '  "unit": "in",',
      '  "reveal": 0.1875,',
    ]);
  });

  it('leave what they do not name at the default of their unit', () => {
    expect(valueOf(readStandardsJson('{}', 'shop.json'))).toEqual(defaultStandards());
    expect(valueOf(readStandardsJson('{"unit": "mm", "reveal": 6}', 'shop.json'))).toEqual({
      ...defaultStandards('mm'),
      reveal: 6,
    });
  });

  it('bring a stock list of their own, of which any number can be bought unless said', () => {
    const { stock } = valueOf(readStandardsJson(JSON.stringify({ stock: [BOARD] }), 'shop.json'));
    expect(stock).toEqual([{ ...BOARD, onHand: null }]);
  });
});

describe('settings as JSON are refused by the name of their file', () => {
  it.each([
    ['reveal: 1', '"shop.json" is not JSON: '],
    ['[1]', '"shop.json" must hold an object such as {"reveal": 0.25}.'],
    ['null', '"shop.json" must hold an object such as {"reveal": 0.25}.'],
    ['{"revael": 1}', '"shop.json" has the setting "revael", which there is not.'],
    ['{"reveal": -1}', '"shop.json": Reveal must be a number from 0 to 6; got -1.'],
    ['{"reveal": "1/4"}', '"shop.json": Reveal must be a number from 0 to 6; got "1/4".'],
    ['{"unit": "cm"}', '"shop.json": Unit of length must be one of in, mm; got "cm".'],
    ['{"stock": null}', '"shop.json" has a stock list that can\'t be used at its top: '],
    [
      JSON.stringify({ stock: [BOARD, { ...BOARD, width: 0 }] }),
      '"shop.json" has a stock list that can\'t be used at 1.width: ',
    ],
    [
      JSON.stringify({ stock: [{ ...BOARD, onHand: 1.5 }] }),
      '"shop.json" has a stock list that can\'t be used at 0.onHand: ',
    ],
    [
      JSON.stringify({ stock: [{ ...BOARD, grade: 'FAS' }] }),
      '"shop.json" has a stock list that can\'t be used at 0.grade: ',
    ],
  ])('%s', (text, sentence) => {
    expect(refusalOf(readStandardsJson(text, 'shop.json')).startsWith(sentence)).toBe(true);
  });

  it('are taken at the least of each figure, and refused below it', () => {
    const free = { ...BOARD, pricePerBoardFoot: 0, onHand: 0 };
    const knife = { kind: 'new knife', profile: 'Casing', face: 3.5, thickness: 0.75, passes: 1, charge: 0 };
    const read = (stock: object, onHand: object) =>
      readStandardsJson(JSON.stringify({ stock: [stock], onHand: [onHand] }), 'shop.json');
    expect(valueOf(read(free, knife))).toMatchObject({ stock: [free], onHand: [knife] });
    for (const less of [{ pricePerBoardFoot: -0.01 }, { onHand: -1 }]) {
      expect(refusalOf(read({ ...free, ...less }, knife))).toContain(`at 0.${Object.keys(less)[0]}: `);
    }
    for (const less of [{ passes: 0 }, { charge: -0.01 }]) {
      expect(refusalOf(read(free, { ...knife, ...less }))).toContain(`at 0.${Object.keys(less)[0]}: `);
    }
  });

  it('may nest 20 deep and no deeper, brackets and braces alike, wherever they stand', () => {
    // Brackets in texts are none, whatever is escaped there.
    const before = JSON.stringify({ a: [], b: {}, c: '}"]', d: '\\' }).slice(0, -1);
    const nested = (open: string, close: string, depth: number) =>
      readStandardsJson(`${before}, "e": ${open.repeat(depth - 1)}${close.repeat(depth - 1)}}`, 'it');
    for (const [open, close] of [
      ['[', ']'],
      ['{"x":', '}'],
    ] as const) {
      const inner = open === '[' ? '' : '0';
      const at = (depth: number) => refusalOf(nested(open, inner + close, depth));
      expect(at(20)).not.toContain('nests');
      expect(at(21)).toContain('nests');
    }
    // What is closed again counts no more.
    const many = `{${Array.from({ length: 60 }, (_, at) => `"k${at}": [{}]`).join(', ')}}`;
    expect(refusalOf(readStandardsJson(many, 'it'))).not.toContain('nests');
    expect(refusalOf(readStandardsJson('['.repeat(21), 'it'))).toContain('nests');
  });

  it('are refused where they are nested deeply, however deeply', () => {
    for (const depth of [30, 200_000]) {
      const text = `{"stock": ${'['.repeat(depth)}${']'.repeat(depth)}}`;
      const read = readStandardsJson(text, 'shop.json');
      expect(read).toEqual({ ok: false, message: '"shop.json" nests its values more than 20 deep; settings need 3.' });
    }
    expect(readStandardsJson(`{"species": "${'['.repeat(30)}"}`, 'shop.json')).not.toMatchObject({
      message: expect.stringContaining('nests') as string,
    });
  });

  it('are refused where a text of them is of many millions of letters', () => {
    const text = `{"\\"}${'['.repeat(30)}": "${'a'.repeat(20_000_000)}"}`;
    const read = readStandardsJson(text, 'shop.json');
    expect(refusalOf(read)).toContain('which there is not');
  });
});
