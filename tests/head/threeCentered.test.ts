import { describe, expect, it } from 'vitest';
import { makeHead } from '../../src/head/makeHead';
import { CASES, exact, exactAngle, expectExact, PI } from '../exact';
import { random } from '../random';
import { expectNear, refusalOf, valueOf } from '../value';

describe('a three-centered head by the bisector construction', () => {
  // Radii from the construction's formulas (named from memory after C. Bossut), tangency and lengths worked out to 15
  // digits apart from this program.
  it.each([
    [72, 24, 18.788897449072, 49.816653826392, 56.309932474020215, 95.5158652592642],
    [72, 12, 7.35088935932648, 97.9473319220206, 71.565051177078, 81.3924112504322],
    [72, 18, 12.4376941012509, 65.1246117974981, 63.434948822922, 87.9304952470616],
  ])('of %d × %d has the radii, the turn and the length of the table', (span, rise, haunch, crown, turn, length) => {
    const head = valueOf(makeHead('three-centered', span, rise));
    const arcs = valueOf(head.arcs(0, 'radial'));
    expect(arcs).toHaveLength(3);
    expectNear(arcs[0]!.radius, haunch, 1e-14);
    expectNear(arcs[1]!.radius, crown, 1e-14);
    expectNear(arcs[2]!.radius, haunch, 1e-14);
    expectNear(arcs[0]!.degrees, turn, 1e-14);
    expectNear(valueOf(head.length(0, 'radial')), length, 1e-14);
  });

  it('has its length to 1e-13 of 64-digit arithmetic, flat or high, at any offset and any ends', () => {
    const from = random(21);
    for (let at = 0; at < CASES; at++) {
      const span = from.size(1, 500);
      const rise = (span / 2) * from.size(1e-3, 1);
      const offset = from.between(0, span / 4);
      const a = exact(span).div(2);
      const b = exact(rise);
      const c = a.pow(2).plus(b.pow(2)).sqrt();
      const r = c.pow(2).minus(a.minus(b).times(c)).div(a.times(2));
      const R = c.pow(2).plus(a.minus(b).times(c)).div(b.times(2));
      const turn = exactAngle(a, b);
      const d = exact(offset);
      const length = r
        .plus(d)
        .times(turn)
        .plus(R.plus(d).times(PI.div(2).minus(turn)))
        .times(2);
      const ends = from.pick(['radial', 'level', 'legs'] as const);
      const head = valueOf(makeHead('three-centered', span, rise));
      expectExact(valueOf(head.length(offset, ends)), length, 1e-13, { span, rise, offset, ends });
    }
  });

  it('stands upright on the spring points, joins without a corner and passes through the crown', () => {
    const arcs = valueOf(valueOf(makeHead('three-centered', 72, 20)).arcs(2, 'radial'));
    expect(arcs[0]!.start).toBe(180);
    expectNear(arcs[0]!.center.x - arcs[0]!.radius, -38, 1e-14);
    expectNear(arcs[1]!.center.y + arcs[1]!.radius, 22, 1e-14);
    for (const [at, arc] of arcs.slice(0, -1).entries()) {
      const next = arcs[at + 1]!;
      expectNear(arc.start - arc.degrees, next.start, 1e-14);
      const angle = (next.start * Math.PI) / 180;
      expect(arc.center.x + arc.radius * Math.cos(angle)).toBeCloseTo(
        next.center.x + next.radius * Math.cos(angle),
        12,
      );
      expect(arc.center.y + arc.radius * Math.sin(angle)).toBeCloseTo(
        next.center.y + next.radius * Math.sin(angle),
        12,
      );
    }
    expect(arcs[2]!.start - arcs[2]!.degrees).toBeCloseTo(0, 12);
  });

  it('with a rise of half the span is a half round in three pieces; more is refused', () => {
    const head = valueOf(makeHead('three-centered', 36, 18));
    expectNear(valueOf(head.length(3.5, 'legs')), Math.PI * 21.5, 1e-15);
    for (const arc of valueOf(head.arcs(0, 'legs'))) expectNear(arc.radius, 18, 1e-15);
    expect(refusalOf(makeHead('three-centered', 36, 18.1))).toBe(
      'rise of a three-centered head must be no more than half the span, 18; got 18.1',
    );
  });

  it('refuses an inside offset past the haunch radius', () => {
    const head = valueOf(makeHead('three-centered', 72, 12));
    expect(refusalOf(head.length(-7.5, 'radial'))).toBe(
      'offset must be more than -7.35088935933, the haunch radius; got -7.5',
    );
    expect(head.length(-7.3, 'radial').ok).toBe(true);
  });
});
