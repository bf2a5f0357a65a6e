import { describe, expect, it } from 'vitest';
import type { ColumnUnit } from '../../src/schedule/columnUnit';
import type { CellValue } from '../../src/schedule/opening';
import { readLength } from '../../src/schedule/readLength';
import type { Unit } from '../../src/unit';
import { refusalOf, valueOf } from '../value';

const options = (column: ColumnUnit | null, unit: Unit = 'in', whole = true) => ({
  name: 'width',
  column,
  unit,
  whole,
});

describe('a length', () => {
  it.each<[CellValue, ColumnUnit | null, number]>([
    ['36', null, 36],
    [36.5, null, 36.5],
    ['36½', null, 36.5],
    ['36 1/2"', null, 36.5],
    ['36-1/2', null, 36.5],
    ['3’-0”', null, 36],
    ['3\' 6-5/8"', null, 42.625],
    ['914.4 mm', null, 36],
    [914.4, 'mm', 36],
    ['914,4', 'mm', 36],
    ['36"', 'mm', 36],
    [3.5, 'ft', 42],
    ['3-6 1/2', 'ft-in', 42.5],
    ['7/0', 'ft-in', 84],
    ['3-6-1/2', 'ft-in', 42.5],
    [24, 'ft', 288],
    ['80 1/2', 'ft-in', 80.5],
  ])('%j in a column of %s is %d in', (cell, column, inches) => {
    expect(valueOf(readLength(cell, options(column)))).toBe(inches);
  });

  it.each<[CellValue]>([
    ['3-0'],
    ['3/0'],
    ['3 6'],
    ['36.1/2'],
    ['36 1/2 1/4'],
    ['3\'-14"'],
    ['36 (VIF)'],
    ['~36'],
    ['36,5'],
  ])('%j is refused in a column without a unit, never guessed', (cell) =>
    expect(refusalOf(readLength(cell, options(null)))).toContain("Width can't be read"),
  );

  // In a column of feet and inches 7 may be either, in a workbook as a number as much as in text.
  it.each<[CellValue]>([[7], ['7'], [36], ['6 1/2'], [3.5]])('%j under "ft-in" is asked about', (cell) =>
    expect(refusalOf(readLength(cell, options('ft-in')))).toContain('write the marks'),
  );
});

describe('the width or height of a whole opening', () => {
  it.each<[CellValue, ColumnUnit | null, Unit, string]>([
    [914, null, 'in', 'Width 914 has no unit and would be 914 inches; please write the unit.'],
    [3, null, 'in', 'Width 3 has no unit and would be 3 inches; please write the unit.'],
    [36, null, 'mm', 'Width 36 has no unit and would be 36 mm; please write the unit.'],
    ['36 1/2', 'mm', 'mm', "Width can't be read"],
    [
      36,
      'mm',
      'in',
      'Width 36 would be 36 millimeters, the unit of its column; please check it and write the unit beside',
    ],
    [
      914,
      'in',
      'in',
      'Width 914 would be 914 inches, the unit of its column; please check it and write the unit beside',
    ],
    [36, 'ft', 'in', 'Width 36 would be 36 feet, the unit of its column'],
    [914, 'cm', 'mm', 'Width 914 would be 914 centimeters, the unit of its column'],
    [300, 'in', 'in', 'Width 300 would be 300 inches, the unit of its column'],
    ['0-3', 'ft-in', 'in', 'Width 0-3 would be 0-3 feet and inches, the unit of its column'],
  ])('%j in a column of %s, workbook %s, is asked about', (cell, column, unit, sentence) => {
    expect(refusalOf(readLength(cell, options(column, unit)))).toContain(sentence);
  });

  it('is taken as it stands where the cell gives the unit itself, and from 4 in to under 50 ft', () => {
    expect(valueOf(readLength('3"', options(null)))).toBe(3);
    expect(valueOf(readLength("60'", options('in')))).toBe(720);
    expect(valueOf(readLength(4, options(null)))).toBe(4);
    expect(valueOf(readLength(599.5, options(null)))).toBe(599.5);
    expect(readLength(600, options(null)).ok).toBe(false);
  });

  it('is the only length that is: a rise of 3, a radius of 914 stand', () => {
    for (const cell of [3, 914]) expect(valueOf(readLength(cell, options(null, 'in', false)))).toBe(cell);
  });
});
