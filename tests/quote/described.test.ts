import { describe, expect, it } from 'vitest';
import { describedIn } from '../../src/quote/described';

const said = (text: string) =>
  describedIn(text, 'in', () => false).map(({ kind, value, other }) => [kind, value, ...(other ? [other] : [])]);

describe('figures in a line’s words', () => {
  it('are a count before a length, where a stroke stands before feet or decimals', () => {
    expect(said('2/43.36" RAD CSG')).toEqual([
      ['quantity', 2],
      ['length', 43.36],
    ]);
    expect(said('Same with legs, 2/5\'-0"').map(([, value]) => value)).toEqual([2, 60]);
  });

  it('are width and rise as 36W 6R, and a radius where no width stands before it', () => {
    expect(said('Segment top 36W 6R IR 30-3/16')).toEqual([
      ['size', 36, 6],
      ['radius', 30.1875],
    ]);
    expect(said('Qtr rd 24R')).toEqual([['radius', 24]]);
  });

  it('are fractions elsewhere', () => {
    expect(said('Casing 3/4" x 3-1/2"')).toEqual([['section', 0.75, 3.5]]);
  });
});
