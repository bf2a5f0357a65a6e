import { degrees, radians } from '../angle';
import { line, polygon, text, type Dimension, type Leader, type Point, type Primitive, type Shape } from './scene';

/** Dimensions and leaders as lines and text, so that every writer shows the same picture. Lengths in text heights. */
const TICK = 0.45;
const OVERSHOOT = 0.5;
const GAP = 0.45;
const ARROW = 0.9;

/** Width of a line of text of capital height 1 in an ordinary sans-serif face, taken a little wide. */
export function textWidth(words: string, height: number): number {
  return words.length * height * 0.82;
}

export function explode(shapes: readonly Shape[]): Primitive[] {
  return shapes.flatMap((shape) => {
    if (shape.kind === 'dimension') return explodeDimension(shape);
    if (shape.kind === 'leader') return explodeLeader(shape);
    return [shape];
  });
}

function explodeDimension(dimension: Dimension): Primitive[] {
  const { from, to, height } = dimension;
  const [a, b] = dimensionLine(dimension);
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  // A dimension of no length still shows its figure, along x.
  const way = length > 0 ? { x: (b.x - a.x) / length, y: (b.y - a.y) / length } : { x: 1, y: 0 };
  return [
    ...extension(from, a, height),
    ...extension(to, b, height),
    line('dimension', a, b),
    ...[a, b].map((at) => tick(at, way, height)),
    dimensionText(dimension, a, b, way, length),
  ];
}

/** The two ends of the dimension line. */
export function dimensionLine({ along, from, to, line: at }: Dimension): [Point, Point] {
  if (along === 'x') {
    return [
      { x: from.x, y: at },
      { x: to.x, y: at },
    ];
  }
  if (along === 'y') {
    return [
      { x: at, y: from.y },
      { x: at, y: to.y },
    ];
  }
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const left = { x: (-(to.y - from.y) / length) * at, y: ((to.x - from.x) / length) * at };
  return [
    { x: from.x + left.x, y: from.y + left.y },
    { x: to.x + left.x, y: to.y + left.y },
  ];
}

/** From near the measured point to just past the dimension line; nothing where the two coincide. */
function extension(from: Point, to: Point, height: number): Primitive[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < height * GAP * 1.5) return [];
  const way = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  return [line('dimension', along(from, way, height * GAP), along(to, way, height * OVERSHOOT))];
}

function tick(at: Point, way: Point, height: number): Primitive {
  const slant = { x: (way.x - way.y) * height * TICK, y: (way.y + way.x) * height * TICK };
  return line('dimension', { x: at.x - slant.x, y: at.y - slant.y }, { x: at.x + slant.x, y: at.y + slant.y });
}

function dimensionText(dimension: Dimension, a: Point, b: Point, way: Point, length: number): Primitive {
  const { height, text: words } = dimension;
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const width = textWidth(words, height);
  if (dimension.along === 'y') {
    // Upright text beside the line; above its upper end where the line is too short for it.
    const left = dimension.beside === 'left';
    const x = middle.x + (left ? -height : height) * GAP;
    if (length >= height * 1.8) return label({ x, y: middle.y - height / 2 }, words, height, left ? 'end' : 'start');
    return label({ x: a.x, y: Math.max(a.y, b.y) + height }, words, height, 'middle');
  }
  if (dimension.along === 'x') {
    if (length >= width + height) return label({ x: middle.x, y: middle.y + height * GAP }, words, height, 'middle');
    return label({ x: Math.max(a.x, b.x) + height, y: a.y - height / 2 }, words, height, 'start');
  }
  // Along the line, on the side away from what is measured, never upside down.
  const out = dimension.line >= 0 ? { x: -way.y, y: way.x } : { x: way.y, y: -way.x };
  const slope = degrees(Math.atan2(way.y, way.x));
  const turned = slope > 90 ? slope - 180 : slope <= -90 ? slope + 180 : slope;
  const above = out.x * -Math.sin(radians(turned)) + out.y * Math.cos(radians(turned)) > 0;
  return text(along(middle, out, height * (above ? GAP : GAP + 1)), words, height, 'middle', turned, 'dimension');
}

function explodeLeader({ tip, tail, text: words, height }: Leader): Primitive[] {
  const length = Math.hypot(tail.x - tip.x, tail.y - tip.y) || 1;
  const way = { x: (tail.x - tip.x) / length, y: (tail.y - tip.y) / length };
  const base = along(tip, way, height * ARROW);
  const half = { x: -way.y * height * 0.28, y: way.x * height * 0.28 };
  const anchor = way.x > 0.5 ? 'start' : way.x < -0.5 ? 'end' : 'middle';
  // The words stand clear of the tail: beside it, or above or below where the leader is steep.
  const clear = along(tail, way, height * GAP);
  const drop = anchor === 'middle' ? (way.y > 0 ? height * 0.2 : -height * 1.2) : -height / 2;
  return [
    line('dimension', base, tail),
    polygon('dimension', [tip, { x: base.x + half.x, y: base.y + half.y }, { x: base.x - half.x, y: base.y - half.y }]),
    label({ x: clear.x, y: clear.y + drop }, words, height, anchor),
  ];
}

function label(at: Point, words: string, height: number, anchor: 'start' | 'middle' | 'end'): Primitive {
  return text(at, words, height, anchor, 0, 'dimension');
}

function along(from: Point, way: Point, distance: number): Point {
  return { x: from.x + way.x * distance, y: from.y + way.y * distance };
}
