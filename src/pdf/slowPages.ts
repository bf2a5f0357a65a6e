import { refuse, type Result } from '../result';
import { TOO_SLOW, type PdfReading } from './readPdf';

/** A page that takes longer is stopped. */
export const LONGEST_PAGE_MS = 8_000;
/** A file with more slow pages is given up. */
const MOST_SLOW_PAGES = 2;

/** What one reading came to: its result, or the page (from 1; 0: none yet) at which it was stopped for being slow. */
export type ReadOnce = { readonly result: Result<PdfReading> } | { readonly slowPage: number };

/** Reads a PDF again without the pages that took too long, until the rest is read. */
export async function withoutSlowPages(
  readOnce: (skip: ReadonlySet<number>) => Promise<ReadOnce>,
): Promise<Result<PdfReading>> {
  const skip = new Set<number>();
  for (;;) {
    const read = await readOnce(skip);
    if ('result' in read) return read.result;
    if (read.slowPage === 0 || skip.size >= MOST_SLOW_PAGES) return refuse(TOO_SLOW);
    skip.add(read.slowPage);
  }
}
