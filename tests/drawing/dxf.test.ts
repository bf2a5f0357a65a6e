import DxfParser, {
  type IArcEntity,
  type ICircleEntity,
  type IDxf,
  type ILineEntity,
  type IPolylineEntity,
  type ITextEntity,
} from 'dxf-parser';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toDxf } from '../../src/drawing/dxf';
import { elevationScene } from '../../src/drawing/elevation';
import { polygon, text, type Scene } from '../../src/drawing/scene';
import type { Arc } from '../../src/head/head';
import { valueOf } from '../value';
import { degreesBetween, openings } from './openings';

// Read back with dxf-parser, which shares nothing with the writer. Group codes: Autodesk's DXF reference, release 12.

const WITHIN = 1e-6;
const DEGREES = 180 / Math.PI;

function read(dxf: string): IDxf {
  const parsed = new DxfParser().parseSync(dxf);
  if (!parsed) expect.fail('the independent reader found nothing');
  return parsed;
}

function arcsOn(dxf: IDxf, layer: string): IArcEntity[] {
  return dxf.entities.filter((entity) => entity.type === 'ARC' && entity.layer === layer) as IArcEntity[];
}

function isSameArc(drawn: IArcEntity, arc: Arc): boolean {
  const end = arc.start - arc.degrees;
  return (
    Math.abs(drawn.center.x - arc.center.x) < WITHIN &&
    Math.abs(drawn.center.y - arc.center.y) < WITHIN &&
    Math.abs(drawn.radius - arc.radius) < WITHIN &&
    closeTurn(drawn.startAngle * DEGREES, end) &&
    closeTurn(drawn.endAngle * DEGREES, arc.start)
  );
}

function closeTurn(one: number, other: number): boolean {
  const apart = degreesBetween(one, other);
  return Math.min(apart, 360 - apart) < WITHIN;
}

const scene = (shapes: Scene['shapes'], title = 'a', unit: Scene['unit'] = 'in'): Scene => ({
  title,
  description: '',
  unit,
  shapes,
});

