import { expect, it } from 'vitest';
import { changesOf } from './report';

// The part of `npm run mutants` that every run of the tests can afford.
it('no number or operator of arcs, units and rounding can be changed without a test that notices, those explained aside', async () => {
  const { changes, unnoticed, needless } = await changesOf(
    ['src/arc.ts', 'src/unit.ts', 'src/rounding.ts'],
    ['tests/arc.test.ts', 'tests/unit.test.ts', 'tests/rounding.test.ts'],
    4_000,
  );
  expect(changes).toBeGreaterThan(100);
  expect(unnoticed).toEqual([]);
  expect(needless).toEqual([]);
});
