import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ends, HeadShape } from '../../src/head/head';
import { crownRadius, endJoints, legTops, mitersLegs, miter } from '../../src/head/joints';
import { makeHead } from '../../src/head/makeHead';
import { legTop } from '../../src/head/segmental';
import { CASES, exact, exactAngle, expectExact, PI } from '../exact';
import { random } from '../random';
import { expectNear, refusalOf, valueOf } from '../value';

describe('the miter between a leg and an arched head', () => {
  it('is 25.7 degrees for 36 × 6, face 3-1/2, reveal 3/16, as its docstring says', () => {
    expect(valueOf(miter(36, 6, 3.5, 3 / 16)).toFixed(1)).toBe('25.7');
  });

  it('has to 1e-12 the slope from corner to corner, each found where its arc meets the edge of the leg', () => {
    const from = random(61);
    for (let at = 0; at < CASES; at++) {
      const span = from.size(4, 400);
      const rise = (span / 2) * from.pick([from.size(1e-3, 0.999), from.between(1.001, 3)]);
      const face = from.between(0.5, 12);
      const reveal = from.between(0, 2);
      const a = exact(span).div(2);
      const h = exact(rise);
      const radius = a.pow(2).plus(h.pow(2)).div(h.times(2));
      // Height above the arc's center where the circle of radius R + d stands a + d from the center line.
      const height = (offset: typeof a) => {
        const size = radius.plus(offset).pow(2).minus(a.plus(offset).pow(2)).sqrt();
        return rise < span / 2 ? size : size.neg();
      };
      const rose = height(exact(reveal).plus(exact(face))).minus(height(exact(reveal)));
      const angle = exactAngle(rose, exact(face)).times(180).div(PI);
      expectExact(valueOf(miter(span, rise, face, reveal)), angle, 1e-12, { span, rise, face, reveal });
    }
  });

  it('is 0 at a half round, positive below it, negative above it, near 45 for a flat arc', () => {
    expect(valueOf(miter(36, 18, 3.5, 0.25))).toBe(0);
    expect(valueOf(miter(36, 17, 3.5, 0.25))).toBeGreaterThan(0);
    expect(valueOf(miter(36, 19, 3.5, 0.25))).toBeLessThan(0);
    expect(valueOf(miter(36, 0.001, 3.5, 0.25))).toBeCloseTo(45, 1);
  });

  it('falls as the rise grows', () => {
    const share = fc.double({ min: 0.01, max: 2, noNaN: true });
    fc.assert(
      fc.property(share, share, (one, other) => {
        fc.pre(Math.abs(one - other) > 1e-6);
        const [low, high] = [Math.min(one, other) * 18, Math.max(one, other) * 18];
        expect(valueOf(miter(36, high, 3.5, 0.25))).toBeLessThan(valueOf(miter(36, low, 3.5, 0.25)));
      }),
    );
  });

  it('needs no reveal, and refuses what is no size in one sentence', () => {
    expect(miter(36, 6, 3.5)).toEqual(miter(36, 6, 3.5, 0));
    expect(refusalOf(miter(36, 6, 0, 0))).toBe('face must be more than 0; got 0');
    expect(refusalOf(miter(36, 6, 3, -18))).toBe('reveal must be more than -18, where the legs would meet; got -18');
  });
});

const made = (shape: HeadShape, span: number, rise: number | null) => valueOf(makeHead(shape, span, rise));

