import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pricedOrder, shopOrder } from './instances';
import type { StockOrder } from '../../src/stock/order';
import { planStock } from '../../src/stock/plan';
import { refusalOf, valueOf } from '../value';
import { boundProved, expectValid } from './verify';

const one = (stock: number, pieces: readonly (readonly [length: number, count: number])[]): StockOrder => ({
  lengths: pieces.map(([length]) => length),
  quantities: pieces.map(([, count]) => count),
  stock: [stock],
});

/** Milliseconds of this process' own work: other work on the machine takes nothing from a deadline. */
const ownTime = () => process.cpuUsage().user / 1_000;

describe('the fewest boards of one length', () => {
  // Sources: the 13-width paper roll of the encyclopedia article on the cutting stock problem; Chvátal, Linear Programming
  // (1983), chapter 13; the AMPL book's cut.dat (from memory).
  it.each([
    [73, one(5600, [[1380, 22], [1520, 25], [1560, 12], [1710, 14], [1820, 18], [1880, 18], [1930, 20], [2000, 10], [2050, 12], [2100, 14], [2140, 16], [2150, 18], [2200, 20]])], // prettier-ignore
    [453, one(100, [[45, 97], [36, 610], [31, 395], [14, 211]])], // prettier-ignore
    [47, one(110, [[20, 48], [45, 35], [50, 24], [55, 10], [75, 8]])], // prettier-ignore
  ])('is %d for a textbook order, proven', (boards, order) => {
    const plan = valueOf(planStock(order));
    expect(plan).toMatchObject({ boards, lowerBound: boards, proven: true, measure: 'boards' });
    expectValid(order, plan);
    expect(boundProved(order, plan)).toBe(boards);
  });

  it('counts n − 1 kerfs to n pieces, and trim off both ends', () => {
    expect(valueOf(planStock({ ...one(96.375, [[24, 4]]), kerf: 0.125 })).boards).toBe(1);
    expect(valueOf(planStock({ ...one(96.25, [[24, 4]]), kerf: 0.125 })).boards).toBe(2);
    expect(valueOf(planStock({ ...one(98.375, [[24, 4]]), kerf: 0.125, trim: 1 })).boards).toBe(1);
    expect(valueOf(planStock({ ...one(98.25, [[24, 4]]), kerf: 0.125, trim: 1 })).boards).toBe(2);
  });

  it('takes decimal lengths as they are: three times 33.3 is 99.9', () => {
    expect(valueOf(planStock(one(99.9, [[33.3, 3]]))).boards).toBe(1);
    expect(valueOf(planStock(one(99.8, [[33.3, 3]]))).boards).toBe(2);
    expect(valueOf(planStock({ ...one(72.9 + 0.2, [[24.3, 3]]), kerf: 0.1 })).boards).toBe(1);
  });

  it('takes lengths that are no fraction to a billionth, and a piece as long as its board fits it', () => {
    const plan = valueOf(planStock(one(Math.PI * 30, [[Math.PI * 10, 3], [Math.PI * 30, 1]]))); // prettier-ignore
    expect(plan).toMatchObject({ boards: 2, proven: true });
  });

  it('states the offcut once the last saw cut is made', () => {
    const plan = valueOf(planStock({ ...one(96, [[24, 3]]), kerf: 0.125, trim: 0.5 }));
    expect(plan.plan).toEqual([{ count: 1, stock: 96, cuts: [[24, 3]], offcut: 96 - 1 - 72 - 3 * 0.125 }]);
  });

  it('passes over rows blank in both columns and quantities of zero, and adds up a length that comes twice', () => {
    const plan = valueOf(planStock({ lengths: [24, null, 17, 24], quantities: [2, null, 0, 2], stock: [null, 96] }));
    expect(plan.plan).toEqual([{ count: 1, stock: 96, cuts: [[24, 4]], offcut: 0 }]);
    expect(plan.yield).toBe(1);
  });

  it('is a valid plan with a bound its certificate proves, for shop orders', () => {
    for (let number = 0; number < 12; number++) {
      const order = shopOrder(number);
      const plan = valueOf(planStock({ ...order, deadlineMs: 5_000 }));
      expectValid(order, plan);
      expect(plan.proven).toBe(true);
      if (!plan.certificate.searched) expect(boundProved(order, plan)).toBe(plan.boards);
    }
  });

  it('is a valid plan for any small order', () => {
    const size = fc.integer({ min: 1, max: 640 }).map((parts) => parts / 64);
    const pieces = fc.array(fc.tuple(size, fc.integer({ min: 1, max: 9 })), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(
        pieces,
        fc.integer({ min: 640, max: 2_000 }),
        fc.integer({ min: 0, max: 12 }),
        (pieces, board, kerf) => {
          const order = { ...one(board / 64, pieces), kerf: kerf / 64 };
          const plan = valueOf(planStock({ ...order, deadlineMs: 500 }));
          expectValid(order, plan);
          // The planner may be content with a greatest worth it knows to be enough; the least that will do proves no less.
          expect(boundProved(order, plan)).toBeGreaterThanOrEqual(plan.certificate.lowerBound);
          expect(boundProved(order, plan)).toBeLessThanOrEqual(plan.boards);
          expect(plan.lowerBound).toBeGreaterThanOrEqual(plan.certificate.lowerBound);
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe('the least cost from several lengths', () => {
  it('prices a board by its length where no prices are given', () => {
    const plan = valueOf(planStock({ lengths: [50, 40], quantities: [2, 2], stock: [96, 120] }));
    expect(plan).toMatchObject({ measure: 'cost', boards: 2, cost: 192, lowerBound: 192, proven: true });
  });

  it('finds two long boards cheaper than three shorter ones that waste less', () => {
    const order = {
      lengths: [15.8],
      quantities: [16],
      stock: [94, 118, 142],
      prices: [14.3, 17.88, 21.45],
      kerf: 0.125,
    };
    const plan = valueOf(planStock(order));
    expect(plan).toMatchObject({ cost: 42.9, proven: true });
    expectValid(order, plan);
  });

  it.each([false, true])(
    'is valid and within its certified bound, boards limited: %s',
    (limited) => {
      for (let number = 0; number < 4; number++) {
        const order = pricedOrder(number, limited);
        const plan = valueOf(planStock({ ...order, deadlineMs: 400, now: ownTime }));
        expectValid(order, plan);
        const proved = boundProved(order, plan);
        expect(proved).toBeGreaterThanOrEqual(plan.certificate.lowerBound - 1e-6);
        expect(proved).toBeLessThanOrEqual(plan.cost + 1e-6);
        expect(plan.cost).toBeGreaterThanOrEqual(plan.lowerBound);
        expect(plan.gap / plan.cost).toBeLessThan(0.02);
      }
    },
    60_000,
  );

  it('buys no more of a kind than can be had', () => {
    const order = { lengths: [48], quantities: [10], stock: [96, 144], prices: [10, 14] };
    expect(valueOf(planStock(order))).toMatchObject({ cost: 2 * 14 + 2 * 10, proven: true });
    const limited = { ...order, limits: [null, 1] };
    const plan = valueOf(planStock(limited));
    expectValid(limited, plan);
    expect(plan).toMatchObject({ cost: 5 * 10, proven: true });
  });
});

describe('orders that are refused, each in one sentence', () => {
  it.each<[string, StockOrder]>([
    ['kerf must be 0 or more; got -0.125', { ...one(96, [[24, 1]]), kerf: -0.125 }],
    ['trim must be 0 or more; got -1', { ...one(96, [[24, 1]]), trim: -1 }],
    ['lengths and quantities must be as many; got 2 lengths and 1 quantities', { lengths: [24, 17], quantities: [1], stock: [96] }],
    ['prices and stock must be as many; got 1 prices and 2 stock lengths', { ...one(96, [[24, 1]]), stock: [96, 120], prices: [8] }],
    ['limits and stock must be as many; got 1 limits and 2 stock lengths', { ...one(96, [[24, 1]]), stock: [96, 120], limits: [8] }],
    ['quantity 1 must be a whole number of pieces, 0 or more; got 1.5', one(96, [[24, 1.5]])],
    ['quantity 1 must be a whole number of pieces, 0 or more; got -2', one(96, [[24, -2]])],
    ['length 1 must be more than 0; got -24', one(96, [[-24, 1]])],
    ['length 2 is missing; its quantity is 3', { lengths: [24, null], quantities: [1, 3], stock: [96] }],
    ['quantity 2 is missing; its length is 17', { lengths: [24, 17], quantities: [1, null], stock: [96] }],
    ['lengths and quantities must name at least one piece; got none', one(96, [[24, 0]])],
    ['stock must name at least one board length that can be had; got none', { ...one(96, [[24, 1]]), stock: [] }],
    ['stock length 1 must be more than 0; got 0', one(0, [[24, 1]])],
    ['price 1 must be more than 0; got -8', { ...one(96, [[24, 1]]), prices: [-8] }],
    ['price 2 is missing; its stock length is 120', { ...one(96, [[24, 1]]), stock: [96, 120], prices: [8, null] }],
    ['limit 1 must be a whole number of boards, 0 or more, or blank; got 0.5', { ...one(96, [[24, 1]]), limits: [0.5] }],
    ['piece 97 is longer than every board; the longest is 96', one(96, [[24, 1], [97, 1]])],
    ['pieces 98, 97 are longer than every board; the longest is 96', one(96, [[98, 1], [97, 1]])],
    ['piece 96 is longer than every board; the longest is 96 less 0.5 of trim at each end', { ...one(96, [[96, 1]]), trim: 0.5 }],
    ['trim 48 at each end leaves nothing of the longest board, 96', { ...one(96, [[24, 1]]), trim: 48 }],
    ['there must be at most 20000 pieces; got 20001', one(96, [[24, 20_001]])],
    ["the boards on hand (96) don't hold all the pieces", { ...one(96, [[50, 3]]), limits: [2] }],
  ])('%s', (sentence, order) => expect(refusalOf(planStock(order))).toBe(sentence)); // prettier-ignore
});

describe('the time a plan takes', () => {
  const hard: [string, StockOrder][] = [
    ['1,000 lengths', { lengths: Array.from({ length: 1_000 }, (_, at) => 20 + at / 16), quantities: new Array<number>(1_000).fill(20), stock: [192], kerf: 0.125 }],
    ['20,000 pieces of lengths with nothing in common', { lengths: Array.from({ length: 200 }, (_, at) => Math.round(9000 + Math.sqrt(at) * 5000) / 1000), quantities: new Array<number>(200).fill(100), stock: [144, 196.7, 251.3], prices: [7, 9.1, 11.3] }],
    ['tiny pieces in a huge board', { lengths: Array.from({ length: 60 }, (_, at) => Math.round(1000 + at / 0.997) / 1000), quantities: new Array<number>(60).fill(300), stock: [9_999] }],
    ['all worth the same', { lengths: Array.from({ length: 300 }, (_, at) => 1_000 + 2 * at), quantities: new Array<number>(300).fill(3), stock: [100_001] }],
  ]; // prettier-ignore

  it.each(hard)('ends soon after the deadline with a valid plan: %s', (_, order) => {
    // A search that ignored its deadline would take minutes, and fail by the test's own time limit.
    const plan = valueOf(planStock({ ...order, deadlineMs: 600 }));
    expectValid(order, plan);
    expect(plan.lowerBound).toBeGreaterThan(0);
  });

  it('says that no plan was found, not that there is none, where boards are short and no time is given', () => {
    const order = { lengths: [40, 30, 28], quantities: [2, 2, 2], stock: [98], limits: [2], deadlineMs: 0 };
    expect(refusalOf(planStock(order))).toBe(
      'no plan that the boards on hand (98) suffice for was found in the time given',
    );
    const { plan, proven } = valueOf(planStock({ ...order, deadlineMs: 2_000 }));
    expect({ plan, proven }).toEqual({ plan: [{ count: 2, stock: 98, cuts: [[40, 1], [30, 1], [28, 1]], offcut: 0 }], proven: true }); // prettier-ignore
  });

  it('ends at once when stopped, with the best plan so far, and reports progress', () => {
    let asked = 0;
    const seen: number[] = [];
    const order = pricedOrder(1, false);
    const plan = valueOf(
      planStock({
        ...order,
        deadlineMs: 60_000,
        stopped: () => ++asked > 3,
        onProgress: ({ cost }) => seen.push(cost),
      }),
    );
    expectValid(order, plan);
    expect(seen.at(-1)).toBe(plan.cost);
  });
});
