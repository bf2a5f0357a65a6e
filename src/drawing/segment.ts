import { degrees, polar } from '../angle';
import type { Ring } from '../blank/ring';
import { roundSteps } from './roundSteps';
import { line, outline, type Layer, type Outline, type Point, type Shape } from './scene';

const ORIGIN: Point = { x: 0, y: 0 };

/** The part of a ring from `half` degrees before `middle` to as many after it, as a closed outline. */
export function sector(
  layer: Layer,
  { inside, outside }: Pick<Ring, 'inside' | 'outside'>,
  middle: number,
  half: number,
  center = ORIGIN,
): Outline {
  const [left, right] = [middle + half, middle - half];
  return outline(layer, polar(center, inside, left), [
    ...roundSteps(center, inside, left, right),
    { to: polar(center, outside, right) },
    ...roundSteps(center, outside, right, left),
    { to: polar(center, inside, left) },
  ]);
}

/** A segment of a glued ring, grain along its chord. `half` of its angle in radians. */
export function segmentShapes(of: Ring, middle: number, half: number, center = ORIGIN): Shape[] {
  return [sector('casing', of, middle, degrees(half), center), ...grainLines(of, middle, half, center)];
}

/**
 * Grain along the chord of a segment, cut off at its edges: at a distance v from the center, |u| runs from the inside arc,
 * √(Ri² − v²), to the nearer of joint, v·tan g, and outside arc, √(Ro² − v²). Spacing varies a little, always the same way.
 */
function grainLines({ inside, outside }: Ring, middle: number, half: number, center: Point): Shape[] {
  const quarter = Math.min(half, Math.PI / 2 - 1e-6);
  const low = inside * Math.cos(quarter);
  const lines: Shape[] = [];
  const spacing = (outside - inside) / 7;
  for (let row = 0; ; row++) {
    const out = low + spacing * (row + 0.5 + 0.28 * Math.sin(row * 2.4));
    if (out >= outside) return lines;
    const reach = Math.min(out * Math.tan(quarter), Math.sqrt(Math.max(0, outside * outside - out * out)));
    const hollow = out < inside ? Math.sqrt(inside * inside - out * out) : 0;
    const spans =
      hollow > 0
        ? [
            [-reach, -hollow],
            [hollow, reach],
          ]
        : [[-reach, reach]];
    for (const [from = 0, to = 0] of spans) {
      const trim = 0.04 * (to - from);
      lines.push(line('grain', placed(middle, from + trim, out, center), placed(middle, to - trim, out, center)));
    }
  }
}

/** A point given across and outward from the middle of a segment. */
export function placed(middle: number, across: number, out: number, center = ORIGIN): Point {
  const outward = polar(ORIGIN, 1, middle);
  return { x: center.x + out * outward.x + across * outward.y, y: center.y + out * outward.y - across * outward.x };
}
