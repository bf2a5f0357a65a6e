import { describe, expect, it } from 'vitest';
import { described, DESCRIPTIONS, wronglyFor } from './made/descriptions';

describe('35 descriptions of molding, worded by somebody else', () => {
  it('are all here', () => expect(DESCRIPTIONS).toHaveLength(35));

  it.each(DESCRIPTIONS.map((one) => [one.text, one] as const))(
    '%s: the opening that it is right for is not accused',
    (_text, one) => {
      const { lines } = described(one);
      expect(
        lines.flatMap(({ findings }) =>
          findings.filter(({ verdict }) => verdict === 'differs').map(({ text }) => text),
        ),
      ).toEqual([]);
      // What is seen but not understood is named; nothing else keeps a line from agreeing that says something to compare.
      if (Object.keys(one.reads!).length > 0) expect(lines.map(({ verdict }) => verdict)).toEqual(['agrees']);
    },
  );

  it.each(DESCRIPTIONS.flatMap((one) => wronglyFor(one).map(([figure, but]) => [one.text, figure, one, but] as const)))(
    '%s: never agrees with an opening of another %s',
    (_text, _figure, one, but) => {
      expect(described(one, but).lines.map(({ verdict }) => verdict)).not.toContain('agrees');
    },
  );
});
