import { figure } from '../require';
import { ok, refuse, type Result } from '../result';
import { segmentOf } from './ring';

/** How segments are cut: boards mitered, glued, then sawn to the ring; or each sawn to the ring before gluing. */
export const CUTS = ['miter', 'sawn'] as const;
export type Cut = (typeof CUTS)[number];

/**
 * Board length that one of `segments` equal segments takes. Mitered boards need their full outside edge, 2·Ro·tan g;
 * sawn segments only the outer chord, 2·Ro·sin g (2·Ro past g = 90°, where the ring is widest at its middle).
 * g is half of angle/segments; a miter needs g under 90°.
 *
 * Example: radius 18, face 3-1/2, 180° in 3: mitered 24.8260615752, sawn 21.5.
 */
export function blankLength(
  radius: number,
  face: number,
  angle: number,
  segments: number,
  margin = 0,
  cut: Cut = 'miter',
): Result<number> {
  const segment = segmentOf(radius, face, margin, angle, segments);
  if (!segment.ok) return segment;
  const { of, half } = segment.value;
  if (cut === 'sawn') return ok(2 * of.outside * Math.sin(Math.min(half, Math.PI / 2)));
  if (angle / segments >= 180) {
    return refuse(
      `segments must be more than angle/180 where boards are mitered, here more than ${figure(angle / 180)}; got ${segments}`,
    );
  }
  return ok(2 * of.outside * Math.tan(half));
}
