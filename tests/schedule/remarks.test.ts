import { describe, expect, it } from 'vitest';
import { readRemarks, withdrawnBy, withdrawnMark } from '../../src/schedule/remarks';

describe('remarks', () => {
  it.each<[string, string | null]>([
    ['half round', 'half round'],
    ['Half round; legs to floor', 'half round'],
    ['paint grade. Half-round head', 'half round'],
    ['eyebrow - see detail', 'segmental'],
    ['half round or segmental', null],
    ['half round; segmental', null],
    ['round, see detail', null],
    ['flat casing', null],
    ['match half round in hall', null],
    ['', null],
  ])('"%s" name the head %s', (text, shape) => expect(readRemarks(text).head?.shape ?? null).toBe(shape));

  it.each<[string, string | null]>([
    ['cut on spring line', 'level'],
    ['mitered to legs', 'legs'],
    ['with legs', 'legs'],
    ['casing legs to sill', 'legs'],
    ['Half round; legs down to the stool', 'legs'],
    ['legs by others', null],
    ['level cut; casing legs to sill', null],
    ['level cut; mitered legs', null],
    ['level the site', null],
  ])('"%s" name the ends %s', (text, ends) => expect(readRemarks(text).ends?.ends ?? null).toBe(ends));

  it.each(['legs to floor', 'Half round; with legs down to the finish floor'])(
    '"%s" ask for legs to the floor',
    (text) => expect(readRemarks(text).legsToFloor).toBe(true),
  );
});

describe('an opening', () => {
  it.each<[string, string]>([
    ['VOID', 'VOID'],
    ['Void. See rev 2', 'Void'],
    ['half round; by others.', 'by others'],
    ['N.I.C.', 'N.I.C'],
    ['See note 4 (not in contract)', 'not in contract'],
    ['wall B - deleted', 'deleted'],
  ])('is out of the job by "%s"', (text, word) => expect(withdrawnBy(text)).toBe(word));

  it.each(['', 'voids filled', 'glass by others', 'not used for egress', 'avoid'])(
    'is in it in spite of "%s"',
    (text) => expect(withdrawnBy(text)).toBe(null),
  );

  it.each<[string, string | null]>([
    ['W5 (VOID)', 'VOID'],
    ['W5 - deleted', 'deleted'],
    ['W5-void', 'void'],
    ['W5 by others', 'by others'],
    ['VOID', null],
    ['W5 Devoid', null],
    ['Clinic', null],
  ])('with the mark "%s" is out of the job by %s', (mark, word) => expect(withdrawnMark(mark)).toBe(word));
});
