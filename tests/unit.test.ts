import { describe, expect, it } from 'vitest';
import { boardFeet } from '../src/lumber';
import { cutsPerInch, markDepth } from '../src/machine';
import { readLength } from '../src/schedule/readLength';
import { length } from '../src/takeoff/explained';
import { bare, feetPerMinute, inches, inWorkbook, longUnit, perFootPerMinute, perInch, unitName } from '../src/unit';

// International yard and pound agreement of 1959: an inch is 25.4 mm, so a foot is 0.3048 m, both exactly.
it('an inch is 25.4 mm and a foot 0.3048 m', () => {
  expect([perInch('in'), perInch('mm')]).toEqual([1, 25.4]);
  expect([perFootPerMinute('in'), perFootPerMinute('mm')]).toEqual([1, 0.3048]);
});

it('lengths and feeds of a workbook come back in inches and ft/min', () => {
  expect([bare(inches(36, 'in')), bare(inches(914.4, 'mm'))]).toEqual([36, 36]);
  expect([bare(feetPerMinute(4.5, 'in')), bare(feetPerMinute(3.048, 'mm'))]).toEqual([4.5, 10]);
});

it('work by length is counted by the foot of 12 in or the meter of 1000 mm', () => {
  expect([longUnit('in'), longUnit('mm')]).toEqual([12, 1000]);
});

it('a sentence names the unit in full', () => {
  expect([unitName('in'), unitName('mm')]).toEqual(['inches', 'millimeters']);
});

describe('a length in inches', () => {
  it('is a length of the workbook again in its unit', () => {
    expect([inWorkbook(inches(914.4, 'mm'), 'in'), inWorkbook(inches(2, 'in'), 'mm')]).toEqual([36, 50.8]);
  });

  // Each line is an error to the compiler: `npm run types` fails on a mark that marks none.
  it('does not mix with one of a workbook', () => {
    const ofSheet: number = 36;
    const own = inches(36, 'in');
    const wrong = [
      // @ts-expect-error a sheet's length where board feet want inches
      () => boardFeet(ofSheet, own, own),
      // @ts-expect-error a sheet's feed where knife cuts want ft/min
      () => cutsPerInch(7000, 2, ofSheet),
      // @ts-expect-error inches where knife cuts want ft/min
      () => cutsPerInch(7000, 2, own),
      // @ts-expect-error a sheet's length where knife marks want inches
      () => markDepth(20, ofSheet),
      // @ts-expect-error a sheet's length as the greatest that a cell of a list may hold
      () => readLength('36', { name: 'width', column: null, unit: 'mm', most: ofSheet }),
      // @ts-expect-error inches as a number that a figure of the pane rests on, which has the sheet's unit
      () => length('span', own),
      // @ts-expect-error inches added to a sheet's length
      () => own + ofSheet,
      // @ts-expect-error inches compared with a sheet's length
      () => own < ofSheet,
    ];
    expect(wrong).toHaveLength(8);
  });
});
