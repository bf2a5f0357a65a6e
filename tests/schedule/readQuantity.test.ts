import { describe, expect, it } from 'vitest';
import type { CellValue } from '../../src/schedule/opening';
import { readQuantity } from '../../src/schedule/readQuantity';
import { refusalOf, valueOf } from '../value';

describe('a quantity', () => {
  it.each<[CellValue, number]>([
    [2, 2],
    ['2', 2],
    ['2 ea', 2],
    ['2 EA.', 2],
    ['(3)', 3],
    ['[3]', 3],
    ['2x', 2],
    ['4 pcs', 4],
    ["2 req'd", 2],
    ['1,000', 1000],
    ['2.0', 2],
  ])('%j is %d', (cell, count) => expect(valueOf(readQuantity(cell))).toBe(count));

  it.each<[CellValue]>([
    ['1,5'],
    ['2,0'],
    ['2,00'],
    ['1 pr'],
    ['2 (pair)'],
    ['two'],
    ['1/2'],
    ['2+1'],
    ['x2'],
    ['1 mulled'],
    ['2-Jan'],
    [true],
    [NaN],
    ['=A1'],
    ['#REF!'],
    [''],
  ])('%j is refused, never guessed', (cell) =>
    expect(refusalOf(readQuantity(cell))).toMatch(
      /^Quantity can't be read: the cell says ".*"; a whole number is needed\.$/,
    ),
  );

  it.each<[CellValue]>([[0], [-1], ['-1'], [1.5], ['1.5'], ['0 ea']])(
    '%j must be a whole number of 1 or more',
    (cell) => expect(refusalOf(readQuantity(cell))).toContain('must be a whole number of 1 or more'),
  );
});
