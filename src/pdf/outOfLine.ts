import { median } from '../median';
import type { WordRow } from './splitRows';

/** Fewer cells than this in a column have no common edge. */
const FEWEST = 5;
/** As large a part of a column's cells stands in line where the column is set to its left, its right or its middle. */
const MOST = 0.8;
/** In line within this, out of line past that; in ems. */
const SAME = 0.15;
const OFF = 0.5;

/** Rows in which a text doesn't stand in line with its column, as one that begins in the column before: by row, a clause each. */
export function outOfLine(rows: readonly WordRow[]): string[][] {
  const flags = rows.map((): string[] => []);
  const columns = rows[0]?.cells.length ?? 0;
  for (let column = 0; column < columns; column += 1) {
    const cells = rows.flatMap(({ cells: row }, index) => {
      const words = row[column] ?? [];
      if (words.length === 0) return [];
      const left = Math.min(...words.map((word) => word.left));
      const right = Math.max(...words.map((word) => word.right));
      return [{ index, size: words[0]!.size, places: [left, right, (left + right) / 2] as const }];
    });
    if (cells.length < FEWEST) continue;
    const lines = ([0, 1, 2] as const).flatMap((side) => {
      const place = median(cells.map(({ places }) => places[side]));
      const inLine = cells.filter(({ places, size }) => Math.abs(places[side] - place) <= SAME * size);
      return inLine.length >= MOST * cells.length ? [{ side, place }] : [];
    });
    if (lines.length === 0) continue;
    for (const { index, size, places } of cells)
      if (lines.every(({ side, place }) => Math.abs(places[side] - place) > OFF * size))
        flags[index]!.push(`a text stands out of line in column ${column + 1}`);
  }
  return flags;
}
