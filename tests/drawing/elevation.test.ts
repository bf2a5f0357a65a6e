import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { headCurve } from '../../src/drawing/curve';
import { dimensionLine, explode } from '../../src/drawing/dimension';
import { elevationScene } from '../../src/drawing/elevation';
import type { Dimension, Line, Scene } from '../../src/drawing/scene';
import { ENDS } from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { lengthText } from '../../src/lengthText';
import { refusalOf, valueOf } from '../value';
import { openings } from './openings';

function dimensions(scene: Scene): Dimension[] {
  return scene.shapes.filter((shape) => shape.kind === 'dimension');
}

function named(scene: Scene, name: string): Dimension | undefined {
  return dimensions(scene).find((dimension) => dimension.text.startsWith(name));
}

function joints(scene: Scene): Line[] {
  return scene.shapes.filter((shape) => shape.layer === 'joint') as Line[];
}

describe('the elevation of an opening', () => {
  it.each(openings)("writes the core's figures: $name", ({ figures }) => {
    const scene = valueOf(elevationScene(figures));
    const { head, reveal, face, ends } = figures;
    expect(named(scene, 'span ')).toMatchObject({ value: head.span, text: `span ${lengthText(head.span, 'in')}` });
    if (head.shape !== 'round' && head.shape !== 'straight') {
      expect(named(scene, 'rise ')).toMatchObject({ value: head.rise, text: `rise ${lengthText(head.rise, 'in')}` });
    }
    const words = scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    const length = lengthText(valueOf(head.length(reveal + face, ends)), 'in');
    expect(words.some((said) => said.includes(`outside length ${length}`))).toBe(true);
    const radii = scene.shapes.flatMap((shape) => (shape.kind === 'leader' ? [shape.value] : []));
    const own = new Set(valueOf(head.arcs(0, ends)).map((arc) => arc.radius.toFixed(6)));
    expect(new Set(radii.map((radius) => radius.toFixed(6)))).toEqual(own);
  });

  it.each(openings)('is to scale: every dimension line is as long as its figure says: $name', ({ figures }) => {
    for (const dimension of dimensions(valueOf(elevationScene(figures)))) {
      if (dimension.text.startsWith('leg ') && (figures.leg ?? 0) > figures.head.span / 2) continue; // drawn broken
      const [from, to] = dimensionLine(dimension);
      expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeCloseTo(dimension.value, 9);
    }
  });

  it.each(openings)('keeps every word clear of every other: $name', ({ figures }) => {
    const words = explode(valueOf(elevationScene(figures)).shapes).flatMap((shape) =>
      shape.kind === 'text' && shape.turned === 0 ? [shape] : [],
    );
    const boxes = words.map(({ at, text, height, anchor }) => {
      const width = text.length * height * 0.7;
      const left = at.x - (anchor === 'start' ? 0 : anchor === 'end' ? width : width / 2);
      return { text, left, right: left + width, low: at.y - 0.2 * height, high: at.y + height };
    });
    boxes.forEach((one, index) => {
      for (const other of boxes.slice(index + 1)) {
        const apart = one.right < other.left || other.right < one.left || one.high < other.low || other.high < one.low;
        expect(apart ? '' : `"${one.text}" on "${other.text}"`).toBe('');
      }
    });
  });

  it('draws one joint fewer than segments in each piece, and one where pieces meet', () => {
    for (const { figures } of openings) {
      const pieces = figures.segments ?? [];
      const expected = pieces.reduce((sum, count) => sum + count - 1, 0) + Math.max(0, pieces.length - 1);
      expect(joints(valueOf(elevationScene(figures)))).toHaveLength(expected);
    }
  });

  it('ends every joint of a circular head on both edges of the casing, for any span, rise and count', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 12, max: 144, noNaN: true }),
        fc.double({ min: 0.05, max: 1.4, noNaN: true }),
        fc.integer({ min: 2, max: 12 }),
        (span, part, count) => {
          const head = valueOf(makeHead('segmental', span, part * span * 0.5));
          const scene = valueOf(
            elevationScene({ head, reveal: 0.25, face: 3, ends: 'radial', segments: [count], unit: 'in' }),
          );
          const [arc] = valueOf(head.arcs(0, 'radial'));
          for (const { from, to } of joints(scene)) {
            const distance = ({ x, y }: { x: number; y: number }) => Math.hypot(x - arc!.center.x, y - arc!.center.y);
            expect(distance(from)).toBeCloseTo(arc!.radius + 0.25, 6);
            expect(distance(to)).toBeCloseTo(arc!.radius + 3.25, 6);
          }
        },
      ),
    );
  });

  it('keeps the joints of a head with mitered or level ends on the casing', () => {
    for (const ends of ENDS) {
      const head = valueOf(makeHead('segmental', 36, 6));
      const scene = valueOf(elevationScene({ head, reveal: 0.1875, face: 3.5, ends, segments: [40], unit: 'in' }));
      const drawn = joints(scene);
      expect(drawn).toHaveLength(39);
      for (const { from, to } of drawn) {
        const low = Math.hypot(from.x, from.y + 24);
        const high = Math.hypot(to.x, to.y + 24);
        expect(low).toBeGreaterThan(30.1875 - 1e-6);
        expect(high).toBeLessThan(33.6875 + 1e-6);
        expect(high).toBeGreaterThan(low);
      }
    }
  });

  it.each([
    ['a reveal below 0', { reveal: -1 }, 'reveal must be 0 or more'],
    ['a casing of no width', { face: 0 }, 'face must be more than 0'],
    ['a leg below 0', { leg: -2 }, 'leg must be 0 or more'],
    ['half a segment', { segments: [1.5] }, 'segments must be a whole number'],
  ])('refuses %s', (_, changed, sentence) => {
    const figures = { ...openings[0]!.figures, ...changed };
    expect(refusalOf(elevationScene(figures))).toContain(sentence);
  });

  it('passes on what the head refuses: a reveal that leaves no inside', () => {
    const head = valueOf(makeHead('elliptical', 72, 12));
    expect(refusalOf(headCurve(head, -5, 'radial'))).toContain('offset');
  });
});

