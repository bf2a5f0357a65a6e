import { describe, expect, it } from 'vitest';
import type { HeadShape } from '../../src/head/head';
import { SHAPES } from '../../src/head/shapes';
import { curveOf, isButted, legLength } from '../../src/takeoff/curve';
import { expectNear, refusalOf, valueOf } from '../value';

const SHOP = { endAllowance: 1, overhang: 1, levelMost: 1 };
type Given = Partial<Parameters<typeof curveOf>[0]> & Pick<Parameters<typeof curveOf>[0], 'head' | 'span'>;
const inputs = (given: Given) =>
  ({ rise: null, haunch: null, ends: 'radial', reveal: 3 / 16, face: 3.5, arcs: null, ...given }) as const;
const curve = (given: Given, shop = SHOP) => valueOf(curveOf(inputs(given), shop));
const FLAT = { head: 'segmental', span: 36, rise: 6 } as const;

describe('the curve of a casing', () => {
  it('has its lengths inside, in the middle and outside', () => {
    const { insideLength, centerLength, length } = curve({ head: 'half round', span: 36 });
    expectNear(insideLength, Math.PI * (18 + 3 / 16), 1e-14);
    expectNear(centerLength, Math.PI * (18 + 3 / 16 + 1.75), 1e-14);
    expectNear(length, Math.PI * (18 + 3 / 16 + 3.5), 1e-14);
  });

  // 43.3559 on radial lines, 52.4070 level: worked out to 30 digits in tests/head/segmental.test.ts.
  it('says how much level ends add, only where they are level and the head does not spring plumb', () => {
    expect(curve({ ...FLAT, ends: 'level' }).levelAdds).toBeCloseTo(52.407 / 43.3559 - 1, 4);
    for (const ends of ['radial', 'legs'] as const) expect(curve({ ...FLAT, ends }).levelAdds).toBe(0);
    expect(curve({ ...FLAT, rise: 24, ends: 'level' }).levelAdds).toBe(0);
    expect(curve({ head: 'half round', span: 36, ends: 'level' }).levelAdds).toBe(0);
    expect(curve({ head: 'straight', span: 36, ends: 'mitered' }).levelAdds).toBe(0);
  });

  it('is refused where they add more than the shop allows, not where just that', () => {
    const level = { ...FLAT, ends: 'level' } as const;
    const { levelAdds } = curve(level);
    expect(curveOf(inputs(level), { ...SHOP, levelMost: levelAdds }).ok).toBe(true);
    expect(refusalOf(curveOf(inputs(level), { ...SHOP, levelMost: 0.2 }))).toContain(
      'make this head 20.9 percent longer; Standards allow 20 percent',
    );
  });

  it('lies over its legs by the overhang on each side, where it is straight', () => {
    expect(curve({ head: 'straight', span: 36, ends: 'over legs' }).length).toBe(36 + 2 * (3 / 16 + 3.5 + 1));
    expect(curve({ head: 'straight', span: 36, ends: 'mitered' }).length).toBe(36 + 2 * (3 / 16 + 3.5));
  });

  it('is mitered to the left leg', () => {
    const { miter, headMiter, joints } = curve({ head: 'half segmental', span: 24, rise: 9, ends: 'legs' });
    const left = joints!.find(({ side }) => side === 'left')!;
    expect([miter, headMiter]).toEqual([left.legMiter, left.headInside]);
    expect(curve(FLAT).miter).toBeNull();
  });

  it('has a joint between each two of its pieces, and all round one for each', () => {
    const joints = (head: HeadShape) => {
      const { span, rise, haunch = null, ends } = SHAPES[head].example;
      return curve({ head, span, rise, haunch, ends }).pieceJoints;
    };
    const shapes = ['segmental', 'round', 'gable', 'octagon', 'full ellipse', 'three-centered'] as const;
    expect(shapes.map(joints)).toEqual([0, 0, 1, 8, 4, 2]);
  });

  it('has rings that reach past the farther corner of each end, by the allowance at the inside edge', () => {
    const degrees = (angle: number) => (angle * 180) / Math.PI;
    // A horseshoe cut level: of both edges' angles from the crown, acos((R − rise)/(R + d)), the inside one is greater.
    const [ring] = curve({ ...FLAT, rise: 24, ends: 'level' }).rings;
    const finished = 2 * degrees(Math.acos((18.75 - 24) / (18.75 + 3 / 16)));
    expectNear(ring!.finishedAngle, finished, 1e-12);
    expectNear(ring!.blankAngle, finished + degrees(2 / (18.75 + 3 / 16)), 1e-12);
    const [flat] = curve({ ...FLAT, ends: 'level' }).rings;
    expectNear(flat!.finishedAngle, 2 * degrees(Math.acos(24 / (30 + 3 / 16 + 3.5))), 1e-12);
    const [circle] = curve({ head: 'round', span: 30 }).rings;
    expect([circle!.finishedAngle, circle!.blankAngle]).toEqual([360, 360]);
    for (const each of curve({ head: 'full ellipse', span: 36, rise: 24 }).rings)
      expectNear(each.blankAngle, each.finishedAngle + degrees(2 / each.inside), 1e-12);
  });
});

describe('straight pieces of a head', () => {
  it.each([
    ['gable', { span: 36, rise: 14 }],
    ['shed', { span: 30, rise: 12 }],
    ['clipped corners', { span: 36, rise: 9, haunch: 6 }],
    ['octagon', { span: 30 }],
  ] as const)('of a %s are longer outside by the face times the tangents of their cuts', (head, sizes) => {
    for (const ends of ['radial', 'level', 'legs'] as const) {
      for (const { inside, outside, leftCut, rightCut } of curve({ head, ends, ...sizes }).straights) {
        const tan = (angle: number) => Math.tan((angle * Math.PI) / 180);
        expect(outside - inside).toBeCloseTo(3.5 * (tan(leftCut) + tan(rightCut)), 9);
      }
    }
  });

  it('meet in halves of the turn: 22.5° at an octagon, 45° at a ridge of 90°', () => {
    for (const { leftCut, rightCut } of curve({ head: 'octagon', span: 30 }).straights)
      for (const cut of [leftCut, rightCut]) expectNear(cut, 22.5, 1e-12);
    const [left, right] = curve({ head: 'gable', span: 36, rise: 18, ends: 'legs' }).straights;
    [left!.leftCut, left!.rightCut, right!.leftCut, right!.rightCut].forEach((cut, at) =>
      expectNear(cut, [22.5, 45, 45, 22.5][at]!, 1e-12),
    );
  });

  it('are butted only as a straight head that is not mitered', () => {
    expect(isButted({ head: 'straight', ends: 'over legs' })).toBe(true);
    expect([isButted({ head: 'straight', ends: 'mitered' }), isButted(inputs(FLAT))]).toEqual([false, false]);
  });

  it('a leg is as long as to its farther upper corner', () => {
    expect([
      legLength(60, { side: 'left', inside: 1, outside: 3, miter: 0 }),
      legLength(60, { side: 'left', inside: 2, outside: 1, miter: 0 }),
    ]).toEqual([63, 62]);
  });
});
