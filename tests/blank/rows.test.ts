import { describe, expect, it } from 'vitest';
import { flippedRow, halfTurnRow, rowsAcross, strips } from '../../src/blank/rows';
import { halfSegment, ring, type Ring } from '../../src/blank/ring';
import { sectorWidth } from '../../src/blank/width';
import { random } from '../random';
import { expectNear, valueOf } from '../value';
import { distance, outline } from './segmentShape';

/** Clear distance to the neighbor turned end for end in the same band, `step` along, by sampling both outlines. */
function clearance(of: Ring, half: number, step: number): number {
  const across = of.outside + of.inside * Math.cos(half);
  let least = Infinity;
  for (const { x, y } of outline(of, half, 600))
    least = Math.min(least, distance(of, half, { x: step - x, y: across - y }));
  return least;
}

describe('sawn segments in a band, every second one turned end for end', () => {
  it('are a kerf apart and no further, by sampled distance, on 300 random segments up to a half ring', () => {
    const any = random(5);
    for (let trial = 0; trial < 300; trial++) {
      const of = valueOf(ring(any.size(2, 100), any.between(0.5, 10), any.between(0, 1)));
      const half = any.between(0.03, Math.PI / 2 - 0.03);
      const kerf = any.between(0.01, 0.5);
      const { step } = halfTurnRow(of, half, kerf)!;
      expect(Math.abs(clearance(of, half, step) - kerf)).toBeLessThan(1e-5 * of.outside);
      expect(clearance(of, half, step * 0.98)).toBeLessThan(kerf);
    }
  });

  it.each([
    [18, 60, 0.0031],
    [30, 60, 0.0748],
    [18, 90, 0.1407],
    [30, 90, 0.1813],
  ])('save length against segments end to end: radius %d, %d°: %d', (radius, degrees, share) => {
    const { alone, step } = halfTurnRow(valueOf(ring(radius, 3.5, 0)), halfSegment(degrees, 1), 0.125)!;
    expect(1 - step / (alone + 0.125)).toBeCloseTo(share, 3);
  });

  it('take 21.5574 each after the first: radius 18, face 3-1/2, 60°', () => {
    expectNear(halfTurnRow(valueOf(ring(18, 3.5, 0)), halfSegment(60, 1), 0.125)!.step, 21.5574, 1e-5);
  });

  it('are not laid so past a half ring', () => expect(halfTurnRow(valueOf(ring(18, 3.5, 0)), 1.6, 0.125)).toBeNull());
});

describe('mitered segments flipped alternately on one strip', () => {
  /** Trapezoids standing at one another's slanted ends: where the last one's far corner comes to lie, by walking along the strip. */
  function walked(long: number, short: number, width: number, kerf: number, pieces: number): number {
    const slant = (long - short) / 2;
    const along = kerf * Math.hypot(1, slant / width);
    let [lower, upper] = [0, slant];
    for (let piece = 0; piece < pieces; piece++) {
      const down = piece % 2 === 0;
      lower += down ? long : short;
      upper += down ? short : long;
      if (piece < pieces - 1) [lower, upper] = [lower + along, upper + along];
    }
    return Math.max(lower, upper);
  }

  it('take n·(long + short)/2 + (n − 1)·kerf/cos g + (long − short)/2', () => {
    const of = valueOf(ring(18, 3.5, 0));
    for (const segments of [3, 4, 5, 8]) {
      const half = halfSegment(180, segments);
      const long = 2 * of.outside * Math.tan(half);
      const short = 2 * of.inside * Math.sin(half);
      const { alone, step } = flippedRow(of, half, 0.125)!;
      for (const pieces of [1, 2, 3, 7]) {
        expectNear(alone + (pieces - 1) * step, walked(long, short, sectorWidth(of, half), 0.125, pieces));
      }
    }
  });

  it('are as long as the check table says: radius 18, face 3-1/2, 180° in 4', () => {
    expectNear(flippedRow(valueOf(ring(18, 3.5, 0)), halfSegment(180, 4), 0)!.alone, 17.8111831820431, 1e-13);
  });
});

describe('strips side by side on a board', () => {
  it.each([
    [3.5, 7.25, 0.125, 2],
    [3.5, 7.125, 0.125, 2], // exactly as wide
    [3.5, 7.1, 0.125, 1],
    [6, 5.5, 0.125, 0],
  ])('of %d on %d wide, kerf %d: %d', (width, board, kerf, count) => expect(strips(width, board, kerf)).toBe(count));

  it('are as many rows of segments as their widths allow', () => {
    const of = valueOf(ring(18, 3.5, 0));
    const width = sectorWidth(of, halfSegment(180, 4));
    expect(rowsAcross(of, halfSegment(180, 4), 2 * width + 0.125, 0.125)).toBe(2);
    expect(rowsAcross(of, halfSegment(180, 4), 2 * width + 0.12, 0.125)).toBe(1);
  });
});
