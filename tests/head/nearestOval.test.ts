import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Arc } from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { random } from '../random';
import { expectNear, valueOf } from '../value';

const elliptical = (span: number, rise: number) => valueOf(makeHead('elliptical', span, rise));
const arcsOf = (span: number, rise: number, count: number, offset = 0) =>
  valueOf(elliptical(span, rise).arcs(offset, 'radial', count === undefined ? {} : { arcs: count }));

/** Distance of a point from the ellipse, by search over its parameter: coarse, then ever finer round the best. */
function distanceToEllipse(a: number, b: number, x: number, y: number): number {
  const away = (t: number) => Math.hypot(a * Math.cos(t) - x, b * Math.sin(t) - y);
  let best = 0;
  for (let at = 0; at <= 400; at++) {
    const t = (Math.PI * at) / 400;
    if (away(t) < away(best)) best = t;
  }
  for (let step = Math.PI / 400; step > 1e-12; step /= 2) {
    if (away(best + step) < away(best)) best += step;
    else if (away(best - step) < away(best)) best -= step;
  }
  return away(best);
}

/** Greatest of many points' distances, the points spread over all arcs. */
function sampledDeviation(a: number, b: number, offset: number, arcs: readonly Arc[]): number {
  let greatest = 0;
  for (const arc of arcs) {
    for (let at = 0; at <= 300; at++) {
      const angle = ((arc.start - (arc.degrees * at) / 300) * Math.PI) / 180;
      // Back to the arc the opening itself has, so that it is the ellipse it is compared with.
      const radius = arc.radius - offset;
      const x = arc.center.x + radius * Math.cos(angle);
      const y = arc.center.y + radius * Math.sin(angle);
      greatest = Math.max(greatest, distanceToEllipse(a, b, x, y));
    }
  }
  return greatest;
}

