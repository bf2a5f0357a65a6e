import { describe, expect, it } from 'vitest';
import { ARC_ENDS, type HeadShape } from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { expectNear, refusalOf, valueOf } from '../value';

describe('heads that are a part of one circle', () => {
  it('a half round 36 wide, casing 3-1/2, reveal 3/16 has the lengths worked out to 30 digits for any ends', () => {
    const head = valueOf(makeHead('half round', 36, null));
    for (const ends of ARC_ENDS) {
      expectNear(valueOf(head.length(3 / 16, ends)), 57.1377163871644, 1e-14);
      expectNear(valueOf(head.length(3 / 16 + 1.75, ends)), 62.6355035309465, 1e-14);
      expectNear(valueOf(head.length(3 / 16 + 3.5, ends)), 68.1332906747286, 1e-14);
    }
  });

  it.each<[HeadShape, number, number, number, number, number]>([
    // shape, span, turn in degrees, radius, rise, x of the center
    ['half round', 36, 180, 18, 18, 0],
    ['quarter round', 24, 90, 24, 24, 12],
    ['round', 24, 360, 12, 24, 0],
  ])('a %s of span %d turns through %d degrees on radius %d', (shape, span, degrees, radius, rise, x) => {
    const head = valueOf(makeHead(shape, span, null));
    expect(head.rise).toBe(rise);
    expect(head.radius).toBe(radius);
    // A quarter round's high side runs on to a leg of its own.
    for (const ends of shape === 'quarter round' ? (['radial', 'level'] as const) : ARC_ENDS) {
      const arcs = valueOf(head.arcs(2, ends));
      expect(arcs).toHaveLength(1);
      const [arc] = arcs;
      expect(arc!.radius).toBe(radius + 2);
      expectNear(arc!.degrees, degrees, 1e-15);
      expect(arc!.center.x).toBe(x);
      expect(arc!.deviation).toBe(0);
      expectNear(valueOf(head.length(2, ends)), ((radius + 2) * degrees * Math.PI) / 180, 1e-15);
    }
  });

  it('begin at the left spring point; the round at its lowest point', () => {
    const beginning = (shape: HeadShape) => {
      const [arc] = valueOf(valueOf(makeHead(shape, 20, null)).arcs(0, 'radial'));
      const angle = (arc!.start * Math.PI) / 180;
      return [arc!.center.x + arc!.radius * Math.cos(angle), arc!.center.y + arc!.radius * Math.sin(angle)];
    };
    for (const [shape, x] of [
      ['half round', -10],
      ['quarter round', -10],
      ['round', 0],
    ] as const) {
      const [left, up] = beginning(shape);
      expect(left).toBeCloseTo(x, 12);
      expect(up).toBeCloseTo(0, 12);
    }
  });

  it('take the rise they would have anyway, also where rounding has touched it', () => {
    const span = 914.4 / 25.4 / 3;
    expect(makeHead('half round', span, span / 2).ok).toBe(true);
    expect(makeHead('half round', span, (span / 2) * (1 + 1e-12)).ok).toBe(true);
    expect(makeHead('quarter round', 24, 24).ok).toBe(true);
    expect(makeHead('round', 24, 24).ok).toBe(true);
  });

  it.each<[HeadShape, number, number, string]>([
    ['half round', 36, 17, 'rise of a half round must be half the span, 18, or left out; got 17'],
    ['half round', 36, 18 + 1 / 64, 'rise of a half round must be half the span, 18, or left out; got 18.015625'],
    ['quarter round', 36, 18, 'rise of a quarter round must be the span, 36, or left out; got 18'],
    ['round', 36, 18, 'rise of a round must be the span, 36, or left out; got 18'],
    ['round', -36, 18, 'span must be more than 0; got -36'],
    ['half round', 36, -18, 'rise must be more than 0; got -18'],
  ])('a %s of span %d refuses a rise of %d', (shape, span, rise, sentence) => {
    expect(refusalOf(makeHead(shape, span, rise))).toBe(sentence);
  });

  it.each<[HeadShape, number]>([
    ['half round', -18],
    ['quarter round', -36],
    ['round', -18],
  ])('a %s refuses an inside offset that reaches its center, %d', (shape, offset) => {
    const head = valueOf(makeHead(shape, 36, null));
    expect(refusalOf(head.length(offset, 'radial'))).toContain(`offset must be more than ${offset}`);
    expect(valueOf(head.length(offset + 1e-6, 'radial'))).toBeGreaterThan(0);
  });
});
