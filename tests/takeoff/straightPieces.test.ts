import { describe, expect, it } from 'vitest';
import type { Opening } from '../../src/schedule/opening';
import { defaultStandards, withSettings, type SettingKey } from '../../src/standards';
import { ATTENTION } from '../../src/takeoff/attention';
import { figureNamed, figureOf } from '../../src/takeoff/figures';
import { planTakeoff } from '../../src/takeoff/planned';
import { setupFlags } from '../../src/takeoff/setupFlags';
import { planSetups } from '../../src/takeoff/setups';
import { takeoff } from '../../src/takeoff/takeoff';
import { ticketsOf } from '../../src/tickets/tickets';
import { valueOf } from '../value';
import { opening } from './openings';

/*
 * Worked out again from first principles. Every casing is 3-1/2 wide with a reveal of 3/16; a piece has an inch at each end.
 */
const OUT = 3 / 16 + 3.5;

function one(given: Pick<Opening, 'head' | 'span'> & Partial<Opening>, changes: Partial<Record<SettingKey, unknown>>) {
  const standards = valueOf(withSettings(defaultStandards(), changes));
  const { taken, boards } = planTakeoff(takeoff([opening({ quantity: 1, ...given })], standards));
  const row = taken.openings[0]!;
  expect(row.needs).toEqual([]);
  return { standards, taken, row, straight: row.own!.straight!, ticket: ticketsOf(taken, boards)[0]! };
}
const STRAIGHT = { head: 'straight', span: 100, ends: 'mitered' } as const;
const LONG = 100 + 2 * OUT;

describe('a straight piece longer than the shop carries', () => {
  it('is made in halves with a finished splice, and counted, costed and ticketed as such', () => {
    const whole = one(STRAIGHT, { largestAcross: LONG + 2 });
    const halves = one(STRAIGHT, { largestAcross: LONG + 1.99 });
    expect(whole.straight.pieces).toMatchObject([{ parts: 1, count: 1, length: LONG + 2 }]);
    expect(halves.straight.pieces).toMatchObject([{ parts: 2, count: 2, length: LONG / 2 + 2 }]);
    expect([whole, halves].map(({ row }) => figureOf(figureNamed('splices')!, row, 'in'))).toEqual([0, 1]);
    expect([whole, halves].map(({ row }) => row.attention)).toEqual([[], [ATTENTION.split]]);
    expect([whole, halves].map(({ row }) => row.ownCost!.minutes.fitting)).toEqual([0, 20]);
    expect([whole, halves].map(({ row }) => row.ownCost!.minutes.endCuts)).toEqual([3, 6]);
    expect(halves.ticket.run[0]).toMatchObject({ pieces: 2, runLength: LONG / 2 + 2 });
    expect(halves.ticket.trim.map(({ piece }) => piece)).toEqual(['head, left half', 'head, right half']);
    const [left, right] = halves.ticket.trim;
    expect(left).toMatchObject({ right: { inside: 0, outside: 0 } });
    expect(right).toMatchObject({ left: { inside: 0, outside: 0 } });
    for (const half of [left!, right!]) {
      expect(half.outsideEdge).toBeCloseTo(LONG / 2, 9);
      expect(half.insideEdge).toBeCloseTo(50 + 3 / 16, 9);
    }
  });

  it('a leg is spliced as well: its upper half has the miter, its lower half the square foot', () => {
    const { ticket, straight, row } = one({ ...STRAIGHT, span: 36, leg: 90, otherLeg: 60 }, { largestAcross: 80 });
    // The left leg is 93-11/16 long, the right one 63-11/16; the head 43-3/8.
    expect(straight.count).toBe(1 + 2 + 1);
    expect(figureOf(figureNamed('splices')!, row, 'in')).toBe(1);
    expect(ticket.pack.pieces).toEqual(['head', 'left leg, upper half', 'left leg, lower half', 'right leg']);
    const [, upper, lower] = ticket.trim;
    expect(upper!.outsideEdge + lower!.outsideEdge).toBeCloseTo(90 + OUT, 9);
    expect(upper!.insideEdge + lower!.insideEdge).toBeCloseTo(90 + 3 / 16, 9);
    expect(upper!.left.outside).toBeCloseTo(45, 9);
    expect(lower).toMatchObject({ left: { inside: 0, outside: 0 }, right: null });
    expect(lower!.insideEdge).toBe(lower!.outsideEdge);
  });

  it.each([
    // A leg of 143 to 144 in with its end allowances goes under the shop's 144, but no 12 ft board trimmed at both ends holds it.
    [141, 1],
    [141.02, 2],
    [141.9, 2],
    [142.1, 2],
  ])('is one that no board holds, too: a leg %d along its longer edge is made in %i', (long, parts) => {
    const given = { head: 'half round', span: 36, ends: 'legs', leg: long } as const;
    const { row, straight, ticket, taken } = one(given, { largestAcross: 144 });
    const boards = planTakeoff(taken).boards;
    expect(boards.problems).toEqual([]);
    expect(straight.pieces).toMatchObject([
      { parts, count: 2 * parts, length: expect.closeTo(long / parts + 2, 9) as number },
    ]);
    expect(figureOf(figureNamed('splices')!, row, 'in')).toBe(2 * (parts - 1));
    expect(row.attention).toEqual(parts === 1 ? [] : [ATTENTION.split]);
    expect(row.ownCost!.minutes.fitting).toBe(parts === 1 ? 0 : 2 * 20);
    expect(ticket.trim.filter(({ piece }) => piece.includes('leg'))).toHaveLength(2 * parts);
  });

  it('the halves of a slope that is mitered at both ends come to its whole edges', () => {
    const { ticket, row } = one({ head: 'shed', span: 80, rise: 30, ends: 'legs', leg: 20 }, { largestAcross: 70 });
    const [left, right] = ticket.trim;
    expect(left!.outsideEdge + right!.outsideEdge).toBeCloseTo(row.curve!.length, 9);
    expect(left!.insideEdge + right!.insideEdge).toBeCloseTo(row.curve!.insideLength, 9);
    // No half is longer than its blank.
    expect(Math.max(left!.outsideEdge, right!.outsideEdge) + 2).toBeLessThanOrEqual(70);
  });

  it('is said where even a half is too long', () => {
    const { row } = one(STRAIGHT, { largestAcross: 50 });
    expect(row.attention).toEqual([ATTENTION.split, ATTENTION.large]);
  });
});

