import { describe, expect, it } from 'vitest';
import { readTakeoff } from '../../../src/workbook/takeoff/read';

const sheet = (unit: string) => ({
  name: 'Takeoff',
  firstRow: 1,
  rows: [
    ['Takeoff', null, null, null, null, null],
    [null, null, null, unit, unit, null],
    ['No.', 'Mark', 'Quantity', 'Span', 'Rise', 'Painter'],
    [7, 'W1', 2, 36, 'about 6', 'Ann'],
    ['Total', null, 2, null, null, null],
  ],
});
const rowIn = (unit: 'in' | 'mm', kept: string) => readTakeoff(sheet(kept), null, unit)![0]!;

describe('a Takeoff read back', () => {
  it('knows a row by its number, and leaves the totals', () => {
    expect(readTakeoff(sheet('in'), null, 'in')!.map(({ no, sheetRow }) => [no, sheetRow])).toEqual([[7, 4]]);
  });

  it('gives lengths in another unit at 25.4 millimeters to the inch, both ways', () => {
    expect(rowIn('mm', 'in').inputs.span).toBeCloseTo(914.4, 10);
    expect(rowIn('in', 'mm').inputs.span).toBeCloseTo(36 / 25.4, 12);
    expect(rowIn('mm', 'in').inputs).toMatchObject({ quantity: 2, rise: 'about 6' });
  });

  it('keeps the last digit where the unit is the same, or the sheet names none', () => {
    for (const kept of ['mm', '']) expect(rowIn('mm', kept).inputs.span).toBe(36);
  });

  it("gives the user's own columns by their headings", () => {
    expect(rowIn('in', 'in').own.get('Painter')).toEqual({ value: 'Ann', formula: null });
  });

  it('is none where the headings are not ours', () => {
    expect(readTakeoff({ name: 'x', firstRow: 1, rows: [['Mark', 'Span']] }, null, 'in')).toBeNull();
  });
});
