import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankLength } from '../../src/blank/length';
import { nest } from '../../src/blank/nest';
import { miteredLayoutScene, nestedLayoutScene, type BoardLayoutFigures } from '../../src/drawing/boardLayout';
import type { Dimension, Outline, Point, Scene } from '../../src/drawing/scene';
import { refusalOf, valueOf } from '../value';
import { anyRing, layoutOf } from './rings';

const figures: BoardLayoutFigures = {
  radius: 18,
  face: 3.5,
  angle: 180,
  segments: 4,
  margin: 0.25,
  kerf: 0.125,
  boardWidth: 9.25,
  boardLength: 96,
  unit: 'in',
};

function outlines(scene: Scene, layer: string): Outline[] {
  return scene.shapes.filter((shape) => shape.kind === 'outline' && shape.layer === layer) as Outline[];
}

/** Points along an outline, its arcs followed. */
function sampled(shape: Outline): Point[] {
  const points: Point[] = [];
  let from = shape.start;
  for (const { to, round } of shape.steps) {
    for (let part = 0; part < 12; part++) {
      const t = part / 12;
      if (!round) points.push({ x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t });
      else {
        const { center } = round;
        const start = Math.atan2(from.y - center.y, from.x - center.x);
        const turn = Math.atan2(to.y - center.y, to.x - center.x) - start;
        const short = turn > Math.PI ? turn - 2 * Math.PI : turn < -Math.PI ? turn + 2 * Math.PI : turn;
        const radius = Math.hypot(from.x - center.x, from.y - center.y);
        points.push({
          x: center.x + radius * Math.cos(start + short * t),
          y: center.y + radius * Math.sin(start + short * t),
        });
      }
    }
    from = to;
  }
  return points;
}

function expectOnBoard(points: readonly Point[], { boardLength, boardWidth }: BoardLayoutFigures) {
  for (const { x, y } of points) {
    expect(x).toBeGreaterThan(-1e-6);
    expect(x).toBeLessThan(boardLength + 1e-6);
    expect(y).toBeGreaterThan(-1e-6);
    expect(y).toBeLessThan(boardWidth + 1e-6);
  }
}

describe('mitered segments on a board', () => {
  it('lie within the board with a kerf of the saw between them, for any ring', () => {
    fc.assert(
      fc.property(anyRing, (ring) => {
        const given = layoutOf(ring);
        const scene = valueOf(miteredLayoutScene(given));
        const boards = outlines(scene, 'blank');
        expect(boards).toHaveLength(given.segments);
        const corners = boards.map(({ start, steps }) => [start, ...steps.map(({ to }) => to)]);
        corners.forEach((board) => expectOnBoard(board, given));
        for (let index = 1; index < corners.length; index++) {
          // Lower right and upper right of one, lower left of the next.
          const [, low, high] = corners[index - 1]!;
          const [next] = corners[index]!;
          const along = { x: high!.x - low!.x, y: high!.y - low!.y };
          const across = (along.y * (next!.x - low!.x) - along.x * (next!.y - low!.y)) / Math.hypot(along.x, along.y);
          expect(across).toBeCloseTo(ring.kerf, 6);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('hold their part of the ring', () => {
    const scene = valueOf(miteredLayoutScene(figures));
    const boards = outlines(scene, 'blank');
    outlines(scene, 'casing').forEach((segment, index) => {
      const { start, steps } = boards[index]!;
      const corners = [start, ...steps.map(({ to }) => to)];
      for (const point of sampled(segment)) {
        for (let side = 0; side + 1 < corners.length; side++) {
          const [from, to] = [corners[side]!, corners[side + 1]!];
          const inside = (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
          expect(inside).toBeGreaterThan(-1e-6);
        }
      }
    });
  });

  it('say the length of one board as the core gives it', () => {
    const [one] = valueOf(miteredLayoutScene(figures)).shapes.filter(
      (shape) => shape.kind === 'dimension',
    ) as Dimension[];
    expect(one!.value).toBe(valueOf(blankLength(18, 3.5, 180, 4, 0.25)));
  });

  it('are refused on a board that is too narrow or too short for one', () => {
    expect(refusalOf(miteredLayoutScene({ ...figures, boardWidth: 4 }))).toContain('board must be at least');
    expect(refusalOf(miteredLayoutScene({ ...figures, boardLength: 10 }))).toContain('board must be at least');
  });
});

describe('nested sawn segments', () => {
  it('stand as many above one another as the core says, on the board, a kerf apart, for any ring', () => {
    fc.assert(
      fc.property(anyRing, (ring) => {
        const given = layoutOf(ring);
        const scene = valueOf(nestedLayoutScene(given));
        const drawn = outlines(scene, 'casing').map(sampled);
        expect(drawn).toHaveLength(given.segments);
        drawn.forEach((points) => expectOnBoard(points, given));
        const rows = valueOf(nest(ring.radius, ring.face, ring.angle, given.segments, ring.boardWidth, 0, ring.kerf));
        const left = (points: readonly Point[]) => Math.min(...points.map(({ x }) => x));
        for (let at = rows; at < drawn.length; at += rows) {
          const pitch = valueOf(blankLength(ring.radius, ring.face, ring.angle, given.segments, 0, 'sawn')) + ring.kerf;
          expect(left(drawn[at]!) - left(drawn[at - rows]!)).toBeCloseTo(pitch, 6);
        }
        if (rows < 2 || given.segments < 2) return;
        const [first, second] = drawn;
        const nearest = Math.min(
          ...first!.map((one) => Math.min(...second!.map((other) => Math.hypot(one.x - other.x, one.y - other.y)))),
        );
        expect(nearest).toBeGreaterThan(ring.kerf - 1e-6);
      }),
      { numRuns: 60 },
    );
  });
});
