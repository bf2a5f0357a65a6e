import { describe, expect, it } from 'vitest';
import { columnFormat, settingFormat } from '../../src/workbook/format';

describe('the number format of a length as a shop writes it', () => {
  it.each([36, 36.5, 3 / 16, 1 / 32, 80 + 63 / 64, null])('is a fraction where the tape has one: %s', (value) => {
    expect(columnFormat('input length', 'in', value)).toBe('# ??/??');
    expect(settingFormat('length', 'in', value)).toBe('# ??/??');
  });

  // A fraction of two digits would show 23 77/94 for 600 mm.
  it.each([600 / 25.4, 9.1, 1 / 3])('is decimal where it has none: %s', (value) => {
    expect(columnFormat('input length', 'in', value)).toBe('0.000');
    expect(settingFormat('length', 'in', value)).toBe('0.000');
  });

  it('is decimal in millimeters, with what it has behind the point', () => {
    expect(columnFormat('input length', 'mm', 152.45)).toBe('0.0##');
  });
});
