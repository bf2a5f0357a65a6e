import { describe, expect, it } from 'vitest';
import { makeHead } from '../../src/head/makeHead';
import { isArc } from '../../src/head/pieces';
import { random } from '../random';
import { refusalOf, valueOf } from '../value';

const make = (span: number, rise: number, haunch: number | null) => makeHead('four-centered', span, rise, haunch);
/** The two limits that a refusal names. */
function limitsIn(sentence: string): readonly [number, number] {
  const [, least, most] = /more than ([\d.]+) and less than ([\d.]+)/.exec(sentence)!;
  return [Number(least), Number(most)];
}
const arcsOf = (span: number, rise: number, haunch: number) =>
  valueOf(valueOf(make(span, rise, haunch)).pieces(0, 'radial')).filter(isArc);

/*
 * From the construction alone (haunches of 60°, upper arcs tangent to them and through the crown): at its least rise the chord of
 * the haunch leads straight on to the crown, at its greatest the haunches meet there; the haunch lies between the same two.
 */
describe('a four-centered head is refused outside what its construction allows, and its sentence says where that begins', () => {
  it('of its rise: tan 15° and tan 30° of half the span, doubled', () => {
    const from = random(41);
    for (let at = 0; at < 20; at++) {
      const span = from.between(10, 200);
      const [least, most] = limitsIn(refusalOf(make(span, span, null)));
      expect(Math.abs(least - (span / 2) * Math.tan(Math.PI / 12))).toBeLessThan(1e-3 * span);
      expect(Math.abs(most - span * Math.tan(Math.PI / 6))).toBeLessThan(1e-3 * span);
      expect(refusalOf(make(span, least * 0.99, null))).toContain('rise of a four-centered head');
      expect(refusalOf(make(span, most * 1.01, null))).toContain('rise of a four-centered head');
    }
  });

  it('of its haunch: at the least it is nothing or the upper arcs are straight, at the most it reaches the middle or they are one', () => {
    const from = random(43);
    for (let at = 0; at < 40; at++) {
      const span = from.between(10, 200);
      const rise = span * from.between(0.15, 0.57);
      const [least, most] = limitsIn(refusalOf(make(span, rise, span)));
      const near = (most - least) * 1e-3;
      const [low, high] = [arcsOf(span, rise, least + near), arcsOf(span, rise, most - near)];
      // The haunches are gone, or the upper arcs straight.
      if (least > 0) expect(low[1]!.radius).toBeGreaterThan(100 * span);
      else expect(low[0]!.radius).toBeLessThan(1e-3 * span);
      // The haunches reach the middle, or the upper arcs are one about a center on the center line.
      if (most < span / 2 - 1e-9 * span) expect(Math.abs(high[1]!.center.x)).toBeLessThan(1e-3 * span);
      else expect(Math.abs(high[0]!.center.x)).toBeLessThan(1e-3 * span);
      for (const haunch of [least - near, most + near]) if (haunch > 0) expect(make(span, rise, haunch).ok).toBe(false);
    }
  });

  it('also of a haunch of just half the span', () => {
    expect(make(100, 56, 49.9).ok).toBe(true);
    expect(refusalOf(make(100, 56, 50))).toContain('haunch must be more than');
  });

  it('takes a quarter of the span where no haunch is given, as far as that can be', () => {
    expect(valueOf(make(40, 14, null)).haunch).toBe(10);
    const [least, most] = limitsIn(refusalOf(make(40, 22.5, null)));
    expect(refusalOf(make(40, 22.5, null))).toContain(
      'a four-centered head 40 wide and 22.5 high needs its haunch radius',
    );
    expect(least).toBeGreaterThan(10);
    expect(most).toBeGreaterThan(least);
  });
});
