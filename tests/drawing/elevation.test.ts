import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bounds } from '../../src/drawing/bounds';
import { dimensionLine, explode } from '../../src/drawing/dimension';
import { elevationScene } from '../../src/drawing/elevation';
import type { Dimension, Line, Scene } from '../../src/drawing/scene';
import { ARC_ENDS } from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { legTop } from '../../src/head/segmental';
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
    for (const ends of ARC_ENDS) {
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

  it.each(ARC_ENDS)('shares the angle of the longer edge equally among the segments, ends %s', (ends) => {
    for (const rise of [6, 24]) {
      const head = valueOf(makeHead('segmental', 36, rise));
      const scene = valueOf(elevationScene({ head, reveal: 0.25, face: 3.5, ends, segments: [4], unit: 'in' }));
      const [inner] = valueOf(head.arcs(0.25, ends));
      const [outer] = valueOf(head.arcs(3.75, ends));
      const whole = Math.max(inner!.degrees, outer!.degrees);
      const { center } = inner!;
      const directions = joints(scene).map(({ to }) => (Math.atan2(to.y - center.y, to.x - center.x) * 180) / Math.PI);
      const wanted = [1, 2, 3].map((joint) => 90 + whole / 2 - (whole * joint) / 4);
      directions.forEach((direction, at) => expect(Math.abs(direction - wanted[at]!) % 360).toBeCloseTo(0, 9));
    }
  });

  /** The upper corners of each leg, jamb side first. */
  const legTops = (scene: Scene) =>
    scene.shapes
      .flatMap((shape) => (shape.kind === 'outline' && shape.layer === 'leg' ? [shape.steps] : []))
      .map(([inside, outside]) => [inside!.to, outside!.to] as const);

  it('cuts a leg on the radial line of a segmental head that ends there', () => {
    const head = valueOf(makeHead('segmental', 36, 9));
    const tops = legTops(
      valueOf(elevationScene({ head, reveal: 0.25, face: 3.5, ends: 'radial', leg: 10, unit: 'in' })),
    );
    expect(tops).toHaveLength(2);
    // Radius 22.5: the center lies 13.5 below the spring points at 18.
    for (const corner of tops.flat()) expect(corner.y).toBeCloseTo(((Math.abs(corner.x) - 18) * 13.5) / 18, 9);
  });

  it('miters a leg to the ends of the head, and squares it at a level cut', () => {
    const head = valueOf(makeHead('segmental', 36, 6));
    const drawn = (ends: 'legs' | 'level') =>
      legTops(valueOf(elevationScene({ head, reveal: 0.25, face: 3.5, ends, leg: 10, unit: 'in' })));
    for (const [inside, outside] of drawn('legs')) {
      expect(inside.y).toBeCloseTo(legTop(36, 6, 0.25), 9);
      expect(outside.y).toBeCloseTo(legTop(36, 6, 3.75), 9);
    }
    for (const corner of drawn('level').flat()) expect(corner.y).toBe(0);
  });

  it('draws a leg longer than half the span broken, a shorter one whole', () => {
    const breaks = (leg: number) =>
      valueOf(elevationScene({ ...openings[0]!.figures, leg })).shapes.filter(
        (shape) => shape.kind === 'polyline' && shape.layer === 'leg',
      );
    expect(breaks(18.1)).toHaveLength(2);
    expect(breaks(18)).toEqual([]);
  });

  /** Its casing ends almost 3 below the spring line, half the span. */
  const belowSpring = {
    name: 'a wide casing round a small, high arch',
    figures: { ...openings[0]!.figures, head: valueOf(makeHead('segmental', 6, 5)), face: 6 },
  };

  it.each([...openings, belowSpring])(
    'draws the jambs down to where the casing ends, or lower: $name',
    ({ figures }) => {
      const { shapes } = valueOf(elevationScene(figures));
      if (figures.head.shape === 'round') return;
      const lowest = (layer: string) => bounds(explode(shapes).filter((shape) => shape.layer === layer)).bottom;
      expect(lowest('opening')).toBeLessThanOrEqual(lowest('casing') + 1e-9);
    },
  );

  it('runs the high leg of a quarter round up past the crown, where the arc meets it, and has none where the arc stops', () => {
    const head = valueOf(makeHead('quarter round', 24, null));
    const tops = (ends: 'radial' | 'legs') =>
      legTops(valueOf(elevationScene({ head, reveal: 3 / 16, face: 3.5, ends, leg: 10, unit: 'in' })));
    const [left, right] = tops('legs');
    expect(left!.map(({ y }) => y)).toEqual([0, 0]);
    // Worked out independently here: √((24 + d)² − d²).
    expect(right![0].y).toBeCloseTo(24.1867732449, 9);
    expect(right![1].y).toBeCloseTo(27.440845468, 9);
    expect(tops('radial')).toHaveLength(1);
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

  it('passes on what the head refuses: an ellipse too flat for arcs', () => {
    const head = valueOf(makeHead('elliptical', 72, 0.003));
    expect(refusalOf(elevationScene({ ...openings[0]!.figures, head }))).toContain('no 3 arcs follow an ellipse');
  });
});
