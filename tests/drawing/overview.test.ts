import { describe, expect, it } from 'vitest';
import { explode } from '../../src/drawing/dimension';
import { guideLayout, type GuideBoards } from '../../src/drawing/guideLayout';
import { guideOverview, LETTER_PAGE } from '../../src/drawing/overview';
import type { Text } from '../../src/drawing/scene';
import { toSvg } from '../../src/drawing/svg';
import { valueOf } from '../value';
import { boards } from './boards';
import { everyElement, readSvg, wordsOf } from './readSvg';

function pageOf(given: GuideBoards): string {
  return toSvg(valueOf(guideOverview(given)), { size: 'true size', page: LETTER_PAGE });
}

/** The table of ordinates as it is read: columns from left to right, each from its heading down. */
function ordinatesOf(given: GuideBoards): string[][] {
  const words = explode(valueOf(guideOverview(given)).shapes).filter(
    (shape): shape is Text => shape.kind === 'text' && shape.layer === 'label',
  );
  const headings = words
    .filter(({ text }) => ['from center line', 'inside guide', 'outside guide'].includes(text))
    .sort((one, other) => one.at.x - other.at.x);
  return headings.map(({ at }) =>
    words
      .filter((word) => word.anchor === 'end' && Math.abs(word.at.x - at.x) < 1e-9 && word.at.y <= at.y)
      .sort((one, other) => other.at.y - one.at.y)
      .map(({ text }) => text),
  );
}

describe('the overview of a pair of guide boards', () => {
  it('is of letter size, states its scale and is not for tracing', () => {
    const overview = pageOf(boards);
    expect(readSvg(overview).attributes).toMatchObject({ width: '215.9mm', height: '279.4mm' });
    const scale = wordsOf(overview).find((words) => words.startsWith('Scale 1:'));
    expect(scale).toMatch(/^Scale 1:[\d.]+\. Not for tracing/);
    // The guide arcs are drawn to the scale stated.
    const ratio = Number(/1:([\d.]+)\./.exec(scale!)![1]);
    const radii = [...overview.matchAll(/A([\d.]+) /g)].map((match) => Number(match[1]));
    const inside = ((18 - 0.25 - 1 / 32) * 25.4) / ratio;
    expect(radii.some((radius) => Math.abs(radius - inside) < 1e-3)).toBe(true);
  });

  it('keeps everything on the page, for small and large figures', () => {
    for (const [radius, face, bedLine] of [
      [5, 2.25, 3],
      [18, 3.5, 5],
      [400, 9, 5],
      [60, 7, 30],
      [400, 9, 60],
    ] as const) {
      const marks = Array.from({ length: 60 }, (_, index) => `Opening-${index}`);
      const profile = radius === 5 ? 'unbroken'.repeat(60) : 'Casing';
      const overview = pageOf({ ...boards, marks, profile, radius, face, bedLine });
      const [, , width = 0, height = 0] = readSvg(overview).attributes['viewBox']!.split(' ').map(Number);
      for (const { name, attributes, text } of everyElement(readSvg(overview))) {
        if (name !== 'text') continue;
        const x = Number(attributes['x']);
        const wide = text.length * Number(attributes['font-size']) * 0.5;
        const anchor = attributes['text-anchor'] ?? 'start';
        const left = x - (anchor === 'start' ? 0 : anchor === 'end' ? wide : wide / 2);
        expect(left, text).toBeGreaterThan(0);
        expect(left + wide, text).toBeLessThan(width);
        expect(Number(attributes['y']), text).toBeLessThan(height);
        expect(Number(attributes['y']), text).toBeGreaterThan(0);
      }
    }
  });

  it('leaves the picture room above the ordinates of the longest boards a shop can have', () => {
    const shapes = explode(valueOf(guideOverview({ ...boards, radius: 400, face: 9, bedLine: 60 })).shapes);
    const heading = shapes.find((shape) => shape.kind === 'text' && shape.text.startsWith('Ordinates')) as Text;
    const guides = shapes.flatMap((shape) =>
      shape.kind === 'outline' && shape.layer === 'guide' ? [shape.start] : [],
    );
    expect(guides).toHaveLength(2);
    for (const { y } of guides) expect(y).toBeGreaterThan(heading.at.y);
  });

  it('tables each arc by its own distances, to its own end, where a tight one ends before the other', () => {
    const given = { ...boards, radius: 10, bedLine: 20, trammel: 5 };
    const { inside, outside } = valueOf(guideLayout(given));
    expect(inside.halfLength).toBeLessThan(outside.halfLength - 1);
    const [insideAt, insideHeights, outsideAt, outsideHeights] = ordinatesOf(given);
    expect([insideAt!.length, outsideAt!.length]).toEqual([insideHeights!.length, outsideHeights!.length]);
    for (const [guide, at, heights] of [
      [inside, insideAt!, insideHeights!],
      [outside, outsideAt!, outsideHeights!],
    ] as const) {
      expect(heights[1]).toBe(guide.rise.toFixed(4));
      expect(heights.at(-1)).toBe('0.0000');
      const chord = Math.sqrt((guide.radius - guide.halfLength) * (guide.radius + guide.halfLength));
      for (let row = 1; row < at.length - 1; row++) {
        expect(Number(heights[row])).toBeCloseTo(Math.sqrt(guide.radius ** 2 - Number(at[row]) ** 2) - chord, 4);
      }
    }
  });
});