describe('the joints at both ends of a head', () => {
  it('are mitered to legs by the word, a straight head where nothing else is said', () => {
    const miters = (shape: HeadShape, ends: Ends) => mitersLegs({ shape }, ends);
    expect([miters('segmental', 'legs'), miters('straight', 'mitered')]).toEqual([true, true]);
    for (const ends of ['radial', 'level', 'square'] as const) expect(miters('segmental', ends)).toBe(false);
    for (const ends of ['over legs', 'between legs', 'square'] as const) expect(miters('straight', ends)).toBe(false);
    expect(miters('round', 'legs')).toBe(false);
  });

  it('at a circle have the gap of the curve through all points as far from leg as from head, by looking along it', () => {
    for (const rise of [6, 24]) {
      const [left, right] = valueOf(endJoints(made('segmental', 36, rise), 3 / 16, 3.5, 'legs'))!;
      const height = (offset: number) => legTop(36, rise, offset);
      const slope = (height(3 / 16 + 3.5) - height(3 / 16)) / 3.5;
      const strays = Array.from({ length: 3501 }, (_, at) => {
        const out = at / 1000;
        return Math.abs(height(3 / 16 + out) - height(3 / 16) - slope * out) / Math.hypot(1, slope);
      });
      expect(left!.gap).toBeCloseTo(Math.max(...strays), 8);
      expect(right!.gap).toBe(left!.gap);
    }
  });

  it('at an ellipse and at a slope too: a straight one has none', () => {
    // Off a sloped piece the miter is straight: halves of the angle between leg and slope.
    const [gable] = valueOf(endJoints(made('gable', 36, 18), 3 / 16, 3.5, 'legs'))!;
    expect(gable!.gap).toBe(0);
    expectNear(gable!.legMiter, 22.5, 1e-12);
    const [half] = valueOf(endJoints(made('half round', 36, null), 3 / 16, 3.5, 'legs'))!;
    expect([half!.gap, half!.legMiter, half!.headInside, half!.headOutside]).toEqual([0, 0, 0, 0]);
    const [ellipse] = valueOf(endJoints(made('elliptical', 36, 12), 3 / 16, 3.5, 'legs'))!;
    expect(ellipse!.gap).toBe(0);
  });

  it('are plain where no leg is sawn to fit, and there are none all round', () => {
    const plain = { legMiter: 0, headInside: 0, headOutside: 0, gap: 0 };
    for (const ends of ['square', 'over legs'] as const) {
      const both = valueOf(endJoints(made('straight', 36, null), 3 / 16, 3.5, ends))!;
      for (const joint of both) expect(joint).toMatchObject(plain);
    }
    const [left, right] = valueOf(endJoints(made('half segmental', 24, 9), 3 / 16, 3.5, 'level'))!;
    expect(right).toMatchObject(plain);
    expect(left!.headInside).not.toBe(0);
    expect(left!.gap).toBe(0);
    expect(valueOf(endJoints(made('round', 36, null), 3 / 16, 3.5, 'legs'))).toBeNull();
  });

  it('of a head cut level run from corner to corner: flat on the spring line', () => {
    for (const joint of valueOf(endJoints(made('segmental', 36, 6), 3 / 16, 3.5, 'level'))!) {
      expectNear(joint.legMiter, 0, 0);
      // Off the radial line there: its angle above the spring line, asin((R − rise)/(R + d)).
      expectNear(joint.headInside, (Math.asin(24 / (30 + 3 / 16)) * 180) / Math.PI, 1e-12);
      expectNear(joint.headOutside, (Math.asin(24 / (30 + 3 / 16 + 3.5)) * 180) / Math.PI, 1e-12);
      expect(Math.sign(joint.outside.x)).toBe(joint.side === 'left' ? -1 : 1);
    }
  });
});

describe('the legs under a head', () => {
  const tops = (shape: HeadShape, span: number, rise: number | null, ends: Ends) =>
    valueOf(legTops(made(shape, span, rise), 3 / 16, 3.5, ends)).map(({ side, inside, outside, miter: cut }) => [
      ...[side, inside, outside, cut],
    ]);

  it('end at the corners of a miter, at the spring line, or under or beside a straight head', () => {
    const [[, inside, outside]] = tops('segmental', 36, 6, 'legs') as [[string, number, number]];
    expectNear(inside, legTop(36, 6, 3 / 16), 1e-12);
    expectNear(outside, legTop(36, 6, 3 / 16 + 3.5), 1e-12);
    const at = (height: number) => ['left', 'right'].map((side) => [side, height, height, 0]);
    expect(tops('segmental', 36, 6, 'radial')).toEqual(at(0));
    expect(tops('straight', 36, null, 'over legs')).toEqual(at(3 / 16));
    expect(tops('straight', 36, null, 'between legs')).toEqual(at(3 / 16 + 3.5));
    expect(tops('half segmental', 24, 9, 'radial')).toEqual([['left', 0, 0, 0]]);
    expect(tops('round', 36, null, 'radial')).toEqual([]);
  });
});

it('the radius of a head is that of its one arc, or of the arc at its crown', () => {
  expect(valueOf(crownRadius(made('segmental', 36, 6)))).toBe(30);
  for (const arcs of [3, 5, 7] as const) {
    const each = valueOf(made('elliptical', 36, 12).arcs(0, 'radial', { arcs }));
    expect(valueOf(crownRadius(made('elliptical', 36, 12), arcs))).toBe(each[(arcs - 1) / 2]!.radius);
  }
  expect(refusalOf(crownRadius(made('gable', 36, 14)))).toContain('a gable head has no radius');
});
