import { describe, expect, it } from 'vitest';
import type { CellValue, Opening, Reading } from '../../src/schedule/opening';
import { readSchedule } from '../../src/schedule/readSchedule';
import { defaultStandards, type Standards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { valueOf } from '../value';

const HEADINGS = [
  'Mark',
  'Qty',
  'Head',
  'Width',
  'Rise',
  'Casing',
  'Keystone',
  'Rosettes',
  'Straight footage',
  'Remarks',
];

function read(
  rows: readonly (readonly CellValue[])[],
  answers: Record<string, string> = {},
  standards: Standards = defaultStandards(),
): Reading {
  return valueOf(readSchedule({ name: 'list', firstRow: 1, rows: [HEADINGS, ...rows] }, standards, {}, { answers }));
}
const arch = (remarks: string, more: readonly CellValue[] = [null, null, null]): CellValue[] => [
  ...['W1', 2, 'half round', 36, null, 3.5],
  ...more,
  remarks,
];
const shown = ({ mark, quantity, head, ends, span }: Opening) => [mark, quantity, head, ends, span];

describe('extras of a list', () => {
  it('are counted by columns of their own, and "yes" is one', () => {
    const { openings, questions } = read([
      arch('', [1, 4, null]),
      ['W2', 1, 'segmental', 40, 8, 3.5, 'yes', '-', null, ''],
    ]);
    expect(questions).toEqual([]);
    expect(openings.map(({ extras }) => extras)).toEqual([
      [
        { kind: 'keystone', each: 1 },
        { kind: 'rosette', each: 4 },
      ],
      [{ kind: 'keystone', each: 1 }],
    ]);
  });

  it('that a remark names are asked about, with the counts it gives', () => {
    const proposed = (remarks: string) => read([arch(remarks)]).questions.map(({ choices }) => choices[0]);
    expect(proposed('w/ keystone')).toEqual(["with 1 keystone, at the shop's price"]);
    expect(proposed('keystone and (4) rosettes')).toEqual(["with 1 keystone, 4 rosettes, at the shop's price"]);
    expect(proposed('on plinth blocks')).toEqual(["with 2 plinth blocks, at the shop's price"]);
  });

  it.each([
    ['add 40 LF of straight casing to match', 5, 96],
    ['plus 24 ft straight', 3, 96],
    ['straight molding: 16 lin ft', 2, 96],
    ['2 pcs @ 84" straight casing', 2, 84],
  ])('straight molding that a remark names is asked about, and a row of its own: %s', (remarks, count, long) => {
    const { openings, questions } = read([arch(remarks)]);
    expect(questions[0]!.choices[0]).toMatch(/^with .+ of straight molding$/);
    expect(openings.map(shown)).toEqual([['W1', null, 'half round', null, 36]]);
    const answered = read([arch(remarks)], { remarks: 'as proposed' }).openings;
    expect(answered.map(shown)).toEqual([
      ['W1', 2, 'half round', null, 36],
      ['W1 straight', count, 'straight', 'square', long],
    ]);
    const without = read([arch(remarks)], { remarks: 'priced as listed', [questions[0]!.id]: 'priced without it' });
    expect(without.openings.map(shown)).toEqual([['W1', 2, 'half round', null, 36]]);
  });

  it('are taken as answered: with them, or without', () => {
    const [open] = read([arch('w/ keystone')]).openings;
    expect([open!.extras, open!.quantity]).toEqual([undefined, null]);
    const [yes] = read([arch('w/ keystone')], { remarks: 'as proposed' }).openings;
    expect([yes!.extras, yes!.quantity]).toEqual([[{ kind: 'keystone', each: 1 }], 2]);
    const [no] = read([arch('w/ keystone')], { 'remark:w/ keystone': 'priced without it' }).openings;
    expect([no!.extras, no!.quantity]).toEqual([undefined, 2]);
  });

  it('that a column counts already are not asked about', () => {
    expect(read([arch('keystone', [1, null, null])]).questions).toEqual([]);
  });

  it('whose count is none put the row in doubt', () => {
    const [one] = read([arch('', ['some', null, null])]).openings;
    expect(one!.problems.map(({ message }) => message)).toEqual([
      'The count of keystones can\'t be read: the cell says "some"; a whole number is needed.',
    ]);
  });
});

describe('straight molding of a list', () => {
  it('by the foot is pieces of the shop’s length, cut square, the last one whole', () => {
    const { openings, questions } = read([['T1', '250 LF', null, null, null, 3.5, null, null, null, '']]);
    expect(questions).toEqual([]);
    expect(openings.map(shown)).toEqual([['T1', 32, 'straight', 'square', 96]]);
    expect(openings[0]!.notes).toContain('"250 LF" of straight molding is 32 pieces of 96.');
  });

  it('by the piece is as long as said', () => {
    const { openings } = read([['T2', 10, 'straight molding', 144, null, 3.5, null, null, null, '']]);
    expect(openings.map(shown)).toEqual([['T2', 10, 'straight', 'square', 144]]);
  });

  it('beside an opening is a row of its own, of the same casing, so that one knife cuts both', () => {
    for (const [cell, count, length] of [
      ['24 ft', 3, 96],
      [24, 3, 96],
      ['2 @ 8\'-6"', 2, 102],
    ] as const) {
      const { openings } = read([arch('', [null, null, cell])]);
      expect(openings.map(shown)).toEqual([
        ['W1', 2, 'half round', null, 36],
        ['W1 straight', count, 'straight', 'square', length],
      ]);
      const taken = takeoff(openings, defaultStandards());
      const [curve, straight] = taken.openings;
      expect(straight!.own!.knife).toBe(curve!.own!.knife);
      expect(straight!.curve!.length).toBe(length);
      // One knife between them.
      expect(curve!.share!.knives + straight!.share!.knives).toBeCloseTo(defaultStandards().knifeGrinding, 9);
    }
  });

  it('in a metric workbook is in meters', () => {
    const metric = defaultStandards('mm');
    const row = ['W1', 1, 'half round', 900, null, 90, null, null, 5, ''];
    expect(read([row], { unit: 'mm' }, metric).openings.map(shown)[1]).toEqual([
      'W1 straight',
      3,
      'straight',
      'square',
      2400,
    ]);
  });

  it('that can’t be read puts the opening in doubt, and a row left out takes it along', () => {
    const [one] = read([arch('', [null, null, 'lots'])]).openings;
    expect([one!.quantity, one!.problems.length]).toEqual([null, 1]);
    expect(read([arch('not in contract', [null, null, 24])], { remarks: 'as proposed' }).openings).toEqual([]);
  });
});
