import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { endOf, headCurve, reversed } from '../../src/drawing/curve';
import { leftEnd, rightEnd } from '../../src/head/pieces';
import { makeHead } from '../../src/head/makeHead';
import { refusalOf, valueOf } from '../value';
import { openings } from './openings';

describe('the drawn parallel curve of an ellipse', () => {
  it('lies at the offset from the ellipse, for any ellipse and offset outside it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 12, max: 120, noNaN: true }),
        fc.double({ min: 0.1, max: 0.6, noNaN: true }),
        fc.double({ min: 0, max: 8, noNaN: true }),
        (span, part, offset) => {
          const rise = part * span;
          const curve = valueOf(headCurve(valueOf(makeHead('elliptical', span, rise)), offset, 'radial'));
          for (const { to } of curve.steps.filter((_, index) => index % 17 === 0)) {
            expect(distanceToEllipse(to, span / 2, rise)).toBeCloseTo(offset, 6);
          }
        },
      ),
      { numRuns: 25 },
    );
  });

  it('is refused inside where the head has none', () => {
    expect(refusalOf(headCurve(valueOf(makeHead('elliptical', 72, 12)), -5, 'radial'))).toContain('offset must be');
  });

  it('is as long as the core says, less what straight pieces cut off', () => {
    const head = valueOf(makeHead('elliptical', 72, 24));
    const curve = valueOf(headCurve(head, 3.5, 'radial'));
    let from = curve.start;
    let length = 0;
    for (const { to } of curve.steps) {
      length += Math.hypot(to.x - from.x, to.y - from.y);
      from = to;
    }
    // True parallel of the ellipse with half axes 36 and 24 (numerical quadrature to 30 digits).
    expect(length).toBeLessThan(106.188211823308);
    expect(length).toBeGreaterThan(106.188211823308 - 0.002);
  });
});

describe('the curve of any other head', () => {
  it.each(openings)('begins and ends where its arcs do, and turns back the way it came: $name', ({ figures }) => {
    const { head, ends } = figures;
    const curve = valueOf(headCurve(head, 2, ends));
    if (head.shape === 'elliptical' || head.shape === 'straight') return;
    const { arcs } = curve;
    expect(curve.start).toEqual(leftEnd(arcs[0]!));
    const last = rightEnd(arcs.at(-1)!);
    expect(Math.hypot(endOf(curve).x - last.x, endOf(curve).y - last.y)).toBeLessThan(1e-12);
    const back = reversed(curve);
    expect([back.start, endOf(back)]).toEqual([endOf(curve), curve.start]);
    expect(reversed(back)).toEqual({ start: curve.start, steps: curve.steps });
  });
});

/** Nearest distance from a point outside to a half ellipse, by a fine search that uses no normal. */
function distanceToEllipse(point: { x: number; y: number }, half: number, rise: number): number {
  const at = (angle: number) => Math.hypot(point.x - half * Math.cos(angle), point.y - rise * Math.sin(angle));
  let [low, high] = [0, Math.PI];
  for (let round = 0; round < 12; round++) {
    const step = (high - low) / 24;
    let best = low;
    for (let angle = low; angle <= high + step / 2; angle += step) if (at(angle) < at(best)) best = angle;
    [low, high] = [best - step, best + step];
  }
  return at((low + high) / 2);
}
