import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge';

const known = (...figures: number[]) => figures.map((figure) => ({ mistake: `gives ${figure}`, figure }));

describe('a quoted figure', () => {
  it('agrees within the tolerance, whatever a mistake would give', () => {
    expect(judge(42.9, 43, known(42.9)).verdict).toBe('agrees');
  });

  it('misses the right figure by exactly the tolerance and agrees, rounding or not', () => {
    expect(judge(0.3, 0.1 + 0.1, [], 0.1).verdict).toBe('agrees');
    expect(judge(38.125, 38, []).verdict).toBe('agrees');
    expect(judge(38.126, 38, []).verdict).toBe('unexplained');
  });

  it('names every mistake it can’t tell apart, the plainer first', () => {
    expect(judge(40, 43, known(40.03, 39.99)).text).toBe('gives 40.03 or gives 39.99');
  });

  it('names no mistake clearly farther off than the nearest, though within the tolerance', () => {
    expect(judge(40, 43, known(40.01, 40.1)).mistakes).toEqual(['gives 40.01']);
  });

  it('names a mistake once that gives two figures near it', () => {
    const twice = [40.01, 39.99].map((figure) => ({ mistake: 'chord', figure }));
    expect(judge(40, 43, twice).text).toBe('chord');
  });

  it('tells how much it is long or short where nothing explains it', () => {
    expect(judge(30.75, 43, known(36))).toEqual({
      verdict: 'unexplained',
      mistakes: [],
      right: 43,
      difference: -12.25,
      text: 'unexplained: 12 1/4 short',
    });
    expect(judge(43.02, 43, [], 0.001).text).toMatch(/^unexplained: 0.02 long$/);
  });
});
