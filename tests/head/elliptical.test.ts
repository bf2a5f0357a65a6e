import { describe, expect, it } from 'vitest';
import { ARC_ENDS } from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { expectNear, refusalOf, valueOf } from '../value';

const elliptical = (span: number, rise: number) => valueOf(makeHead('elliptical', span, rise));

describe('the length of an elliptical head', () => {
  // Worked out to 15 digits apart from this program: half the perimeter + π·d, by J. Steiner's formula.
  it.each([
    [72, 24, 3.5, 106.188211823308, 106.0890697614],
    [72, 12, 3.5, 91.1849336108958, 90.5578933699254],
    [36, 12, 3.5, 58.591893055436, 58.5021818269571],
    [96, 16, 4.5, 121.056312705596, 120.246276037026],
  ])('%d × %d at %d outside is %d, not %d as an ellipse with its axes grown', (span, rise, offset, length, grown) => {
    for (const ends of ARC_ENDS) expectNear(valueOf(elliptical(span, rise).length(offset, ends)), length, 1e-14);
    expectNear(valueOf(elliptical(span + 2 * offset, rise + offset).length(0, 'radial')), grown, 1e-14);
  });

  it('agrees with the polygon through 200,000 points of the parallel curve, inside and outside, low and tall', () => {
    for (const [a, b, d] of [
      [36, 24, 3.5],
      [36, 12, -3.9],
      [18, 40, 3],
      [18, 40, -8],
    ] as const) {
      const points = 200_000;
      let length = 0;
      let before = { x: a + d, y: 0 };
      for (let at = 1; at <= points; at++) {
        const t = (Math.PI * at) / points;
        const normal = { x: b * Math.cos(t), y: a * Math.sin(t) };
        const size = Math.hypot(normal.x, normal.y);
        const now = { x: a * Math.cos(t) + (d * normal.x) / size, y: b * Math.sin(t) + (d * normal.y) / size };
        length += Math.hypot(now.x - before.x, now.y - before.y);
        before = now;
      }
      expectNear(valueOf(elliptical(2 * a, b).length(d, 'radial')), length, 1e-9);
    }
  });

  it('with a rise of half the span is that of a half round, in one piece', () => {
    expectNear(valueOf(elliptical(36, 18).length(3.5, 'legs')), 21.5 * Math.PI, 1e-15);
    const arcs = valueOf(elliptical(36, 18).arcs(3.5, 'radial', { arcs: 5 }));
    expect(arcs).toHaveLength(1);
    expect(arcs[0]).toMatchObject({ radius: 21.5, degrees: 180, deviation: 0 });
    // As near a half round as rounding: one arc still, which says by how much it misses the crown.
    const [near] = valueOf(elliptical(36, 18 + 1e-9).arcs(0, 'radial'));
    expectNear(near!.deviation, 1e-9, 1e-5);
  });

  it('refuses an inside offset past the tightest radius: at the springing of a low one, at the crown of a tall one', () => {
    expect(refusalOf(elliptical(72, 12).length(-4, 'radial'))).toBe(
      "offset must be more than -4, the ellipse's tightest radius; got -4",
    );
    expect(refusalOf(elliptical(24, 36).length(-4, 'radial'))).toBe(
      "offset must be more than -4, the ellipse's tightest radius; got -4",
    );
    expect(elliptical(72, 12).length(-3.99, 'radial').ok).toBe(true);
    expect(refusalOf(elliptical(72, 12).arcs(-4, 'radial', { arcs: 3 }))).toContain('tightest radius');
  });
});

describe('the arcs an elliptical head is run as', () => {
  it('are 3, 5 or 7, three unless said', () => {
    expect(valueOf(elliptical(72, 24).arcs(0, 'radial'))).toHaveLength(3);
    for (const count of [0, 1, 2, 4, 9, 3.5]) {
      expect(refusalOf(elliptical(72, 24).arcs(0, 'radial', { arcs: count }))).toBe(
        `arcs must be 3, 5 or 7; got ${count}`,
      );
    }
  });

  it('are refused for an ellipse flatter than 1 : 10,000', () => {
    expect(refusalOf(elliptical(72, 0.003).arcs(0, 'radial', { arcs: 5 }))).toBe(
      'no 5 arcs follow an ellipse of half axes 36 and 0.003; one may be at most 10,000 times the other',
    );
  });
});
