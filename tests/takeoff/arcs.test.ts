import { describe, expect, it } from 'vitest';
import { openingJson } from '../../cli/takeoffJson';
import { makeHead } from '../../src/head/makeHead';
import { defaultStandards } from '../../src/standards';
import { planBoards } from '../../src/takeoff/boards';
import { partsOf } from '../../src/takeoff/parts';
import { planSetups } from '../../src/takeoff/setups';
import { takeoff } from '../../src/takeoff/takeoff';
import { valueOf } from '../value';
import { opening } from './openings';

const standards = { ...defaultStandards(), sparePieces: 0 };
const ARCS = [3, 5, 7] as const;
const HEADS = ['elliptical', 'full ellipse', 'quarter ellipse'] as const;
/** Arcs that make the head, and kinds of ring among them, for 3, 5 and 7 over the half ellipse. */
const PIECES = {
  elliptical: [3, 5, 7],
  'full ellipse': [4, 8, 12],
  'quarter ellipse': [2, 3, 4],
} as const;
const KINDS = [2, 3, 4] as const;

describe('an ellipse made of 3, 5 or 7 arcs is that from its row to boards, set-ups and price', () => {
  it.each(HEADS.flatMap((head) => ARCS.map((arcs, at) => ({ head, arcs, at }))))('$head, $arcs arcs', (given) => {
    const { head, arcs, at } = given;
    const taken = takeoff([opening({ head, span: 60, rise: 24, arcs, quantity: 2 })], standards);
    const [row] = taken.openings;
    expect(row!.needs).toEqual([]);
    const { own, curve } = row!;
    const pieces = PIECES[head][at]!;
    expect(own!.rings.length).toBe(KINDS[at]);
    expect(own!.rings.reduce((sum, { ring }) => sum + ring.count, 0)).toBe(pieces);
    // Each kind between guides of its own, and every one among the set-ups with all its pieces.
    const { setups } = planSetups(taken);
    expect(setups.map(({ insideRadius }) => insideRadius).sort()).toEqual(
      own!.rings.map(({ ring }) => ring.inside).sort(),
    );
    expect(setups.reduce((sum, { count }) => sum + count, 0)).toBe(2 * pieces);
    // Every segment of every ring among the wood, and no board short.
    const segments = own!.rings.reduce((sum, { ring, blank }) => sum + 2 * ring.count * blank.chosen.segments, 0);
    const parts = partsOf(taken).filter(({ shape }) => shape.kind === 'mitered');
    expect(parts.reduce((sum, { count }) => sum + count, 0)).toBe(segments);
    expect(planBoards(partsOf(taken), standards, { work: 1e5 }).problems).toEqual([]);
    // Each arc with its own radius and segments in JSON, left to right.
    const json = openingJson(row!, standards) as {
      pieces?: { radius: number; angle: number; segments: number | null }[];
    };
    const exact = valueOf(valueOf(makeHead(head, 60, 24)).arcs(0, 'radial', { arcs }));
    expect(json.pieces!.map(({ radius }) => radius.toFixed(9))).toEqual(exact.map(({ radius }) => radius.toFixed(9)));
    expect(json.pieces!.every(({ segments: count }) => count !== null && count > 0)).toBe(true);
    // More arcs stray less.
    expect(curve!.deviation).toBeCloseTo(Math.max(...exact.map(({ deviation }) => deviation)), 9);
  });

  it('is made of the fewest arcs that stray no more than is allowed, where its row names no number', () => {
    // 60 × 24 by 3 arcs strays 0.13; 96 × 20 by 3, 5 and 7: 0.69, 0.10 and 0.04 (worked out independently here).
    const row = (span: number, rise: number, allowed: number, arcs: 3 | null = null) =>
      takeoff([opening({ head: 'elliptical', span, rise, arcs, quantity: 1 })], { ...standards, deviation: allowed })
        .openings[0]!;
    const stray = (arcs: 3 | 5 | 7) =>
      Math.max(
        ...valueOf(valueOf(makeHead('elliptical', 96, 20)).arcs(0, 'radial', { arcs })).map((arc) => arc.deviation),
      );
    expect(row(60, 24, 0.25).known.arcs).toBe(3);
    for (const [allowed, count, rings] of [
      [stray(3), 3, 2],
      [stray(3) - 1e-6, 5, 3],
      [stray(5) - 1e-6, 7, 4],
      [stray(7) / 2, 7, 4],
    ] as const) {
      const { known, own, curve, attention } = row(96, 20, allowed);
      expect([known.arcs, own!.rings.length]).toEqual([count, rings]);
      expect(attention.some((sentence) => sentence.startsWith('The arcs stray'))).toBe(curve!.deviation > allowed);
    }
    expect(row(96, 20, 0.25, 3).known.arcs).toBe(3);
    expect(takeoff([opening({ head: 'segmental', span: 96, rise: 20 })], standards).openings[0]!.known.arcs).toBeNull();
  });

  it('more arcs come nearer to the ellipse, and the row stops asking to be looked at', () => {
    const lookAt = (arcs: 3 | 5 | 7) =>
      takeoff([opening({ head: 'elliptical', span: 96, rise: 20, arcs })], standards).openings[0]!;
    const strays = ARCS.map((arcs) => lookAt(arcs).curve!.deviation);
    expect(strays[0]).toBeGreaterThan(4 * strays[1]!);
    expect(strays[1]).toBeGreaterThan(2 * strays[2]!);
    const sentence = /arcs stray from the true ellipse/;
    expect(lookAt(3).attention.join(' ')).toMatch(sentence);
    expect(lookAt(7).attention.join(' ')).not.toMatch(sentence);
  });
});
