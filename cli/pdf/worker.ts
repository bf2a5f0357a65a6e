import { pathToFileURL } from 'node:url';
import { parentPort, workerData } from 'node:worker_threads';
import type { ListKind } from '../../src/pdf/found';
import { QUOTE } from '../../src/pdf/quoteKind';
import { readPdf, type PdfLibrary, type PdfReading } from '../../src/pdf/readPdf';
import { SCHEDULE } from '../../src/pdf/scheduleKind';
import type { Result } from '../../src/result';

/** Reads one PDF in a thread of its own, which can be ended at any moment. */
export interface PdfJob {
  /** Folder that holds the PDF library's files. */
  readonly library: string;
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly kind: ListKind['name'];
  /** Pages not to be read. */
  readonly skip: readonly number[];
}

export type PdfNews =
  /** The library is loaded, the file is being read. */
  | { readonly kind: 'begun' }
  | { readonly kind: 'page'; readonly page: number; readonly of: number }
  | { readonly kind: 'done'; readonly result: Result<PdfReading> };

/** The PDF library; what of a page it asks for on loading is stood in for, since nothing is drawn here. */
async function load(folder: string): Promise<PdfLibrary> {
  const stub = function stub() {};
  Object.assign(globalThis, { DOMMatrix: stub, Path2D: stub, ImageData: stub });
  const at = (name: string) => pathToFileURL(`${folder}/${name}`).href;
  // Loaded first, its own worker serves this thread.
  await import(/* webpackIgnore: true */ at('pdf.worker.min.mjs'));
  return (await import(/* webpackIgnore: true */ at('pdf.min.mjs'))) as PdfLibrary;
}

async function run({ library, file, bytes, kind, skip }: PdfJob): Promise<Result<PdfReading>> {
  const tell = (page: number, of: number) => parentPort?.postMessage({ kind: 'page', page, of } satisfies PdfNews);
  const loaded = await load(library);
  parentPort?.postMessage({ kind: 'begun' } satisfies PdfNews);
  return readPdf(loaded, file, bytes, kind === 'quote' ? QUOTE : SCHEDULE, tell, new Set(skip));
}

void run(workerData as PdfJob).then((result) => parentPort?.postMessage({ kind: 'done', result } satisfies PdfNews));
