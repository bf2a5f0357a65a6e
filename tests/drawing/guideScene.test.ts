import DxfParser, { type IArcEntity, type ICircleEntity } from 'dxf-parser';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guides } from '../../src/blank/guides';
import { toDxf } from '../../src/drawing/dxf';
import { guideScene } from '../../src/drawing/guideScene';
import { valueOf } from '../value';
import { anyBoards, boards } from './boards';

describe('a drawn pair of guide boards', () => {
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

  it("shows the blank's edges a clearance from each guide, and the molding between them", () => {
    const dxf = new DxfParser().parseSync(toDxf(valueOf(guideScene(boards))))!;
    const radii = (layer: string) =>
      dxf.entities.flatMap((entity) =>
        entity.type === 'ARC' && entity.layer === layer ? [(entity as IArcEntity).radius] : [],
      );
    expect(radii('BLANK')).toEqual([17.75, 21.75]);
    expect([...new Set(radii('CASING').map((radius) => Number(radius.toFixed(9))))]).toEqual([18, 21.5]);
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
});
