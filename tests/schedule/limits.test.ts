import { expect, test } from 'vitest';
import { readSchedule, type CellValue } from '../../src/schedule';
import { defaultStandards } from '../../src/standards';
import { valueOf } from '../value';

/*
 * What the reader can't know, as docs/schedules.md states it: held here, so that the page stays true and a reader that learns more
 * changes both.
 */

const read = (...rows: CellValue[][]) => valueOf(readSchedule({ name: 'list', firstRow: 1, rows }, defaultStandards()));

test('a list in centimeters of widths and rises alone may be one of inches, and is read so; a height tells', () => {
  const alone = read(['Mark', 'Head', 'Width', 'Rise'], ['W1', 'segmental', 90, 15]);
  expect([alone.questions, alone.openings[0]!.span]).toEqual([[], 90]);
  const high = read(['Mark', 'Head', 'Width', 'Height', 'Rise'], ['W1', 'segmental', 90, 210, 15]);
  expect(high.questions.map(({ id }) => id)).toEqual(['unit']);
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
