import { expect, it } from 'vitest';
import { settingUnit } from '../src/settingUnit';

it('a figure that goes by length is counted in the unit of its workbook, others in their own', () => {
  const both = (measure: Parameters<typeof settingUnit>[0]) => [settingUnit(measure, 'in'), settingUnit(measure, 'mm')];
  expect(both('length')).toEqual(['in', 'mm']);
  expect(both('feed')).toEqual(['ft/min', 'm/min']);
  expect(both('minutesPerLength')).toEqual(['min/ft', 'min/m']);
  expect(both('rpm')).toEqual(['rev/min', 'rev/min']);
  expect(both('moneyPerHour')).toEqual(['$/hour', '$/hour']);
  expect(both('text')).toEqual(['', '']);
});
