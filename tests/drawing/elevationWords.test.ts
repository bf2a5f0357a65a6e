import { describe, expect, it } from 'vitest';
import { explode } from '../../src/drawing/dimension';
import { elevationScene } from '../../src/drawing/elevation';
import type { ElevationFigures } from '../../src/drawing/elevationFigures';
import { ARC_ENDS, HEAD_SHAPES } from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { valueOf } from '../value';
import { openings } from './openings';

/** Pairs of upright words that lie on one another. Width of a letter: 0.7 of a capital's height, a plain face's average. */
function collisions(figures: ElevationFigures): string[] {
  const boxes = explode(valueOf(elevationScene(figures)).shapes).flatMap((shape) => {
    if (shape.kind !== 'text' || shape.turned !== 0) return [];
    const { at, text, height, anchor } = shape;
    const width = text.length * height * 0.7;
    const left = at.x - (anchor === 'start' ? 0 : anchor === 'end' ? width : width / 2);
    return [{ text, left, right: left + width, low: at.y - 0.2 * height, high: at.y + height }];
  });
  return boxes.flatMap((one, index) =>
    boxes.slice(index + 1).flatMap((other) => {
      const apart = one.right < other.left || other.right < one.left || one.high < other.low || other.high < one.low;
      return apart ? [] : [`${one.text} on ${other.text}`];
    }),
  );
}

describe('the words of an elevation', () => {
  it('stand clear of one another for every head, from 24 to 144 in span, flat to high, with and without legs', () => {
    const found: string[] = [];
    let drawn = 0;
    for (const shape of HEAD_SHAPES)
      for (const span of [24, 36, 72, 144])
        for (const part of [0.05, 0.08, 0.12, 0.17, 0.25, 0.33, 0.4, 0.5, 0.6, 0.9])
          for (const face of [2.25, 3.5])
            for (const ends of ARC_ENDS)
              for (const leg of [0, 80]) {
                const fixed = ['half round', 'quarter round', 'round', 'straight'].includes(shape);
                const head = makeHead(shape, span, fixed ? null : part * span);
                if (!head.ok) continue; // a rise this head can't have
                drawn++;
                const figures: ElevationFigures = { head: head.value, reveal: 0.1875, face, ends, leg, unit: 'in' };
                const said = collisions(figures);
                if (said.length > 0) found.push(`${shape} ${span} ${part} ${face} ${ends} ${leg}: ${said.join(', ')}`);
              }
    expect(drawn).toBeGreaterThan(2000);
    expect(found).toEqual([]);
  });

  it.each(openings)('stand clear of one another with joints and a mark, too: $name', ({ figures }) => {
    expect(collisions(figures)).toEqual([]);
  });
});
