import { describe, expect, it } from 'vitest';
import { costOf, type Cutting } from '../../src/stock/cutting';
import { Effort } from '../../src/stock/effort';
import { search } from '../../src/stock/search';
import { triplets, uniform } from './instances';

/** Generous, since other work shares the machine: what one takes in peace is a matter for the bench. */
const DEADLINE_MS = 10_000;

function boardsOf(cutting: Cutting): number {
  const end = performance.now() + DEADLINE_MS;
  const { runs, bound } = search(cutting, {
    effort: new Effort(Infinity, () => performance.now() > end),
    better: () => undefined,
  });
  const made = cutting.sizes.map(() => 0);
  for (const { pattern, times } of runs!) {
    const used = pattern.pieces.reduce((sum, piece, at) => sum + cutting.sizes[piece]! * pattern.counts[at]!, 0);
    expect(used).toBeLessThanOrEqual(cutting.boards[pattern.board]!.room);
    pattern.pieces.forEach((piece, at) => (made[piece]! += times * pattern.counts[at]!));
  }
  expect(made).toEqual(cutting.demand);
  const cost = costOf(runs!, cutting.boards);
  expect(bound).toBe(cost);
  return cost;
}

describe('problems made by the published recipes of Falkenauer (1996), proven', () => {
  it.each([120, 250, 500, 1_000])(
    'uniform, %d pieces: no fewer boards than their length needs',
    (pieces) => {
      for (let number = 0; number < 5; number++) {
        const cutting = uniform(pieces, number);
        const length = cutting.sizes.reduce((sum, size, at) => sum + size * cutting.demand[at]!, 0);
        expect(boardsOf(cutting)).toBeGreaterThanOrEqual(Math.ceil(length / 150));
      }
    },
    60_000,
  );

  it.each([60, 120, 249, 501])(
    'triplets, %d pieces: a third as many boards, every one filled exactly',
    (pieces) => {
      for (let number = 0; number < (pieces > 200 ? 2 : 5); number++)
        expect(boardsOf(triplets(pieces, number))).toBe(pieces / 3);
    },
    60_000,
  );
});
