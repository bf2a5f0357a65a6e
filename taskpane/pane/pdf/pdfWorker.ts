import { frameReader, type ReadFrame } from '../../../src/pdf/framed';
import type { Frame, ListKind } from '../../../src/pdf/found';
import type { TableParts } from '../../../src/pdf/overPages';
import { pdfTable, type PdfTable } from '../../../src/pdf/pdfTable';
import { readPdf, type PdfLibrary, type PdfReading } from '../../../src/pdf/readPdf';
import { SCHEDULE } from '../../../src/pdf/scheduleKind';
import type { Result } from '../../../src/result';

/**
 * Takes PDFs apart beside the page: the library and the search for tables run in one thread of their own, which can be ended
 * at any moment, however busy it is.
 */
export type ToPdfWorker = { /** Folder that holds the PDF library's files. */ readonly library: string } & (
  | {
      readonly kind: 'tables';
      readonly name: string;
      readonly bytes: Uint8Array;
      readonly list: ListKind['name'];
      /** Pages not to be read. */
      readonly skip: ReadonlySet<number>;
    }
  | ({
      readonly kind: 'frame';
      /** They come with the first frame of a file. */
      readonly bytes: Uint8Array | null;
    } & MovedFrame)
);

/** A frame that the user has moved: of which part of the table of that file. */
export interface MovedFrame {
  readonly name: string;
  readonly parts: TableParts;
  readonly part: number;
  readonly frame: Frame;
}

export type FromPdfWorker =
  /** The library is loaded, the file is being read. */
  | { readonly kind: 'begun' }
  | { readonly kind: 'page'; readonly page: number; readonly of: number }
  | { readonly kind: 'read'; readonly result: Result<PdfReading> }
  | { readonly kind: 'framed'; readonly table: PdfTable | null }
  | { readonly kind: 'failed'; readonly message: string };

const page = globalThis as unknown as {
  onmessage: ((event: MessageEvent<ToPdfWorker>) => void) | null;
  postMessage: (news: FromPdfWorker) => void;
};

async function load(folder: string): Promise<PdfLibrary> {
  const at = (name: string) => new URL(name, folder).href;
  // Loaded first, its own worker serves this thread.
  await import(/* webpackIgnore: true */ at('pdf.worker.min.mjs'));
  return (await import(/* webpackIgnore: true */ at('pdf.min.mjs'))) as PdfLibrary;
}

let frames: Promise<ReadFrame> | null = null;

async function answer(ask: ToPdfWorker): Promise<FromPdfWorker> {
  const library = await load(ask.library);
  if (ask.kind === 'tables') {
    const tell = (number: number, of: number) => page.postMessage({ kind: 'page', page: number, of });
    // Most files are schedules: what a quote is known by is fetched where one is read.
    const kind = ask.list === 'quote' ? (await import('../../../src/pdf/quoteKind')).QUOTE : SCHEDULE;
    page.postMessage({ kind: 'begun' });
    return { kind: 'read', result: await readPdf(library, ask.name, ask.bytes, kind, tell, ask.skip) };
  }
  page.postMessage({ kind: 'begun' });
  if (ask.bytes !== null) frames = frameReader(library, ask.bytes, SCHEDULE.isHeading);
  const found = frames === null ? null : await (await frames)(ask.frame);
  if (found === null) return { kind: 'framed', table: null };
  const parts = ask.parts.map((each, index) => (index === ask.part ? { ...found, beside: each.beside } : each));
  return { kind: 'framed', table: pdfTable(ask.name, parts, SCHEDULE) };
}

page.onmessage = ({ data }) => {
  void answer(data)
    .catch((error: unknown): FromPdfWorker => ({ kind: 'failed', message: String(error) }))
    .then((news) => page.postMessage(news));
};
