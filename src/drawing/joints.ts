import { polar } from '../angle';
import type { Arc } from '../head/head';
import { leftEnd, rightEnd } from '../head/pieces';
import { SHAPES } from '../head/shapes';
import type { Elevation } from './elevationFigures';
import { line, type Point, type Shape } from './scene';

/**
 * Joints across the casing: where its pieces meet, and between the equal segments of each arc. A blank covers the farther of
 * its two corners at either end, so that its segments share the angle between those equally.
 */
export function segmentJoints({ inside, outside, figures }: Elevation): Shape[] {
  const closed = SHAPES[figures.head.shape].closed;
  let arc = -1;
  return inside.pieces.flatMap((inner, at): Shape[] => {
    const outer = outside.pieces[at];
    if (!outer) return [];
    const meeting =
      at === 0 && !(closed && inside.pieces.length > 1) ? [] : [line('joint', leftEnd(inner), leftEnd(outer))];
    if (inner.kind === 'straight' || outer.kind === 'straight') return meeting;
    arc += 1;
    const count = figures.segments?.[arc] ?? 1;
    const start = Math.max(inner.start, outer.start);
    const turn = start - Math.min(inner.start - inner.degrees, outer.start - outer.degrees);
    const within = Array.from({ length: count - 1 }, (_, joint) => start - (turn * (joint + 1)) / count);
    return [...meeting, ...within.flatMap((angle) => acrossCasing(inner, outer, angle))];
  });
}

/** The part of a radial line that lies on the casing: from edge to edge, or from the end cut where it runs out there. */
function acrossCasing(inner: Arc, outer: Arc, angle: number): Shape[] {
  const from = onArc(inner, angle) ? polar(inner.center, inner.radius, angle) : onEndCut(inner, outer, angle);
  const to = onArc(outer, angle) ? polar(outer.center, outer.radius, angle) : onEndCut(inner, outer, angle);
  return from && to ? [line('joint', from, to)] : [];
}

function onArc({ start, degrees }: Arc, angle: number): boolean {
  return angle <= start + 1e-9 && angle >= start - degrees - 1e-9;
}

/** Where the radial line crosses the straight cut at the nearer end of the piece. */
function onEndCut(inner: Arc, outer: Arc, angle: number): Point | null {
  const atLeft = angle > inner.start - inner.degrees / 2;
  const a = atLeft ? leftEnd(inner) : rightEnd(inner);
  const b = atLeft ? leftEnd(outer) : rightEnd(outer);
  const ray = polar({ x: 0, y: 0 }, 1, angle);
  const cut = { x: b.x - a.x, y: b.y - a.y };
  const across = ray.x * cut.y - ray.y * cut.x;
  if (Math.abs(across) < 1e-12) return null;
  const away = { x: a.x - inner.center.x, y: a.y - inner.center.y };
  const distance = (away.x * cut.y - away.y * cut.x) / across;
  return { x: inner.center.x + ray.x * distance, y: inner.center.y + ray.y * distance };
}
