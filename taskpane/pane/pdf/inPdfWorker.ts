import type { ListKind } from '../../../src/pdf/found';
import type { PdfTable } from '../../../src/pdf/pdfTable';
import { DAMAGED, TOO_SLOW, type OnPage, type PdfReading } from '../../../src/pdf/readPdf';
import { LONGEST_PAGE_MS, withoutSlowPages } from '../../../src/pdf/slowPages';
import { ok, refuse, type Result } from '../../../src/result';
import { STOPPED } from '../../refusals';
import { libraryFolder } from './library';
import type { FromPdfWorker, MovedFrame, ToPdfWorker } from './pdfWorker';

const NOT_LOADED = 'The part that reads PDFs could not be loaded: check the connection, then choose the file again.';

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
    if (news.kind === 'slow') return { slowPage: page };
    if (news.kind === 'stopped') return { result: refuse(STOPPED) };
    return { result: news.kind === 'read' ? news.result : refuse(whyFailed(news)) };
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
      if (news.kind !== 'framed') {
        close();
        return refuse(news.kind === 'slow' ? TOO_SLOW : whyFailed(news));
      }
      return news.table === null ? refuse('No rows stand in this frame: make it larger.') : ok(news.table);
    },
    close,
  };
}

function startWorker(): Worker {
  return new Worker(/* webpackChunkName: "pdf" */ new URL('./pdfWorker.ts', import.meta.url), { type: 'module' });
}

function whyFailed({ kind }: Answer): string {
  return kind === 'unloaded' ? NOT_LOADED : DAMAGED;
}

/** What a worker came to: 'slow' where, once it had begun, no sign came for as long as a page may take. */
type Answer = FromPdfWorker | { readonly kind: 'slow' | 'stopped' | 'unloaded' };

/** What a worker answers. The worker is left as it is. */
function asked(
  worker: Worker,
  ask: ToPdfWorker,
  onPage: OnPage = () => undefined,
  signal?: AbortSignal,
): Promise<Answer> {
  return new Promise((resolve) => {
    // Loading the library is no page's time.
    let since: number | null = null;
    const settle = (news: Answer) => {
      clearInterval(watch);
      resolve(news);
    };
    const watch = setInterval(() => {
      if (since !== null && Date.now() - since > LONGEST_PAGE_MS) settle({ kind: 'slow' });
      else if (signal?.aborted) settle({ kind: 'stopped' });
    }, 100);
    // The library, once it is loaded there, says a word of its own.
    worker.onmessage = ({ data }: MessageEvent<FromPdfWorker | { kind?: undefined }>) => {
      if (data.kind === undefined) return;
      if (data.kind === 'failed' && since === null) return settle({ kind: 'unloaded' });
      if (data.kind !== 'page' && data.kind !== 'begun') return settle(data);
      since = Date.now();
      if (data.kind === 'page') onPage(data.page, data.of);
    };
    worker.onerror = ({ message }) => settle(since === null ? { kind: 'unloaded' } : { kind: 'failed', message });
    worker.postMessage(ask);
  });
}
