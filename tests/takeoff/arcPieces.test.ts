import { describe, expect, it } from 'vitest';
import { figureNamed, figureOf } from '../../src/takeoff/figures';
import { setupFlags } from '../../src/takeoff/setupFlags';
import { planSetups } from '../../src/takeoff/setups';
import { planTakeoff } from '../../src/takeoff/planned';
import { ATTENTION } from '../../src/takeoff/attention';
import { takeoff } from '../../src/takeoff/takeoff';
import { ticketsOf } from '../../src/tickets/tickets';
import { defaultStandards, withSettings, type SettingKey, type Standards } from '../../src/standards';
import type { Opening } from '../../src/schedule/opening';
import { valueOf } from '../value';
import { opening } from './openings';

/*
 * Worked out again from first principles. Every casing is 3-1/2 wide with a reveal of 3/16, a blank has 1/4 on each edge and an
 * inch of arc at each end of its inside edge.
 */
const [REVEAL, FACE, MARGIN] = [3 / 16, 3.5, 0.25];
const deg = (radians: number) => (radians * 180) / Math.PI;
const rad = (degrees: number) => (degrees * Math.PI) / 180;

function shop(changes: Partial<Record<SettingKey, unknown>>): Standards {
  return valueOf(withSettings(defaultStandards(), { reveal: REVEAL, face: FACE, margin: MARGIN, ...changes }));
}
const HALF_ROUND = { head: 'half round', span: 60 } as const;

function one(given: Pick<Opening, 'head' | 'span'> & Partial<Opening>, standards: Standards) {
  const taken = takeoff([opening({ quantity: 1, ...given })], standards);
  const row = taken.openings[0]!;
  expect(row.needs).toEqual([]);
  return { taken, row, ring: row.own!.rings[0]!, cost: row.ownCost! };
}

describe('a piece larger than the shop carries', () => {
  const inside = 30 + REVEAL;
  const outside = inside + FACE;
  /** Of the whole blank: half the degrees it covers beyond 90. */
  const beyond = rad(deg(1 / inside));
  const high = outside + MARGIN + (outside + MARGIN) * Math.sin(beyond);
  const across = 2 * (outside + MARGIN);

  it.each([
    ['across', { largestAcross: across - 0.01 }, { largestAcross: across + 0.01 }],
    ['high', { largestHigh: high - 0.01 }, { largestHigh: high + 0.01 }],
    ['in what it turns through', { largestTurn: 179 }, { largestTurn: 180 }],
  ])('%s is made in halves with a finished splice', (_how, less, enough) => {
    const whole = one(HALF_ROUND, shop(enough));
    expect(whole.ring.ring).toMatchObject({ count: 1 });
    expect(whole.row.attention).toEqual([]);
    const { row, ring } = one(HALF_ROUND, shop(less));
    expect(ring.ring.count).toBe(2);
    expect(ring.ring.blankAngle).toBeCloseTo(90 + deg(2 / inside), 9);
    expect(row.attention).toEqual([ATTENTION.split]);
    expect(figureOf(figureNamed('splices')!, row, 'in')).toBe(1);
    expect(figureOf(figureNamed('angle')!, row, 'in')).toBe(180);
    expect(row.curve!.length).toBeCloseTo(Math.PI * outside, 9);
  });

  it('costs its splice, and is run, packed and cut as two pieces', () => {
    const [whole, halves] = [{}, { largestTurn: 179 }].map((change) => one(HALF_ROUND, shop(change)));
    const minutes = (kind: 'fitting' | 'packing' | 'endCuts') =>
      [whole!, halves!].map(({ cost }) => cost.minutes[kind]);
    expect(minutes('fitting')).toEqual([0, 20]);
    expect(minutes('packing')).toEqual([2, 4]);
    expect(minutes('endCuts')).toEqual([3, 6]);
    const run = ((2 * (rad(90) * inside + 2)) / inside) * (inside + FACE / 2);
    expect(halves!.cost.runMinutes).toBeCloseTo((2 * run) / (12 * 4.5) + 2 * 2, 9);
  });

  it('a full circle in halves has two splices, and an allowance at each of its four ends', () => {
    const { row, ring } = one({ head: 'round', span: 60 }, shop({ largestTurn: 180 }));
    expect(ring.ring.count).toBe(2);
    expect(ring.ring.blankAngle).toBeCloseTo(180 + deg(2 / inside), 9);
    expect(row.ownCost!.minutes.fitting).toBe(40);
  });

  it('is said where even a half is too large', () => {
    const { row } = one(HALF_ROUND, shop({ largestTurn: 80 }));
    expect(row.attention).toEqual([ATTENTION.split, ATTENTION.large]);
  });

  it('has its halves on the tickets, each with its own edges, and the splice cut square', () => {
    const legs = { ...HALF_ROUND, span: 60, ends: 'legs', leg: 60, quantity: 2 } as const;
    const standards = shop({ largestTurn: 179 });
    const { taken, boards } = planTakeoff(takeoff([opening(legs)], standards));
    const [ticket] = ticketsOf(taken, boards);
    expect(ticket!.pack.pieces).toEqual(['head, left half', 'head, right half', 'left leg', 'right leg']);
    for (const half of ticket!.trim.slice(0, 2)) {
      expect(half.insideEdge).toBeCloseTo((Math.PI / 2) * inside, 9);
      expect(half.outsideEdge).toBeCloseTo((Math.PI / 2) * outside, 9);
    }
    expect(ticket!.trim[0]!.right).toEqual({ inside: 0, outside: 0 });
    expect(ticket!.run[0]!.pieces).toBe(4);
    expect(ticket!.glue[0]!.rings).toBe(4);
  });

  it('meets in the middle of the finished arc where one side runs on to its leg', () => {
    const quarter = { head: 'quarter round', span: 60, ends: 'legs', leg: 60 } as const;
    const { taken, boards } = planTakeoff(takeoff([opening({ quantity: 1, ...quarter })], shop({ largestTurn: 80 })));
    const [left, right] = ticketsOf(taken, boards)[0]!.trim;
    const whole = taken.openings[0]!.curve!;
    expect(left!.insideEdge + right!.insideEdge).toBeCloseTo(whole.insideLength, 9);
    expect(left!.outsideEdge + right!.outsideEdge).toBeCloseTo(whole.length, 9);
    const most = Math.max(left!.outsideEdge, right!.outsideEdge) / (60 + REVEAL + FACE);
    expect(taken.openings[0]!.own!.rings[0]!.ring.blankAngle).toBeCloseTo(deg(most + 2 / (60 + REVEAL)), 9);
  });
});