describe('the tangent arcs that stand for an ellipse', () => {
  // Greatest distances found by searches apart from this program: 0.2497 and 0.4087 for the best of three arcs, 0.3763 and
  // 0.9163 for the bisector construction.
  it.each([
    [72, 24, 0.2497, 0.3763],
    [72, 12, 0.4087, 0.9163],
  ])(
    'of %d × %d come within %d with three arcs, where the bisector construction misses by %d',
    (span, rise, best, bisector) => {
      const [arc] = arcsOf(span, rise, 3);
      expect(arc!.deviation).toBeLessThan(best);
      expect(arc!.deviation).toBeGreaterThan(best - 0.001);
      const bisectorArcs = valueOf(valueOf(makeHead('three-centered', span, rise)).arcs(0, 'radial'));
      expect(sampledDeviation(span / 2, rise, 0, bisectorArcs)).toBeCloseTo(bisector, 3);
    },
  );

  it.each([
    [72, 24, 3, 0],
    [72, 24, 5, 3.5],
    [72, 24, 7, 0],
    [72, 12, 3, 5],
    [72, 12, 5, -2],
    [72, 12, 7, 0],
    [48, 36, 3, 0],
    [48, 36, 7, 4],
    [72, 35, 5, 0],
    [72, 4, 7, 0],
  ])(
    'of %d × %d, %d of them, at offset %d: the stated deviation is the greatest of sampled distances',
    (span, rise, count, offset) => {
      const arcs = arcsOf(span, rise, count, offset);
      const stated = arcs[0]!.deviation;
      const sampled = sampledDeviation(span / 2, rise, offset, arcs);
      // Samples fall beside the very greatest: they may stay below it by a little, never exceed it.
      expect(sampled).toBeLessThanOrEqual(stated * (1 + 1e-9));
      expect(sampled).toBeGreaterThan(stated * 0.999);
    },
  );

  it('have the same deviation at every offset, and fewer with more arcs', () => {
    for (const [span, rise] of [
      [72, 24],
      [72, 12],
      [40, 60],
    ] as const) {
      const deviations = [3, 5, 7].map((count) => arcsOf(span, rise, count)[0]!.deviation);
      expect(deviations[1]).toBeLessThan(deviations[0]! / 3);
      expect(deviations[2]).toBeLessThan(deviations[1]! / 2);
      [3, 5, 7].forEach((count, at) => {
        for (const arc of arcsOf(span, rise, count, 3.6875)) expect(arc.deviation).toBe(deviations[at]);
      });
    }
  });

  const proportions = fc.record({
    span: fc.double({ min: 1, max: 400, noNaN: true }),
    share: fc.oneof(
      fc.double({ min: 0.002, max: 0.999, noNaN: true }),
      fc.double({ min: 1.001, max: 300, noNaN: true }),
    ),
    count: fc.constantFrom(3, 5, 7),
    offset: fc.double({ min: 0, max: 12, noNaN: true }),
  });

  it('are symmetric, begin and end upright on the spring points, pass through the crown and join without a corner', () => {
    fc.assert(
      fc.property(proportions, ({ span, share, count, offset }) => {
        const half = span / 2;
        const rise = half * share;
        const arcs = arcsOf(span, rise, count, offset);
        const size = Math.max(span, rise);
        const near = (actual: number, expected: number) =>
          expect(Math.abs(actual - expected)).toBeLessThan(1e-9 * size);
        expect(arcs).toHaveLength(count);
        expect(arcs[0]!.start).toBe(180);
        expect(arcs[0]!.center.y).toBe(0);
        near(arcs[0]!.center.x - arcs[0]!.radius, -half - offset);
        const crown = arcs[(count - 1) / 2]!;
        expect(crown.center.x).toBe(0);
        near(crown.center.y + crown.radius, rise + offset);
        arcs.forEach((arc, at) => {
          const mirror = arcs[count - 1 - at]!;
          expect(mirror.radius).toBe(arc.radius);
          expect(mirror.center.y).toBe(arc.center.y);
          expect(mirror.center.x + arc.center.x).toBe(0);
          expect(arc.radius).toBeGreaterThan(offset);
          const next = arcs[at + 1];
          if (!next) return;
          near((arc.start - arc.degrees - next.start) * size, 0);
          const angle = (next.start * Math.PI) / 180;
          near(arc.center.x + arc.radius * Math.cos(angle), next.center.x + next.radius * Math.cos(angle));
          near(arc.center.y + arc.radius * Math.sin(angle), next.center.y + next.radius * Math.sin(angle));
        });
        expectNear(
          arcs.reduce((sum, arc) => sum + arc.degrees, 0),
          180,
          1e-13,
        );
      }),
      { numRuns: 300 },
    );
  });

  it('keep a radius of more than 0 as far inside as the ellipse can be followed', () => {
    fc.assert(
      fc.property(proportions, ({ span, share, count }) => {
        const rise = (span / 2) * share;
        const tightest = Math.min(span / 2, rise) ** 2 / Math.max(span / 2, rise);
        for (const { radius } of arcsOf(span, rise, count, -0.999999 * tightest)) expect(radius).toBeGreaterThan(0);
      }),
      { numRuns: 100 },
    );
  });

  it('scale with the opening, and a tall ellipse has those of the low one lying on its side', () => {
    fc.assert(
      fc.property(proportions, ({ span, share, count }) => {
        const rise = (span / 2) * share;
        const arcs = arcsOf(span, rise, count);
        const large = arcsOf(3 * span, 3 * rise, count);
        expectNear(large[0]!.deviation, 3 * arcs[0]!.deviation, 1e-6);
        const turned = arcsOf(2 * rise, span / 2, count);
        expectNear(turned[0]!.deviation, arcs[0]!.deviation, 1e-6);
        expectNear(turned[0]!.radius, arcs[(count - 1) / 2]!.radius, 1e-4);
      }),
      { numRuns: 100 },
    );
  });

  it('add up to a length as near the true one as their deviation lets expect', () => {
    for (const [span, rise] of [
      [72, 24],
      [72, 12],
      [40, 60],
    ] as const) {
      for (const count of [3, 5, 7]) {
        const arcs = arcsOf(span, rise, count);
        const length = arcs.reduce((sum, arc) => sum + arc.length, 0);
        // Two curves turning through π, nowhere further apart than this, differ in length by no more than π times it.
        const most = Math.PI * arcs[0]!.deviation;
        expect(Math.abs(length - valueOf(elliptical(span, rise).length(0, 'radial')))).toBeLessThan(most);
      }
    }
  });
});

