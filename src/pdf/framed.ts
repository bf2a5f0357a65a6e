import type { FoundTable, Frame, IsHeading } from './found';
import { tableWithin } from './givenColumns';
import type { PageMarks } from './marks';
import { pageText } from './pageText';
import { turnedTexts, turnedWithin } from './turnedText';

/** The table in a frame that the user has set; null where it holds no text. */
export function readFramed(
  marks: PageMarks,
  { page, turn, box, edges }: Frame,
  isHeading: IsHeading,
): FoundTable | null {
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
