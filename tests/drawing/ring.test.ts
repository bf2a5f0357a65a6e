import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankLength } from '../../src/blank/length';
import { blankWidth } from '../../src/blank/width';
import { dimensionLine } from '../../src/drawing/dimension';
import { ringScene } from '../../src/drawing/ring';
import type { Dimension, Line } from '../../src/drawing/scene';
import { valueOf } from '../value';
import { anyRing, layoutOf } from './rings';

describe('the drawing of a ring', () => {
  it("writes the core's board length to scale and its width in words, for any ring", () => {
    fc.assert(
      fc.property(anyRing, fc.constantFrom('miter' as const, 'sawn' as const), (ring, cut) => {
        const { segments } = layoutOf(ring);
        if (cut === 'miter' && ring.angle / segments >= 180) return;
        const scene = valueOf(ringScene({ ...ring, segments, cut, unit: 'mm' }));
        const length = scene.shapes.find((shape) => shape.kind === 'dimension') as Dimension;
        expect(length.value).toBe(valueOf(blankLength(ring.radius, ring.face, ring.angle, segments, 0, cut)));
        const [from, to] = dimensionLine(length);
        expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeCloseTo(length.value, 6);
        const width = valueOf(blankWidth(ring.radius, ring.face, ring.angle, segments));
        const words = scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
        expect(words.some((said) => said.startsWith(`board width ${Math.round(width * 10) / 10},`))).toBe(true);
      }),
    );
  });

  it('draws grain on the segments only, along their chords', () => {
    const scene = valueOf(ringScene({ radius: 18, face: 3.5, angle: 180, margin: 0.25, segments: 5, unit: 'in' }));
    const grain = scene.shapes.filter((shape) => shape.layer === 'grain') as Line[];
    expect(grain.length).toBeGreaterThan(25);
    for (const { from, to } of grain) {
      for (const point of [from, to]) {
        const out = Math.hypot(point.x, point.y);
        expect(out).toBeGreaterThan(17.75 - 1e-9);
        expect(out).toBeLessThan(21.75 + 1e-9);
      }
      const direction = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
      const chord = ((((direction % 36) + 36) % 36) * 1e6) / 1e6;
      expect(Math.min(chord, 36 - chord)).toBeLessThan(1e-6);
    }
  });
});
