import { describe, expect, it } from 'vitest';
import { lengthsIn } from '../../src/workbook/takeoffLengths';

const sheet = (unit: string) => ({
  name: 'Takeoff',
  firstRow: 1,
  rows: [
    ['Takeoff', null],
    ['Mark', 'Span'],
    [null, unit],
    ['W1', 36],
  ],
});

describe('the lengths of a Takeoff sheet in another unit', () => {
  it('are 25.4 millimeters to the inch, both ways', () => {
    expect(lengthsIn('mm', sheet('in'), 1)('rise', 6)).toBeCloseTo(152.4, 12);
    expect(lengthsIn('in', sheet('mm'), 1)('face', 88.9)).toBeCloseTo(3.5, 12);
  });

  it('keep their last digit where the unit is the same, or the sheet names none', () => {
    for (const unit of ['mm', '']) expect(lengthsIn('mm', sheet(unit), 1)('span', 0.1 + 0.2)).toBe(0.1 + 0.2);
  });

  it('are lengths only: counts, text and blanks stay', () => {
    const inMillimeters = lengthsIn('mm', sheet('in'), 1);
    expect(inMillimeters('quantity', 2)).toBe(2);
    expect(inMillimeters('span', 'about 36')).toBe('about 36');
    expect(inMillimeters('span', null)).toBeNull();
  });
});
