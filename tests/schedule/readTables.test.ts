import { describe, expect, it } from 'vitest';
import { chooseTable, type Table } from '../../src/schedule';

const sheet = (name: string, headings: string[], more: Partial<Table> = {}): Table => ({
  name,
  firstRow: 1,
  rows: [headings, headings.map(() => 1)],
  ...more,
});
const OPENINGS = ['Mark', 'Qty', 'Head', 'Width', 'Rise'];

describe('the sheet of a file', () => {
  it('with the most headings understood is chosen, a visible one before a hidden one', () => {
    const prices = sheet('Prices', ['Item', 'Price']);
    const openings = sheet('Openings', OPENINGS);
    expect(chooseTable([prices, openings])).toEqual({
      ...openings,
      unread: [{ what: 'sheet "Prices"', why: 'not chosen' }],
    });
    expect(chooseTable([sheet('Old', OPENINGS, { hidden: true }), openings])?.name).toBe('Openings');
    expect(chooseTable([])).toBe(null);
  });

  it('is said to be one of several where others read like schedules', () => {
    const floors = ['First floor', 'Second floor', 'Attic'].map((name) =>
      sheet(name, OPENINGS, { remarks: ['As is.'] }),
    );
    expect(chooseTable(floors)).toMatchObject({
      name: 'First floor',
      remarks: ['As is.', 'The sheets "Second floor" and "Attic" read like schedules, too, and were not read.'],
    });
    expect(chooseTable(floors.slice(0, 2))?.remarks?.at(-1)).toBe(
      'The sheet "Second floor" reads like a schedule, too, and was not read.',
    );
  });
});
