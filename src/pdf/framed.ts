import type { FoundTable, Frame, IsHeading } from './found';
import { tableWithin } from './givenColumns';
import type { PageMarks } from './marks';
import { pageText } from './pageText';
import { pagesOf, READING_OPTIONS, type PdfLibrary } from './readPdf';
import { turnedTexts, turnedWithin } from './turnedText';

/** Reads frames that the user has set; null where one holds no text. */
export type ReadFrame = (frame: Frame) => Promise<FoundTable | null>;

/** Opens a PDF to read frames of it: each of its pages is taken apart once. */
export async function frameReader(library: PdfLibrary, bytes: Uint8Array, isHeading: IsHeading): Promise<ReadFrame> {
  const document = await library.getDocument({ ...READING_OPTIONS, data: bytes }).promise;
  const marksOf = await pagesOf(document, library);
  const known = new Map<number, PageMarks>();
  return async (frame) => {
    const marks = known.get(frame.page) ?? (await marksOf(frame.page));
    known.set(frame.page, marks);
    return readFramed(marks, frame, isHeading);
  };
}

function readFramed(marks: PageMarks, { page, turn, box, edges }: Frame, isHeading: IsHeading): FoundTable | null {
  const text = pageText(marks);
  const { page: turned, rules, words } = text(turn);
  const inside = words.filter(({ left, right, y, size }) => {
    const [middleX, middleY] = [(left + right) / 2, y - 0.3 * size];
    return middleX > box.left && middleX < box.right && middleY > box.top && middleY < box.bottom;
  });
  if (inside.length === 0) return null;
  const table = tableWithin(inside, edges, rules, turned.bands, isHeading);
  return table && { ...table, box, edges, page, turn, unplaced: turnedWithin(turnedTexts(text, turn), box) };
}
