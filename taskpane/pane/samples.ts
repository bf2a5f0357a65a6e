import type { Schedule } from '../../src/schedule/opening';

/** The first different cells of a column in the rows that are openings: what its meaning can be judged by. */
export function samplesOf({ openings }: Schedule, column: number, most = 3): readonly string[] {
  const found: string[] = [];
  for (const { source } of openings) {
    const text = (source[column] ?? '').trim().slice(0, 40);
    if (text !== '' && !found.includes(text)) found.push(text);
    if (found.length === most) break;
  }
  return found;
}
