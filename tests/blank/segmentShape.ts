import type { Ring } from '../../src/blank/ring';

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Outline of the ring segment about the origin, axis up, with the corners among the points. */
export function outline({ inside, outside }: Ring, half: number, steps: number): Point[] {
  const points: Point[] = [];
  for (let step = 0; step <= steps; step++) {
    const turn = -half + (2 * half * step) / steps;
    for (const r of [inside, outside]) points.push({ x: r * Math.sin(turn), y: r * Math.cos(turn) });
    const r = inside + ((outside - inside) * step) / steps;
    for (const end of [-half, half]) points.push({ x: r * Math.sin(end), y: r * Math.cos(end) });
  }
  return points;
}

/** Distance from a point to the ring segment about the origin; 0 inside it. */
export function distance({ inside, outside }: Ring, half: number, { x, y }: Point): number {
  const r = Math.hypot(x, y);
  if (Math.abs(Math.atan2(x, y)) <= half) return Math.max(0, inside - r, r - outside);
  const toEnd = (turn: number) => {
    const along = Math.min(outside, Math.max(inside, x * Math.sin(turn) + y * Math.cos(turn)));
    return Math.hypot(x - along * Math.sin(turn), y - along * Math.cos(turn));
  };
  return Math.min(toEnd(-half), toEnd(half));
}
