import { runStockJob, type StockJob, type StockNews } from '../../../src/stock/job';
import { build, type BuildJob } from './job';
import { inParts, type FromWorker } from './parts';

/** Works beside the page, so that the page stays free to answer and to stop it: builds a workbook, or plans a cutting. */
export type ToWorker = { readonly kind: 'build'; readonly job: BuildJob } | StockJob;

const worker = globalThis as unknown as {
  onmessage: (event: MessageEvent<ToWorker>) => void;
  postMessage: (message: FromWorker | StockNews) => void;
};

worker.onmessage = ({ data }) => {
  if (data.kind === 'plan') return runStockJob(data, (news) => worker.postMessage(news));
  try {
    for (const part of inParts(build(data.job))) worker.postMessage(part);
  } catch (error) {
    worker.postMessage({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
};
