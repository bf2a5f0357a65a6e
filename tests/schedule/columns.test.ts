import { describe, expect, it } from 'vitest';
import { readSchedule, type CellValue } from '../../src/schedule';
import type { Answers } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { valueOf } from '../value';

const HEADINGS = ['Mark', 'Qty', 'Head', 'Width', 'Rise'];
const ROW = ['W1', 1, 'segmental', 36, 6];

const read = (rows: readonly (readonly CellValue[])[], answers: Answers = {}) =>
  valueOf(readSchedule({ name: 'list', firstRow: 1, rows }, defaultStandards(), {}, { answers }));

describe('thickness and material', () => {
  it.each(['Door', 'Leaf', 'Panel', 'Frame'])('under %s are not the casing’s, and that is said', (part) => {
    const lists = [
      [
        ['', '', '', '', '', part, ''],
        [...HEADINGS, 'Thickness', 'Material'],
        [...ROW, 1.75, 'HM'],
      ],
      [
        [...HEADINGS, `${part} thickness`, `${part} material`],
        [...ROW, 1.75, 'HM'],
      ],
    ];
    for (const rows of lists) {
      const { openings, unread, questions } = read(rows);
      expect([openings[0]!.thickness, openings[0]!.species, questions]).toEqual([null, null, []]);
      expect(unread.map(({ why }) => why)).toEqual(Array(2).fill("it is the door's or its frame's, not the casing's"));
    }
  });
});

describe('a column that may change what is bought', () => {
  it.each(['R1', 'H2', 'Radius 2', 'Extrados radius'])(
    'named %s is asked about before anything is priced',
    (heading) => {
      const { openings, questions } = read([
        [...HEADINGS, heading],
        [...ROW, 30],
      ]);
      expect(questions).toHaveLength(1);
      expect(openings[0]!.problems).toHaveLength(1);
    },
  );

  it('of sizes proposes that it holds sizes; one of figures among words offers lengths, too', () => {
    const choices = (heading: string, cell: string) =>
      read([
        ['Mark', 'Qty', 'Head', heading, 'Rise'],
        ['W1', 1, 'segmental', cell, 6],
      ]).questions[0]!.choices;
    expect(choices('Clear', '36 x 80')[0]).toBe('Size, width by height');
    expect(choices('Arch data', '8 in. up')).toContain('Rise');
  });
});

describe('two blocks side by side', () => {
  it('of different headings are both read where a column parts them', () => {
    const { openings } = read([
      [...HEADINGS, '', 'Door', 'W', 'H', 'Rise'],
      [...ROW, '', 'D1', 30, 80, 5],
      ['W2', 1, 'segmental', 40, 7, '', 'D2', 32, 80, 6],
    ]);
    expect(openings.map(({ at, row, mark, span, rise }) => [at ?? row, mark, span, rise])).toEqual([
      [2, 'W1', 36, 6],
      ['2b', 'D1', 30, 5],
      [3, 'W2', 40, 7],
      ['3b', 'D2', 32, 6],
    ]);
  });

  it('take a quantity each', () => {
    const rows = [
      [...HEADINGS, '', ...HEADINGS],
      [...ROW, '', 'W2', 2, 'segmental', 40, 7],
    ];
    const counts = (answers: Answers) => read(rows, answers).openings.map(({ quantity }) => quantity);
    expect(counts({})).toEqual([1, 2]);
    expect(counts({ 'quantity@2': '5' })).toEqual([5, 2]);
    expect(counts({ 'quantity@2b': '5' })).toEqual([1, 5]);
  });
});

describe('what contradicts', () => {
  it('is asked about where a rough opening is far wider than its width, with both widths offered', () => {
    const rows = [
      ['Mark', 'Qty', 'Head', 'R.O. width', 'Frame width', 'Rise'],
      ['W1', 1, 'segmental', 38, 36, 6],
      ['W2', 1, 'segmental', 60, 36, 6],
    ];
    const { openings, questions } = read(rows);
    expect(openings.map(({ span }) => span)).toEqual([36, null]);
    expect(questions.map(({ id, choices }) => [id, choices])).toEqual([['span@3', ['36', '58']]]);
  });

  it('is said in the remarks where a total disagrees', () => {
    const { remarks } = read([HEADINGS, ROW, ['Total', 9]]);
    expect(remarks).toEqual(['The total in row 3 says 9, the quantities above add up to 1.']);
    expect(read([HEADINGS, ROW, ['Total', 1]]).remarks).toEqual([]);
  });

  it('with the remarks is not made up: two side legs are no second side', () => {
    const proposed = (text: string) =>
      read([
        [...HEADINGS, 'Remarks'],
        [...ROW, text],
      ]).questions[0]!.choices[0];
    expect(proposed('with 2 side legs')).toBe('priced as listed');
    expect(proposed('2 side lites')).toBe('priced as listed');
    expect(proposed('both sides')).toBe('cased on both sides');
  });
});
