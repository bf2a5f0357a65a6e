import { describe, expect, it } from 'vitest';
import { readSchedule, type Answers, type CellValue, type HowToRead, type Reading } from '../../src/schedule';
import { defaultStandards } from '../../src/standards';
import { valueOf } from '../value';

function read(rows: readonly (readonly CellValue[])[], answers: Answers = {}, how: HowToRead = {}): Reading {
  const table = { name: 'list.csv', firstRow: 1, rows };
  return valueOf(readSchedule(table, defaultStandards(), {}, { answers, ...how }));
}
const HEADINGS = ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Remarks'];

describe('one answer for all remarks', () => {
  const LIST = [
    HEADINGS,
    ['W1', 1, 'segmental', 36, 6, 'both sides'],
    ['W2', 1, 'segmental', 40, 6, 'verify in field'],
    ['W3', 1, 'segmental', 44, 6, null],
  ];

  it('takes what is proposed for each, and leaves the remarks themselves as they are', () => {
    const { openings, questions, remarks } = read(LIST, { remarks: 'as proposed' });
    expect(openings.map((one) => [one.remarks, one.sides])).toEqual([
      ['both sides', 2],
      ['verify in field', null],
      [null, null],
    ]);
    expect([questions, remarks]).toEqual([[], []]);
  });

  it('is nothing else, and says so', () => {
    const { openings, questions, remarks } = read(LIST, { Remarks: 'yes' });
    expect(openings.map((one) => one.remarks)).toEqual(['both sides', 'verify in field', null]);
    expect(questions).toHaveLength(1);
    expect(remarks).toEqual(['The answer "yes" to "remarks" is not "as proposed".']);
  });

  it('is not that for one row, whose remarks are as answered', () => {
    const { openings } = read(LIST, { 'remarks@3': 'by the stairs' });
    expect(openings.map((one) => one.remarks)).toEqual(['both sides', 'by the stairs', null]);
  });
});