/**
 * An oval built apart from the program, from the angles where its arcs turn into the next and the radii between; the first and
 * last radius follow from the two ends. Its greatest distance from the ellipse is sought at 4,000 normals.
 */
function ovalDeviation(a: number, b: number, turns: readonly number[], inner: readonly number[]): number {
  const normals = turns.map((turn) => [Math.cos(turn), Math.sin(turn)] as const);
  const radiiFor = (first: number, last: number) => [first, ...inner, last];
  // Where the chain ends up is linear in the two radii: three trials give the two equations.
  const missed = (first: number, last: number) => {
    const radii = radiiFor(first, last);
    let [x, y] = [a - first, 0];
    normals.forEach(([nx, ny], at) => {
      x += (radii[at]! - radii[at + 1]!) * nx;
      y += (radii[at]! - radii[at + 1]!) * ny;
    });
    return [x, y + last - b] as const;
  };
  const [x0, y0] = missed(0, 0);
  const [x1, y1] = missed(1, 0);
  const [x2, y2] = missed(0, 1);
  const determinant = (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0);
  const first = (-x0 * (y2 - y0) + (x2 - x0) * y0) / determinant;
  const last = (-(x1 - x0) * y0 + x0 * (y1 - y0)) / determinant;
  const radii = radiiFor(first, last);
  if (radii.some((radius) => radius <= 0)) return Infinity;
  const centers: [number, number][] = [[a - first, 0]];
  normals.forEach(([nx, ny], at) => {
    const change = radii[at]! - radii[at + 1]!;
    centers.push([centers[at]![0] + change * nx, centers[at]![1] + change * ny]);
  });
  let greatest = 0;
  for (let at = 0; at <= 4_000; at++) {
    const turn = (Math.PI / 2) * (at / 4_000);
    const piece = turns.filter((end) => end < turn).length;
    const support = Math.sqrt((a * Math.cos(turn)) ** 2 + (b * Math.sin(turn)) ** 2);
    const [x, y] = centers[piece]!;
    greatest = Math.max(greatest, Math.abs(radii[piece]! + x * Math.cos(turn) + y * Math.sin(turn) - support));
  }
  return greatest;
}

describe('no other tangent arcs through spring points and crown come nearer to the ellipse', () => {
  const figuresOf = (arcs: readonly Arc[]) => {
    const right = arcs.slice((arcs.length + 1) / 2).reverse();
    return {
      turns: right.map((arc) => (arc.start * Math.PI) / 180),
      inner: right.slice(1).map((arc) => arc.radius),
    };
  };

  it.each([
    [36, 24],
    [36, 12],
    [20, 50],
  ])('half axes %d and %d: not among 4,000 turns of three arcs', (a, b) => {
    const stated = arcsOf(2 * a, b, 3)[0]!.deviation;
    let best = Infinity;
    for (let at = 1; at < 4_000; at++) best = Math.min(best, ovalDeviation(a, b, [(Math.PI / 2) * (at / 4_000)], []));
    expect(best).toBeGreaterThan(stated * (1 - 1e-6));
    expect(best).toBeLessThan(stated * 1.01);
  });

  it.each([
    [36, 24, 5],
    [36, 12, 5],
    [20, 50, 5],
    [36, 24, 7],
    [36, 12, 7],
    [20, 50, 7],
  ])('half axes %d and %d: not among 2,000 random changes, small and large, of %d arcs', (a, b, count) => {
    const arcs = arcsOf(2 * a, b, count);
    const { turns, inner } = figuresOf(arcs);
    const stated = arcs[0]!.deviation;
    expectNear(ovalDeviation(a, b, turns, inner), stated, 1e-5);
    const from = random(51);
    for (let at = 0; at < 2_000; at++) {
      const size = from.size(1e-5, 0.5);
      const change = () => 1 + from.between(-size, size);
      const changed = turns.map((turn) => turn * change());
      if (changed.some((turn, place) => turn >= Math.PI / 2 || turn <= (changed[place - 1] ?? 0))) continue;
      const deviation = ovalDeviation(
        a,
        b,
        changed,
        inner.map((radius) => radius * change()),
      );
      expect(deviation).toBeGreaterThan(stated * (1 - 1e-5));
    }
  });
});
