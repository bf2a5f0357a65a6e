import { median } from '../median';
import { clusters } from './rules';
import { wordLines, type Word } from './words';
import { pushTo } from '../pushTo';

/** One row of words by column, and what is in doubt about it. */
export interface WordRow {
  readonly cells: readonly (readonly Word[])[];
  readonly flags: readonly string[];
}

/** The words of one column on one line. */
interface Line {
  readonly column: number;
  readonly y: number;
  readonly size: number;
  readonly words: readonly Word[];
}

/** Lines at one height over all columns. */
interface Level {
  readonly y: number;
  readonly lines: readonly Line[];
}

/** Where the lines of a wrapped cell stand to the line of the row's mark. */
type Stand = 'top' | 'middle' | 'bottom';
const STANDS: readonly Stand[] = ['top', 'bottom', 'middle'];

const NO_MARK = 'it has no mark and may belong to the row beside it';
const UNSURE = "which row its wrapped lines belong to can't be told for sure";

/**
 * Words in columns, without rules between the rows, as rows. Each line of the marks' column starts a row; the other lines
 * join one by how wrapped cells stand to their mark, at its top, middle or bottom, whichever fits all of them best. Where two
 * ways fit alike and differ, the row is in doubt.
 */
export function splitRows(columns: readonly (readonly Word[])[]): WordRow[] {
  const lines = columns.flatMap((words, column) =>
    wordLines(words).map((line): Line => ({
      column,
      y: median(line.map(({ y }) => y)),
      size: Math.max(...line.map(({ size }) => size)),
      words: line,
    })),
  );
  if (lines.length === 0) return [];
  const size = median(lines.map((line) => line.size));
  const levels = clusters([...lines], ({ y }) => y, 0.35 * size).map((group): Level => ({
    y: median(group.map(({ y }) => y)),
    lines: group,
  }));
  const anchors = anchorsOf(levels, columns.length, size);
  if (anchors.length === 0) return levels.map((level) => rowOf(level.lines, columns.length, [NO_MARK]));
  const best = STANDS.map((stand) => ({ stand, ...fitted(stand, lines, anchors, size) })).sort(
    (one, other) => one.faults.size - other.faults.size || one.spread - other.spread,
  );
  const [first] = best;
  const rivals = best.filter((other) => other !== first && other.faults.size === first!.faults.size);
  return anchors.map((anchor, index) => {
    const own = lines.filter((line) => first!.rowOf.get(line) === index);
    const unsure =
      first!.faults.has(index) ||
      rivals.some((rival) =>
        lines.some((line) => (rival.rowOf.get(line) === index) !== (first!.rowOf.get(line) === index)),
      );
    return rowOf(own, columns.length, [...anchor.flags, ...(unsure ? [UNSURE] : [])]);
  });
}

interface Anchor {
  readonly y: number;
  readonly flags: readonly string[];
}

/** The lines that start a row: those with a mark, and full ones without. */
function anchorsOf(levels: readonly Level[], columns: number, size: number): Anchor[] {
  const fill = Array.from({ length: columns }, (_, column) => levels.filter((level) => has(level, column)).length);
  const most = Math.max(...fill);
  const markColumn = fill.findIndex((count) => count >= 0.3 * most);
  const marked = levels.filter((level) => has(level, markColumn));
  const usual = median(marked.map((level) => level.lines.length));
  const gaps = levels.slice(1).map((level, index) => level.y - levels[index]!.y);
  const pitch = usualPitch(levels, marked);
  return levels
    .flatMap((level, index) => {
      const gap = index === 0 ? Infinity : gaps[index - 1]!;
      const isClose = gap < 0.8 * pitch;
      if (has(level, markColumn)) {
        const alone = level.lines.length === 1 && usual > 1;
        const [only] = level.lines;
        const isTitle = alone && (only!.words.length > 2 || (!isClose && only!.words.length > 1));
        if (alone && isClose && !isTitle && gap < 1.6 * size)
          return [{ y: level.y, flags: ['it holds nothing but a mark and may continue the row above'] }];
        return [{ y: level.y, flags: [] }];
      }
      const isFull = level.lines.length >= Math.max(2, 0.6 * usual);
      return isFull && !isClose ? [{ y: level.y, flags: [NO_MARK] }] : [];
    })
    .map((anchor, index, all) => {
      // A doubtful row puts the one above it in doubt, too.
      const next = all[index + 1];
      return next && next.flags.length > 0 && anchor.flags.length === 0
        ? { ...anchor, flags: ['the row below it has no mark and may belong to it'] }
        : anchor;
    });
}

function has(level: Level, column: number): boolean {
  return level.lines.some((line) => line.column === column);
}

/** The usual step between two marks with nothing between them. */
function usualPitch(levels: readonly Level[], marked: readonly Level[]): number {
  const steps: number[] = [];
  levels.forEach((level, index) => {
    const next = levels[index + 1];
    if (next && marked.includes(level) && marked.includes(next)) steps.push(next.y - level.y);
  });
  return steps.length > 0 ? median(steps) : 0;
}

interface Fit {
  readonly rowOf: ReadonlyMap<Line, number>;
  /** Rows whose lines don't stand as they should. */
  readonly faults: ReadonlySet<number>;
  /** How far the lines of cells lie apart, all together. */
  readonly spread: number;
}

function fitted(stand: Stand, lines: readonly Line[], anchors: readonly Anchor[], size: number): Fit {
  const near = 0.35 * size;
  const rowOf = new Map<Line, number>();
  const faults = new Set<number>();
  for (const line of lines) {
    const after = anchors.findIndex(({ y }) => y >= line.y - near);
    const above = after < 0 ? anchors.length - 1 : Math.abs(anchors[after]!.y - line.y) <= near ? after : after - 1;
    let row = stand === 'top' ? above : after;
    if (stand === 'middle') row = nearest(anchors, line.y);
    if (row < 0) {
      row = stand === 'top' ? 0 : anchors.length - 1;
      faults.add(row);
    }
    rowOf.set(line, row);
  }
  let spread = 0;
  const cells = new Map<string, Line[]>();
  for (const line of lines) {
    const key = `${rowOf.get(line)} ${line.column}`;
    pushTo(cells, key, line);
  }
  for (const [key, cell] of cells) {
    const row = Number(key.split(' ')[0]);
    cell.sort((one, other) => one.y - other.y);
    const [first, last] = [cell[0]!.y, cell.at(-1)!.y];
    spread += last - first;
    const stands = stand === 'top' ? first : stand === 'bottom' ? last : (first + last) / 2;
    if (Math.abs(stands - anchors[row]!.y) > near) faults.add(row);
    cell.forEach((line, index) => {
      if (index > 0 && line.y - cell[index - 1]!.y > 1.8 * size) faults.add(row);
    });
  }
  return { rowOf, faults, spread };
}

function nearest(anchors: readonly Anchor[], y: number): number {
  let best = 0;
  anchors.forEach((anchor, index) => {
    if (Math.abs(anchor.y - y) < Math.abs(anchors[best]!.y - y)) best = index;
  });
  return best;
}

function rowOf(lines: readonly Line[], columns: number, flags: readonly string[]): WordRow {
  const cells = Array.from({ length: columns }, (_, column) =>
    lines.filter((line) => line.column === column).flatMap(({ words }) => words),
  );
  return { cells, flags };
}
