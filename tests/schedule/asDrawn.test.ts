import { expect, it } from 'vitest';
import type { CellValue } from '../../src/schedule/opening';
import { readSchedule } from '../../src/schedule/readSchedule';
import { defaultStandards } from '../../src/standards';
import { valueOf } from '../value';

/* Manners of plans and builders' lists that testers drew who had not read the reader, each with what it did to them. */

const read = (rows: readonly (readonly CellValue[])[], answers: Record<string, string> = {}) =>
  valueOf(readSchedule({ name: 'list', firstRow: 1, rows }, defaultStandards(), {}, { answers }));

it.each(['WOOD', 'PAINT', 'OAK'])('an opening whose frame is of %s is no second row of headings', (frame) => {
  const { openings, passedOver } = read([
    ['MARK', 'QTY', 'HEAD', 'SPAN', 'RISE', 'FRAME', 'REMARKS'],
    ['A', '2', 'SEGMENTAL', '36', '6', frame, 'EGRESS'],
    ['B', 1, 'SEGMENTAL', `3'-4"`, `6"`, frame, ''],
  ]);
  expect(openings.map(({ mark, quantity, span, rise, species }) => [mark, quantity, span, rise, species])).toEqual([
    ['A', 2, 36, 6, null],
    ['B', 1, 40, 6, null],
  ]);
  expect(passedOver.map(({ row, why }) => [row, why])).toEqual([[1, 'headings']]);
});

it('a total of a floor agrees with the openings since the total before, that of the list with all', () => {
  const list = (second: number, last: number) =>
    read([
      ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
      ['A', 6, 'segmental', 36, 6],
      ['Subtotal', 6],
      ['B', 2, 'segmental', 40, 6],
      ['C', 2, 'segmental', 44, 6],
      ['Subtotal', second],
      ['Total', last],
    ]).remarks;
  expect(list(4, 10)).toEqual([]);
  expect(list(5, 11)).toEqual([
    'The total in row 6 says 5, the quantities above add up to 10, those since the total before to 4.',
    'The total in row 7 says 11, the quantities above add up to 10.',
  ]);
});

it('what is taken off a rough opening is told, and named where it contradicts the rise', () => {
  const { openings, remarks } = read([
    ['Mark', 'Qty', 'Head', 'R.O. Width', 'Rise'],
    ['A', 2, 'segmental', 36, 6],
    ['B', 1, 'half round', 48, 24],
  ]);
  expect(remarks).toEqual(['Rows 2-3 give a rough width: 2 is taken off (Standards, Rough opening, width).']);
  expect(openings[1]!.problems.map(({ message }) => message)).toEqual([
    'A half round 46 wide (the rough opening 48 less 2) has a rise of 23, but rise is 24; please say which is right.',
  ]);
});

it('feet and inches without their marks are asked about once for the list, where no unit says that they are none', () => {
  const rows = (heading: string) => [
    ['Mark', 'Qty', 'Head', heading, 'Rise', 'Casing'],
    ['A', 1, 'half round', '3-0', null, '3-1/2'],
    ['B', 1, 'segmental', '5-6', '0-9', '3-1/2'],
  ];
  const { openings, questions } = read(rows('Width'));
  expect(openings.map(({ span }) => span)).toEqual([null, null]);
  expect(questions.flatMap(({ id, text, choices }) => (choices.length > 0 ? [[id, text, choices]] : []))).toEqual([
    [
      'figures:feet-inches',
      'Figures are written "3-0", "5-6" and "0-9"; are they feet and inches?',
      ['feet and inches', 'ask each'],
    ],
  ]);
  const answered = read(rows('Width'), { 'figures:feet-inches': 'feet and inches' }).openings;
  expect(answered.map(({ span, rise, face }) => [span, rise, face])).toEqual([
    [36, 18, 3.5],
    [66, 9, 3.5],
  ]);
  expect(read(rows('Width (mm)')).openings[0]!.problems[0]!.message).toContain(
    `Width can't be read: the cell says "3-0"`,
  );
});

it('a head named twice is one, and two heads are none', () => {
  const heads = read([
    ['Mark', 'Head', 'Width', 'Rise'],
    ['A', 'SEGMENTAL (EYEBROW)', 36, 6],
    ['B', 'Gothic (pointed)', 36, 34],
    ['C', 'Segmental (half round)', 36, 6],
  ]).openings.map(({ head }) => head);
  expect(heads).toEqual(['segmental', 'pointed', null]);
});
