import { runStockJob, type StockJob, type StockNews } from '../../../src/stock/job';
import { ok, type Result } from '../../../src/result';
import { aloneAndWithout, type Alone, type AloneJob } from '../../../src/takeoff/alone';
import { renewPlan, type PlanInputs, type RenewedPlan } from '../../../src/workbook/renewPlan';
import type { ListRead } from '../state';
import { build, type BuildJob } from './job';
import { inParts, type FromWorker } from './parts';
import { readList, type ListJob } from './readList';

/**
 * Works beside the page, so that the page stays free to answer and to stop it: reads a list, builds a workbook, renews its
 * plan, or plans a cutting.
 */
export type ToWorker =
  | { readonly kind: 'read'; readonly list: ListJob }
  | { readonly kind: 'build'; readonly job: BuildJob }
  | { readonly kind: 'renew'; readonly inputs: PlanInputs }
  | { readonly kind: 'alone'; readonly job: AloneJob }
  | StockJob;

/** How far a long job is. */
export interface Step {
  readonly done: number;
  readonly of: number;
}

/** The one answer to what was asked. */
export interface Answered<T> {
  readonly result: Result<T>;
}

const worker = globalThis as unknown as {
  onmessage: (event: MessageEvent<ToWorker>) => void;
  postMessage: (message: FromWorker | StockNews | Answered<ListRead | RenewedPlan | Alone> | Step) => void;
};

worker.onmessage = ({ data }) => {
  if (data.kind === 'plan') return runStockJob(data, (news) => worker.postMessage(news));
  if (data.kind === 'read') return worker.postMessage({ result: readList(data.list) });
  if (data.kind === 'renew') {
    const result = renewPlan(data.inputs, (done, of) => worker.postMessage({ done, of }));
    return worker.postMessage({ result });
  }
  if (data.kind === 'alone') return worker.postMessage({ result: ok(aloneAndWithout(data.job)) });
  try {
    const built = build(data.job, (step) => worker.postMessage({ kind: 'doing', step }));
    for (const part of inParts(built)) worker.postMessage(part);
  } catch (error) {
    worker.postMessage({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
};
