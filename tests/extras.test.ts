import { describe, expect, it } from 'vitest';
import { countOf, extrasText, readExtrasText } from '../src/extras';

describe('what goes with an opening by the piece', () => {
  it('is one or several', () => {
    expect(countOf('keystone', 1)).toBe('1 keystone');
    expect(countOf('plinth block', 2)).toBe('2 plinth blocks');
    expect(countOf('rosette', 0)).toBe('0 rosettes');
  });

  it('is listed in one order, whatever was counted first, and what is left out is not listed', () => {
    const extras = [
      { kind: 'plinth block', each: 2 },
      { kind: 'keystone', each: 1 },
      { kind: 'rosette', each: 0 },
    ] as const;
    expect(extrasText(extras)).toBe('1 keystone, 2 plinth blocks');
    expect(extrasText(extras.slice(2))).toBeNull();
    expect(extrasText(undefined)).toBeNull();
  });

  it('is read back as it was listed; any other text is nothing', () => {
    expect(readExtrasText('1 keystone, 12 rosettes')).toEqual([
      { kind: 'keystone', each: 1 },
      { kind: 'rosette', each: 12 },
    ]);
    for (const text of ['', 'keystone', '2 keystone', '1 keystones', '1 lamp'])
      expect(readExtrasText(text)).toEqual([]);
  });
});
