import type { IsHeading } from './found';
import { clusters } from './rules';
import type { Word } from './words';

/** Headings stand on no more lines than this. */
const MOST_LINES = 4;

/**
 * Of words in columns, the first lines that are headings: as many as name the most columns, and fewer where as many do as
 * well. `headings` is null where fewer than two are named.
 */
export function headingLevels(
  columns: readonly (readonly Word[])[],
  isHeading: IsHeading,
): {
  readonly headings: readonly (readonly Word[])[] | null;
  readonly body: readonly (readonly Word[])[];
} {
  const size = Math.max(...columns.flat().map((word) => word.size));
  const levels = clusters(columns.flat(), ({ y }) => y, 0.35 * size).map((level) => new Set(level));
  let best = { count: 1, lines: 0 };
  for (let lines = 1; lines <= Math.min(MOST_LINES, levels.length); lines += 1) {
    const top = new Set(levels.slice(0, lines).flatMap((level) => [...level]));
    const texts = columns.map((words) =>
      words
        .filter((word) => top.has(word))
        .map(({ text }) => text)
        .join(' '),
    );
    const count = texts.filter((text) => text !== '' && isHeading(text)).length;
    if (count > best.count) best = { count, lines };
  }
  if (best.lines === 0) return { headings: null, body: columns };
  const top = new Set(levels.slice(0, best.lines).flatMap((level) => [...level]));
  return {
    headings: columns.map((words) => words.filter((word) => top.has(word))),
    body: columns.map((words) => words.filter((word) => !top.has(word))),
  };
}
