import type { PdfDocument, PdfPage } from '../../../src/pdf/readPdf';
import { openInWorker, pageLibrary, type InWorker } from './library';

/** What the library can also do with a page: draw it. */
interface DrawnPage extends PdfPage {
  getViewport(options: { scale: number; rotation?: number }): { width: number; height: number; transform: number[] };
  render(options: object): { promise: Promise<void>; cancel(): void };
  readonly rotate: number;
}

/** Draws a PDF's pages. */
export interface Pictures {
  /** The page, turned so that its table stands upright, at `scale` pixels a point. */
  draw(page: number, turn: number, scale: number): Promise<HTMLCanvasElement>;
  close(): void;
}

/** Pictures with more pixels are drawn smaller. */
const MOST_PIXELS = 12e6;

export async function openPictures(bytes: Uint8Array): Promise<Pictures> {
  const library = await pageLibrary();
  const open: InWorker = openInWorker(library, {
    data: bytes.slice(),
    isEvalSupported: false,
    useWasm: false,
    maxImageSize: 16e6,
    verbosity: 0,
  });
  const opened: PdfDocument = await open.task.promise;
  return {
    async draw(number, turn, scale) {
      const page = (await opened.getPage(number)) as DrawnPage;
      const rotation = (page.rotate + 360 - turn * 90) % 360;
      const whole = page.getViewport({ scale: 1, rotation });
      const most = Math.sqrt(MOST_PIXELS / (whole.width * whole.height));
      const viewport = page.getViewport({ scale: Math.min(scale, most), rotation });
      const canvas = document.createElement('canvas');
      canvas.width = Math.ceil(viewport.width);
      canvas.height = Math.ceil(viewport.height);
      await page.render({ canvas, canvasContext: canvas.getContext('2d'), viewport, annotationMode: 0 }).promise;
      return canvas;
    },
    close: open.end,
  };
}
