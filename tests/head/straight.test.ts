import { describe, expect, it } from 'vitest';
import { ENDS } from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { refusalOf, valueOf } from '../value';

describe('a straight head', () => {
  const straight = valueOf(makeHead('straight', 36, null));

  it('is the span long, and twice the offset longer with mitered legs', () => {
    expect(valueOf(straight.length(3.6875, 'radial'))).toBe(36);
    expect(valueOf(straight.length(3.6875, 'level'))).toBe(36);
    expect(valueOf(straight.length(3.6875, 'legs'))).toBe(43.375);
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
