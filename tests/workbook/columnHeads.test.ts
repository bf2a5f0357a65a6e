import { describe, expect, it } from 'vitest';
import { groupRow, headingRow, unitRow } from '../../src/workbook/columnHeads';

const COLUMNS = [
  { heading: 'Mark', group: 'Opening', measure: 'text' },
  { heading: 'Inside length', group: 'Lengths', measure: 'length' },
  { heading: 'Length', group: 'Lengths', measure: 'length' },
  { heading: 'Long point', group: 'Lengths', measure: 'length text' },
  { heading: 'Joints', group: 'Wood', measure: 'number' },
] as const;

describe('the rows above a table', () => {
  it('name a group over the first of its columns that is shown, and run its band over all of them', () => {
    const row = groupRow(COLUMNS, (column) => column === 1);
    expect(row.map(({ value }) => value)).toEqual(['Opening', null, 'Lengths', null, 'Wood']);
    expect(row.every(({ style }) => style === 'group')).toBe(true);
  });

  it('name a group that is folded away as a whole over its first column', () => {
    const row = groupRow(COLUMNS, (column) => column === 4);
    expect(row.map(({ value }) => value)).toEqual(['Opening', 'Lengths', null, null, 'Wood']);
  });

  it('stand right over figures and left over text', () => {
    expect(headingRow(COLUMNS).map(({ align }) => align)).toEqual([undefined, 'right', 'right', undefined, 'right']);
    expect(unitRow(COLUMNS, 'in').map(({ align }) => align)).toEqual([undefined, 'right', 'right', undefined, 'right']);
  });

  it('say the unit of lengths, and what a length in words is rounded to', () => {
    expect(unitRow(COLUMNS, 'in').map(({ value }) => value)).toEqual(['', 'in', 'in', 'in, to 1/16', '']);
    expect(unitRow(COLUMNS, 'mm').map(({ value }) => value)).toEqual(['', 'mm', 'mm', 'mm, to 0.1', '']);
  });
});
