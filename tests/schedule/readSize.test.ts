import { describe, expect, it } from 'vitest';
import { inches } from '../../src/unit';
import type { ColumnUnit } from '../../src/schedule/columnUnit';
import type { CellValue } from '../../src/schedule/opening';
import { readSection, readSize } from '../../src/schedule/readSize';
import { refusalOf, valueOf } from '../value';

const options = (column: ColumnUnit | null = null) => ({ name: 'size', column, unit: 'in' as const, whole: true });

describe('a size', () => {
  it.each<[CellValue, number, number]>([
    [3068, 36, 80],
    ['3068', 36, 80],
    ['3/0 x 6/8', 36, 80],
    ['3/0x6/8', 36, 80],
    ['3-0 × 6-8', 36, 80],
    ['36 x 80', 36, 80],
    ['36½ X 80¼', 36.5, 80.25],
    ['36" W x 80" H', 36, 80],
    ['3’-0” by 6’-8”', 36, 80],
    ["3' x 6'-8\"", 36, 80],
    ['914.4 mm x 2032 mm', 36, 80],
    ['914.4 x 2032 mm', 36, 80],
  ])('%j is %d by %d', (cell, width, height) => {
    expect(valueOf(readSize(cell, options()))).toEqual({ width, height });
  });

  it('has a unit behind the second figure for both, but for feet, which may be meant for one only', () => {
    expect(valueOf(readSize('36 x 80"', options('mm')))).toEqual({ width: 36, height: 80 });
    expect(valueOf(readSize("36 x 6'", options()))).toEqual({ width: 36, height: 72 });
    expect(refusalOf(readSize('3 x 6\'-8"', options()))).toContain('Size 3 has no unit');
  });

  it('of figures without a unit that no opening has is asked about', () => {
    expect(refusalOf(readSize('914 x 2032', options()))).toBe(
      'Size 914 has no unit and would be 914 inches; please write the unit.',
    );
    expect(refusalOf(readSize('3 x 7', options()))).toContain('Size 3 has no unit');
  });

  it('under a metric heading is no call-out of digits: 1250 is one side', () => {
    expect(valueOf(readSize('1250', options()))).toEqual({ width: 14, height: 60 });
    for (const column of ['mm', 'cm', 'm'] as const) expect(readSize('1250', options(column)).ok).toBe(false);
  });

  it.each(['3068 LH', '(2) 3068', '2-3068', '2/10 6/8', '36', '36 x', 'x 80', '36 x 80 x 4', '21110'])(
    '%j is refused with the text quoted back',
    (cell) => expect(refusalOf(readSize(cell, options()))).toContain(`"${cell}"`),
  );
});

describe("a casing's section", () => {
  it.each<[string, number, number]>([
    ['3/4 x 3 1/2', 0.75, 3.5],
    ['3-1/2" x 3/4"', 3.5, 0.75],
    ['11/16 x 2 1/4', 0.6875, 2.25],
    ['1/2 x 3/4', 0.5, 0.75],
    ['19 x 89 mm', 19 / 25.4, 89 / 25.4],
  ])('%j is %d by %d: 1/2 is a fraction, no call-out', (cell, one, other) => {
    const { width, height } = valueOf(readSection(cell, { ...options(), whole: false }));
    expect(width).toBeCloseTo(one, 12);
    expect(height).toBeCloseTo(other, 12);
  });

  it.each(['3068', '5/4 x 6', 'Colonial', '3/4'])('%j is refused', (cell) =>
    expect(refusalOf(readSection(cell, { ...options(), whole: false }))).toContain('Sizes such as 3/4 x 3 1/2'),
  );

  it('of more than its limit is refused', () => {
    expect(refusalOf(readSection('36 x 80', { ...options(), whole: false, most: inches(48, 'in') }))).toBe(
      "Size of 80 is more than 48 in, which can't be right.",
    );
  });
});
