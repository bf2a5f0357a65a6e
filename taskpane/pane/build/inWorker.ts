import { ok, refuse, type Result } from '../../../src/result';
import type { StockNews } from '../../../src/stock/job';
import type { StockOrder } from '../../../src/stock/order';
import type { PlanProgress, StockPlan } from '../../../src/stock/plan';
import type { Alone, AloneJob } from '../../../src/takeoff/alone';
import type { OnStep } from '../../../src/takeoff/segmentSavings';
import type { PlanInputs, RenewedPlan } from '../../../src/workbook/renewPlan';
import { STOPPED } from '../../refusals';
import type { ListRead } from '../state';
import type { BuildStep, Built, BuildJob } from './job';
import { assembler, type FromWorker } from './parts';
import type { ListJob } from './readList';
import type { Answered, Step, ToWorker } from './worker';

/** Has a worker build the workbook. A stop ends the worker: nothing was written yet. */
export function buildInWorker(
  start: () => Worker,
  job: BuildJob,
  signal: AbortSignal,
  onStep?: (step: BuildStep) => void,
): Promise<Result<Built>> {
  const assemble = assembler();
  return inWorker<FromWorker, Built>(start, { kind: 'build', job }, signal, (part) => {
    if (part.kind === 'failed') return refuse(`The workbook could not be worked out: ${part.message}`);
    if (part.kind === 'doing') onStep?.(part.step);
    const built = assemble(part);
    return built ? ok(built) : null;
  });
}

/** Has a worker read a list. */
export function readInWorker(start: () => Worker, list: ListJob): Promise<Result<ListRead>> {
  const { signal } = new AbortController();
  return inWorker<Answered<ListRead>, ListRead>(start, { kind: 'read', list }, signal, ({ result }) => result);
}

/** Has a worker plan a workbook's boards and set-ups again. */
export function renewInWorker(
  start: () => Worker,
  inputs: PlanInputs,
  signal: AbortSignal,
  onStep?: OnStep,
): Promise<Result<RenewedPlan>> {
  return inWorker<Answered<RenewedPlan> | Step, RenewedPlan>(start, { kind: 'renew', inputs }, signal, (news) => {
    if ('result' in news) return news.result;
    onStep?.(news.done, news.of);
    return null;
  });
}

/** Has a worker work out what one opening means to its job. */
export function aloneInWorker(start: () => Worker, job: AloneJob, signal: AbortSignal): Promise<Result<Alone>> {
  return inWorker<Answered<Alone>, Alone>(start, { kind: 'alone', job }, signal, ({ result }) => result);
}

/** Has a worker plan a cutting, telling about each better plan or bound. */
export function planInWorker(
  start: () => Worker,
  order: StockOrder,
  deadlineMs: number,
  onProgress: (progress: PlanProgress) => void,
  signal: AbortSignal,
): Promise<Result<StockPlan>> {
  return inWorker<StockNews, StockPlan>(start, { kind: 'plan', id: 0, order, deadlineMs }, signal, (news) => {
    if (news.kind === 'done') return news.result;
    onProgress(news.progress);
    return null;
  });
}

/** One job in a worker of its own, until `hear` gives its result or it is stopped. */
function inWorker<News, Answer>(
  start: () => Worker,
  job: ToWorker,
  signal: AbortSignal,
  hear: (news: News) => Result<Answer> | null,
): Promise<Result<Answer>> {
  // What was stopped before tells nobody so: no worker is begun for it.
  if (signal.aborted) return Promise.resolve(refuse(STOPPED));
  return new Promise((resolve) => {
    const worker = start();
    const settle = (result: Result<Answer>) => {
      worker.terminate();
      signal.removeEventListener('abort', stop);
      resolve(result);
    };
    const stop = () => settle(refuse(STOPPED));
    signal.addEventListener('abort', stop);
    worker.onmessage = ({ data }: MessageEvent<News>) => {
      const result = hear(data);
      if (result) settle(result);
    };
    worker.onerror = (event) => settle(refuse(`The work beside the page failed: ${event.message}`));
    worker.postMessage(job);
  });
}
