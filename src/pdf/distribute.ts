import type { Column } from './openColumns';
import { phraseOf, type Phrase, type Word } from './words';

/** A word may reach this far over the edge of its column, in ems, and is still within. */
const SLACK = 0.1;
/** Fewer edges in gaps between words are chance where others cut through words. */
const FEWEST_CLEAN = 2;

/** A phrase parted where the whole space between two columns lies between two of its words: columns set as close as words are. */
export function recut(phrase: Phrase, columns: readonly Column[]): Phrase[] {
  const edges = columns.slice(1).flatMap((after, index) => {
    const { right } = columns[index]!;
    return right > phrase.left && after.left < phrase.right ? [{ right, left: after.left }] : [];
  });
  if (edges.length === 0) return [phrase];
  const slack = SLACK * phrase.size;
  const cuts = edges.flatMap(({ left, right }) => {
    const at = phrase.words.findIndex(
      (word, index) => index > 0 && word.left >= left - slack && phrase.words[index - 1]!.right <= right + slack,
    );
    return at > 0 ? [at] : [];
  });
  const isRow = cuts.length === edges.length || (cuts.length >= FEWEST_CLEAN && cuts.length >= 0.5 * edges.length);
  if (!isRow) return [phrase];
  return [0, ...cuts].map((from, index) => phraseOf(phrase.words.slice(from, cuts[index])));
}

/** The columns that a heading stands over: those it overlaps, and a neighbor where it is centered over both. */
export function coveredBy(phrase: Phrase, columns: readonly Column[]): number[] {
  const touched = columns.flatMap(({ left, right }, column) =>
    left < phrase.right && right > phrase.left ? [column] : [],
  );
  const [only] = touched;
  if (only === undefined || touched.length > 1) return touched;
  const column = columns[only]!;
  const middle = (phrase.left + phrase.right) / 2;
  const offBy = (left: number, right: number) => Math.abs((left + right) / 2 - middle);
  const near = 0.6 * phrase.size;
  const aligned = Math.abs(column.left - phrase.left) < near / 2 || Math.abs(column.right - phrase.right) < near / 2;
  if (aligned || offBy(column.left, column.right) <= near) return touched;
  const before = columns[only - 1];
  const after = columns[only + 1];
  if (after && offBy(column.left, after.right) < 1.5 * near) return [only, only + 1];
  if (before && offBy(before.left, column.right) < 1.5 * near) return [only - 1, only];
  return touched;
}

/**
 * A phrase into its column. One over several columns is parted where the gap between two columns lies in a gap between two
 * words; where it doesn't, or where the phrase has the line to itself, as a title does, all of it stays with the first.
 */
export function distribute(
  phrase: Phrase,
  alone: boolean,
  columns: readonly Column[],
  cells: Word[][],
  flags: Map<Word, string>,
): void {
  const columnOf = (left: number, right: number) => {
    const overlaps = columns.map((column) => Math.min(column.right, right) - Math.max(column.left, left));
    return overlaps.indexOf(Math.max(...overlaps));
  };
  const edgeOf = (x: number) => columnOf(x - 0.05, x + 0.05);
  const start = edgeOf(phrase.left + 0.05);
  if (start === edgeOf(phrase.right - 0.05)) return void cells[start]!.push(...phrase.words);
  const runsOver = phrase.words.some(
    ({ left, right, size }) => edgeOf(left + 0.1 * size) !== edgeOf(right - 0.1 * size),
  );
  if (!runsOver && !alone) {
    for (const word of phrase.words) cells[columnOf(word.left, word.right)]!.push(word);
    return;
  }
  const [only, ...others] = columns.flatMap(({ left, right }, column) =>
    left < phrase.right && right > phrase.left ? [column] : [],
  );
  if (only !== undefined && others.length === 0) return void cells[only]!.push(...phrase.words);
  cells[start]!.push(...phrase.words);
  if (!alone || start > 0) flags.set(phrase.words[0]!, `a text runs over the edge of column ${start + 1}`);
}
