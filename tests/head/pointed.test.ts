import { describe, expect, it } from 'vitest';
import { makeHead } from '../../src/head/makeHead';
import { CASES, exact, exactAcos, expectExact } from '../exact';
import { random } from '../random';
import { expectNear, refusalOf, valueOf } from '../value';

const EQUILATERAL = 18 * Math.sqrt(3);

describe('a pointed head', () => {
  it('is equilateral where its radius is the span: M. H. Bloxam, Principles of Gothic Ecclesiastical Architecture', () => {
    const head = valueOf(makeHead('pointed', 36, EQUILATERAL));
    expectNear(head.radius!, 36, 1e-15);
    expectNear(valueOf(head.length(0, 'radial')), (2 * Math.PI * 36) / 3, 1e-15);
  });

  it('is a lancet above that (centers outside the opening) and a drop arch below (inside): the same book', () => {
    const centerOf = (rise: number) => valueOf(valueOf(makeHead('pointed', 36, rise)).arcs(0, 'radial'))[0]!.center.x;
    expect(centerOf(EQUILATERAL + 5)).toBeGreaterThan(18);
    expect(centerOf(EQUILATERAL - 5)).toBeLessThan(18);
    expect(centerOf(EQUILATERAL - 5)).toBeGreaterThan(0);
  });

  it('runs on to the center line outside: 86.7137, not 82.7286, for 36 equilateral with a face of 3-1/2', () => {
    // Worked out to 15 digits apart from this program.
    const head = valueOf(makeHead('pointed', 36, EQUILATERAL));
    expectNear(valueOf(head.length(0, 'legs')), 75.398223686155, 1e-14);
    expectNear(valueOf(head.length(3.5, 'legs')), 86.713728904577, 1e-14);
    const [left, right] = valueOf(head.arcs(3.5, 'legs'));
    const apex = (right!.start * Math.PI) / 180;
    expect(right!.center.x + right!.radius * Math.cos(apex)).toBeCloseTo(0, 12);
    expectNear(right!.center.y + right!.radius * Math.sin(apex), 35.1603469834983, 1e-14);
    const leftEnd = ((left!.start - left!.degrees) * Math.PI) / 180;
    expect(left!.center.x + left!.radius * Math.cos(leftEnd)).toBeCloseTo(0, 12);
    expect(right!.start - right!.degrees).toBeCloseTo(0, 12);
  });

  it('has its length to 1e-13 of the trade’s formula in 64-digit arithmetic, inside and outside', () => {
    const from = random(31);
    for (let at = 0; at < CASES; at++) {
      const span = from.size(1, 500);
      const rise = (span / 2) * from.pick([from.between(1, 4), 1 + from.size(1e-9, 1e-2)]);
      const offset = from.pick([from.between(0, span), -from.between(0, 0.95) * (span / 2)]);
      const a = exact(span).div(2);
      const radius = a.pow(2).plus(exact(rise).pow(2)).div(exact(span));
      const at0 = radius.plus(exact(offset));
      const length = at0.times(exactAcos(radius.minus(a).div(at0))).times(2);
      const head = valueOf(makeHead('pointed', span, rise));
      expectExact(valueOf(head.length(offset, 'radial')), length, 1e-13, { span, rise, offset });
    }
  });

  it('with a rise of half the span is a half round; less is refused', () => {
    expectNear(valueOf(valueOf(makeHead('pointed', 36, 18)).length(3, 'radial')), 21 * Math.PI, 1e-15);
    expect(refusalOf(makeHead('pointed', 36, 17))).toBe(
      'rise of a pointed head must be at least half the span, 18; got 17',
    );
  });

  it('refuses an inside offset of half the span', () => {
    const head = valueOf(makeHead('pointed', 36, 30));
    expect(refusalOf(head.length(-18, 'radial'))).toBe(
      'offset must be more than -18, where the sides meet on the spring line; got -18',
    );
  });
});
