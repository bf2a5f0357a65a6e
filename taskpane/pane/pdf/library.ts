import type { PdfLibrary, PdfTask } from '../../../src/pdf/readPdf';

/** The PDF library in a page, where it draws: it takes pages apart in a worker of its own, which can be ended at any moment. */
export interface PageLibrary extends PdfLibrary {
  readonly PDFWorker: new (options: { port: Worker; verbosity: number }) => { destroy(): void };
}

/** A file opened in a worker of its own. */
export interface InWorker {
  readonly task: PdfTask;
  /** Ends the worker, however busy it is. */
  readonly end: () => void;
}

let loaded: Promise<PageLibrary> | null = null;

/** Loads the library's files from beside the page, when the first PDF is chosen. */
export function pageLibrary(): Promise<PageLibrary> {
  loaded ??= import(/* webpackIgnore: true */ beside('pdf.min.mjs')) as Promise<PageLibrary>;
  return loaded;
}

export function openInWorker(library: PageLibrary, options: object): InWorker {
  const port = new Worker(beside('pdf.worker.min.mjs'), { type: 'module' });
  const worker = new library.PDFWorker({ port, verbosity: 0 });
  const task = library.getDocument({ ...options, worker });
  return {
    task,
    end: () => {
      void task.destroy().catch(() => undefined);
      port.terminate();
    },
  };
}

/** Where the library's files stand: beside the page. */
export function libraryFolder(): string {
  return new URL('.', document.baseURI).href;
}

function beside(name: string): string {
  return new URL(name, libraryFolder()).href;
}