describe('a drawing as DXF', () => {
  for (const { name, figures } of openings) {
    it(`holds the arcs of the core to 1e-6: ${name}`, () => {
      const dxf = read(toDxf(valueOf(elevationScene(figures))));
      const opening = valueOf(figures.head.arcs(0, figures.ends));
      if (figures.head.shape === 'round') {
        const circles = dxf.entities.filter((entity) => entity.type === 'CIRCLE') as ICircleEntity[];
        expect(circles.some((circle) => Math.abs(circle.radius - 12) < WITHIN)).toBe(true);
      } else if (figures.head.shape !== 'elliptical') {
        for (const arc of opening) expect(arcsOn(dxf, 'OPENING').some((drawn) => isSameArc(drawn, arc))).toBe(true);
        expect(arcsOn(dxf, 'OPENING')).toHaveLength(opening.length);
      } else {
        const fitted = [figures.reveal, figures.reveal + figures.face].flatMap((offset) =>
          valueOf(figures.head.arcs(offset, figures.ends)),
        );
        for (const arc of fitted) expect(arcsOn(dxf, 'FIT').some((drawn) => isSameArc(drawn, arc))).toBe(true);
        expect(arcsOn(dxf, 'FIT')).toHaveLength(fitted.length);
      }
    });

    it(`turns through the whole of both casing edges: ${name}`, () => {
      if (figures.head.shape === 'elliptical') return;
      const drawn = arcsOn(read(toDxf(valueOf(elevationScene(figures)))), 'CASING');
      for (const offset of [figures.reveal, figures.reveal + figures.face]) {
        for (const arc of valueOf(figures.head.arcs(offset, figures.ends))) {
          const own = drawn.filter(
            ({ center, radius }) =>
              Math.hypot(center.x - arc.center.x, center.y - arc.center.y) < WITHIN &&
              Math.abs(radius - arc.radius) < WITHIN,
          );
          const turn = own.reduce(
            (sum, { startAngle, endAngle }) => sum + degreesBetween(startAngle * DEGREES, endAngle * DEGREES),
            0,
          );
          expect(Math.abs(turn - arc.degrees)).toBeLessThan(WITHIN);
        }
      }
    });
  }

  it('states release 12 and its unit', () => {
    for (const [unit, code, measurement] of [
      ['in', 1, 0],
      ['mm', 4, 1],
    ] as const) {
      const { header } = read(toDxf(scene([text({ x: 0, y: 0 }, 'a', 1)], 'a', unit)));
      expect(header['$ACADVER']).toBe('AC1009');
      expect(header['$INSUNITS']).toBe(code);
      expect(header['$MEASUREMENT']).toBe(measurement);
    }
  });

  it('uses only the entities that release 12 has, on layers it declares', () => {
    for (const { figures } of openings) {
      const dxf = read(toDxf(valueOf(elevationScene(figures))));
      const layers = Object.keys(dxf.tables.layer.layers);
      for (const entity of dxf.entities) {
        expect(['LINE', 'ARC', 'CIRCLE', 'POLYLINE', 'TEXT']).toContain(entity.type);
        expect(layers).toContain(entity.layer);
      }
    }
  });

  it('writes a full turn as a circle', () => {
    const dxf = read(
      toDxf(scene([{ kind: 'arc', layer: 'opening', center: { x: 1, y: 2 }, radius: 3, start: 270, end: 630 }])),
    );
    expect(dxf.entities).toMatchObject([{ type: 'CIRCLE', radius: 3, center: { x: 1, y: 2 } }]);
  });

  it('writes an outline without arcs as one closed polyline, each corner once', () => {
    const corners = [
      { x: 0, y: 0 },
      { x: 4, y: 0 },
      { x: 4, y: 3 },
    ];
    const [drawn, ...others] = read(toDxf(scene([polygon('leg', corners)]))).entities as IPolylineEntity[];
    expect(others).toEqual([]);
    expect(drawn).toMatchObject({ type: 'POLYLINE', shape: true, layer: 'LEG' });
    expect(drawn!.vertices.map(({ x, y }) => ({ x, y }))).toEqual(corners);
  });

  it('keeps lines and text where they are', () => {
    const dxf = read(
      toDxf(
        scene([
          { kind: 'line', layer: 'center', from: { x: -1.5, y: 1e-7 }, to: { x: 2592.5, y: -0.0625 } },
          text({ x: 3, y: 4 }, 'R 18 3/16', 0.25, 'end', 30),
        ]),
      ),
    );
    const [line, words] = dxf.entities as [ILineEntity, ITextEntity];
    expect(line.vertices).toMatchObject([
      { x: -1.5, y: 1e-7 },
      { x: 2592.5, y: -0.0625 },
    ]);
    expect(words).toMatchObject({
      text: 'R 18 3/16',
      textHeight: 0.25,
      rotation: 30,
      endPoint: { x: 3, y: 4 },
      halign: 2,
    });
  });

  it('takes any text without letting it become anything but text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (words) => {
        const dxf = toDxf(scene([text({ x: 0, y: 0 }, words, 1)], words));
        expect(dxf).toMatch(/^[\x20-\x7e\r\n]*$/);
        const rows = dxf.split('\r\n');
        rows.pop();
        expect(rows.length % 2).toBe(0);
        rows.forEach((row, index) => {
          if (index % 2 === 0) expect(row).toMatch(/^ *\d+$/);
          else expect(row.length).toBeLessThanOrEqual(300);
        });
        expect(read(dxf).entities).toHaveLength(1);
      }),
    );
  });

  it('writes a percent sign and a degree sign by their codes, and no letter that only looks like one', () => {
    const written = toDxf(scene([text({ x: 0, y: 0 }, '50% of 18.43° %%u', 1)]));
    expect(written.split('\r\n')).toContain('50%%% of 18.43%%d %%%%%%u');
  });

  it('keeps plain ASCII text as it is', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[!-$&-~]{1,60}$/), (words) => {
        expect(read(toDxf(scene([text({ x: 0, y: 0 }, words, 1)]))).entities).toMatchObject([{ text: words }]);
      }),
    );
  });
});
