import type { Box } from './drawn';
import type { FoundTable, IsHeading } from './found';
import { withFractions } from './fractions';
import { tableWithin } from './givenColumns';
import { upright, type PageMarks } from './marks';

import { merged } from './rules';
import { once, wordsOf } from './words';

/** A frame and column lines that the user has set, in points on the page turned so that the table stands upright. */
export interface Frame {
  readonly page: number;
  readonly turn: number;
  readonly box: Box;
  /** Left edge of each column, and the right edge of the last. */
  readonly edges: readonly number[];
}

/** The table in a frame that the user has set; null where it holds no text. */
export function readFramed(
  marks: PageMarks,
  { page, turn, box, edges }: Frame,
  isHeading: IsHeading,
): FoundTable | null {
  const turned = upright(marks, turn);
  const rules = merged(turned.rules);
  const words = wordsOf(withFractions(once(turned.letters), rules), rules);
  const inside = words.filter(({ left, right, y, size }) => {
    const [middleX, middleY] = [(left + right) / 2, y - 0.3 * size];
    return middleX > box.left && middleX < box.right && middleY > box.top && middleY < box.bottom;
  });
  if (inside.length === 0) return null;
  const table = tableWithin(inside, edges, rules, turned.bands, isHeading);
  return table && { ...table, box, edges, page, turn };
}
