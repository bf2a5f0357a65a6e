import { describe, expect, it } from 'vitest';
import { inWorkbookUnit, readUnit, type ColumnUnit } from '../../src/schedule/columnUnit';

describe('units of columns', () => {
  it.each([
    ['in', 'in'],
    ['(in.)', 'in'],
    ['Inches', 'in'],
    ['"', 'in'],
    ['ft-in', 'ft-in'],
    ['Feet & inches', 'ft-in'],
    ['ft', 'ft'],
    ['[mm]', 'mm'],
    ['in mm', 'mm'],
    ['cm', 'cm'],
    ['m', 'm'],
  ])('%s is %s', (text, unit) => expect(readUnit(text)).toBe(unit));
  it.each(['', 'each', 'constructor', 'min', 'width', '36'])('%j is no unit', (text) =>
    expect(readUnit(text)).toBe(null),
  );

  it.each<[number, ColumnUnit, number, number]>([
    [36, 'in', 36, 914.4],
    [3, 'ft', 36, 914.4],
    [914.4, 'mm', 36, 914.4],
    [152.4, 'mm', 6, 152.4],
    [91.44, 'cm', 36, 914.4],
    [0.9144, 'm', 36, 914.4],
  ])('%d %s are %d in, and %d mm, by definition of the inch', (value, from, inches, millimeters) => {
    expect(inWorkbookUnit(value, from, 'in')).toBe(inches);
    expect(inWorkbookUnit(value, from, 'mm')).toBeCloseTo(millimeters, 10);
  });
});
