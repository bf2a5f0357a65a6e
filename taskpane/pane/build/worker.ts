import { build, type BuildJob } from './job';
import { inParts, type FromWorker } from './parts';

/** Builds the workbook beside the page, so that the page stays free to answer and to stop it. */
const worker = globalThis as unknown as {
  onmessage: (event: MessageEvent<BuildJob>) => void;
  postMessage: (message: FromWorker) => void;
};

worker.onmessage = ({ data }) => {
  try {
    for (const part of inParts(build(data))) worker.postMessage(part);
  } catch (error) {
    worker.postMessage({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
};
