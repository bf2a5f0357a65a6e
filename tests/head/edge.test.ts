import { describe, expect, it } from 'vitest';
import { ARC_ENDS, HEAD_SHAPES, type Ends, type Head, type Point } from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { SHAPES } from '../../src/head/shapes';
import { random } from '../random';
import { valueOf } from '../value';
import { sizesOf } from './sizes';

/*
 * Laws of the lines themselves, by sampling: the edge of the opening stands on its spring points and reaches its crown, a line
 * beside it keeps its distance, is as long as it says, and ends where and how it says.
 */
const CASES = 12;
const PARTS = 400;

/** Points along the line at an offset, left to right. */
function line(head: Head, offset: number, ends: Ends): Point[] {
  const points = valueOf(head.points(offset, ends));
  if (points !== null) return [...points];
  return valueOf(head.pieces(offset, ends)).flatMap((piece) =>
    Array.from({ length: PARTS + 1 }, (_, part): Point => {
      if (piece.kind === 'straight') {
        const [u, w] = [piece.to.x - piece.from.x, piece.to.y - piece.from.y];
        return { x: piece.from.x + (u * part) / PARTS, y: piece.from.y + (w * part) / PARTS };
      }
      const angle = ((piece.start - (piece.degrees * part) / PARTS) * Math.PI) / 180;
      return { x: piece.center.x + piece.radius * Math.cos(angle), y: piece.center.y + piece.radius * Math.sin(angle) };
    }),
  );
}

const apart = (one: Point, other: Point) => Math.hypot(one.x - other.x, one.y - other.y);
const lengthOf = (points: readonly Point[]) =>
  points.reduce((sum, point, at) => (at === 0 ? 0 : sum + apart(points[at - 1]!, point)), 0);

/** How far a point stands from a line of many points. */
function distance(point: Point, from: readonly Point[]): number {
  let least = Infinity;
  for (let at = 1; at < from.length; at++) {
    const [a, b] = [from[at - 1]!, from[at]!];
    const [x, y] = [b.x - a.x, b.y - a.y];
    const along = Math.min(1, Math.max(0, ((point.x - a.x) * x + (point.y - a.y) * y) / (x * x + y * y || 1)));
    least = Math.min(least, Math.hypot(a.x + x * along - point.x, a.y + y * along - point.y));
  }
  return least;
}

describe.each(HEAD_SHAPES)('%s, on random sizes', (shape) => {
  const { closed, highSide } = SHAPES[shape];
  const each = (then: (head: Head, size: number, say: string) => void) => {
    const any = random(shape.length * 6151 + shape.charCodeAt(1));
    for (let at = 0; at < CASES; at++) {
      const { span, rise, haunch } = sizesOf(shape, any);
      const head = valueOf(makeHead(shape, span, rise, haunch));
      then(head, span + head.top, `${shape} ${span} × ${rise} (${haunch})`);
    }
  };

  it('the edge of the opening stands on its spring points and reaches its top', () => {
    each((head, size, say) => {
      const points = line(head, 0, 'radial');
      const [left, right] = [points[0]!, points.at(-1)!];
      if (closed) expect(apart(left, right), say).toBeLessThan(1e-9 * size);
      else {
        expect(apart(left, { x: -head.span / 2, y: 0 }), say).toBeLessThan(1e-9 * size);
        expect(apart(right, { x: head.span / 2, y: highSide ? head.top : 0 }), say).toBeLessThan(1e-9 * size);
      }
      const highest = Math.max(...points.map(({ y }) => y));
      expect(highest, say).toBeGreaterThan(head.top - 1e-4 * size);
      expect(highest, say).toBeLessThan(head.top + 1e-9 * size);
      expect(Math.max(...points.map(({ x }) => Math.abs(x))), say).toBeGreaterThan(head.span / 2 - 1e-4 * size);
    });
  });

  it('a line beside it keeps its distance', () => {
    each((head, size, say) => {
      const own = line(head, 0, 'radial');
      for (const offset of [3.5, -0.125]) {
        const beside = line(head, offset, 'radial').filter((_, at) => at % 40 === 7);
        const away = beside.map((point) => distance(point, own)).sort((one, other) => one - other);
        expect(away[0], say).toBeGreaterThan(Math.abs(offset) - 1e-4 * size);
        // Past a corner a line runs on, and its corner stands farther out; more than half of it does not.
        expect(away[Math.floor(away.length / 2)], say).toBeLessThan(Math.abs(offset) + 1e-4 * size);
      }
    });
  });

  it.each(ARC_ENDS)('is as long as it says and ends where and how it says: %s', (ends) => {
    each((head, size, say) => {
      for (const offset of [0, 3.5, -0.125]) {
        const points = line(head, offset, ends);
        expect(Math.abs(lengthOf(points) - valueOf(head.length(offset, ends))), say).toBeLessThan(1e-4 * size);
        const stops = valueOf(head.ends(offset, ends));
        if (stops === null) continue;
        for (const [end, first, second, out] of [
          [stops[0], points[0]!, points[1]!, -1],
          [stops[1], points.at(-1)!, points.at(-2)!, 1],
        ] as const) {
          expect(apart(end, first), say).toBeLessThan(1e-9 * size);
          const { x, y } = end.normal;
          expect(Math.hypot(x, y), say).toBeCloseTo(1, 9);
          const step = apart(first, second);
          // The normal points to the left of the way from left to right.
          const turn = (out * (x * (first.y - second.y) - y * (first.x - second.x))) / step;
          expect(turn, `${say} at ${offset}`).toBeLessThan(-0.99);
        }
      }
    });
  });
});
