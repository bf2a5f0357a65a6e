import { figure, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import { EQUAL_WITHIN } from './ring';

/**
 * Radius to ply thickness a lamination may be bent to. 100 for hardwoods and Southern Pine, 125 for other softwoods.
 * Source: National Design Specification for Wood Construction, curvature factor (t/R ≤ 1/100, ≤ 1/125).
 */
export const PLY_RATIO = 100;

const MOST_PLIES = 10_000;

export interface Plies {
  readonly count: number;
  /** Thickness of one ply. */
  readonly thickness: number;
}

/**
 * A bent lamination instead of a segmented ring: the least number of equal plies, each no thicker than radius/ratio.
 *
 * Example: radius 30, thickness 3/4 at the default ratio of 100: 3 plies of 1/4.
 *
 * @param radius radius of the inside face, more than 0
 * @param thickness finished thickness across the bend, more than 0
 */
export function plies(radius: number, thickness: number, ratio = PLY_RATIO): Result<Plies> {
  const refusal = positive('radius', radius) ?? positive('thickness', thickness) ?? positive('ratio', ratio);
  if (refusal) return refusal;
  // A ply exactly radius/ratio thick is allowed, whatever the last bit of the division says.
  const count = Math.max(1, Math.ceil(((thickness * ratio) / radius) * (1 - EQUAL_WITHIN)));
  if (!(count <= MOST_PLIES)) {
    return refuse(
      `thickness must be no more than ${MOST_PLIES} plies of radius/ratio, here ${figure((MOST_PLIES * radius) / ratio)}; got ${figure(thickness)}`,
    );
  }
  return ok({ count, thickness: thickness / count });
}
