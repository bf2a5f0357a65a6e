import { expect, test } from 'vitest';
import { readSchedule, type CellValue } from '../../src/schedule';
import { defaultStandards } from '../../src/standards';
import { valueOf } from '../value';

/*
 * What the reader can't know, as docs/schedules.md states it: held here, so that the page stays true and a reader that learns more
 * changes both.
 */

const read = (...rows: CellValue[][]) => valueOf(readSchedule({ name: 'list', firstRow: 1, rows }, defaultStandards()));

test('a list in centimeters with an opening under 40 cm, or one of half feet throughout, is read as one in inches where nothing leans to centimeters', () => {
  const small = read(['Mark', 'Head', 'Width', 'Rise'], ['W1', 'segmental', 36, 15], ['W2', 'segmental', 90, 15]);
  expect([small.questions, small.openings[0]!.span]).toEqual([[], 36]);
  const halfFeet = read(['Mark', 'Head', 'Width', 'Rise'], ['W1', 'segmental', 72, 15], ['W2', 'segmental', 84, 15]);
  expect([halfFeet.questions, halfFeet.openings[0]!.span]).toEqual([[], 72]);
});

test('a single wrong figure that fits an opening is taken as it stands', () => {
  const { questions } = read(['Mark', 'Head', 'Width', 'Rise'], ['W1', 'segmental', 36, 6], ['W2', 'segmental', 63, 6]);
  expect(questions).toEqual([]);
});

test('a list that is turned on its side is refused by name', () => {
  const rows = [
    ['Mark', 'W1', 'W2'],
    ['Width', 36, 40],
    ['Rise', 6, 7],
    ['Qty', 1, 1],
  ];
  const turned = readSchedule({ name: 'list', firstRow: 1, rows }, defaultStandards());
  expect(turned.ok ? '' : turned.message).toContain('please turn it round');
});

test('headings in another language than English are not known', () => {
  const rows = [
    ['Pos', 'Menge', 'Breite', 'Stich'],
    ['1', 1, 36, 6],
  ];
  expect(readSchedule({ name: 'list', firstRow: 1, rows }, defaultStandards()).ok).toBe(false);
});
