import { describe, expect, it } from 'vitest';
import { blankLength } from '../../src/blank/length';
import { blankWidth } from '../../src/blank/width';

/** Figures computed independently to 30 digits from the plane geometry of the annular sector; no publication prints them. */
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
    miter: 22.3333333333,
    sawn: 21.1872603231,
  },
];

describe('the board one segment takes', () => {
  it.each(RING_TABLE)('radius $radius, face $face, $angle° in $segments', (row) => {
    const { radius, face, angle, segments } = row;
    const near = (result: { ok: boolean }, expected: number) => {
      expect(result).toMatchObject({ ok: true });
      const { value } = result as unknown as { value: number };
      expect(Math.abs(value / expected - 1)).toBeLessThan(2e-12);
    };
    near(blankWidth(radius, face, angle, segments), row.width);
    near(blankLength(radius, face, angle, segments, 0, 'miter'), row.miter);
    near(blankLength(radius, face, angle, segments, 0, 'sawn'), row.sawn);
  });
});
