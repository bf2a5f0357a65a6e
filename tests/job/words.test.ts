import { describe, expect, it } from 'vitest';
import { openingWords, type Described } from '../../src/job/words';
import { leadTimeText, weeksAtMachine } from '../../src/job/leadTime';

const casing: Described = {
  head: 'half round',
  profile: 'Casing',
  face: 3.5,
  thickness: 0.75,
  species: 'Poplar',
  span: 36,
  rise: 18,
  ends: 'radial',
  leg: 0,
};

describe('an opening in words', () => {
  it.each<[Partial<Described>, string]>([
    [{}, 'Half round casing, 3-1/2 × 3/4 Poplar, 36 wide, radial ends'],
    [
      { head: 'segmental', rise: 8.25, ends: 'level' },
      'Segmental casing, 3-1/2 × 3/4 Poplar, 36 wide, rise 8-1/4, ends cut level',
    ],
    [{ ends: 'legs', leg: 60.5 }, 'Half round casing, 3-1/2 × 3/4 Poplar, 36 wide, mitered to legs, 2 legs 60-1/2'],
    [
      { ends: 'legs', leg: 60, otherLeg: 48 },
      'Half round casing, 3-1/2 × 3/4 Poplar, 36 wide, mitered to legs, legs 60 and 48',
    ],
    [
      { ends: 'legs', leg: 60, otherLeg: 0 },
      'Half round casing, 3-1/2 × 3/4 Poplar, 36 wide, mitered to legs, 1 leg 60',
    ],
    [
      { head: 'round', ends: 'radial', profile: 'Crown 7', sides: 2 },
      'Round casing, profile Crown 7, 3-1/2 × 3/4 Poplar, 36 wide, both sides of the wall',
    ],
    [{ head: null, span: null, species: null, face: null }, 'Casing, radial ends'],
  ])('%o is %s', (given, words) => {
    expect(openingWords({ ...casing, ...given }, 'in')).toBe(words);
  });

  it('names millimeters, which a bare figure is not', () => {
    const metric = { ...casing, face: 90, thickness: 19, span: 914.4 };
    expect(openingWords(metric, 'mm')).toBe('Half round casing, 90 mm × 19 mm Poplar, 914.4 mm wide, radial ends');
  });
});

describe('the lead time', () => {
  it('is whole weeks, a part of one being one', () => {
    expect(weeksAtMachine(61 * 60, 30)).toBe(3);
    expect(weeksAtMachine(60 * 60, 30)).toBe(2);
    expect(weeksAtMachine(0.1 * 3 * 60 * 100, 30)).toBe(1);
    expect(weeksAtMachine(1, 40)).toBe(1);
    expect(weeksAtMachine(0, 40)).toBe(0);
    expect([1, 2].map(leadTimeText)).toEqual(['1 week', '2 weeks']);
  });
});
