import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guideLayout, guideOrdinates } from '../../src/drawing/guideLayout';
import { refusalOf, valueOf } from '../value';
import { anyBoards, boards } from './boards';

describe('a pair of guide boards', () => {
  it('leaves the blank and a clearance on each edge between the arcs, on the center line', () => {
    fc.assert(
      fc.property(anyBoards, (given) => {
        const { inside, outside, center } = valueOf(guideLayout({ ...boards, ...given }));
        for (const guide of [inside, outside]) expect(guide.crown - center.y).toBeCloseTo(guide.radius, 9);
        const gap = outside.crown - inside.crown;
        expect(gap).toBeCloseTo(given.face + 2 * given.margin + 2 * given.clearance, 9);
      }),
    );
  });

  it('puts three screws into each board, at least 1/2 in from its edges and its arc', () => {
    fc.assert(
      fc.property(anyBoards, (given) => {
        const layout = valueOf(guideLayout({ ...boards, ...given }));
        for (const guide of [layout.inside, layout.outside]) {
          for (const { x, y } of guide.screws) {
            expect(Math.abs(x)).toBeLessThanOrEqual(guide.halfLength - 0.5);
            const fromArc = Math.abs(Math.hypot(x, y + given.radius) - guide.radius);
            expect(fromArc).toBeGreaterThan(0.5);
            expect(Math.abs(y - guide.back)).toBeGreaterThan(0.5);
            // On the board's own side of its arc, and before its back.
            const beyond =
              guide === layout.inside
                ? guide.radius - Math.hypot(x, y + given.radius)
                : Math.hypot(x, y + given.radius) - guide.radius;
            expect(beyond).toBeGreaterThan(0);
            expect(guide === layout.inside ? y > guide.back : y < guide.back).toBe(true);
          }
        }
      }),
    );
  });

  it.each([
    ['a clearance that eats the radius', { radius: 0.25, margin: 0.2, clearance: 0.1 }, 'clearance must be less than'],
    ['bed lines on the center line', { bedLine: 0 }, 'bed line distance must be more than 0; got 0'],
    ['a board too short for its screws', { halfLength: 1 }, 'guide boards must be more than 3 long'],
    ['a board too shallow for its screws', { depth: 1 }, 'at least 2 deep'],
    [
      'metric boards too shallow, without noise behind the figures',
      { unit: 'mm' as const, radius: 450, depth: 10 },
      'guide boards must be more than 76.2 long and at least 50.8 deep, for the screws; got 304.8 by 10',
    ],
    ['a face that is no number', { face: NaN }, 'face'],
  ])('refuses %s', (_, changed, sentence) => {
    expect(refusalOf(guideLayout({ ...boards, ...changed }))).toContain(sentence);
  });
});

describe('the ordinates of guide arcs', () => {
  it('lie on the arc, measured from the straight line between its ends, for radii to 2000', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 7, max: 2000, noNaN: true }),
        fc.double({ min: 0.25, max: 3, noNaN: true }),
        (radius, step) => {
          const given = { ...boards, radius };
          const layout = valueOf(guideLayout(given));
          for (const { guide, radius: arc, rows } of valueOf(guideOrdinates(given, step))) {
            const half = layout[guide].halfLength;
            const chord = Math.sqrt((arc - half) * (arc + half));
            for (const [x, height] of rows) expect(Math.hypot(x, height + chord) - arc).toBeCloseTo(0, 9);
            expect(rows[0]![0]).toBe(0);
            expect(rows.at(-1)).toEqual([half, 0]);
          }
        },
      ),
    );
  });
});
