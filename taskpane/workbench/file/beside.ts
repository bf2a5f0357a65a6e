import { refuse, type Result } from '../../../src/result';
import type { ReadBook } from '../../../src/workbook/readBook';
import type { GridBook } from '../readGrid';
import type { FromFileWorker, ToFileWorker } from './worker';

/** The bytes of an .xlsx file of the workbook. */
export function fileOf(book: GridBook): Promise<Result<Uint8Array>> {
  return beside<Uint8Array>({ kind: 'write', book });
}

/** The workbook in the bytes of an .xlsx file. */
export function bookOf(bytes: Uint8Array): Promise<Result<ReadBook>> {
  return beside<ReadBook>({ kind: 'read', bytes });
}

function beside<Answer>(job: ToFileWorker): Promise<Result<Answer>> {
  return new Promise((resolve) => {
    const worker = new Worker(/* webpackChunkName: "files" */ new URL('./worker.ts', import.meta.url));
    const settle = (result: Result<unknown>) => {
      worker.terminate();
      resolve(result as Result<Answer>);
    };
    worker.onmessage = ({ data }: MessageEvent<FromFileWorker>) => settle(data.result);
    worker.onerror = (event) => settle(refuse(`The work beside the page failed: ${event.message}`));
    worker.postMessage(job);
  });
}
