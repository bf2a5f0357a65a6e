import { describe, expect, it } from 'vitest';
import { endJoints } from '../../src/head/joints';
import { makeHead } from '../../src/head/makeHead';
import { readHead, readHeadWords } from '../../src/head/words';
import { readSchedule } from '../../src/schedule/readSchedule';
import { defaultStandards, withSettings, type Standards } from '../../src/standards';
import { ATTENTION } from '../../src/takeoff/attention';
import { curveOf } from '../../src/takeoff/curve';
import { takeoff, type OpeningTakeoff } from '../../src/takeoff/takeoff';
import { opening } from '../takeoff/openings';
import { refusalOf, valueOf } from '../value';

/*
 * Lengths and settings that a simple formula gets wrong, each by its own figures: worked out independently here (50-digit closed
 * forms), reveal 3/16 throughout.
 */

const REVEAL = 3 / 16;
const SHOP = { endAllowance: 1, overhang: 0, levelMost: 10 };
const SHAPE = { rise: null, reveal: REVEAL, arcs: null, haunch: null } as const;
const radians = (degrees: number) => (degrees * Math.PI) / 180;

function taken(given: Parameters<typeof opening>[0], standards: Standards = defaultStandards()): OpeningTakeoff {
  return takeoff([opening({ quantity: 1, ...given })], standards).openings[0]!;
}

describe('a blank above a half round', () => {
  it('covers the inner corner: by the outer one 24 × 24, 5-1/2 wide, ends level, is 1.80 short at each end', () => {
    const of = (ends: 'level' | 'legs') =>
      valueOf(curveOf({ ...SHAPE, head: 'segmental', span: 24, rise: 24, face: 5.5, ends }, SHOP)).crown!;
    expect(of('level').finishedAngle).toBeCloseTo(252.682406188, 8);
    expect(of('level').blankAngle).toBeCloseTo(260.227529, 5);
    expect(of('legs').finishedAngle).toBeCloseTo(253.266922849, 8);
    expect(of('legs').blankAngle).toBeCloseTo(260.812046, 5);
    // Seen from the center at radius 15 + 3/16, an outer corner on the spring line stands at acos(k / (R + d)).
    const k = 15 - 24;
    const byOutside = 2 * Math.acos(k / (15 + REVEAL + 5.5)) + 2 / (15 + REVEAL);
    const short = ((radians(of('level').finishedAngle) - byOutside) / 2) * (15 + REVEAL);
    expect(short).toBeCloseTo(1.797, 3);
  });
});

describe('a quarter round with legs', () => {
  it.each([
    [36, 66.0338055723, 36.1870142454, 39.515819617, 43.5639252],
    [24, 47.1899125179, 24.1867732449, 27.440845468, 42.9146801],
  ])(
    '%d wide runs on to its high leg, %d long; the leg stands %d and %d above the spring line',
    (span, long, y1, y2, miter) => {
      const curve = valueOf(
        curveOf({ ...SHAPE, head: 'quarter round', span, face: 3.5, ends: 'legs' }, { ...SHOP, endAllowance: 0 }),
      );
      expect(curve.length).toBeCloseTo(long, 9);
      const high = curve.legs.find(({ side }) => side === 'right')!;
      expect([high.inside, high.outside]).toEqual([expect.closeTo(y1, 9), expect.closeTo(y2, 9)]);
      expect(curve.joints![1].legMiter).toBeCloseTo(miter, 6);
      expect(curve.joints![0].legMiter).toBe(0);
    },
  );

  it('has 33.49 more of leg, 30 wide, than two legs to the spring line', () => {
    const legs = (head: 'quarter round' | 'half round') =>
      taken({ head, span: 30, ends: 'legs', leg: 48, reveal: REVEAL, face: 3.5 }).own!.straight!.length;
    // √(33.6875² − 3.6875²): the outside edge of the crown's arc, where it meets the outside of the leg.
    expect(legs('quarter round') - legs('half round')).toBeCloseTo(Math.sqrt(33.6875 ** 2 - 3.6875 ** 2), 9);
  });
});

