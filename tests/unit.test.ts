import { expect, it } from 'vitest';
import { bare, feetPerMinute, inches, longUnit, perFootPerMinute, perInch, unitName } from '../src/unit';

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
