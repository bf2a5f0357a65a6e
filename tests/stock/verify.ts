import { expect } from 'vitest';
import type { StockOrder } from '../../src/stock/order';
import type { StockPlan } from '../../src/stock/plan';

/** All of an order's figures as whole numbers: times 64,000, which makes 64ths and thousandths whole. */
const whole = (value: number) => {
  const steps = Math.round(value * 64_000);
  if (Math.abs(steps / 64_000 - value) > 1e-9) throw new Error(`${value} is finer than the checks' grid`);
  return steps;
};

function demandOf(order: StockOrder): Map<number, number> {
  const demand = new Map<number, number>();
  order.lengths.forEach((length, at) => {
    if (length !== null) demand.set(length, (demand.get(length) ?? 0) + order.quantities[at]!);
  });
  return demand;
}

/** Fails unless every board holds its cuts and just the pieces wanted come out, of boards that can be had, at the cost stated. */
export function expectValid(order: StockOrder, plan: StockPlan): void {
  const made = new Map<number, number>();
  let cost = 0;
  const boards = new Map<number, number>();
  for (const { count, stock, cuts, offcut } of plan.plan) {
    let used = 2 * whole(order.trim ?? 0) - whole(order.kerf ?? 0);
    for (const [length, pieces] of cuts) {
      used += pieces * (whole(length) + whole(order.kerf ?? 0));
      made.set(length, (made.get(length) ?? 0) + pieces * count);
    }
    expect(used).toBeLessThanOrEqual(whole(stock));
    expect(whole(offcut)).toBe(Math.max(0, whole(stock) - used - whole(order.kerf ?? 0)));
    boards.set(stock, (boards.get(stock) ?? 0) + count);
    cost += count * (order.prices?.[order.stock.indexOf(stock)] ?? stock);
  }
  const wanted = new Map([...demandOf(order)].filter(([, count]) => count > 0));
  expect(new Map([...made].sort())).toEqual(new Map([...wanted].sort()));
  expect(plan.cost).toBeCloseTo(cost, 6);
  expect(plan.boards).toBe([...boards.values()].reduce((sum, count) => sum + count, 0));
  boards.forEach((count, stock) =>
    expect(count).toBeLessThanOrEqual(order.limits?.[order.stock.indexOf(stock)] ?? Infinity),
  );
  expect(plan.gap).toBeGreaterThanOrEqual(0);
  expect(plan.proven).toBe(plan.gap === 0);
}

/**
 * The bound that a certificate proves, found from the order alone: the greatest worth on each board by plain bounded knapsack
 * over whole lengths, then the least cost of whole boards that hold the worth of all pieces, by knapsack once more. Shares no
 * code with the planner.
 */
export function boundProved(order: StockOrder, plan: StockPlan): number {
  const { worths, boards } = plan.certificate;
  const demand = demandOf(order);
  const kerf = whole(order.kerf ?? 0);
  const step = [...worths.map(([length]) => whole(length) + kerf)].reduce(divisor);
  const most = boards.map(({ stock }) => {
    const room = Math.floor((whole(stock) - 2 * whole(order.trim ?? 0) + kerf) / step);
    const best = new Array<number>(room + 1).fill(0);
    for (const [length, worth] of worths) {
      const size = (whole(length) + kerf) / step;
      for (let copy = 0; copy < Math.min(demand.get(length)!, Math.floor(room / size)); copy++) {
        for (let c = room; c >= size; c--) best[c] = Math.max(best[c]!, best[c - size]! + worth);
      }
    }
    return best[room]!;
  });
  const total = worths.reduce((sum, [length, worth]) => sum + worth * demand.get(length)!, 0);
  const cents = boards.map(({ price }) => Math.round(price * 1e4)).reduce(divisor) / 1e4;
  const steps = boards.map(({ price }) => Math.round(price / cents));
  // The most worth that each cost can buy: upward, boards of a kind follow one another; downward, one more at a time.
  const top = Math.round((plan.measure === 'boards' ? plan.boards : plan.cost) / cents);
  const worthFor = new Float64Array(top + 1);
  const buy = (cost: number, at: number) => {
    worthFor[cost] = Math.max(worthFor[cost]!, worthFor[cost - steps[at]!]! + most[at]!);
  };
  boards.forEach(({ limit }, at) => {
    if (limit === null) for (let cost = steps[at]!; cost <= top; cost++) buy(cost, at);
    for (let copy = 0; copy < (limit ?? 0); copy++) for (let cost = top; cost >= steps[at]!; cost--) buy(cost, at);
  });
  return worthFor.findIndex((worth) => worth >= total) * cents;
}

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b);
}
