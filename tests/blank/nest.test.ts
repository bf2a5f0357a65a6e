import { describe, expect, it } from 'vitest';
import { nest, nestPitch } from '../../src/blank/nest';
import { halfSegment, ring, type Ring } from '../../src/blank/ring';
import { blankWidth } from '../../src/blank/width';
import { random } from '../random';
import { expectNear, refusalOf, valueOf } from '../value';
import { distance, outline } from './segmentShape';

/** Clear distance between two segments, the upper `pitch` above the lower, by sampling both outlines. */
function clearance(of: Ring, half: number, pitch: number, steps = 400): number {
  let least = Infinity;
  for (const { x, y } of outline(of, half, steps)) {
    least = Math.min(least, distance(of, half, { x, y: y + pitch }), distance(of, half, { x, y: y - pitch }));
  }
  return least;
}

describe('nesting sawn segments across a board', () => {
  it('leaves exactly the kerf between neighbors, by sampled distance, on 400 random segments up to the full ring', () => {
    const any = random(11);
    for (let trial = 0; trial < 400; trial++) {
      const of = valueOf(ring(any.size(2, 200), any.between(0.5, 10), any.between(0, 1)));
      const half = any.between(0.01, Math.PI);
      const kerf = any.between(0.01, 0.3);
      const pitch = nestPitch(of, half, kerf);
      expect(Math.abs(clearance(of, half, pitch) - kerf)).toBeLessThan(2e-6 * of.outside);
      for (const part of [0.25, 0.5, 0.75, 0.99]) expect(clearance(of, half, pitch * part)).toBeLessThan(kerf);
    }
  });

  it('has the inner corners exactly the kerf from the neighbor below', () => {
    const of = valueOf(ring(18, 3.5, 0));
    const half = halfSegment(180, 4);
    const pitch = nestPitch(of, half, 0.125);
    const corner = { x: 18 * Math.sin(half), y: 18 * Math.cos(half) + pitch };
    expectNear(Math.hypot(corner.x, corner.y) - 21.5, 0.125, 1e-12);
  });

  it('counts one more for each pitch of board, from the board of one blank on', () => {
    const of = valueOf(ring(18, 3.5, 0));
    const one = valueOf(blankWidth(18, 3.5, 180, 4));
    const pitch = nestPitch(of, halfSegment(180, 4), 0.125);
    for (let count = 1; count <= 20; count++) {
      const board = one + (count - 1) * pitch;
      expect(valueOf(nest(18, 3.5, 180, 4, board, 0, 0.125))).toBe(count);
      expect(valueOf(nest(18, 3.5, 180, 4, board - 1e-6, 0, 0.125))).toBe(count - 1);
    }
  });

  it('has no margin and no kerf unless said', () => {
    const one = valueOf(blankWidth(18, 3.5, 180, 4));
    expect(valueOf(nest(18, 3.5, 180, 4, one))).toBe(1);
    const two = one + nestPitch(valueOf(ring(18, 3.5, 0)), halfSegment(180, 4), 0);
    expect([valueOf(nest(18, 3.5, 180, 4, two)), valueOf(nest(18, 3.5, 180, 4, two - 1e-6))]).toEqual([2, 1]);
  });

  it('takes sizes within 1e-12 of the outside radius as equal, however large the ring', () => {
    const one = valueOf(blankWidth(4996.5, 3.5, 180, 60));
    expect(valueOf(nest(4996.5, 3.5, 180, 60, one - 0.5e-12 * 5000))).toBe(1);
    expect(valueOf(nest(4996.5, 3.5, 180, 60, one - 2e-12 * 5000))).toBe(0);
  });

  it('puts whole rings side by side', () => {
    expect(nest(18, 3.5, 360, 1, 86.125, 0, 0.125)).toEqual({ ok: true, value: 2 });
    expect(nest(18, 3.5, 360, 1, 86, 0, 0.125)).toEqual({ ok: true, value: 1 });
  });

  it('refuses a board or kerf that is none', () => {
    expect(refusalOf(nest(18, 3.5, 180, 4, 0))).toBe('board_width must be more than 0; got 0');
    expect(refusalOf(nest(18, 3.5, 180, 4, 8, 0, -0.125))).toBe('kerf must be 0 or more; got -0.125');
  });
});
