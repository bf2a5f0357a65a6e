import { describe, expect, it } from 'vitest';
import { FillTable, fillByBranching, type Filling } from '../../src/stock/knapsack';
import { HALF_A_WORTH } from '../../src/stock/proof';
import { random } from '../random';

interface Problem {
  readonly sizes: number[];
  readonly worths: number[];
  readonly copies: number[];
  readonly room: number;
}

function problem(number: number): Problem {
  const { whole } = random(number);
  const count = whole(1, 6);
  const list = (least: number, most: number) => Array.from({ length: count }, () => whole(least, most));
  return { sizes: list(3, 25), worths: list(0, 40), copies: list(0, 3), room: whole(10, 60) };
}

/** The greatest worth with at most `waste` of the room left, by trying everything; null where nothing leaves so little. */
function byTrying({ sizes, worths, copies, room }: Problem, waste: number): number | null {
  const tryFrom = (piece: number, left: number): number => {
    if (piece === sizes.length) return left <= waste ? 0 : -Infinity;
    let best = -Infinity;
    for (let count = 0; count <= copies[piece]! && count * sizes[piece]! <= left; count++) {
      best = Math.max(best, count * worths[piece]! + tryFrom(piece + 1, left - count * sizes[piece]!));
    }
    return best;
  };
  const best = tryFrom(0, room);
  return best === -Infinity ? null : best;
}

function expectFits({ sizes, worths, copies, room }: Problem, { worth, pieces, counts }: Filling): void {
  let used = 0;
  let total = 0;
  pieces.forEach((piece, at) => {
    expect(counts[at]).toBeLessThanOrEqual(copies[piece]!);
    used += counts[at]! * sizes[piece]!;
    total += counts[at]! * worths[piece]!;
  });
  expect(used).toBeLessThanOrEqual(room);
  expect(total).toBe(worth);
}

describe('filling one board for the most worth', () => {
  it('by branching is what trying everything finds, 500 random boards', () => {
    for (let number = 0; number < 500; number++) {
      const one = problem(number);
      const { filling, upper, complete } = fillByBranching(one.sizes, one.worths, one.copies, one.room, 1, Infinity);
      expectFits(one, filling);
      expect([filling.worth, upper, complete]).toEqual([byTrying(one, one.room), filling.worth, true]);
    }
  });

  it('by a table is what trying everything finds, whatever waste is allowed, 500 random boards', () => {
    for (let number = 0; number < 500; number++) {
      const one = problem(number);
      const table = new FillTable(one.sizes, one.room);
      table.fill(one.worths, one.copies, true);
      for (const waste of [0, 3, one.room]) {
        const best = table.best(one.room, waste);
        expect(best === null ? null : best.worth).toBe(byTrying(one, waste));
        if (best) expectFits(one, best);
      }
    }
  });

  it('finds the greatest whole worth where rounding hides it from a search for 1 more: half a worth is asked for', () => {
    const { whole } = random(10_801);
    const count = whole(2, 7);
    const list = (least: number, most: number) => Array.from({ length: count }, () => whole(least, most));
    const one = { sizes: list(3, 60), worths: list(1, 40), copies: list(1, 4), room: whole(30, 150) };
    const best = byTrying(one, one.room)!;
    const found = (gain: number) =>
      fillByBranching(one.sizes, one.worths, one.copies, one.room, gain, Infinity).filling.worth;
    expect(found(1)).toBe(best - 1);
    expect(found(HALF_A_WORTH)).toBe(best);
  });

  it('has an upper bound that holds when patience runs out at any step', () => {
    for (let number = 0; number < 200; number++) {
      const one = problem(number);
      for (const patience of [0, 1, 2, 5, 9]) {
        const { filling, upper } = fillByBranching(one.sizes, one.worths, one.copies, one.room, 1, patience);
        expectFits(one, filling);
        // No filling is worth `gain` (here 1) more than the upper bound, and worths are whole.
        expect(byTrying(one, one.room)!).toBeLessThan(upper + 1);
      }
    }
  });
});
