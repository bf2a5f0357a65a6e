import { describe, expect, it } from 'vitest';
import { readSchedule, type Answers } from '../../src/schedule';
import { defaultStandards } from '../../src/standards';
import { handsOf } from '../../src/takeoff/hands';
import { valueOf } from '../value';

type Row = readonly [head: string, hand: string, remarks?: string];

function read(heading: string, rows: readonly Row[], answers: Answers = {}) {
  const table = rows.map(([head, hand, remarks = ''], at) => [`W${at + 1}`, 2, head, 36, 12, hand, remarks]);
  const all = [['Mark', 'Qty', 'Head', 'Width', 'Rise', heading, 'Remarks'], ...table];
  return valueOf(readSchedule({ name: 'list', firstRow: 1, rows: all }, defaultStandards(), {}, { answers }));
}
const remarksIn = (...given: Parameters<typeof read>) => read(...given).openings.map(({ remarks }) => remarks);
/** What the tickets make of it. */
const handsIn = (...given: Parameters<typeof read>) =>
  read(...given).openings.map(({ remarks }) => handsOf({ head: 'shed', quantity: 2, sides: 1, remarks }));

describe('left and right of heads with one high side', () => {
  it('are asked once for each hand, and only of heads that have one', () => {
    const { questions, openings, unread } = read('Hand', [
      ['shed', 'LH'],
      ['half segmental', 'left'],
      ['segmental', 'LH'],
      ['quarter ellipse', 'R.H.'],
    ]);
    expect(questions.map(({ id, rows, choices }) => [id, rows, choices])).toEqual([
      ['hand:left', [2, 3], ['high side left', 'high side right']],
      ['hand:right', [5], ['high side right', 'high side left']],
    ]);
    expect(openings.map(({ problems }) => problems.length)).toEqual([1, 1, 0, 1]);
    expect(unread).toEqual([]);
  });

  it('go with the remarks once answered, and the tickets know them', () => {
    const rows: readonly Row[] = [
      ['shed', 'LH', 'verify in field'],
      ['shed', 'RH'],
    ];
    const answers = { 'hand:left': 'high side right', 'hand:right': 'high side left' };
    expect(remarksIn('Hand', rows, answers)).toEqual(['verify in field; high side right', 'high side left']);
    expect(handsIn('Hand', rows, answers)).toEqual([
      { right: 2, left: 0 },
      { right: 0, left: 2 },
    ]);
    expect(read('Hand', rows, answers).openings.flatMap(({ problems }) => problems)).toEqual([]);
  });

  it('stand without a question under the high side, and where both hands are wanted', () => {
    expect(handsIn('High side', [['shed', 'Left']])).toEqual([{ right: 0, left: 2 }]);
    expect(read('High side', [['shed', 'Left']]).questions).toEqual([]);
    expect(handsIn('Hand', [['shed', '1 LH and 1 RH']])).toEqual([{ right: 1, left: 1 }]);
    expect(read('Hand', [['shed', 'pair']]).questions).toEqual([]);
  });

  it('are asked of the remarks where the two differ, and not again where these say it', () => {
    const { questions } = read('High side', [['shed', 'left', 'high side right']]);
    expect(questions.map(({ id, choices }) => [id, choices])).toEqual([
      ['remarks@2', ['high side left', 'high side right']],
    ]);
    const rows: readonly Row[] = [['shed', 'LH', 'high side right']];
    expect(remarksIn('Hand', rows)).toEqual(['high side right']);
    expect(read('Hand', rows).questions).toEqual([]);
    const settled = { 'remarks@2': 'high side left' };
    expect(remarksIn('High side', [['shed', 'left', 'high side right']], settled)).toEqual(['high side left']);
  });

  it('are read behind the head, too', () => {
    expect(read('Place', [['shed LH', 'hall']]).questions.map(({ id }) => id)).toEqual(['hand:left']);
    expect(remarksIn('Place', [['shed LH', 'hall']], { 'hand:left': 'high side left' })).toEqual(['high side left']);
  });

  it('of a door or a window without such a head are left alone, and that is said', () => {
    expect(read('Hand', [['segmental', 'LH']]).unread).toEqual([
      { what: 'column "Hand"', why: 'no head of its rows has a high side' },
    ]);
  });
});
