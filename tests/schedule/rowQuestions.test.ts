import { describe, expect, it } from 'vitest';
import { readSchedule, type Answers, type CellValue, type Reading, type Table } from '../../src/schedule';
import { defaultStandards } from '../../src/standards';

function read(rows: readonly (readonly CellValue[])[], answers: Answers = {}, more: Partial<Table> = {}): Reading {
  const result = readSchedule({ name: 'list.csv', firstRow: 1, rows, ...more }, defaultStandards(), {}, { answers });
  if (!result.ok) throw new Error(result.message);
  return result.value;
}
const marksOf = ({ openings }: Reading) => openings.map(({ mark, row }) => `${mark} row ${row}`);
const isPriced = ({ openings }: Reading) => openings.map(({ problems }) => problems.length === 0);
const HEADINGS = ['Mark', 'Qty', 'Head', 'Width', 'Rise'];

describe('a mark that stands twice', () => {
  const TWICE = [HEADINGS, ['W1', 1, 'segmental', 36, 6], ['W2', 1, 'segmental', 40, 6], ['W1', 1, 'segmental', 36, 8]];

  it('keeps every row of it from being priced, the first as well', () => {
    const list = read(TWICE);
    expect(isPriced(list)).toEqual([false, true, false]);
    expect(list.questions).toEqual([
      expect.objectContaining({
        id: 'mark:w1',
        rows: [2, 4],
        choices: ['keep both', 'leave out', 'same opening', 'only the last'],
      }),
    ]);
  });

  it.each([
    ['keep both', ['W1 row 2', 'W2 row 3', 'W1 row 4']],
    ['leave out', ['W1 row 2', 'W2 row 3']],
    ['same opening', ['W1 row 2', 'W2 row 3']],
    ['only the last', ['W2 row 3', 'W1 row 4']],
  ])('answered by "%s" leaves %j', (answer, marks) => {
    const list = read(TWICE, { 'mark:w1': answer });
    expect(marksOf(list)).toEqual(marks);
    expect(isPriced(list)).toEqual(marks.map(() => true));
    expect(list.questions).toEqual([]);
  });

  it('loses the first row where that is the one answered for', () => {
    const list = read(TWICE, { 'mark:w1@2': 'leave out', 'mark:w1@4': 'keep both' });
    expect(marksOf(list)).toEqual(['W2 row 3', 'W1 row 4']);
    expect(list.passedOver).toContainEqual(expect.objectContaining({ row: 2 }));
  });
});

describe('a row without a head among rows that name one', () => {
  const LIST = [HEADINGS, ['W1', 1, 'elliptical', 36, 6], ['W2', 1, null, 40, 6]];

  it('is asked about where its rise would fit several shapes', () => {
    expect(isPriced(read(LIST))).toEqual([true, false]);
    expect(read(LIST).questions.map(({ id }) => id)).toEqual(['curves']);
  });

  it('is what was answered, or asked about by itself', () => {
    const taken = read(LIST, { curves: 'segmental, half round where the rise is half the width' });
    expect(taken.openings[1]).toMatchObject({ head: 'segmental', rise: 6, problems: [] });
    const each = read(LIST, { curves: 'ask each' });
    expect(each.questions).toEqual([expect.objectContaining({ id: 'head@3' })]);
    expect(read(LIST, { curves: 'ask each', 'head@3': 'elliptical' }).openings[1]).toMatchObject({
      head: 'elliptical',
      rise: 6,
      problems: [],
    });
  });
});

describe('a row with a unit of its own', () => {
  const LIST = [
    ['Mark', 'Qty', 'Units', 'Head', 'Width', 'Rise'],
    ['W1', 1, 'in', 'segmental', 36, 6],
    ['W2', 1, 'in', 'segmental', '914 mm', 6],
  ];

  it('is asked about where one of its figures is written in the other system', () => {
    const { questions } = read(LIST);
    expect(questions).toEqual([expect.objectContaining({ id: 'rise@3', choices: ['6 in', '6 mm'] })]);
    expect(read(LIST, { 'rise@3': '6 in' }).openings[1]).toMatchObject({ rise: 6, problems: [] });
  });
});

describe('a row that its file’s reader asks about', () => {
  const LIST = [HEADINGS, ['W1', 1, 'segmental', 36, 6], ['WS', 1, 'segmental', 40, 6]];
  const asks = new Map([
    [
      3,
      [
        {
          id: 'read:3',
          about: 'rows',
          text: 'The mark of row 3 may read WS or W5; which?',
          choices: [{ label: 'WS' }, { label: 'W5', set: { mark: 'W5' } }],
          field: 'mark' as const,
        },
      ],
    ],
  ]);

  it('is not priced until it is answered, and then is as answered', () => {
    const open = read(LIST, {}, { asks });
    expect(isPriced(open)).toEqual([true, false]);
    expect(open.questions).toEqual([expect.objectContaining({ id: 'read:3', rows: [3], choices: ['WS', 'W5'] })]);
    const answered = read(LIST, { 'read:3': 'W5' }, { asks });
    expect(answered.openings[1]).toMatchObject({ mark: 'W5', problems: [] });
  });

  it('in doubt as a whole stays so whatever figure is given for it, until it is said to be right', () => {
    const doubts = new Map([[3, ['its cells may be those of the row below']]]);
    expect(isPriced(read(LIST, { 'span@3': '41' }, { doubts }))).toEqual([true, false]);
    const right = read(LIST, { 'span@3': '41', 'page:its cells may be those of the row below': 'as read' }, { doubts });
    expect(right.openings[1]).toMatchObject({ span: 41, problems: [] });
  });
});

describe('a figure given for a row', () => {
  it('answers what it answers and nothing else: the other questions of the row stay open', () => {
    const LIST = [
      [...HEADINGS, 'Remarks'],
      ['W1', 1, 'segmental', 36, null, '(2) req’d'],
    ];
    const list = read(LIST, { 'rise@2': '6', 'quantity@2': '1' });
    expect(list.openings[0]).toMatchObject({ rise: 6, quantity: null });
    expect(list.questions.map(({ about }) => about)).toEqual(['remarks']);
  });

  it('keeps what the row had: 1650 mm for a width leaves the rise', () => {
    const list = read([HEADINGS, ['W1', 1, 'segmental', '16q50', 10]], { 'span@2': '1650 mm' });
    expect(list.openings[0]).toMatchObject({ rise: 10, problems: [] });
    expect(list.openings[0]?.span).toBeCloseTo(1650 / 25.4, 9);
  });
});
