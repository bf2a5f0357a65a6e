import { readHeading } from '../schedule/headingText';

/** Fewer headings than this in a text are chance. */
const FEWEST_HEADINGS = 3;
/** A heading has no more words than this. */
const MOST_WORDS = 3;
const SEARCHED_LINES = 30;

export const FROM_A_VIEWER =
  'These rows were copied from a PDF viewer, which loses their columns: please choose the PDF itself under “In a file”.';

/**
 * Whether pasted text comes from a PDF viewer, its columns lost: headings with nothing but blanks between them, or one cell
 * on each line.
 */
export function hasLostColumns(text: string): boolean {
  const lines = text
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  if (lines.length < 2 || /\t/.test(text)) return false;
  const top = lines.slice(0, SEARCHED_LINES);
  const alone = top.map(
    (line) => !/[,;|]/.test(line) && line.split(/\s+/).length <= MOST_WORDS && readHeading(line) !== null,
  );
  const inARow = alone.some(
    (_, index) => index + FEWEST_HEADINGS <= alone.length && alone.slice(index, index + FEWEST_HEADINGS).every(Boolean),
  );
  return inARow || top.some((line) => !/[,;|]/.test(line) && headingsIn(line) >= FEWEST_HEADINGS);
}

/** How many different headings follow one another in a line, the longest first. */
function headingsIn(line: string): number {
  const words = line.split(/\s+/);
  const keys = new Set<string>();
  for (let at = 0; at < words.length;) {
    let length = Math.min(MOST_WORDS, words.length - at);
    let found = null;
    for (; length > 0 && found === null; length -= 1) found = readHeading(words.slice(at, at + length).join(' '));
    if (found === null) at += 1;
    else {
      keys.add(found.key);
      at += length + 1;
    }
  }
  return keys.size;
}
