import { describe, expect, it } from 'vitest';
import { runStockJob, type StockNews } from '../../src/stock/job';
import { pricedOrder } from './instances';
import { expectValid } from './verify';

describe('a plan made in a worker', () => {
  it('is posted once, after its progress, as plain data', () => {
    const news: StockNews[] = [];
    runStockJob(
      { kind: 'plan', id: 7, order: { lengths: [24], quantities: [9], stock: [96] }, deadlineMs: 1_000 },
      (each) => news.push(structuredClone(each)),
    );
    expect(news.at(-1)).toMatchObject({
      kind: 'done',
      id: 7,
      result: { ok: true, value: { boards: 3, proven: true } },
    });
    expect(news.filter((each) => each.kind === 'done')).toHaveLength(1);
    expect(news[0]).toMatchObject({
      kind: 'progress',
      id: 7,
      progress: { boards: 3, plan: { plan: [{ count: 2, stock: 96, cuts: [[24, 4]] }, {}] } },
    });
  });

  it('ends with the best plan so far once the shared flag is set', () => {
    const stop = new Int32Array(new SharedArrayBuffer(4));
    const news: StockNews[] = [];
    const order = pricedOrder(1, false);
    // One that went on to its deadline of a minute would fail by the test's own time limit.
    runStockJob({ kind: 'plan', id: 1, order, deadlineMs: 60_000, stop }, (each) => {
      news.push(each);
      Atomics.store(stop, 0, 1);
    });
    const last = news.at(-1)!;
    if (last.kind !== 'done' || !last.result.ok) expect.fail('no plan was posted');
    expectValid(order, last.result.value);
  });

  it('posts the sentence of an order that is refused', () => {
    const news: StockNews[] = [];
    runStockJob(
      { kind: 'plan', id: 2, order: { lengths: [100], quantities: [1], stock: [96] }, deadlineMs: 100 },
      (each) => news.push(each),
    );
    expect(news).toEqual([
      {
        kind: 'done',
        id: 2,
        result: { ok: false, message: 'piece 100 is longer than every board; the longest is 96' },
      },
    ]);
  });
});
