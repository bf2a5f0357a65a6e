import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { elevationScene } from '../../src/drawing/elevation';
import { guideScene } from '../../src/drawing/guideScene';
import { line, outline, text, type Scene } from '../../src/drawing/scene';
import { toSvg } from '../../src/drawing/svg';
import { valueOf } from '../value';
import { openings } from './openings';
import { everyElement, onLayer, readSvg } from './readSvg';

const ELEMENTS = ['svg', 'title', 'desc', 'style', 'g', 'path', 'circle', 'text'];

describe('a drawing as SVG', () => {
  it.each(openings)('is well-formed and colored by the page: $name', ({ figures }) => {
    const elements = everyElement(readSvg(toSvg(valueOf(elevationScene(figures)))));
    for (const { name, attributes } of elements) {
      expect(ELEMENTS).toContain(name);
      if (name === 'g') expect(attributes['stroke']).toBe('currentColor');
      for (const value of Object.values(attributes)) expect(value).not.toMatch(/NaN|Infinity|undefined|\de-\d/);
    }
    expect(elements[0]!.attributes['role']).toBe('img');
  });

  it('takes any text as text: nothing in it becomes an element or an attribute', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), fc.boolean(), (words, ownColors) => {
        const scene: Scene = { title: words, description: words, unit: 'in', shapes: [text({ x: 0, y: 0 }, words, 1)] };
        const svg = readSvg(toSvg(scene, { ownColors }));
        const names = everyElement(svg).map(({ name }) => name);
        expect(names).toEqual(['svg', 'title', 'desc', ...(ownColors ? ['style'] : []), 'g', 'text']);
        // What XML can't hold is replaced; a reader turns line ends into one sign.
        const kept = words
          .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '\uFFFD')
          .replace(/\r\n?/g, '\n');
        expect(onLayer(svg, 'label')[0]!.text).toBe(kept);
        expect(Object.keys(onLayer(svg, 'label')[0]!.attributes)).toEqual(
          expect.arrayContaining(['x', 'y', 'font-size', 'fill']),
        );
      }),
    );
  });

  it.each(['<script>alert(1)</script>', '"/><image href="x" onerror="y"/>', ']]>', '&amp;', '<!--', "' onload='"])(
    'escapes %s',
    (words) => {
      const scene: Scene = { title: words, description: words, unit: 'in', shapes: [text({ x: 0, y: 0 }, words, 1)] };
      const svg = readSvg(toSvg(scene));
      expect(everyElement(svg).map(({ name }) => name)).toEqual(['svg', 'title', 'desc', 'g', 'text']);
      expect(onLayer(svg, 'label')[0]!.text).toBe(words);
      expect(svg.attributes['aria-label']).toBe(words);
    },
  );

  it('is in millimeters of the real thing at true size, from inches and from millimeters', () => {
    for (const [unit, distance] of [
      ['in', 5],
      ['mm', 127],
    ] as const) {
      const scale = unit === 'in' ? 1 : 25.4;
      const scene = valueOf(
        guideScene({
          marks: ['A1'],
          profile: 'Casing',
          radius: 18 * scale,
          face: 3.5 * scale,
          thinEdge: 'inside',
          unit,
          bedLine: distance,
        }),
      );
      const svg = readSvg(toSvg(scene, { size: 'true size' }));
      const [left, right] = onLayer(svg, 'bed').map(({ attributes }) =>
        Number(/^M([\d.]+) /.exec(attributes['d']!)![1]),
      );
      expect(right! - left!).toBeCloseTo(254, 3);
      const [, , width] = svg.attributes['viewBox']!.split(' ').map(Number);
      expect(svg.attributes['width']).toBe(`${width}mm`);
      const radii = onLayer(svg, 'guide').map(({ attributes }) => Number(/A([\d.]+) /.exec(attributes['d']!)![1]));
      expect(radii[0]).toBeCloseTo((18 - 1 / 32) * 25.4, 3);
      expect(radii[1]).toBeCloseTo((21.5 + 1 / 32) * 25.4, 3);
    }
  });

  it('turns a round step the way it goes: over the top to the right sweeps with flag 1, back below with flag 0', () => {
    const center = { x: 0, y: 0 };
    const [left, right] = [
      { x: -1, y: 0 },
      { x: 1, y: 0 },
    ];
    const d = (clockwise: boolean) => {
      const shapes = [outline('casing', left, [{ to: right, round: { center, clockwise } }, { to: left }])];
      const scene: Scene = { title: '', description: '', unit: 'in', shapes };
      const svg = readSvg(toSvg(scene, { page: { left: -1, bottom: -1, right: 1, top: 1 } }));
      return onLayer(svg, 'casing')[0]!.attributes['d'];
    };
    expect(d(true)).toBe('M0 1A1 1 0 0 1 2 1L0 1Z');
    expect(d(false)).toBe('M0 1A1 1 0 0 0 2 1L0 1Z');
  });

  it('shows a given page instead of everything', () => {
    const scene: Scene = {
      title: '',
      description: '',
      unit: 'in',
      shapes: [line('center', { x: 1, y: 1 }, { x: 2, y: 3 })],
    };
    const svg = readSvg(toSvg(scene, { size: 'true size', page: { left: 0, bottom: 0, right: 8.5, top: 11 } }));
    expect(svg.attributes['width']).toBe('215.9mm');
    expect(svg.attributes['height']).toBe('279.4mm');
    expect(onLayer(svg, 'center')[0]!.attributes['d']).toBe('M25.4 254L50.8 203.2');
  });
});