describe('a piece shorter than the rolls hold', () => {
  const short = { head: 'segmental', span: 12, rise: 3 } as const;
  const center = 7.5 + REVEAL + FACE / 2;

  it('is glued up as long as they hold where the shop says overlong', () => {
    const { row, ring } = one(short, shop({ shortestPiece: 20 }));
    expect(ring.made).toMatchObject({ overlong: true, carried: false });
    expect(ring.runLength).toBeCloseTo(20, 9);
    expect(ring.ring.blankAngle).toBeCloseTo(deg(20 / center), 9);
    expect(row.attention).not.toContain(ATTENTION.short);
    const { segments } = ring.blank.chosen;
    expect(ring.ring.blankAngle / segments / 2).toBeLessThanOrEqual(30 + 1e-9);
  });

  it('costs a carrier instead, of each piece and of the spare ones, where it says so', () => {
    const standards = shop({ shortestPiece: 20, shortPieces: 'carrier' });
    const { row, ring, cost } = one({ ...short, quantity: 3 }, standards);
    expect(ring.made).toMatchObject({ overlong: false, carried: true });
    expect(ring.ring.blankAngle).toBeCloseTo(one(short, shop({ shortestPiece: 5 })).ring.ring.blankAngle, 12);
    expect(row.attention).toContain(ATTENTION.short);
    expect(cost.minutes.fitting).toBe(3 * 8);
  });

  it.each([
    ['overlong', 'Glued up overlong for the rolls: W1. Saw to length after the run.'],
    [
      'carrier',
      'Too short for the rolls: W1, 19 15/16 along the center; the machine holds no less than 20. Run them on a carrier.',
    ],
  ])('is said on the card of its set-up: %s', (shortPieces, sentence) => {
    const standards = shop({ shortestPiece: 20, shortPieces, smallestRadius: 0 });
    const [setup] = planSetups(one(short, standards).taken).setups;
    expect(setupFlags(setup!, standards)).toEqual([sentence]);
  });

  it('never becomes a full ring: one too tight for that stays short, and is said', () => {
    const { ring, row } = one({ head: 'half round', span: 8 }, shop({ shortestPiece: 60 }));
    expect(ring.ring.blankAngle).toBe(350);
    expect(row.attention).toContain(ATTENTION.short);
  });
});
