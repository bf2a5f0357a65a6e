import { PDFDocument, StandardFonts } from 'pdf-lib';
import type { PDFFont, PDFPage } from 'pdf-lib';

/** A page to draw on, y from the top. */
export interface Sheet {
  readonly page: PDFPage;
  readonly font: PDFFont;
  say(text: string, x: number, y: number, size?: number): void;
  line(x0: number, y0: number, x1: number, y1: number): void;
  /** Rows of cells with a rule round each; gives the bottom. */
  table(rows: readonly (readonly string[])[], x: number, y: number, widths: readonly number[]): number;
}

/** A PDF of pages drawn by hand. */
export async function drawn(...pages: readonly ((sheet: Sheet) => void)[]): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  const font = await document.embedFont(StandardFonts.Helvetica);
  for (const draw of pages) {
    const page = document.addPage([792, 612]);
    const say = (text: string, x: number, y: number, size = 9) => page.drawText(text, { x, y: 612 - y, size, font });
    const line = (x0: number, y0: number, x1: number, y1: number) =>
      page.drawLine({ start: { x: x0, y: 612 - y0 }, end: { x: x1, y: 612 - y1 }, thickness: 0.6 });
    const table: Sheet['table'] = (rows, x, y, widths) => {
      const right = widths.reduce((sum, width) => sum + width, x);
      rows.forEach((row, index) => {
        let left = x;
        const top = y + index * 16;
        line(x, top, right, top);
        row.forEach((cell, column) => {
          line(left, top, left, top + 16);
          if (cell !== '') say(cell, left + 3, top + 11.5);
          left += widths[column]!;
        });
        line(right, top, right, top + 16);
      });
      const bottom = y + rows.length * 16;
      line(x, bottom, right, bottom);
      return bottom;
    };
    draw({ page, font, say, line, table });
  }
  return document.save({ useObjectStreams: false });
}

export const SCHEDULE_ROWS = [
  ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
  ['A1', '2', 'Segmental', '36 1/2', '8'],
  ['A2', '1', 'Half round', '42', ''],
  ['A3', '4', 'Elliptical', '60', '14 1/4'],
];
export const SCHEDULE_WIDTHS = [50, 40, 90, 60, 60];
