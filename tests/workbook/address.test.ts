import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addressOf,
  columnLetters,
  MOST_COLUMNS,
  MOST_ROWS,
  rangeAddress,
  readAddress,
  readRange,
} from '../../src/workbook/address';

describe('a cell address', () => {
  test('columns are lettered A to Z, then AA, to XFD', () => {
    expect([0, 25, 26, 51, 52, 701, 702, MOST_COLUMNS - 1].map(columnLetters)).toEqual([
      'A',
      'Z',
      'AA',
      'AZ',
      'BA',
      'ZZ',
      'AAA',
      'XFD',
    ]);
  });

  test('reads back as the cell it was written for', () => {
    fc.assert(
      fc.property(fc.nat(MOST_ROWS - 1), fc.nat(MOST_COLUMNS - 1), (row, column) => {
        expect(readAddress(addressOf({ row, column }))).toEqual({ ok: true, value: { row, column } });
      }),
    );
  });

  test('dollar signs and lower case are read alike', () => {
    expect(readAddress('$b$12')).toEqual(readAddress('B12'));
  });

  test.each(['', 'B', '12', 'B0', 'B12:C3', 'A1048577', 'XFE1', 'ABCD1', 'Sheet!A1'])(
    '"%s" is refused in words',
    (text) => {
      const read = readAddress(text);
      expect(read.ok).toBe(false);
      expect(!read.ok && read.message).toContain(`got "${text}"`);
    },
  );
});

describe('a range', () => {
  test('is the same from whichever corner it is given', () => {
    expect(readRange('C4:A1')).toEqual(readRange('A1:C4'));
    expect(readRange('C1:A4')).toEqual(readRange('A1:C4'));
  });

  test('of one cell is written without a colon', () => {
    const read = readRange('B2');
    expect(read.ok && rangeAddress(read.value)).toBe('B2');
    const wide = readRange('B2:D9');
    expect(wide.ok && rangeAddress(wide.value)).toBe('B2:D9');
  });

  test('of three corners is refused', () => {
    expect(readRange('A1:B2:C3').ok).toBe(false);
  });
});
