import { ok, type Result } from '../result';
import { segmentOf, type Ring } from './ring';

/**
 * Board width that one of `segments` equal segments takes, its chord along the board:
 * Ro − Ri·cos g, where g is half of angle/segments. Past g = 90° the outer corners hang lowest: Ro − Ro·cos g.
 *
 * Example: radius 18, face 3-1/2, 180° in 3 segments takes 5.9115427319.
 * Source: plane geometry of the annular sector; check figures in the tests.
 */
export function blankWidth(radius: number, face: number, angle: number, segments: number, margin = 0): Result<number> {
  const segment = segmentOf(radius, face, margin, angle, segments);
  return segment.ok ? ok(sectorWidth(segment.value.of, segment.value.half)) : segment;
}

/** Height of an annular sector of half angle `half` (radians) above its lowest corner, written so that no digits cancel. */
export function sectorWidth(of: Ring, half: number): number {
  const sine = Math.sin(half / 2);
  const versine = 2 * sine * sine;
  return half <= Math.PI / 2 ? of.width + of.inside * versine : of.outside * versine;
}
