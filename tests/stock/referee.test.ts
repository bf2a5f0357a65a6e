import { beforeAll, describe, expect, it } from 'vitest';
import { costOf, type Cutting } from '../../src/stock/cutting';
import { Effort } from '../../src/stock/effort';
import { search } from '../../src/stock/search';
import { random } from '../random';
import { referee } from './referee';

let least: (cutting: Cutting) => number | null;
beforeAll(async () => {
  least = await referee();
});

/** Up to seven sizes, up to six of each, up to four kinds of board. */
function small(number: number, kinds: number, limited: boolean): Cutting {
  const { whole } = random(number);
  const longest = whole(30, 60);
  const sizes = new Set<number>();
  for (let wanted = whole(1, 7); sizes.size < wanted;) sizes.add(whole(7, longest));
  const ordered = [...sizes].sort((a, b) => b - a);
  const boards = Array.from({ length: kinds }, () => {
    const room = whole(longest, 2 * longest);
    return {
      room,
      price: kinds === 1 ? 1 : whole(room * 90, room * 110),
      limit: limited && whole(0, 1) === 1 ? whole(1, 4) : Infinity,
    };
  });
  return { sizes: ordered, demand: ordered.map(() => whole(1, 6)), boards };
}

function expectLeast(cutting: Cutting): void {
  const end = performance.now() + 15_000;
  const { runs, bound } = search(cutting, {
    effort: new Effort(Infinity, () => performance.now() > end),
    better: () => undefined,
  });
  const cost = least(cutting);
  expect(runs === null ? null : costOf(runs, cutting.boards)).toBe(cost);
  if (cost !== null) expect(bound).toBe(cost);
}

describe('against a mixed-integer solver over all patterns', () => {
  it('finds and proves the fewest boards of one length, 40 random problems', () => {
    for (let number = 0; number < 40; number++) expectLeast(small(number, 1, false));
  }, 60_000);

  it('finds and proves the least cost of two to four lengths, 30 random problems', () => {
    for (let number = 0; number < 30; number++) expectLeast(small(1_000 + number, 2 + (number % 3), false));
  }, 60_000);

  it('finds and proves the least cost of boards of limited number, or that they do not suffice, 30 random problems', () => {
    for (let number = 0; number < 30; number++) expectLeast(small(2_000 + number, 1 + (number % 4), true));
  }, 60_000);
});
