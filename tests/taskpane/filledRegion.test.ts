import { describe, expect, test } from 'vitest';
import { rangeAddress, readAddress } from '../../src/workbook/address';
import { filledRegion } from '../../taskpane/filledRegion';

/** The region around a cell of a sheet drawn with x for filled. */
function around(address: string, drawing: readonly string[]): string | null {
  const start = readAddress(address);
  if (!start.ok) throw new Error(start.message);
  const end = { rows: drawing.length, columns: Math.max(...drawing.map((line) => line.length)) };
  const region = filledRegion(start.value, (row, column) => drawing[row]?.[column] === 'x', end);
  return region && rangeAddress(region);
}

describe('the filled region around a cell', () => {
  test('is the block that the cell stands in, whatever is blank inside it', () => {
    expect(around('B2', ['.....', '.xxx.', '.x.x.', '.xxx.'])).toBe('B2:D4');
    expect(around('C3', ['.....', '.xxx.', '.x.x.', '.xxx.'])).toBe('B2:D4');
  });

  test('ends at a blank row and a blank column', () => {
    expect(around('A1', ['xx.x', 'xx.x', '....', 'xx..'])).toBe('A1:B2');
  });

  test('goes on over a corner', () => {
    expect(around('A1', ['x..', '.x.', '..x'])).toBe('A1:C3');
  });

  test('a blank cell beside a block belongs to it', () => {
    expect(around('C1', ['xx.', 'xx.'])).toBe('A1:C2');
  });

  test('a blank cell that touches nothing has none, also far beyond everything filled', () => {
    expect(around('C3', ['x..', '...', '...'])).toBeNull();
    expect(around('Z99', ['x'])).toBeNull();
  });

  test('a single filled cell is its own region', () => {
    expect(around('B2', ['...', '.x.'])).toBe('B2');
  });

  test('is found in a sheet of 10,000 rows', () => {
    const drawing = Array.from({ length: 10_000 }, () => 'xxxxxxxxxx');
    expect(around('A5000', drawing)).toBe('A1:J10000');
  });
});
