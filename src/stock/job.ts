import { refuse, type Result } from '../result';
import type { StockOrder } from './order';
import { planStock, type PlanProgress, type StockPlan } from './plan';

/**
 * Messages between a page and the worker that plans for it: plain data both ways. The page posts a `StockJob`; the worker
 * answers with `progress` now and then and with one `done`. A worker that is busy can't hear a message, so the page stops it by
 * writing 1 into `stop`, memory they share, or, where the browser has none, by ending the worker and keeping the last
 * progress' plan.
 */
export interface StockJob {
  readonly kind: 'plan';
  readonly id: number;
  readonly order: StockOrder;
  readonly deadlineMs: number;
  /** Element 0 not 0: stop with the best plan so far. Over a SharedArrayBuffer. */
  readonly stop?: Int32Array | undefined;
}

export type StockNews =
  | { readonly kind: 'progress'; readonly id: number; readonly progress: PlanProgress }
  | { readonly kind: 'done'; readonly id: number; readonly result: Result<StockPlan> };

/** The worker's whole work: `onmessage = (event) => runStockJob(event.data, postMessage)`. */
export function runStockJob(job: StockJob, post: (news: StockNews) => void): void {
  const { id, order, deadlineMs, stop } = job;
  try {
    const result = planStock({
      ...order,
      deadlineMs,
      onProgress: (progress) => post({ kind: 'progress', id, progress }),
      stopped: () => stop !== undefined && Atomics.load(stop, 0) !== 0,
    });
    post({ kind: 'done', id, result });
  } catch (fault) {
    post({
      kind: 'done',
      id,
      result: refuse(`the plan could not be made: ${fault instanceof Error ? fault.message : String(fault)}`),
    });
  }
}
