import fc from 'fast-check';
import { expect, it } from 'vitest';
import { polar } from '../../src/angle';
import { dimensionLine, explode } from '../../src/drawing/dimension';
import { dimension, leader, type Text } from '../../src/drawing/scene';

const FIGURE = { value: 20, text: '20', height: 1 };
const direction = fc.double({ min: -180, max: 180, noNaN: true });

it('words along a slanted dimension are never upside down and stand on the side away from what is measured', () => {
  fc.assert(
    fc.property(direction, fc.constantFrom(-3, 3), (degrees, at) => {
      const shown = dimension('points', { x: 0, y: 0 }, polar({ x: 0, y: 0 }, 20, degrees), at, FIGURE);
      const words = explode([shown]).find((shape): shape is Text => shape.kind === 'text')!;
      expect(words.turned).toBeGreaterThan(-90);
      expect(words.turned).toBeLessThanOrEqual(90);
      expect(Math.abs(Math.sin(((words.turned - degrees) * Math.PI) / 180))).toBeLessThan(1e-9);
      // The middle of the letters, from the line through the measured points: beyond the dimension line, not on it.
      const middle = polar(words.at, 0.5, words.turned + 90);
      const left = polar({ x: 0, y: 0 }, 1, degrees + 90);
      expect((middle.x * left.x + middle.y * left.y) * Math.sign(at)).toBeGreaterThan(3 + 0.5);
    }),
  );
});

it('a dimension line of the points runs to the left of them, or to the right where it is less than 0', () => {
  for (const at of [3, -3]) {
    const [from, to] = dimensionLine(dimension('points', { x: 0, y: 0 }, { x: 20, y: 0 }, at, FIGURE));
    expect([from.x, from.y, to.x, to.y]).toEqual([0, at, 20, at]);
  }
});

it('the words of a leader stand beyond its tail, seen from its tip', () => {
  fc.assert(
    fc.property(direction, (degrees) => {
      const tail = polar({ x: 0, y: 0 }, 5, degrees);
      const words = explode([leader({ x: 0, y: 0 }, tail, FIGURE)]).find(
        (shape): shape is Text => shape.kind === 'text',
      )!;
      const middle = { x: words.at.x, y: words.at.y + 0.5 };
      expect(Math.hypot(middle.x, middle.y)).toBeGreaterThan(5);
    }),
  );
});