describe('the drawn parallel curve of an ellipse', () => {
  it('lies at the offset from the ellipse, for any ellipse and offset outside it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 12, max: 120, noNaN: true }),
        fc.double({ min: 0.1, max: 0.6, noNaN: true }),
        fc.double({ min: 0, max: 8, noNaN: true }),
        (span, part, offset) => {
          const rise = part * span;
          const curve = valueOf(headCurve(valueOf(makeHead('elliptical', span, rise)), offset, 'radial'));
          for (const { to } of curve.steps.filter((_, index) => index % 17 === 0)) {
            expect(distanceToEllipse(to, span / 2, rise)).toBeCloseTo(offset, 6);
          }
        },
      ),
      { numRuns: 25 },
    );
  });

  it('is as long as the core says, less what straight pieces cut off', () => {
    const head = valueOf(makeHead('elliptical', 72, 24));
    const curve = valueOf(headCurve(head, 3.5, 'radial'));
    let from = curve.start;
    let length = 0;
    for (const { to } of curve.steps) {
      length += Math.hypot(to.x - from.x, to.y - from.y);
      from = to;
    }
    // True parallel of the ellipse with half axes 36 and 24 (numerical quadrature to 30 digits).
    expect(length).toBeLessThan(106.188211823308);
    expect(length).toBeGreaterThan(106.188211823308 - 0.002);
  });
});

/** Nearest distance from a point outside to a half ellipse, by a fine search that uses no normal. */
function distanceToEllipse(point: { x: number; y: number }, half: number, rise: number): number {
  const at = (angle: number) => Math.hypot(point.x - half * Math.cos(angle), point.y - rise * Math.sin(angle));
  let [low, high] = [0, Math.PI];
  for (let round = 0; round < 12; round++) {
    const step = (high - low) / 24;
    let best = low;
    for (let angle = low; angle <= high + step / 2; angle += step) if (at(angle) < at(best)) best = angle;
    [low, high] = [best - step, best + step];
  }
  return at((low + high) / 2);
}
