import type { Result } from '../../../src/result';
import { readBook, type ReadBook } from '../../../src/workbook/readBook';
import { writeXlsx } from '../../../src/workbook/xlsx';
import type { GridBook } from '../readGrid';

/** Reads and writes workbook files beside the page, so that the page stays free to answer. */
export type ToFileWorker =
  { readonly kind: 'write'; readonly book: GridBook } | { readonly kind: 'read'; readonly bytes: Uint8Array };
export type FromFileWorker =
  | { readonly kind: 'written'; readonly result: Result<Uint8Array> }
  | { readonly kind: 'read'; readonly result: Result<ReadBook> };

const worker = globalThis as unknown as {
  onmessage: (event: MessageEvent<ToFileWorker>) => void;
  postMessage: (message: FromFileWorker) => void;
};

worker.onmessage = ({ data }) => {
  if (data.kind === 'write') {
    worker.postMessage({ kind: 'written', result: writeXlsx(data.book.sheets, data.book.settings) });
  } else worker.postMessage({ kind: 'read', result: readBook(data.bytes) });
};
