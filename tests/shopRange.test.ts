import { describe, expect, it } from 'vitest';
import { readOnHand, readShop, readWood } from '../src/shopRange';
import { defaultStandards } from '../src/standards';
import { refusalOf, valueOf } from './value';

describe('the range Shop', () => {
  it('gives a setting by its label, key or name in formulas; other rows are passed over, blanks mean the default', () => {
    const { standards, wrong } = valueOf(
      readShop([
        ['Casing', null],
        [7, 8],
        ['REVEAL', 0.25],
        [' kerf ', 0.2],
        ['Shop_end_trim', 1],
        ['face', ' '],
        ['thickness', undefined],
      ]),
    );
    expect(standards).toMatchObject({ unit: 'in', reveal: 0.25, kerf: 0.2, endTrim: 1, face: 3.5, thickness: 0.75 });
    expect(wrong.size).toBe(0);
  });

  it('has its defaults in its own unit, and is refused in another or without any setting', () => {
    const metric = valueOf(readShop([['unit', 'mm']])).standards;
    expect(metric.face).toBe(defaultStandards('mm').face);
    expect(refusalOf(readShop([['unit', 'cm']]))).toBe('the unit of length must be in or mm; got "cm"');
    expect(refusalOf(readShop([['unit', 3]]))).toBe('the unit of length must be in or mm; got 3');
    expect(refusalOf(readShop([['Casing', 1], []]))).toContain('shop must be the range Shop');
  });

  it("names a value that can't be read, and the default stands in for it alone", () => {
    const { standards, wrong } = valueOf(readShop([['reveal', -1], ['kerf', 0.2]])); // prettier-ignore
    expect([standards.reveal, standards.kerf]).toEqual([defaultStandards().reveal, 0.2]);
    expect([...wrong]).toEqual([['reveal', 'Reveal must be a number from 0 to 6; got -1.']]);
  });

  it("leaves the machine's settings not set that it doesn't give", () => {
    const { notSet } = valueOf(readShop([['rpm', 6000], ['knives', null], ['reveal', 0.25]])).standards; // prettier-ignore
    expect(notSet).toEqual(defaultStandards().notSet.filter((key) => key !== 'rpm'));
  });
});

describe('the range Wood', () => {
  const BOARD = ['Alder', 4, 0.8125, 7.25, 96, 4.2, 3] as const;

  it('gives a board in each row, text that is a number counting; blank rows are passed over', () => {
    const alder = { species: 'Alder', quarters: 4, thickness: 0.8125, width: 7.25, length: 96, pricePerBoardFoot: 4.2 };
    expect(valueOf(readWood([BOARD, [null, ' ', undefined], [' Ash ', '5', '1.0625', 9, 144, 0, null]]))).toEqual([
      { ...alder, onHand: 3 },
      { species: 'Ash', quarters: 5, thickness: 1.0625, width: 9, length: 144, pricePerBoardFoot: 0, onHand: null },
    ]);
    expect(valueOf(readWood([[...BOARD.slice(0, 6), 0]]))).toEqual([{ ...alder, onHand: 0 }]);
  });

  it.each([
    [[null, 4, 0.8125, 7.25, 96, 4.2], 'Stock list, row 12: the species is missing.'],
    [['Alder', 0, 0.8125, 7.25, 96, 4.2], 'Stock list, row 12: quarters must be a number, more than 0; got 0.'],
    [['Alder', 4, 0.8125, 'wide', 96, 4.2], 'Stock list, row 12: width must be a number, more than 0; got "wide".'],
    [['Alder', 4, 0.8125, true, 96, 4.2], 'Stock list, row 12: width must be a number, more than 0; got "true".'],
    [
      ['Alder', 4, 0.8125, 7.25, 96, -1],
      'Stock list, row 12: price per board foot must be a number, 0 or more; got -1.',
    ],
    [['Alder', 4, 0.8125, 7.25, 96, 4.2, -1], 'Stock list, row 12: on hand must be a number, 0 or more; got -1.'],
    [
      ['Alder', 4, 0.8125, 7.25, 96, null],
      'Stock list, row 12: price per board foot must be a number, 0 or more; got nothing.',
    ],
    [
      ['Alder', 4, 0.8125, 7.25, Infinity, 1],
      'Stock list, row 12: length must be a number, more than 0; got Infinity.',
    ],
  ])('refuses %j by its row', (row, sentence) => {
    expect(refusalOf(readWood([BOARD, [null], row], 10))).toBe(sentence);
    expect(refusalOf(readWood([row]))).toBe(sentence.replace('row 12', 'row 1'));
  });

  it('must have a board', () => {
    expect(refusalOf(readWood([[null]]))).toBe('The stock list has no board: give at least one.');
  });
});

describe('the range OnHand', () => {
  it('gives knives and guides; a guide has a radius, a knife may have depth, passes and charge', () => {
    const size = { profile: 'Casing', face: 3.5, thickness: 0.75 };
    expect(
      valueOf(
        readOnHand([
          ['Knife', 'Casing', 3.5, 0.75, 99, 0.5, 2, 0],
          [],
          ['new knife', ' Casing ', '3.5', 0.75, null, null, null, 110],
          ['guides', 'Casing', 3.5, 0.75, 30, 1, 1, 1],
        ]),
      ),
    ).toEqual([
      { kind: 'knife', ...size, insideRadius: null, depth: 0.5, passes: 2, charge: 0 },
      { kind: 'new knife', ...size, insideRadius: null, charge: 110 },
      { kind: 'guides', ...size, insideRadius: 30 },
    ]);
    expect(valueOf(readOnHand([]))).toEqual([]);
  });

  it.each([
    [['jig', 'Casing', 3.5, 0.75], 'it must be knife or new knife or guides; got "jig"'],
    [['knife', ' ', 3.5, 0.75], 'the profile is missing'],
    [['knife', 'Casing', 0, 0.75], 'casing width must be a number, more than 0; got 0'],
    [['knife', 'Casing', 3.5, 0], 'thickness must be a number, more than 0; got 0'],
    [['guides', 'Casing', 3.5, 0.75, null], 'inside radius must be a number, more than 0; got nothing'],
    [['guides', 'Casing', 3.5, 0.75, 0], 'inside radius must be a number, more than 0; got 0'],
    [['knife', 'Casing', 3.5, 0.75, null, 0], 'depth must be a number, more than 0; got 0'],
    [['knife', 'Casing', 3.5, 0.75, null, null, 0], 'passes must be a number, more than 0; got 0'],
    [['knife', 'Casing', 3.5, 0.75, null, null, 1.5], 'passes must be a whole number; got 1.5'],
    [['knife', 'Casing', 3.5, 0.75, null, null, null, -1], 'charge must be a number, 0 or more; got -1'],
  ])('refuses %j by its row', (row, sentence) => {
    expect(refusalOf(readOnHand([[null], row], 20))).toBe(`On hand, row 21: ${sentence}.`);
    expect(refusalOf(readOnHand([row]))).toBe(`On hand, row 1: ${sentence}.`);
  });
});
