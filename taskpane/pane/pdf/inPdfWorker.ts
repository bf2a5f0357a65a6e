import type { ListKind } from '../../../src/pdf/found';
import type { PdfTable } from '../../../src/pdf/pdfTable';
import { TOO_SLOW, type OnPage, type PdfReading } from '../../../src/pdf/readPdf';
import { LONGEST_PAGE_MS, withoutSlowPages } from '../../../src/pdf/slowPages';
import { ok, refuse, type Result } from '../../../src/result';
import { STOPPED } from '../../refusals';
import { libraryFolder } from './library';
import type { FromPdfWorker, MovedFrame, ToPdfWorker } from './pdfWorker';

const DAMAGED = 'The PDF is damaged: please ask for it again.';

/** Reads a PDF's tables beside the page. A page that takes too long is left out, and the rest is read without it. */
export async function readInWorker(
  name: string,
  bytes: Uint8Array,
  list: ListKind['name'],
  onPage: OnPage,
  signal: AbortSignal,
): Promise<Result<PdfReading>> {
  return withoutSlowPages(async (skip) => {
    // Each reading has a worker of its own: ended, it takes nothing along.
    const worker = startWorker();
    let page = 0;
    const told: OnPage = (number, of) => {
      page = number;
      onPage(number, of);
    };
    const news = await asked(
      worker,
      { kind: 'tables', library: libraryFolder(), name, bytes, list, skip },
      told,
      signal,
    );
    worker.terminate();
    if (news === 'slow') return { slowPage: page };
    if (news === 'stopped') return { result: refuse(STOPPED) };
    return { result: news.kind === 'read' ? news.result : refuse(DAMAGED) };
  });
}

/** Reads frames that the user has set in a PDF, beside the page. */
export interface Frames {
  /** The table with that part read anew. */
  read(moved: MovedFrame): Promise<Result<PdfTable>>;
  close(): void;
}

export function framesOf(bytes: Uint8Array): Frames {
  let worker: Worker | null = null;
  const close = () => {
    worker?.terminate();
    worker = null;
  };
  return {
    async read(moved) {
      const first = worker === null;
      worker ??= startWorker();
      const ask = { kind: 'frame', library: libraryFolder(), bytes: first ? bytes : null, ...moved } as const;
      const news = await asked(worker, ask);
      if (news === 'slow' || news === 'stopped' || news.kind !== 'framed') {
        close();
        return refuse(news === 'slow' ? TOO_SLOW : DAMAGED);
      }
      return news.table === null ? refuse('No rows stand in this frame: make it larger.') : ok(news.table);
    },
    close,
  };
}

function startWorker(): Worker {
  return new Worker(/* webpackChunkName: "pdf" */ new URL('./pdfWorker.ts', import.meta.url), { type: 'module' });
}

/** What a worker answers; 'slow' where no sign came for as long as a page may take. The worker is left as it is. */
function asked(
  worker: Worker,
  ask: ToPdfWorker,
  onPage: OnPage = () => undefined,
  signal?: AbortSignal,
): Promise<FromPdfWorker | 'slow' | 'stopped'> {
  return new Promise((resolve) => {
    let since = Date.now();
    const settle = (news: FromPdfWorker | 'slow' | 'stopped') => {
      clearInterval(watch);
      resolve(news);
    };
    const watch = setInterval(() => {
      if (Date.now() - since > LONGEST_PAGE_MS) settle('slow');
      else if (signal?.aborted) settle('stopped');
    }, 100);
    // The library, once it is loaded there, says a word of its own.
    worker.onmessage = ({ data }: MessageEvent<FromPdfWorker | { kind?: undefined }>) => {
      if (data.kind === undefined) return;
      if (data.kind !== 'page') return settle(data);
      since = Date.now();
      onPage(data.page, data.of);
    };
    worker.onerror = (event) => settle({ kind: 'failed', message: event.message });
    worker.postMessage(ask);
  });
}
