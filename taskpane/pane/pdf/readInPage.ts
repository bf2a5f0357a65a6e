import type { ListKind } from '../../../src/pdf/found';
import { KINDS } from '../../../src/pdf/kinds';
import { readPdf, type OnPage, type PdfReading } from '../../../src/pdf/readPdf';
import { LONGEST_PAGE_MS, withoutSlowPages } from '../../../src/pdf/slowPages';
import { refuse, type Result } from '../../../src/result';
import { STOPPED } from '../../refusals';
import { openInWorker, pageLibrary, type InWorker } from './library';

/** Reads a PDF's tables beside the page. A page that takes too long is left out, and the rest is read without it. */
export async function readInPage(
  name: string,
  bytes: Uint8Array,
  kind: ListKind['name'],
  onPage: OnPage,
  signal: AbortSignal,
): Promise<Result<PdfReading>> {
  const library = await pageLibrary();
  return withoutSlowPages(async (skip) => {
    let open: InWorker | null = null;
    let [page, since] = [0, Date.now()];
    // Each reading has a worker of its own: ended, it takes nothing along.
    const own = { OPS: library.OPS, getDocument: (options: object) => (open = openInWorker(library, options)).task };
    const told: OnPage = (number, of) => {
      [page, since] = [number, Date.now()];
      onPage(number, of);
    };
    const done = readPdf(own, name, bytes.slice(), KINDS[kind], told, skip);
    const stopped = new Promise<'slow' | 'stopped'>((resolve) => {
      const watch = setInterval(() => {
        if (Date.now() - since > LONGEST_PAGE_MS) resolve('slow');
        else if (signal.aborted) resolve('stopped');
        else return;
        clearInterval(watch);
      }, 100);
      void done.finally(() => clearInterval(watch));
    });
    const first = await Promise.race([done, stopped]);
    (open as InWorker | null)?.end();
    if (first === 'stopped') return { result: refuse(STOPPED) };
    return first === 'slow' ? { slowPage: page } : { result: first };
  });
}
