import { moved, type Band, type Box, type Matrix, type Rule } from './marks';

/** Thicker fills are bands, not rules. */
const THICKEST_RULE = 2.2;
/** Shorter pieces of a path are parts of letters or of dots. */
const SHORTEST_RULE = 1.5;
/** How far the ends of a rule may lie off the level. */
const LEVEL = 0.35;

export interface Dot {
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

/** Sorts what paths draw into rules, bands, dots and curves. */
export class Drawn {
  readonly rules: Rule[] = [];
  readonly bands: Band[] = [];
  readonly dots: Dot[] = [];
  curves = 0;

  /** `path` is moves (0 x y), lines (1 x y), curves (2, six figures; 3, four) and closings (4), one after another. */
  path(path: ArrayLike<number>, matrix: Matrix, how: { stroke: boolean; fill: boolean; color: string }, shown: Box) {
    for (const { points, curved } of pieces(path, matrix)) {
      if (curved) {
        const box = boxOf(points);
        if (how.fill && isDot(box)) this.dot(box, shown);
        else this.curves += 1;
        continue;
      }
      if (how.fill) this.fill(points, how.color, shown);
      if (how.stroke) this.stroke(points, shown);
    }
  }

  /** A filled box, as of a picture one dot large. */
  box(box: Box, color: string, shown: Box): void {
    const [width, height] = [box.right - box.left, box.bottom - box.top];
    if (isDot(box)) this.dot(box, shown);
    else if (height <= THICKEST_RULE) this.rule(true, (box.top + box.bottom) / 2, box.left, box.right, shown);
    else if (width <= THICKEST_RULE) this.rule(false, (box.left + box.right) / 2, box.top, box.bottom, shown);
    else {
      const kept = within(box, shown);
      if (kept !== null) this.bands.push({ ...kept, color });
    }
  }

  private dot(box: Box, shown: Box): void {
    if (within(box, shown) === null) return;
    const size = Math.max(box.right - box.left, box.bottom - box.top);
    this.dots.push({ x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2, size });
  }

  private fill(points: readonly Point[], color: string, shown: Box): void {
    const box = boxOf(points);
    const [width, height] = [box.right - box.left, box.bottom - box.top];
    if (isRectangle(points, box)) return this.box(box, color, shown);
    // The miter between two borders of a cell: four corners, still a thin piece.
    if (points.length <= 5 && Math.min(width, height) <= THICKEST_RULE) return this.box(box, color, shown);
    this.curves += 1;
  }

  private stroke(points: readonly Point[], shown: Box): void {
    for (let index = 1; index < points.length; index += 1) {
      const [x0, y0] = points[index - 1]!;
      const [x1, y1] = points[index]!;
      const [dx, dy] = [Math.abs(x1 - x0), Math.abs(y1 - y0)];
      if (dy <= LEVEL && dx >= SHORTEST_RULE) this.rule(true, (y0 + y1) / 2, Math.min(x0, x1), Math.max(x0, x1), shown);
      else if (dx <= LEVEL && dy >= SHORTEST_RULE)
        this.rule(false, (x0 + x1) / 2, Math.min(y0, y1), Math.max(y0, y1), shown);
      else if (dx > LEVEL || dy > LEVEL) this.curves += 1;
      else this.dot({ left: x0, right: x0 + 0.5, top: y0, bottom: y0 + 0.5 }, shown);
    }
  }

  private rule(horizontal: boolean, at: number, from: number, to: number, shown: Box): void {
    const [low, high] = horizontal ? [shown.left, shown.right] : [shown.top, shown.bottom];
    const [near, far] = horizontal ? [shown.top, shown.bottom] : [shown.left, shown.right];
    const [start, end] = [Math.max(from, low), Math.min(to, high)];
    if (at < near - 1 || at > far + 1 || end - start < SHORTEST_RULE) return;
    this.rules.push({ horizontal, at, from: start, to: end });
  }
}

type Point = readonly [number, number];

/** The pieces of a path that hang together, on the page. */
function* pieces(path: ArrayLike<number>, matrix: Matrix): Generator<{ points: Point[]; curved: boolean }> {
  let points: Point[] = [];
  let curved = false;
  let index = 0;
  const point = (offset: number) => moved(matrix, path[index + offset]!, path[index + offset + 1]!);
  while (index < path.length) {
    const kind = path[index];
    if (kind === 0) {
      if (points.length > 1) yield { points, curved };
      points = [point(1)];
      curved = false;
      index += 3;
    } else if (kind === 1) {
      points.push(point(1));
      index += 3;
    } else if (kind === 2 || kind === 3) {
      points.push(point(kind === 2 ? 5 : 3));
      curved = true;
      index += kind === 2 ? 7 : 5;
    } else {
      const first = points[0];
      if (first) points.push(first);
      index += 1;
    }
  }
  if (points.length > 1) yield { points, curved };
}

export function boxOf(points: readonly Point[]): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { left, top, right, bottom };
}

function isRectangle(points: readonly Point[], box: Box): boolean {
  if (points.length < 4 || points.length > 6) return false;
  const near = (one: number, other: number) => Math.abs(one - other) <= 0.2;
  return points.every(
    ([x, y]) => (near(x, box.left) || near(x, box.right)) && (near(y, box.top) || near(y, box.bottom)),
  );
}

function isDot(box: Box): boolean {
  return box.right - box.left <= THICKEST_RULE && box.bottom - box.top <= THICKEST_RULE;
}

/** What of a box is shown; null for nothing. */
export function within(box: Box, shown: Box): Box | null {
  const kept = {
    left: Math.max(box.left, shown.left),
    top: Math.max(box.top, shown.top),
    right: Math.min(box.right, shown.right),
    bottom: Math.min(box.bottom, shown.bottom),
  };
  return kept.right > kept.left && kept.bottom > kept.top ? kept : null;
}
