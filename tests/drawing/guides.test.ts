import DxfParser, { type IArcEntity, type ICircleEntity } from 'dxf-parser';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guides } from '../../src/blank/guides';
import { toDxf } from '../../src/drawing/dxf';
import { guideLayout, guideOrdinates } from '../../src/drawing/guideLayout';
import { guideScene } from '../../src/drawing/guideScene';
import { refusalOf, valueOf } from '../value';
import { boards } from './boards';

const anyBoards = fc.record({
  radius: fc.double({ min: 4, max: 600, noNaN: true }),
  face: fc.double({ min: 1, max: 9, noNaN: true }),
  margin: fc.double({ min: 0, max: 0.5, noNaN: true }),
  clearance: fc.double({ min: 0, max: 0.125, noNaN: true }),
  bedLine: fc.double({ min: 3, max: 12, noNaN: true }),
});

describe('a pair of guide boards', () => {
  it('has the arcs that the blank needs, to 1e-6, read back from its DXF, for any figures', () => {
    fc.assert(
      fc.property(anyBoards, (given) => {
        const { radius, face, margin, clearance } = given;
        const dxf = new DxfParser().parseSync(toDxf(valueOf(guideScene({ ...boards, ...given }))))!;
        const pair = valueOf(guides(radius, face, margin, clearance));
        const arcs = dxf.entities.filter(({ type, layer }) => type === 'ARC' && layer === 'GUIDE') as IArcEntity[];
        for (const wanted of [pair.inside, pair.outside]) {
          const own = arcs.filter((arc) => Math.abs(arc.radius - wanted) < 1e-6);
          expect(own.length).toBeGreaterThan(0);
          for (const { center } of own) {
            expect(Math.abs(center.x)).toBeLessThan(1e-6);
            expect(Math.abs(center.y + radius)).toBeLessThan(1e-6);
          }
        }
        expect(
          arcs.every(({ radius: drawn }) =>
            [pair.inside, pair.outside].some((wanted) => Math.abs(drawn - wanted) < 1e-6),
          ),
        ).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it('leaves the blank and a clearance on each edge between the arcs, on the center line', () => {
    fc.assert(
      fc.property(anyBoards, (given) => {
        const { inside, outside } = valueOf(guideLayout({ ...boards, ...given }));
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

  it('draws six screws and two bed lines at the distance asked for', () => {
    const dxf = new DxfParser().parseSync(toDxf(valueOf(guideScene({ ...boards, bedLine: 6.5 }))))!;
    const screws = dxf.entities.filter(({ type, layer }) => type === 'CIRCLE' && layer === 'SCREW') as ICircleEntity[];
    expect(screws).toHaveLength(6);
    const bed = dxf.entities.filter(({ type, layer }) => type === 'LINE' && layer === 'BED') as unknown as {
      vertices: { x: number }[];
    }[];
    expect(bed.map(({ vertices }) => vertices.map(({ x }) => x))).toEqual([
      [-6.5, -6.5],
      [6.5, 6.5],
    ]);
  });

  it('says radius, profile and marks on each board, and the thin edge on the one it runs along', () => {
    for (const thinEdge of ['inside', 'outside'] as const) {
      const words = valueOf(guideScene({ ...boards, thinEdge })).shapes.flatMap((shape) =>
        shape.kind === 'text' ? [shape] : [],
      );
      const said = words.map(({ text }) => text);
      expect(said).toContain('R 17.7188 (17 23/32)');
      expect(said).toContain('R 21.7813 (21 25/32)');
      expect(said.filter((text) => text === 'Casing')).toHaveLength(2);
      expect(said.filter((text) => text === 'A1, A3')).toHaveLength(2);
      const [thin, ...others] = words.filter(({ text }) => text === 'THIN EDGE THIS SIDE');
      expect(others).toEqual([]);
      expect(thin!.at.y > 0).toBe(thinEdge === 'outside');
    }
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
    expect(refusalOf(guideScene({ ...boards, ...changed }))).toContain(sentence);
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
