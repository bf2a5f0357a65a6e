import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankLength } from '../../src/blank/length';
import { blankWidth } from '../../src/blank/width';
import { expectNear, refusalOf, valueOf } from '../value';

/** Worked out to 15 digits apart from this program, from the plane geometry of the annular sector; not published. */
const RING_TABLE = [
  { radius: 18, face: 3.5, angle: 180, segments: 3, width: 5.9115427318801, miter: 24.8260615751539, sawn: 21.5 },
  {
    radius: 18,
    face: 3.5,
    angle: 180,
    segments: 4,
    width: 4.87016841479684,
    miter: 17.8111831820431,
    sawn: 16.4553875916989,
  },
  {
    radius: 18,
    face: 3.5,
    angle: 180,
    segments: 5,
    width: 4.38098270668724,
    miter: 13.971546938015,
    sawn: 13.2877307581227,
  },
  {
    radius: 18,
    face: 3.5,
    angle: 180,
    segments: 6,
    width: 4.11333512679677,
    miter: 11.5218152745383,
    sawn: 11.1292189394084,
  },
  {
    radius: 30,
    face: 3.5,
    angle: 73.739795291688,
    segments: 2,
    width: 5.03950105848508,
    miter: 67 / 3,
    sawn: 21.1872603231,
  },
];

describe('the board one segment takes', () => {
  it.each(RING_TABLE)('radius $radius, face $face, $angle° in $segments segments', (row) => {
    const { radius, face, angle, segments } = row;
    expectNear(valueOf(blankWidth(radius, face, angle, segments)), row.width, 5e-13);
    expectNear(valueOf(blankLength(radius, face, angle, segments)), row.miter, 5e-13);
    expectNear(valueOf(blankLength(radius, face, angle, segments, 0, 'sawn')), row.sawn, 2e-12);
  });

  it('is the box round the sampled outline of the sawn ring, for any angle up to the full circle', () => {
    const anyRing = fc.record({
      radius: fc.double({ min: 1, max: 200, noNaN: true }),
      face: fc.double({ min: 0.5, max: 12, noNaN: true }),
      margin: fc.double({ min: 0, max: 0.9, noNaN: true }),
      angle: fc.double({ min: 1, max: 360, noNaN: true }),
      segments: fc.integer({ min: 1, max: 12 }),
    });
    fc.assert(
      fc.property(anyRing, ({ radius, face, margin, angle, segments }) => {
        const half = (angle / segments / 2) * (Math.PI / 180);
        const [inside, outside] = [radius - margin, radius + face + margin];
        let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
        const steps = 4000; // a multiple of 4, and both ends: the extremes at 0 and the corners are among the samples
        for (let step = 0; step <= steps; step++) {
          const turn = -half + (2 * half * step) / steps;
          for (const edge of [inside, outside]) {
            const [x, y] = [edge * Math.sin(turn), edge * Math.cos(turn)];
            [left, right, low, high] = [Math.min(left, x), Math.max(right, x), Math.min(low, y), Math.max(high, y)];
          }
        }
        expectNear(valueOf(blankWidth(radius, face, angle, segments, margin)), high - low, 1e-6);
        expectNear(valueOf(blankLength(radius, face, angle, segments, margin, 'sawn')), right - left, 1e-6);
      }),
      { numRuns: 200 },
    );
  });

  it('is what a ring of the margins alone would take', () => {
    expect(blankWidth(18, 3.5, 180, 3, 0.25)).toEqual(blankWidth(17.75, 4, 180, 3));
    expect(blankLength(18, 3.5, 180, 3, 0.25)).toEqual(blankLength(17.75, 4, 180, 3));
  });

  it('is the whole ring for a full circle in one piece', () => {
    expectNear(valueOf(blankWidth(18, 3.5, 360, 1)), 43);
    expectNear(valueOf(blankLength(18, 3.5, 360, 1, 0, 'sawn')), 43);
  });

  it('refuses a miter of 180° or more to the segment', () => {
    expect(refusalOf(blankLength(18, 3.5, 180, 1))).toBe(
      'segments must be more than angle/180 where boards are mitered, here more than 1; got 1',
    );
    expect(blankLength(18, 3.5, 180, 1, 0, 'sawn').ok).toBe(true);
  });

  it('refuses figures outside its domain in words', () => {
    expect(refusalOf(blankWidth(0, 3.5, 180, 3))).toBe('radius must be more than 0; got 0');
    expect(refusalOf(blankWidth(18, -1, 180, 3))).toBe('face must be more than 0; got -1');
    expect(refusalOf(blankWidth(18, 3.5, 361, 3))).toBe('angle must be no more than 360; got 361');
    expect(refusalOf(blankWidth(18, 3.5, 180, 2.5))).toBe('segments must be a whole number from 1 to 10000; got 2.5');
    expect(refusalOf(blankWidth(18, 3.5, 180, 3, 18))).toBe('margin must be less than radius, here 18; got 18');
    expect(refusalOf(blankWidth(18, 3.5, 180, 3, -0.25))).toBe('margin must be 0 or more; got -0.25');
    expect(refusalOf(blankWidth(18, 3.5, NaN, 3))).toBe('angle must be a number; got NaN');
  });
});
