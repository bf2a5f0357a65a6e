import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { settingsPage } from '../docs/settingsPage';
import {
  cellName,
  defaultStandards,
  limits,
  readSetting,
  SETTINGS,
  withSettings,
  type NumberSetting,
  type Setting,
  type SettingKey,
} from '../src/standards';
import { UNITS } from '../src/unit';
import { refusalOf, valueOf } from './value';

const ALL: readonly Setting[] = SETTINGS;

function setting(key: SettingKey): Setting {
  return ALL.find((each) => each.key === key)!;
}

describe('the settings of the shop', () => {
  it.each(UNITS)('each have a default within their limits, kept in %s', (unit) => {
    const standards = defaultStandards(unit);
    for (const each of ALL) {
      const value = standards[each.key as SettingKey];
      expect(readSetting(each, value, unit)).toEqual({ ok: true, value });
    }
  });

  it('that measure lengths or feeds have a round metric default near the inch one', () => {
    for (const each of ALL) {
      if (each.measure !== 'length' && each.measure !== 'feed') continue;
      const inOtherUnit = each.value * (each.measure === 'length' ? 25.4 : 0.3048);
      expect([each.key, each.metric]).not.toEqual([each.key, undefined]);
      expect(Math.abs(each.metric! - inOtherUnit)).toBeLessThanOrEqual(0.07 * inOtherUnit);
    }
  });

  it('start at the figures and have the limits that the page of settings promises', () => {
    expect(settingsPage()).toBe(readFileSync('docs/settings.md', 'utf8'));
  });

  it('are told apart by key, by label and by the name of their cell', () => {
    for (const names of [
      ALL.map(({ key }) => key),
      ALL.map(({ label }) => label),
      ALL.map(({ key }) => cellName(key)),
    ]) {
      expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(ALL.length);
    }
    expect(cellName('cuttingCircle')).toBe('Shop_cutting_circle');
  });

  it('begin with the unit, which decides the limits of the others', () => expect(ALL[0]!.key).toBe('unit'));

  it('have limits in inches and ft/min, or the same in millimeters and m/min', () => {
    expect(limits(setting('reveal') as NumberSetting, 'in')).toEqual({ min: 0, max: 6 });
    expect(limits(setting('reveal') as NumberSetting, 'mm')).toEqual({ min: 0, max: 6 * 25.4 });
    expect(limits(setting('feed') as NumberSetting, 'mm').max).toBeCloseTo(200 * 0.3048, 12);
    expect(limits(setting('face') as NumberSetting, 'mm').min).toBe(0.25 * 25.4);
    expect(limits(setting('grain') as NumberSetting, 'mm')).toEqual({ min: 1, max: 60 });
  });
});

describe('a setting', () => {
  it('at either limit is taken, past it refused with both', () => {
    for (const value of [0, 6]) expect(valueOf(readSetting(setting('reveal'), value, 'in'))).toBe(value);
    for (const value of [-0.001, 6.001]) {
      expect(refusalOf(readSetting(setting('reveal'), value, 'in'))).toBe(
        `Reveal must be a number from 0 to 6; got ${value}.`,
      );
    }
    expect(refusalOf(readSetting(setting('reveal'), 153, 'mm'))).toBe(
      'Reveal must be a number from 0 to 152.4; got 153.',
    );
  });

  it.each([
    ['1/4', '"1/4"'],
    ['', 'nothing'],
    [null, 'nothing'],
    [undefined, 'nothing'],
    [NaN, 'NaN'],
    [true, '"true"'],
  ])('that is to be a number is not read from %j', (given, said) => {
    expect(refusalOf(readSetting(setting('reveal'), given, 'in'))).toBe(
      `Reveal must be a number from 0 to 6; got ${said}.`,
    );
  });

  it('that counts must be whole', () => {
    expect(refusalOf(readSetting(setting('knives'), 1.5, 'in'))).toBe(
      'Knives that mark must be a whole number from 1 to 12; got 1.5.',
    );
  });

  it('with choices forgives letter case and blanks, nothing else', () => {
    expect(valueOf(readSetting(setting('ends'), ' Legs ', 'in'))).toBe('legs');
    expect(refusalOf(readSetting(setting('ends'), 'butt', 'in'))).toBe(
      'Ends of the arc must be one of radial, level, legs; got "butt".',
    );
    expect(refusalOf(readSetting(setting('ends'), null, 'in'))).toContain('got nothing.');
  });

  it('in words is trimmed, may be a number, and must not be blank', () => {
    expect(valueOf(readSetting(setting('profile'), ' Back band ', 'in'))).toBe('Back band');
    expect(valueOf(readSetting(setting('profile'), 366, 'in'))).toBe('366');
    for (const blank of ['  ', null]) {
      expect(refusalOf(readSetting(setting('profile'), blank, 'in'))).toBe('Profile must not be blank.');
    }
  });
});

describe('changed settings', () => {
  const standards = defaultStandards();

  it('replace the old ones and leave the others and the stock as they are', () => {
    expect(valueOf(withSettings(standards, { reveal: 0.25, species: 'Walnut' }))).toEqual({
      ...standards,
      reveal: 0.25,
      species: 'Walnut',
    });
    expect(standards.reveal).toBe(0.1875);
  });

  it('are refused together where one is', () => {
    expect(refusalOf(withSettings(standards, { reveal: 0.25, face: 0 }))).toContain('Casing width must be');
  });

  it('are held to the limits of a unit that changes with them', () => {
    expect(valueOf(withSettings(standards, { unit: 'mm', reveal: 12 })).reveal).toBe(12);
    expect(refusalOf(withSettings(standards, { unit: 'in', reveal: 12 }))).toContain('from 0 to 6; got 12');
  });
});
