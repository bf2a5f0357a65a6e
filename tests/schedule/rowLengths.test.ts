import { describe, expect, it } from 'vitest';
import { readSchedule, type CellValue, type HowToRead, type Reading } from '../../src/schedule';
import { defaultStandards } from '../../src/standards';
import type { Unit } from '../../src/unit';
import { valueOf } from '../value';

function read(rows: readonly (readonly CellValue[])[], how: HowToRead = {}, unit: Unit = 'in'): Reading {
  return valueOf(readSchedule({ name: 'list.csv', firstRow: 1, rows }, defaultStandards(unit), {}, how));
}

describe('the casing of a list in another unit than the workbook', () => {
  const HEADINGS = ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Casing thickness', 'Casing size'];
  const inInches = (thickness: CellValue, size: CellValue) =>
    read([HEADINGS, ['W1', 1, 'segmental', 36, 6, thickness, size]], { unit: 'in' }, 'mm');

  it.each([
    ['15/16', (15 / 16) * 25.4],
    ['15/16"', (15 / 16) * 25.4],
    ['1 1/4', 31.75],
    ['¾', 19.05],
    [0.75, 19.05],
  ])('is judged by the whole of its figure: %s', (thickness, millimeters) => {
    const { openings, questions } = inInches(thickness, null);
    expect(questions).toEqual([]);
    expect(openings[0]!.thickness).toBeCloseTo(millimeters, 9);
  });

  it('is judged by the first of two figures', () => {
    const [opening] = inInches(null, '15/16 x 3 1/2').openings;
    expect(opening).toMatchObject({ thickness: expect.closeTo((15 / 16) * 25.4, 9), face: expect.closeTo(88.9, 9) });
  });

  it('is asked about where it can only be in the workbook’s', () => {
    const { questions } = read(
      [
        ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Casing'],
        ['W1', 1, 'segmental', 914, 150, '3 1/2'],
      ],
      { unit: 'mm' },
    );
    expect(questions).toEqual([expect.objectContaining({ id: 'face@2', choices: ['3 1/2 in'] })]);
  });

  it.each([['19'], [19], ['38 1/2']])('is asked about where it can’t be in that unit: %s', (thickness) => {
    expect(inInches(thickness, null).questions).toEqual([
      expect.objectContaining({ id: 'thickness@2', choices: [`${thickness} mm`] }),
    ]);
  });
});

describe('a leg of 0', () => {
  it('is none, of either leg', () => {
    const { openings } = read([
      ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Leg', 'Other leg'],
      ['W1', 1, 'segmental', 36, 6, 60, 0],
      ['W2', 1, 'segmental', 36, 6, '0', '60'],
    ]);
    expect(openings.map(({ leg, otherLeg, problems }) => [leg, otherLeg, problems])).toEqual([
      [60, 0, []],
      [0, 60, []],
    ]);
  });
});
