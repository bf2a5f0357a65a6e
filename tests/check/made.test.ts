import { describe, expect, it } from 'vitest';
import { checkTable } from '../../src/check/quote';
import { random } from '../random';
import { valueOf } from '../value';
import { judged, takeoffOf } from './made/judge';
import { LAYOUTS } from './made/layouts';
import { makeQuote } from './made/makeQuote';

/** Two quotes of each layout; `npm run bench -- quotes` makes 2,400. */
describe('quotes made at random in 25 layouts, in plain and in odd words', () => {
  const from = random(1903);
  it.each(
    LAYOUTS.flatMap((layout) => (['plain', 'odd'] as const).map((style) => [style, layout.name, layout] as const)),
  )('%s words, %s: no right row is accused, no mistake agrees', (style, _name, layout) => {
    const quote = makeQuote(layout, style, random(from.whole(1, 2 ** 31)));
    const check = valueOf(checkTable(quote.table, takeoffOf(quote)));
    for (const made of quote.rows.filter(({ what }) => what !== 'alternate')) {
      const { verdict, texts } = judged(check, made);
      const right = made.undecidable ? ['agrees', "can't tell"] : ['agrees'];
      expect([made.row, verdict, ...texts].slice(0, right.includes(verdict) || made.planted ? 2 : undefined)).toEqual([
        made.row,
        expect.toBeOneOf(made.planted === null ? right : ['differs', "can't tell"]),
      ]);
    }
    const missing = check.notQuoted.filter(({ finding }) => finding.verdict === 'differs');
    expect(missing.map(({ opening }) => opening.opening.mark).sort()).toEqual([...quote.omitted].sort());
  });
});
