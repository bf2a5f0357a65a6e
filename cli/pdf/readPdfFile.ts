import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { ListKind } from '../../src/pdf/found';
import { DAMAGED, type OnPage, type PdfReading } from '../../src/pdf/readPdf';
import { LONGEST_PAGE_MS, withoutSlowPages, type ReadOnce } from '../../src/pdf/slowPages';
import { refuse, type Result } from '../../src/result';
import type { PdfJob, PdfNews } from './worker';

/** A file that needs more is stopped: schedules need a tenth of it. A thread's own limits don't hold what lies outside its heap. */
const MOST_MEMORY_BYTES = 470e6;
const WATCHED_EVERY_MS = 20;

const TOO_MUCH =
  'It needs more memory than a schedule does: please ask for the spreadsheet, or for a PDF saved from it.';

/** Reads a PDF's tables in a thread of its own. A page that takes too long is left out, and the rest is read without it. */
export function readPdfFile(
  file: string,
  bytes: Uint8Array,
  kind: ListKind['name'],
  onPage: OnPage,
): Promise<Result<PdfReading>> {
  return withoutSlowPages((skip) => readOnce({ library: __dirname, file, bytes, kind, skip: [...skip] }, onPage));
}

function readOnce(job: PdfJob, onPage: OnPage): Promise<ReadOnce> {
  return new Promise((resolve) => {
    let page = 0;
    // Loading the library is no page's time.
    let since: number | null = null;
    // What the library says of a file it mends is nothing for the user.
    const worker = new Worker(join(__dirname, 'read-pdf.cjs'), { workerData: job, stdout: true, stderr: true });
    const settle = (read: ReadOnce) => {
      clearInterval(watch);
      void worker.terminate();
      resolve(read);
    };
    const watch = setInterval(() => {
      if (process.memoryUsage.rss() > MOST_MEMORY_BYTES) settle({ result: refuse(TOO_MUCH) });
      else if (since !== null && Date.now() - since > LONGEST_PAGE_MS) settle({ slowPage: page });
    }, WATCHED_EVERY_MS);
    worker.on('message', (news: PdfNews) => {
      if (news.kind === 'done') return settle({ result: news.result });
      since = Date.now();
      if (news.kind === 'begun') return;
      page = news.page;
      onPage(page, news.of);
    });
    worker.on('error', () => settle({ result: refuse(DAMAGED) }));
    worker.on('exit', () => settle({ result: refuse(DAMAGED) }));
  });
}
