import { describe, expect, it } from 'vitest';
import type { Cutting } from '../../src/stock/cutting';
import { Effort } from '../../src/stock/effort';
import { wholeBoundOf } from '../../src/stock/wholeBound';
import { random } from '../random';

/** The least cost of whole boards that hold so much worth, by trying all counts; Infinity where they never do. */
function byTrying(boards: Cutting['boards'], most: readonly number[], worth: number, from = 0): number {
  if (worth <= 0) return 0;
  if (from === boards.length) return Infinity;
  const { price, limit } = boards[from]!;
  let least = Infinity;
  for (let count = 0; count <= limit; count++) {
    const left = worth - count * most[from]!;
    least = Math.min(least, count * price + byTrying(boards, most, left, from + 1));
    if (left <= 0 || most[from] === 0) break;
  }
  return least;
}

/** The same for more boards than can be tried: the most worth that each cost buys, one board after another. */
function byCounting(boards: Cutting['boards'], most: readonly number[], worth: number, dearest: number): number {
  const worthFor = new Float64Array(dearest + 1);
  boards.forEach(({ price, limit }, at) => {
    const buy = (cost: number) => (worthFor[cost] = Math.max(worthFor[cost]!, worthFor[cost - price]! + most[at]!));
    if (limit === Infinity) for (let cost = price; cost <= dearest; cost++) buy(cost);
    else for (let copy = 0; copy < limit; copy++) for (let cost = dearest; cost >= price; cost--) buy(cost);
  });
  return worthFor.findIndex((held) => held >= worth);
}

describe('the cost that worths prove', () => {
  it('is the least sum of prices of whole boards that hold them, no more of a kind than can be had, 500 random problems', () => {
    let impossible = 0;
    for (let number = 0; number < 500; number++) {
      const { whole } = random(number);
      const scale = whole(1, 3);
      const boards = Array.from({ length: whole(2, 4) }, () => ({
        room: 1,
        price: scale * whole(5, 30),
        limit: whole(0, 1) === 1 ? Infinity : whole(1, 4),
      }));
      const most = boards.map(() => whole(0, 30));
      const worths = [whole(0, 9), whole(1, 9)];
      const demand = [whole(1, 9), whole(1, 9)];
      const total = worths[0]! * demand[0]! + worths[1]! * demand[1]!;
      const least = byTrying(boards, most, total);
      const bound = wholeBoundOf({ worths, most }, { sizes: [2, 1], demand, boards }, new Effort(Infinity));
      if (least < Infinity) expect(bound).toBe(least);
      else impossible++;
    }
    expect(impossible).toBeLessThan(250);
  });

  it('counts boards bought whole: what 2 1/2 of the cheaper kind would hold costs 2 of it and one of the other', () => {
    const boards = [
      { room: 10, price: 10, limit: Infinity },
      { room: 6, price: 7, limit: Infinity },
    ];
    expect(
      wholeBoundOf({ worths: [1], most: [10, 6] }, { sizes: [1], demand: [25], boards }, new Effort(Infinity)),
    ).toBe(27);
  });

  it('is the same in plans too dear for a table of all costs, 40 random problems', () => {
    for (let number = 0; number < 40; number++) {
      const { whole } = random(number);
      const kinds = whole(2, 4);
      const boards = Array.from({ length: kinds }, (_, at) => ({
        room: 1,
        price: whole(500, 3_000),
        limit: at === 0 || whole(0, 1) === 1 ? Infinity : whole(1, 9),
      }));
      const most = boards.map(({ price }) => whole(900 * price, 1_100 * price));
      const demand = [whole(300, 900)];
      const worths = [whole(400_000, 900_000)];
      const total = worths[0]! * demand[0]!;
      const least = byCounting(boards, most, total, Math.ceil(total / 900) + 3_000);
      expect(least).toBeGreaterThan(150_000);
      expect(wholeBoundOf({ worths, most }, { sizes: [1], demand, boards }, new Effort(Infinity))).toBe(least);
    }
  });
});
