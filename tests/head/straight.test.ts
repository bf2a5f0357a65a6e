import { describe, expect, it } from 'vitest';
import { ARC_ENDS, ENDS, type StraightEnds } from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { straightReach } from '../../src/head/straight';
import { refusalOf, valueOf } from '../value';

describe('a straight head', () => {
  const straight = valueOf(makeHead('straight', 36, null));

  it('is mitered unless something else is said: twice the offset longer than the span', () => {
    for (const ends of [...ARC_ENDS, 'mitered'] as const) {
      expect(valueOf(straight.length(3.6875, ends))).toBe(43.375);
      expect(valueOf(straight.length(0.1875, ends))).toBe(36.375);
    }
  });

  it('over its legs, between them or square has one length at both edges', () => {
    const lengths = (ends: StraightEnds, overhang = 0) => {
      const reach = straightReach(ends, 0.1875, 3.5, overhang);
      return [0.1875, 3.6875].map((offset) => valueOf(straight.length(offset, ends, { reach: reach! })));
    };
    expect(lengths('over legs')).toEqual([43.375, 43.375]);
    expect(lengths('over legs', 0.25)).toEqual([43.875, 43.875]);
    expect(lengths('between legs')).toEqual([36.375, 36.375]);
    expect(lengths('square')).toEqual([36, 36]);
  });

  it('has no rise, no radius and no arcs', () => {
    expect(straight).toMatchObject({ rise: 0, radius: null });
    expect(valueOf(straight.arcs(3, 'legs'))).toEqual([]);
    expect(makeHead('straight', 36, 0).ok).toBe(true);
    expect(refusalOf(makeHead('straight', 36, 6))).toBe('rise of a straight head must be 0 or left out; got 6');
  });

  it.each(ENDS)('refuses an offset that is no number, ends %s', (ends) => {
    for (const result of [straight.length(NaN, ends), straight.arcs(NaN, ends)]) {
      expect(refusalOf(result)).toBe('offset must be a number; got NaN');
    }
  });

  it('refuses legs that would meet', () => {
    expect(refusalOf(straight.length(-18, 'legs'))).toBe(
      'offset must be more than -18, where the legs would meet; got -18',
    );
  });
});
