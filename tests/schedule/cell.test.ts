import { describe, expect, it } from 'vitest';
import { cellText, isBlank, isDitto, typedBeforeDate } from '../../src/schedule/cell';

describe('cells', () => {
  it.each([null, '', '  ', '-', '--', '–', 'n/a', 'N/A', 'none', 'nil'])('%j says nothing', (cell) =>
    expect(isBlank(cell)).toBe(true),
  );
  it.each([0, '0', 'x', false, 'no', '?', 'TBD'])('%j says something', (cell) => expect(isBlank(cell)).toBe(false));
  it.each(['"', '”', '″', "''", 'ditto', 'Do.', 'same as above'])('%j repeats the cell above', (cell) =>
    expect(isDitto(cell)).toBe(true),
  );
  it.each(['1"', 'door', 'same side', '', null, 2])('%j does not repeat', (cell) => expect(isDitto(cell)).toBe(false));

  it('are quoted as text: a date by its day, a number as it is, text trimmed', () => {
    expect(cellText(new Date(Date.UTC(2026, 0, 2)))).toBe('2026-01-02');
    expect(cellText(new Date(NaN))).toBe('a date that does not exist');
    expect(cellText(36.5)).toBe('36.5');
    expect(cellText('  W1 ')).toBe('W1');
    expect(cellText(null)).toBe('');
  });

  it.each<[string | Date, string]>([
    [new Date(Date.UTC(2026, 0, 2)), '1/2'],
    [new Date(Date.UTC(2026, 2, 16)), '3/16'],
    // What spreadsheet programs make of 1/32: January 1932.
    [new Date(Date.UTC(1932, 0, 1)), '1/32'],
    ['2-Jan', '1/2'],
    ['16-Mar', '3/16'],
    ['Mar-16', '3/16'],
    ['5/8/2026', '5/8'],
    ['2026-07-08', '7/8'],
  ])('%s was typed as %s', (cell, typed) => expect(typedBeforeDate(cell)).toBe(typed));

  it.each(['1/2', '3/16', '3-1/2', '3/0 x 6/8', 'W-1', '7-0', 'March', 36])('%j is no date', (cell) =>
    expect(typedBeforeDate(cell)).toBe(null),
  );
});
