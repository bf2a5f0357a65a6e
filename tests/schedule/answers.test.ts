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

describe('a length that a remark gives without a unit', () => {
  const PROPOSED = { remarks: 'as proposed' };
  const arch = ['Mark', 'Qty', 'Head', 'Width', 'Remarks'];

  it('is in the unit that was given for the list', () => {
    const { openings } = read([arch, ['W1', 1, 'segmental', 91.4, 'rise 15']], PROPOSED, { unit: 'cm' });
    expect(openings[0]).toMatchObject({ rise: expect.closeTo(15 / 2.54, 9), remarks: 'rise 15', problems: [] });
  });

  it('is in the unit of its row', () => {
    const { openings } = read(
      [
        ['Mark', 'Qty', 'Head', 'Units', 'Width', 'Remarks'],
        ['W1', 1, 'segmental', 'cm', 91.4, 'rise 15'],
        ['W2', 1, 'segmental', 'cm', 91.4, 'radius 60'],
        ['W3', 1, 'segmental', 'in', 36, 'rise 6'],
        ['W4', 1, 'segmental', 'cm', 91.4, 'rise 6"'],
      ],
      PROPOSED,
    );
    const [radius, half] = [60 / 2.54, 91.4 / 2.54 / 2];
    const ofRadius = radius - Math.sqrt(radius ** 2 - half ** 2);
    expect(openings.map(({ rise }) => rise)).toEqual(
      [15 / 2.54, ofRadius, 6, 6].map((rise) => expect.closeTo(rise, 9)),
    );
  });

  it.each(['Width (cm)', 'Width [cm]'])('is in the unit of its headings: %s', (width) => {
    const { openings } = read(
      [
        ['Mark', 'Qty', 'Head', width, 'Remarks'],
        ['W1', 1, 'segmental', 91.4, 'rise 15'],
      ],
      PROPOSED,
    );
    expect(openings[0]!.rise).toBeCloseTo(15 / 2.54, 9);
  });

  it('is asked about where a casing can’t be that wide in it', () => {
    const rows = [
      [...arch, 'Rise'],
      ['W1', 1, 'segmental', 914, '3 1/2 casing', 150],
      ['W2', 1, 'segmental', 914, '90 casing', 150],
    ];
    const { openings, questions } = read(rows, PROPOSED, { unit: 'mm' });
    expect(openings.map(({ face }) => face)).toEqual([null, expect.closeTo(90 / 25.4, 9)]);
    expect(questions).toEqual([expect.objectContaining({ id: 'face@2', choices: ['3 1/2 in'] })]);
    expect(read(rows, { ...PROPOSED, 'face@2': '3 1/2 in' }, { unit: 'mm' }).openings[0]!.face).toBe(3.5);
  });

  it('is none until the unit of the list is known; a typed one is', () => {
    const rows = [arch, ['W1', 1, 'segmental', 914, 'rise 150'], ['W2', 1, 'segmental', 914, 'rise 150 mm']];
    const { openings, questions } = read(rows, PROPOSED);
    expect(questions.map(({ id }) => id)).toEqual(['unit']);
    expect(openings.map(({ rise }) => rise)).toEqual([null, expect.closeTo(150 / 25.4, 9)]);
    expect(read(rows, { ...PROPOSED, 'rise@2': '6' }).openings[0]!.rise).toBe(6);
    const inMillimeters = read(rows, { ...PROPOSED, unit: 'mm' }).openings;
    expect(inMillimeters.map(({ rise }) => rise)).toEqual([150, 150].map((rise) => expect.closeTo(rise / 25.4, 9)));
  });
});

describe('the unit given for a list', () => {
  it('is that of rows without one where others name theirs', () => {
    const rows = [
      ['Mark', 'Qty', 'Units', 'Head', 'Width', 'Rise'],
      ['W1', 1, 'in', 'segmental', 36, 6],
      ['W2', 1, null, 'segmental', 914, 150],
    ];
    expect(read(rows).questions.map(({ id }) => id)).toContain('row without unit');
    for (const list of [read(rows, {}, { unit: 'mm' }), read(rows, { unit: 'mm' })]) {
      expect(list.questions).toEqual([]);
      expect(list.openings.map(({ span }) => span)).toEqual([36, expect.closeTo(914 / 25.4, 9)]);
    }
  });
});

describe('an answer for rows', () => {
  const LIST = [HEADINGS, ['W1', 1, 'segmental', 36, 6, null], ['W2', 1, 'segmental', 40, 6, null]];

  it.each(['rise@14-12', 'rise@3-2', 'rise@9', 'rise@2,9-8'])(
    'that names none says that it was not used: %s',
    (key) => {
      const { remarks, openings } = read(LIST, { [key]: '5' });
      expect(remarks).toEqual([`The answer to "${key}" was not used: there is no such question.`]);
      expect(openings.map(({ rise }) => rise)).toEqual([6, 6]);
    },
  );
});

describe('a question about words with an @', () => {
  const LIST = [
    HEADINGS,
    ['W1', 1, 'segmental', 36, 6, '(2) @ 36'],
    ['W@2', 1, 'segmental', 36, 6, null],
    ['W@2', 1, 'segmental', 36, 6, null],
    ['W3@4', 1, 'segmental', 36, null, null],
  ];

  it('can be answered by its id', () => {
    const { questions } = read(LIST);
    expect(questions.map(({ id, field }) => [id, field])).toEqual([
      ['remark:(2) at 36', undefined],
      ['mark:w at 2', undefined],
      ['rise@5', 'rise'],
    ]);
    const answers = Object.fromEntries(questions.map(({ id, choices }) => [id, choices[0] ?? '7']));
    expect(read(LIST, answers)).toMatchObject({ questions: [], remarks: [] });
  });

  it('can be answered for one of its rows', () => {
    const { openings, remarks } = read(LIST, { 'mark:w at 2@3': 'leave out', 'mark:w at 2@4': 'keep both' });
    expect(openings.map(({ row }) => row)).toEqual([2, 4, 5]);
    expect(remarks).toEqual([]);
  });
});
