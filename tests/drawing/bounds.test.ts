import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bounds } from '../../src/drawing/bounds';
import { explode } from '../../src/drawing/dimension';
import { elevationScene } from '../../src/drawing/elevation';
import { valueOf } from '../value';
import { openings } from './openings';

describe('the bounds of a drawing', () => {
  it('hold every point of every arc, for any arc', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -400, max: 400, noNaN: true }),
        fc.double({ min: 0.01, max: 360, noNaN: true }),
        fc.double({ min: 0.1, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (start, turn, radius, part) => {
          const box = bounds([
            { kind: 'arc', layer: 'guide', center: { x: 7, y: -3 }, radius, start, end: start + turn },
          ]);
          const angle = ((start + turn * part) * Math.PI) / 180;
          const [x, y] = [7 + radius * Math.cos(angle), -3 + radius * Math.sin(angle)];
          const slack = 1e-9 * (1 + radius);
          expect(x >= box.left - slack && x <= box.right + slack).toBe(true);
          expect(y >= box.bottom - slack && y <= box.top + slack).toBe(true);
        },
      ),
    );
  });

  it.each(openings)('reach the outermost points of the casing, and no less: $name', ({ figures }) => {
    const casing = explode(valueOf(elevationScene(figures)).shapes).filter((shape) => shape.layer === 'casing');
    const outer = figures.reveal + figures.face;
    const crown = figures.head.shape === 'pointed' ? null : figures.head.rise + outer;
    if (crown !== null) expect(bounds(casing).top).toBeCloseTo(crown, 9);
  });
});
