import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textWidth } from '../../src/drawing/dimension';
import { shortList, wrap } from '../../src/drawing/words';

describe('words in lines', () => {
  it('break between words and fit the width', () => {
    expect(wrap('Back band with bead and cove', textWidth('Back band with', 1), 1, 4)).toEqual([
      'Back band with',
      'bead and cove',
    ]);
  });

  it('never exceed width or count, and lose nothing that fits, for any words', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 300 }),
        fc.integer({ min: 4, max: 60 }),
        fc.integer({ min: 1, max: 5 }),
        (words, letters, most) => {
          const lines = wrap(words, textWidth('a'.repeat(letters), 1) + 1e-9, 1, most);
          expect(lines.length).toBeLessThanOrEqual(most);
          for (const line of lines) expect([...line].length).toBeLessThanOrEqual(letters);
          const bare = (text: string) => text.replace(/\s+/g, '');
          const kept = bare(lines.join(''));
          if (kept !== bare(words)) {
            expect(lines).toHaveLength(most);
            expect(kept.endsWith('...')).toBe(true);
            expect(bare(words).startsWith(kept.slice(0, -3))).toBe(true);
          }
        },
      ),
    );
  });
});

describe('a short list', () => {
  it('says how many it leaves out', () => {
    expect(shortList(['A', 'B'], 2)).toBe('A, B');
    expect(shortList(['A', 'B', 'C', 'D'], 2)).toBe('A, B and 2 more');
    expect(shortList([], 2)).toBe('');
  });
});
