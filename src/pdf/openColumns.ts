import type { Phrase, Word } from './words';

/** One line of an open table. */
export interface Line {
  readonly y: number;
  readonly size: number;
  readonly phrases: readonly Phrase[];
}

export interface Column {
  left: number;
  right: number;
}

/** Columns: where the lines with several phrases leave no gap open. */
export function columnsOf(head: readonly Line[], body: readonly Line[], size: number): Column[] {
  const most = Math.max(...body.map(({ phrases }) => phrases.length));
  const strong = body.filter(({ phrases }) => phrases.length >= Math.max(2, 0.5 * most));
  const columns: Column[] = [];
  const add = ({ left, right }: Column) => {
    const touching = columns.filter((column) => column.left < right + 0.1 * size && column.right > left - 0.1 * size);
    for (const other of touching) columns.splice(columns.indexOf(other), 1);
    columns.push({
      left: Math.min(left, ...touching.map((column) => column.left)),
      right: Math.max(right, ...touching.map((column) => column.right)),
    });
  };
  strong.forEach(({ phrases }) => phrases.forEach(add));
  const weak = body.filter((line) => !strong.includes(line));
  const under = (phrase: Column) =>
    columns.filter((column) => column.left < phrase.right && column.right > phrase.left);
  for (const line of [...head].reverse()) for (const phrase of line.phrases) if (under(phrase).length <= 1) add(phrase);
  // A column that only wrapped lines reach is still one.
  for (const line of weak) for (const phrase of line.phrases) if (under(phrase).length === 0) add(phrase);
  return columns.sort((one, other) => one.left - other.left);
}

/** The columns of the page before, as wide as they are here: a longer text may reach further than any did there. */
export function columnsLike(edges: readonly number[], body: readonly Line[], size: number): Column[] {
  const own = columnsOf([], body, size);
  const middles = edges.slice(0, -1).map((left, index) => (left + edges[index + 1]!) / 2);
  const before = edges.slice(0, -1).map((left, index) => ({ left, right: edges[index + 1]! }));
  const used = new Set<number>();
  const columns = before.map((column, index): Column => {
    const here = own.filter((each) => Math.min(each.right, column.right) - Math.max(each.left, column.left) > 0);
    const [only] = here.filter(
      (each) =>
        !middles.some(
          (middle, other) => other !== index && each.left < middle - 0.1 && each.right > middle && other > index,
        ),
    );
    const at = only === undefined ? -1 : own.indexOf(only);
    if (only === undefined || used.has(at)) return { left: column.left, right: column.left + 0.5 };
    used.add(at);
    return only;
  });
  return columns.every((column, index) => index === 0 || column.left >= columns[index - 1]!.right - 0.5)
    ? columns
    : before;
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
  cells[start]!.push(...phrase.words);
  if (!alone) flags.set(phrase.words[0]!, `a text runs over the edge of column ${start + 1}`);
}
