import { describe, expect, it } from 'vitest';
import { ARC_COUNTS, type HeadShape } from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { isHalfSpan, sameLength } from '../../src/head/shape';
import { SHAPES } from '../../src/head/shapes';
import { expectNear, refusalOf, valueOf } from '../value';

const ruleOf = (shape: HeadShape) => SHAPES[shape].rise;
const radiusMade = (shape: HeadShape, span: number, rise: number | null) =>
  valueOf(SHAPES[shape].make(span, rise, null)).radius;

describe('what a shape says of its rise', () => {
  it.each<[HeadShape, number]>([
    ['half round', 18],
    ['quarter round', 36],
    ['round', 36],
    ['octagon', 36],
    ['straight', 0],
  ])('a %s 36 wide rises %d, as the head itself does', (shape, rise) => {
    expect(ruleOf(shape).ofSpan!(36)).toBe(rise);
    expect(valueOf(SHAPES[shape].make(36, null, null)).rise).toBe(rise);
  });

  // Published: 36 wide with a rise of 6 has radius 30 (Machinery's Handbook, segments of a circle). Half segmental: the same arc's
  // right half. Pointed: an equilateral arch has its span for a radius, and rises √3/2 of it.
  it.each<[HeadShape, number, number, number]>([
    ['segmental', 36, 6, 30],
    ['half round', 36, 6, 30],
    ['half round', 36, 18, 18],
    ['half segmental', 18, 6, 30],
    ['half segmental', 18, 18, 18],
    ['pointed', 36, 18 * Math.sqrt(3), 36],
    ['pointed', 36, 24, 25],
    ['radius corners', 36, 5, 5],
  ])('a %s %d wide that rises %d has radius %d, and that radius gives the rise', (shape, span, rise, radius) => {
    const rule = ruleOf(shape);
    expectNear(rule.ofRadius!(span, radius), rise, 1e-14);
    if (rule.radius !== undefined) expectNear(rule.radius(span, rise), radius, 1e-14);
    const { least } = rule.leastRadius?.(span) ?? { least: span / 2 };
    expect(least).toBe({ 'half segmental': 18, 'radius corners': 0 }[shape as string] ?? 18);
    if (shape !== 'half round') expectNear(radiusMade(shape, span, rise)!, radius, 1e-14);
  });

  it.each<[HeadShape, number]>([
    ['half round', 36],
    ['round', 36],
    ['quarter round', 18],
  ])('a %s of radius 18 is %d wide', (shape, span) => {
    expect(ruleOf(shape).spanOfRadius!.of(18)).toBe(span);
    expect(radiusMade(shape, span, null)).toBe(18);
  });

  it.each<[HeadShape, readonly number[], readonly number[]]>([
    // shape, rises over 36 that it can have, and such as it can't
    ['segmental', [0.5, 18, 40], [0, -1]],
    ['elliptical', [0.5, 17.99, 18.01, 40], [0, -1, 18]],
    ['full ellipse', [0.5, 35.99, 36.01], [0, -1, 36]],
    ['quarter ellipse', [0.5, 35.99, 36.01], [0, -1, 36]],
    ['three-centered', [0.5, 17.99], [0, -1, 18, 18.01]],
    // The haunches turn 60°: their rise is at most span/√3, 20.7846.
    ['four-centered', [0.5, 20.78], [0, -1, 36 / Math.sqrt(3), 20.79]],
    ['pointed', [18.01, 40], [0, 17.99, 18]],
    ['half segmental', [0.5, 36, 36 * (1 + 1e-9)], [0, -1, 36.001]],
    ['radius corners', [0.5, 18, 18 * (1 + 1e-9)], [0, -1, 18.001]],
    ['gable', [0.5, 40], [0, -1]],
    ['clipped corners', [0.5, 40], [0, -1]],
    ['shed', [0.5, 40], [0, -1]],
    ['half round', [18, 18 * (1 + 1e-10)], [17.99, 18.01]],
  ])('%s: over 36 it can have %j, not %j', (shape, good, bad) => {
    const { fits } = ruleOf(shape);
    expect(good.filter((rise) => !fits(36, rise))).toEqual([]);
    expect(bad.filter((rise) => fits(36, rise))).toEqual([]);
  });

  it.each<[HeadShape, readonly number[], number, string]>([
    ['full ellipse', [108], 108.01, "A height of 108.01 over a width of 36 can't be right."],
    ['quarter ellipse', [108], 108.01, "A rise of 108.01 over a width of 36 can't be right."],
    ['pointed', [17.9, 108], 108.01, "A rise of 108.01 over a width of 36 can't be right."],
    ['pointed', [], 17.8, 'A pointed head rises at least half the width 36; its rise is given as 17.8.'],
    ['gable', [108], 108.01, "A rise of 108.01 over a width of 36 can't be right."],
    ['shed', [108], 108.01, "A rise of 108.01 over a width of 36 can't be right."],
    [
      'three-centered',
      [17.99],
      18,
      'A three-centered head rises less than half the width 36; its rise is given as 18.',
    ],
    [
      'radius corners',
      [18.1],
      18.2,
      'Corners can have a radius of at most half the width 36; theirs is given as 18.2.',
    ],
  ])('%s: a list may give %j over 36, %d is asked about', (shape, fine, odd, sentence) => {
    const misfit = (rise: number) => ruleOf(shape).misfit!(36, rise, 0.125, String);
    expect(fine.map(misfit)).toEqual(fine.map(() => null));
    expect(misfit(odd)).toBe(sentence);
  });

  it('two lengths are one where a billionth parts them, of either', () => {
    expect([sameLength(36, 36 * (1 + 1e-10)), sameLength(36 * (1 + 1e-10), 36), sameLength(36, 36)]).toEqual([
      true,
      true,
      true,
    ]);
    expect([sameLength(0, 0), isHalfSpan(0, 0)]).toEqual([true, true]);
    expect([sameLength(36, 36 * (1 + 2e-9)), sameLength(1, 2)]).toEqual([false, false]);
    expect([isHalfSpan(36, 18 + 35e-9), isHalfSpan(36, 18 - 35e-9), isHalfSpan(36, 18 + 37e-9)]).toEqual([
      true,
      true,
      false,
    ]);
  });

  it('a second figure is taken by the shapes that have one, refused by the others', () => {
    expect(makeHead('clipped corners', 36, 9, 6).ok).toBe(true);
    expect(makeHead('segmental', 36, 6, null).ok).toBe(true);
    expect(refusalOf(makeHead('segmental', 36, 6, 5))).toBe('haunch must be left out for a segmental head; got 5');
  });

  it('an ellipse is run as 3, 5 or 7 arcs and no other number', () => {
    expect([...ARC_COUNTS]).toEqual([3, 5, 7]);
  });

  it('its sentences name the figures that it is worked out from', () => {
    const radius = (shape: HeadShape) => SHAPES[shape].words.radius!(String, 36, 6, 30);
    expect(radius('half round')).toBe('Half the span: 36 ÷ 2.');
    expect(radius('segmental')).toContain('(18² + 6²) ÷ (2 × 6)');
    expect(radius('half segmental')).toContain('(36² + 6²) ÷ (2 × 6)');
    expect(radius('three-centered')).toContain('half the span 18 and the rise 6');
    expect(radius('four-centered')).toContain('half the span 18 and the rise 6: 30.');
  });
});
