import { ok, refuse, type Result } from '../../../src/result';
import type { Built, BuildJob } from './job';
import { assembler, type FromWorker } from './parts';

/** Has a worker build the workbook. A stop ends the worker: nothing was written yet. */
export function buildInWorker(start: () => Worker, job: BuildJob, signal: AbortSignal): Promise<Result<Built>> {
  return new Promise((resolve) => {
    const worker = start();
    const assemble = assembler();
    const settle = (result: Result<Built>) => {
      worker.terminate();
      signal.removeEventListener('abort', stop);
      resolve(result);
    };
    const stop = () => settle(refuse('Stopped. The workbook is as it was.'));
    signal.addEventListener('abort', stop);
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
      if (data.kind === 'failed') return settle(refuse(`The workbook could not be worked out: ${data.message}`));
      const built = assemble(data);
      if (built) settle(ok(built));
    };
    worker.onerror = (event) => settle(refuse(`The workbook could not be worked out: ${event.message}`));
    worker.postMessage(job);
  });
}
