import { describe, expect, it } from 'vitest';
import type { Casing } from '../../src/check/casing';
import { judge } from '../../src/check/judge';
import { knownQuantities } from '../../src/check/quantityMistakes';
import { knownRadii, RADIUS_MISTAKE_NAMES } from '../../src/check/radiusMistakes';
import { makeHead } from '../../src/head/makeHead';
import { valueOf } from '../value';

/** Span 36, rise 6, radius 30; the casing's inside radius is 30.5. */
const CASING: Casing = { head: valueOf(makeHead('segmental', 36, 6)), face: 3.5, reveal: 0.5, ends: 'legs' };

/** Each mistake made by hand. */
const MADE: readonly [string, number][] = [
  ['opening radius used for the casing', 30],
  ['radius of the center of the face', 32.25],
  ['outside radius', 34],
  ['reveal taken off, not added', 29.5],
  ['rise read as radius', 6],
  ['half the span read as radius', 18],
  ['span read as radius', 36],
  ['diameter read as radius', 60],
  ['diameter read as radius', 61],
  ['diameter read as radius', 68],
  ['radius read as diameter', 15],
  // Span 37 and rise 6.5 between the casing's inside edges: (18.5² + 6.5²)/13.
  ['reveal moved the center', 384.5 / 13],
  ['whole span used for half of it', (36 ** 2 + 6 ** 2) / 12],
  ['half the rise left out', 36 ** 2 / 48],
  ['feet read as inches', 30.5 / 12],
  ['inches read as feet', 30.5 * 12],
  ['millimeters read as inches', 30.5 * 25.4],
  ['inches read as millimeters', 30.5 / 25.4],
  ['centimeters read as millimeters', 30.5 / 10],
  ['millimeters read as centimeters', 305],
  ['25 mm taken for an inch', (30.5 * 25.4) / 25],
  ['two digits changed places', 3.5],
  // 30.5 in is 2'-6 1/2", 2.5417 ft.
  ['decimal feet read as feet and inches', 24 + 5.417],
  ['feet and inches read as decimal feet', 12 * 2.65],
];

describe('a quoted radius', () => {
  it.each(MADE)('with the mistake "%s" made in it, %d, is known by that mistake', (mistake, quoted) => {
    const verdict = judge(quoted, 30.5, knownRadii(CASING), 1 / 64);
    expect(verdict.mistakes).toContain(mistake);
  });

  it('has every mistake on the list made above', () => {
    // 30 is the opening's own radius, too: that is said of it.
    expect(judge(30, 30.5, knownRadii(CASING), 1 / 64).mistakes).toEqual(['opening radius used for the casing']);
    const made = [...MADE.map(([mistake]) => mistake), 'fraction dropped'];
    expect(RADIUS_MISTAKE_NAMES.filter((name) => !made.includes(name))).toEqual([]);
  });

  it('of a head with several radii or none has no known mistakes: it can’t be told', () => {
    for (const head of [
      makeHead('elliptical', 72, 24),
      makeHead('three-centered', 72, 24),
      makeHead('straight', 36, null),
    ]) {
      expect(knownRadii({ ...CASING, head: valueOf(head) })).toEqual([]);
    }
  });

  it('of a half round is not accused of the rise or half the span: those are its radius', () => {
    const names = knownRadii({ ...CASING, head: valueOf(makeHead('half round', 36, null)) }).map(
      ({ mistake }) => mistake,
    );
    expect(names).toContain('opening radius used for the casing');
    expect(names.filter((name) => /rise|span/.test(name))).toEqual([]);
  });

  it('without a reveal is right as the opening radius', () => {
    const names = knownRadii({ ...CASING, reveal: 0 }).map(({ mistake }) => mistake);
    expect(names).not.toContain('opening radius used for the casing');
  });
});

describe('a quoted quantity', () => {
  it('is known for a piece counted for a pair, a pair for a piece, and one', () => {
    expect(knownQuantities(6)).toEqual([
      { mistake: 'one piece counted for a pair', figure: 3 },
      { mistake: 'a pair counted for one piece', figure: 12 },
      { mistake: 'quantity of one', figure: 1 },
    ]);
  });

  it('is not accused where the mistake gives the right count, or half a piece', () => {
    expect(knownQuantities(1)).toEqual([{ mistake: 'a pair counted for one piece', figure: 2 }]);
    expect(knownQuantities(3).map(({ figure }) => figure)).toEqual([6, 1]);
  });
});
