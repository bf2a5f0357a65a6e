import { cellText } from './cellText';
import { coveredBy, distribute, recut } from './distribute';
import type { FoundRow, FoundTable, IsHeading } from './found';
import type { Line } from './lines';
import type { Band, Rule } from './marks';
import type { Column } from './openColumns';
import { outOfLine } from './outOfLine';
import { clusters } from './rules';
import { splitRows, type WordRow } from './splitRows';
import { wordLines, type Word } from './words';
import { pushTo } from '../pushTo';

export type OpenTable = Omit<FoundTable, 'page' | 'turn'>;

/** Rows from lines and columns. */
export function assembled(
  head: readonly Line[],
  body: readonly Line[],
  columns: readonly Column[],
  rules: readonly Rule[],
  bands: readonly Band[],
  isHeading: IsHeading,
): OpenTable {
  const place = (column: number) => ({ ...columns[column]!, name: `column ${column + 1}` });
  const flags = new Map<Word, string>();
  const put = (lines: readonly Line[]): Word[][] => {
    const cells: Word[][] = columns.map(() => []);
    for (const { phrases } of lines) {
      const parts = phrases.flatMap((phrase) => recut(phrase, columns));
      for (const part of parts) distribute(part, parts.length === 1, columns, cells, flags);
    }
    return cells;
  };
  const headRows = headingRows(head, columns, put, isHeading);
  const first = head[0] ?? body[0]!;
  const top = first.y - first.size;
  const bottom = body.at(-1)!.y + 0.4 * first.size;
  const box = { left: columns[0]!.left, right: columns.at(-1)!.right, top, bottom };
  const parts = separated(body, rules, bands, box);
  const bodyRows = parts.flatMap((lines) => {
    const cells = put(lines);
    if (parts.length > 1 && !holdsSeveral(cells)) return [{ cells, flags: [] as readonly string[], parted: true }];
    const rows = splitRows(cells).map((row) => ({ ...row, parted: false }));
    return parts.length > 3 && rows.length > 1
      ? rows.map((row) => ({ ...row, flags: [...row.flags, 'it shares a striped or ruled row with others'] }))
      : rows;
  });
  const off = [...headRows.map(() => []), ...outOfLine(bodyRows)];
  const all = [...headRows.map((row) => ({ ...row, parted: false })), ...bodyRows];
  const rows = all.map(({ cells, flags: own, parted }, index): FoundRow => {
    const texts = cells.map((words, column) => cellText(words, place(column), isHeading, true, parted));
    const words = cells.flat();
    const cuts = words.flatMap((word) => flags.get(word) ?? []);
    const doubts = [...own, ...texts.flatMap((text) => text.flags), ...cuts, ...off[index]!];
    return {
      top: Math.min(...words.map((word) => word.y - word.size)),
      bottom: Math.max(...words.map((word) => word.y + 0.3 * word.size)),
      cells: texts.map(({ text }) => text),
      flags: [...new Set(doubts)],
    };
  });
  const edges = [...columns.map(({ left }) => left), columns.at(-1)!.right];
  return { box, edges, rows, merges: [], ruled: false, named: head.length > 0, unplaced: [], beside: [] };
}

/**
 * Lines of headings as one row, each over its column; a group over several columns stands in a row above, at the first of
 * them.
 */
function headingRows(
  head: readonly Line[],
  columns: readonly Column[],
  put: (lines: readonly Line[]) => Word[][],
  isHeading: IsHeading,
): WordRow[] {
  if (head.length === 0) return [];
  const groups: Word[][] = columns.map(() => []);
  const own = head.map((line, index) => ({
    ...line,
    phrases: line.phrases.filter((phrase) => {
      const covered = index === head.length - 1 ? [] : coveredBy(phrase, columns);
      if (covered.length < 2) return true;
      groups[covered[0]!]!.push(...phrase.words);
      return false;
    }),
  }));
  const cells: Word[][] = columns.map(() => []);
  const textOf = (words: readonly Word[]) => words.map(({ text }) => text).join(' ');
  for (const line of [...own].reverse())
    put([line]).forEach((words, column) => {
      const below = textOf(cells[column]!);
      // What makes a heading unknown that is known without it is a group's name, not its first line.
      const isGroup = words.length > 0 && below !== '' && isHeading(below) && !isHeading(`${textOf(words)} ${below}`);
      if (isGroup) groups[column]!.push(...words);
      else cells[column]!.unshift(...words);
    });
  const row = { cells, flags: [] };
  return groups.some((words) => words.length > 0) ? [{ cells: groups, flags: [] }, row] : [row];
}

/** Body lines by the stripes or rules that part the rows; all together where nothing does. */
function separated(
  body: readonly Line[],
  rules: readonly Rule[],
  bands: readonly Band[],
  box: Column & { top: number; bottom: number },
): Line[][] {
  const wide = 0.7 * (box.right - box.left);
  const covers = (from: number, to: number) => Math.min(to, box.right) - Math.max(from, box.left) >= wide;
  const places = [
    ...rules.filter(({ horizontal, from, to }) => horizontal && covers(from, to)).map(({ at }) => at),
    ...stripes(bands)
      .filter(({ left, right }) => covers(left, right))
      .flatMap(({ top, bottom }) => [top, bottom]),
  ].filter((at) => at > box.top && at < box.bottom + 20);
  const cuts = clusters(places, (place) => place, 2).map((group) => group[0]!);
  const parts = new Map<number, Line[]>();
  for (const line of body) {
    const part = cuts.filter((at) => at < line.y - 0.3 * line.size).length;
    pushTo(parts, part, line);
  }
  return [...parts.values()];
}

/** Shaded cells side by side as one stripe. */
function stripes(bands: readonly Band[]): Band[] {
  return clusters([...bands], ({ top }) => top, 0.6).flatMap((row) =>
    clusters(row, ({ bottom }) => bottom, 0.6).map((group) => ({
      ...group[0]!,
      left: Math.min(...group.map(({ left }) => left)),
      right: Math.max(...group.map(({ right }) => right)),
    })),
  );
}

/** Whether a row between rules or stripes holds several rows of the list. */
function holdsSeveral(cells: readonly (readonly Word[])[]): boolean {
  const counts = cells.filter((words) => words.length > 0).map((words) => wordLines(words).length);
  return counts.length >= 2 && counts[0]! >= 2 && counts.filter((count) => count >= 2).length >= 0.6 * counts.length;
}