describe('a straight piece shorter than the rolls hold', () => {
  const octagon = { head: 'octagon', span: 20, quantity: 3 } as const;
  // A side of a regular octagon is its width × (√2 − 1).
  const side = (20 + 2 * OUT) * (Math.SQRT2 - 1);

  it('is sawn as long as they hold, or costs a carrier, as the shop says', () => {
    const overlong = one(octagon, { shortestPiece: 16 });
    expect(overlong.straight.pieces).toMatchObject([{ count: 8, length: 16, longer: 'overlong' }]);
    expect(overlong.row.attention).not.toContain(ATTENTION.short);
    const carrier = one(octagon, { shortestPiece: 16, shortPieces: 'carrier' });
    expect(carrier.straight.pieces).toMatchObject([{ count: 8, longer: 'carrier' }]);
    expect(carrier.straight.pieces[0]!.length).toBeCloseTo(side + 2, 9);
    expect(carrier.row.attention).toContain(ATTENTION.short);
    expect(carrier.row.ownCost!.minutes.fitting).toBe(8 * 3 * 8);
    expect(overlong.row.ownCost!.minutes.fitting).toBe(0);
  });

  it.each([
    ['overlong', 'Sawn overlong for the rolls: W1. Saw to length after the run.'],
    [
      'carrier',
      'Too short for the rolls: W1, 13 5/16 along the center; the machine holds no less than 16. Run them on a carrier.',
    ],
  ])('is said on the card of its set-up: %s', (shortPieces, sentence) => {
    const { taken, standards } = one(octagon, { shortestPiece: 16, shortPieces });
    expect(setupFlags(planSetups(taken).setups[0]!, standards)).toContain(sentence);
  });
});
