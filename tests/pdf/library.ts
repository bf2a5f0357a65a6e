import type { PdfLibrary } from '../../src/pdf/readPdf';

let loaded: Promise<PdfLibrary> | null = null;

/** The PDF library, in this thread. */
export function pdfLibrary(): Promise<PdfLibrary> {
  loaded ??= load();
  return loaded;
}

async function load(): Promise<PdfLibrary> {
  const stub = function stub() {};
  Object.assign(globalThis, { DOMMatrix: stub, Path2D: stub, ImageData: stub });
  // @ts-expect-error The library's worker has no types; imported, it serves this thread.
  await import('pdfjs-dist/legacy/build/pdf.worker.mjs');
  return (await import('pdfjs-dist/legacy/build/pdf.mjs')) as unknown as PdfLibrary;
}
