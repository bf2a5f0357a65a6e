import type { Scene } from '../drawing/scene';
import type { Cell, Picture } from './sheet';
import { columnPixels, ROW_PIXELS } from './xlsx/drawings';

/** Rows that a strip of drawings takes. */
const STRIP_ROWS = 5;
/** Pixels left free between two drawings, and below each strip. */
const BETWEEN = 8;

export interface Drawn {
  readonly caption: string;
  readonly scene: Scene;
}

/** Drawings in strips, so many side by side over all columns, below the rows there are: adds the rows that they lie over. */
export function inStrips(
  rows: (readonly (Cell | null)[])[],
  drawings: readonly Drawn[],
  across: number,
  widths: readonly number[],
): Picture[] {
  const first = rows.length + 1;
  for (let row = 0; row < Math.ceil(drawings.length / across) * STRIP_ROWS; row++) rows.push([]);
  const room = widths.reduce((sum, width) => sum + columnPixels(width), 0) / across;
  return drawings.map(({ caption, scene }, at) => ({
    row: first + Math.floor(at / across) * STRIP_ROWS,
    left: (at % across) * room + BETWEEN / 2,
    width: room - BETWEEN,
    height: STRIP_ROWS * ROW_PIXELS - BETWEEN,
    caption,
    scene,
  }));
}
