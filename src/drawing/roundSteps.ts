import { degrees, polar } from '../angle';
import type { Point, Step } from './scene';

/** Steps round a center from one direction to another, in parts of at most a third of a turn. */
export function roundSteps(center: Point, radius: number, from: number, to: number): Step[] {
  const parts = Math.max(1, Math.ceil(Math.abs(to - from) / 120));
  return Array.from({ length: parts }, (_, part) => ({
    to: polar(center, radius, from + ((to - from) * (part + 1)) / parts),
    round: { center, clockwise: to < from },
  }));
}

/** A round step as a counterclockwise arc: radius, start and end in degrees, end > start. */
export function arcOfStep(
  from: Point,
  to: Point,
  { center, clockwise }: NonNullable<Step['round']>,
): { radius: number; start: number; end: number } {
  const [first, last] = clockwise ? [to, from] : [from, to];
  const start = direction(center, first);
  const end = direction(center, last);
  return {
    radius: Math.hypot(from.x - center.x, from.y - center.y),
    start,
    end: end > start ? end : end + 360,
  };
}

function direction(center: Point, point: Point): number {
  return degrees(Math.atan2(point.y - center.y, point.x - center.x));
}
