import { notNegative, positive } from '../require';
import { ok, type Result } from '../result';
import { EQUAL_WITHIN, segmentOf, type Ring, type Segment } from './ring';
import { sectorWidth } from './width';

/**
 * How many sawn segments stand above one another across a board, grain along the chord, all the same way up, with
 * `kerf` clear between them everywhere. 0 where the board is narrower than one blank.
 *
 * Example: radius 18, face 3-1/2, 180° in 4 segments, kerf 1/8, on a board 11 wide: 2 (the second adds 3.8688).
 *
 * @param boardWidth more than 0
 * @param kerf 0 or more
 */
export function nest(
  radius: number,
  face: number,
  angle: number,
  segments: number,
  boardWidth: number,
  margin = 0,
  kerf = 0,
): Result<number> {
  const segment = segmentOf(radius, face, margin, angle, segments);
  if (!segment.ok) return segment;
  const refusal = positive('board_width', boardWidth) ?? notNegative('kerf', kerf);
  return refusal ?? ok(nestedAcross(segment.value, boardWidth, kerf));
}

/** `nest` for a segment whose figures are known to be sound. */
function nestedAcross({ of, half }: Segment, boardWidth: number, kerf: number): number {
  const left = boardWidth - sectorWidth(of, half) + EQUAL_WITHIN * of.outside;
  return left < 0 ? 0 : 1 + Math.floor(left / nestPitch(of, half, kerf));
}

/**
 * Distance between one segment and the next above it, center to center.
 *
 * A point of the upper segment at radius r and angle t from its axis lies √(r² + p² + 2·r·p·cos t) from the lower
 * one's center, which must be no less than Ro + kerf. That is least at the ends (t = g) and, along an end, at the
 * inner corner while g ≤ 90°. Past 90° the ends hang below the center and the nearest point moves outward along them:
 * to r = −p·cos g, then to the outer corner. Adding the kerf to the pitch alone would leave too little of it at the
 * corners.
 */
export function nestPitch(of: Ring, half: number, kerf: number): number {
  const reach = of.outside + kerf;
  const sine = Math.sin(half);
  const cosine = Math.cos(half);
  const atCorner = (r: number) => Math.sqrt((reach - r * sine) * (reach + r * sine)) - r * cosine;
  const inner = atCorner(of.inside);
  if (-inner * cosine <= of.inside) return inner;
  const outer = atCorner(of.outside);
  if (-outer * cosine >= of.outside) return outer;
  return reach / sine;
}