describe('a straight head 36 wide, casing 3-1/2', () => {
  it.each([
    [undefined, 0, 43.375],
    ['mitered', 0, 43.375],
    ['over legs', 0, 43.375],
    ['over legs', 0.25, 43.875],
    ['between legs', 0, 36.375],
    ['square', 0, 36],
  ] as const)('ends %s, overhang %d: %d long', (ends, overhang, long) => {
    const standards = valueOf(withSettings(defaultStandards(), { overhang }));
    const row = taken({ head: 'straight', span: 36, reveal: REVEAL, face: 3.5, ...(ends ? { ends } : {}) }, standards);
    expect(row.curve!.length).toBe(long);
  });
});

describe('ends cut level on a flat arc', () => {
  const flat = { head: 'segmental', span: 120, rise: 1 / 16, ends: 'level', reveal: REVEAL, face: 3.5 } as const;

  it('of 120 × 1/16 would be 929 long: refused past the limit of the Standards, in a sentence', () => {
    expect(valueOf(valueOf(makeHead('segmental', 120, 1 / 16)).length(REVEAL + 3.5, 'level'))).toBeCloseTo(
      929.5860977612,
      6,
    );
    const row = taken(flat);
    expect(row.cost).toBeNull();
    expect(row.needs).toEqual([
      'Ends cut level make this head 674.6 percent longer; Standards allow 100 percent (Level ends, at most): miter it to legs, or end it radially.',
    ]);
  });

  it('within that limit are looked at where they add more than a quarter', () => {
    const allowed = valueOf(withSettings(defaultStandards(), { levelMost: 10 }));
    const wide = { ...allowed, stock: allowed.stock.map((board) => ({ ...board, width: 30 })) };
    const said = (rise: number) => taken({ ...flat, rise, span: 60 }, wide).attention;
    expect(said(2)).toContain(ATTENTION.level);
    expect(said(12)).not.toContain(ATTENTION.level);
  });
});

describe('the saw settings at a leg', () => {
  it('of 36 × 6, 3-1/2: 25.70 for the leg, 27.25 and 24.23 for the head, and 0.0128 between the straight cut and a curved one', () => {
    const joints = valueOf(endJoints(valueOf(makeHead('segmental', 36, 6)), REVEAL, 3.5, 'legs'))!;
    for (const { legMiter, headInside, headOutside, gap } of joints) {
      expect(legMiter).toBeCloseTo(25.6985864973, 9);
      expect(headInside).toBeCloseTo(27.2533706567, 9);
      expect(headOutside).toBeCloseTo(24.2267895238, 9);
      expect(gap).toBeCloseTo(0.0128, 4);
    }
  });
});

describe('a half round', () => {
  it('may be three segments: the grain at the joints is that of the finished half circle, not of its end allowances', () => {
    const row = taken(
      { head: 'half round', span: 36, segmentsWanted: 3, reveal: REVEAL, face: 2.5 },
      {
        ...defaultStandards(),
        stock: defaultStandards().stock.map((board) => ({ ...board, width: 20 })),
      },
    );
    expect(row.needs).toEqual([]);
    expect(row.own!.crown!.blank.chosen.segments).toBe(3);
  });
});

describe('names of heads that were meant', () => {
  it.each([
    ['eyebrow on legs', 'segmental', 'legs'],
    ['half round top w/ legs', 'half round', 'legs'],
    ['drop pointed', 'pointed', null],
    ['equilateral', 'pointed', null],
  ])('%s', (text, shape, ends) => {
    const words = valueOf(readHeadWords(text));
    expect([words.shape, words.ends]).toEqual([shape, ends]);
  });

  it('equilateral gives its own rise, √3/2 of the span', () => {
    const rows = [
      ['Mark', 'Qty', 'Head', 'Width'],
      ['W1', 1, 'equilateral', 36],
    ];
    const { openings } = valueOf(readSchedule({ name: 'list', firstRow: 1, rows }, defaultStandards()));
    expect([openings[0]!.head, openings[0]!.span]).toEqual(['pointed', 36]);
    expect(openings[0]!.rise).toBeCloseTo(18 * Math.sqrt(3), 9);
  });

  it.each(['ogee', 'parabola', 'catenary', 'bow window', 'jamb extension'])(
    '%s is refused with what is needed',
    (text) => {
      expect(refusalOf(readHead(text))).toContain(`head "${text}" can't be taken as it is: `);
    },
  );
});
