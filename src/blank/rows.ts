import type { Ring } from './ring';
import { sectorWidth } from './width';

/** Equal pieces in a row along a board: the length of one, and what each further one adds. */
export interface Row {
  readonly alone: number;
  readonly step: number;
}

/**
 * Sawn segments in one band along the board, every second one turned end for end, `kerf` clear between them everywhere.
 *
 * One is 2·Ro·sin g long. A turned neighbor's center lies Y = Ro + Ri·cos g above and `step` along. The two touch at their
 * outer arcs (centers 2·Ro + kerf apart) while the line between the centers runs within both; else along their end cuts, a
 * kerf apart; else outer corner to outer corner. Half angles up to 90°; past that null, since an end then hangs below.
 *
 * Example: radius 18, face 3-1/2, segments of 60°, kerf 1/8: one takes 21.5, each further one 21.5574.
 * Source: plane geometry of the annular sector; checked in the tests against sampled distances.
 *
 * @param half half of one segment's angle, radians
 */
export function halfTurnRow(of: Ring, half: number, kerf: number): Row | null {
  if (half > Math.PI / 2) return null;
  const { inside, outside } = of;
  const sine = Math.sin(half);
  const cosine = Math.cos(half);
  const across = outside + inside * cosine;
  const alone = 2 * outside * sine;
  const arcs = Math.sqrt((2 * outside + kerf - across) * (2 * outside + kerf + across));
  if (Math.atan2(arcs, across) <= half) return { alone, step: arcs };
  const ends = (kerf + across * sine) / cosine;
  if (ends * sine + across * cosine <= 2 * outside) return { alone, step: ends };
  const over = across - 2 * outside * cosine;
  return { alone, step: alone + Math.sqrt(Math.max(0, kerf * kerf - over * over)) };
}

/**
 * Mitered segments of one angle from a strip as wide as they are, every second one flipped: n of them take
 * n·(long + short)/2 + (n − 1)·kerf/cos g + (long − short)/2, the saw standing at the miter angle g.
 *
 * Example: long 24.826, short 18, miter 30°, kerf 1/8: one takes 24.826, each further one 21.5573.
 *
 * @param long 2·Ro·tan g, at the outside edge
 * @param short 2·Ri·sin g, at the inside corners
 */
export function flippedRow(of: Ring, half: number, kerf: number): Row | null {
  if (half >= Math.PI / 2) return null;
  const long = 2 * of.outside * Math.tan(half);
  const short = 2 * of.inside * Math.sin(half);
  return { alone: long, step: (long + short) / 2 + kerf / Math.cos(half) };
}

/** Rows of segments side by side on a board, a saw cut between the bands. */
export function rowsAcross(of: Ring, half: number, boardWidth: number, kerf: number): number {
  return strips(sectorWidth(of, half), boardWidth, kerf);
}

/** Strips of one width that a board can be ripped into. A board exactly as wide as its strips takes them in spite of rounding. */
export function strips(width: number, boardWidth: number, kerf: number): number {
  return Math.max(0, Math.floor((boardWidth + kerf) / (width + kerf) + 1e-9));
}
