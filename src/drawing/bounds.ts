import { polar, radians } from '../angle';
import { textWidth } from './dimension';
import { arcOfStep } from './roundSteps';
import type { Outline, Point, Primitive, Text } from './scene';

export interface Bounds {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** The least upright rectangle round everything drawn; text by an estimate of its width. */
export function bounds(shapes: readonly Primitive[]): Bounds {
  const points = shapes.flatMap(extremes);
  if (points.length === 0) return { left: 0, bottom: 0, right: 1, top: 1 };
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return { left, bottom, right, top };
}

function extremes(shape: Primitive): readonly Point[] {
  switch (shape.kind) {
    case 'line':
      return [shape.from, shape.to];
    case 'circle':
      return arcExtremes(shape.center, shape.radius, 0, 360);
    case 'arc':
      return arcExtremes(shape.center, shape.radius, shape.start, shape.end);
    case 'polyline':
      return shape.points;
    case 'outline':
      return outlineExtremes(shape);
    case 'text':
      return textCorners(shape);
  }
}

function arcExtremes(center: Point, radius: number, start: number, end: number): Point[] {
  const points = [polar(center, radius, start), polar(center, radius, end)];
  for (let quarter = Math.ceil(start / 90) * 90; quarter <= end; quarter += 90)
    points.push(polar(center, radius, quarter));
  return points;
}

function outlineExtremes(shape: Outline): Point[] {
  const points: Point[] = [shape.start];
  let from = shape.start;
  for (const { to, round } of shape.steps) {
    points.push(to);
    if (round) {
      const { radius, start, end } = arcOfStep(from, to, round);
      points.push(...arcExtremes(round.center, radius, start, end));
    }
    from = to;
  }
  return points;
}

function textCorners({ at, text, height, anchor, turned: degrees }: Text): Point[] {
  const width = textWidth(text, height);
  const left = anchor === 'start' ? 0 : anchor === 'end' ? -width : -width / 2;
  const angle = radians(degrees);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [
    [left, -0.3 * height],
    [left + width, -0.3 * height],
    [left, 1.1 * height],
    [left + width, 1.1 * height],
  ].map(([x = 0, y = 0]) => ({ x: at.x + x * cos - y * sin, y: at.y + x * sin + y * cos }));
}
