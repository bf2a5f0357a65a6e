import { describe, expect, it } from 'vitest';
import { defaultStandards, type Standards } from '../../src/standards';
import { ATTENTION, attentionOf } from '../../src/takeoff/attention';
import { splicesOf } from '../../src/takeoff/ownFigures';
import { planSetups } from '../../src/takeoff/setups';
import { takeoff } from '../../src/takeoff/takeoff';
import { expectNear } from '../value';
import { opening } from './openings';

/** 4/4 poplar of 13/16, a casing of 3-1/2 × 3/4, margin 1/4, end allowance 1, reveal 3/16. */
const SHOP = defaultStandards();
const rowOf = (given: Parameters<typeof opening>[0], changes: Partial<Standards> = {}) =>
  takeoff([opening(given)], { ...SHOP, ...changes }).openings[0]!;
const ROUND = { head: 'half round', span: 36 } as const;
const STRAIGHT = { head: 'straight', span: 32, ends: 'square' } as const;

describe('the wood of an opening', () => {
  it('counts a board foot as 144 square inches of an inch, 5/4 as an inch and a quarter (common practice)', () => {
    expectNear(rowOf(STRAIGHT).own!.straight!.boardFeet, (4 * 34) / 144, 1e-14);
    expectNear(rowOf({ ...STRAIGHT, thickness: 1 }).own!.straight!.boardFeet, (1.25 * 4 * 34) / 144, 1e-14);
    expectNear(rowOf(ROUND).own!.testBoardFeet, (4 * 24) / 144, 1e-14);
    expectNear(rowOf({ ...ROUND, thickness: 1 }).own!.testBoardFeet, (1.25 * 4 * 24) / 144, 1e-14);
    expect(rowOf(ROUND, { testPiece: 0 }).own!.testBoardFeet).toBe(0);
    for (const [thickness, inch] of [
      [0.75, 1],
      [1, 1.25],
    ] as const) {
      const { boardFeet, boardWidth, length, segments } = rowOf({ ...ROUND, thickness }).own!.crown!.blank.chosen;
      expectNear(boardFeet, (inch * boardWidth * length * segments) / 144, 1e-14);
    }
  });

  it('is ripped from the narrowest board that takes the face and both margins', () => {
    const widthOf = (face: number, margin: number) => rowOf({ ...STRAIGHT, face }, { margin }).own!.ripWidth;
    expect([widthOf(3.5, 0.25), widthOf(3.5, 1), widthOf(3.5, 1.01), widthOf(5.5, 0.25)]).toEqual([
      5.5, 5.5, 7.25, 7.25,
    ]);
  });

  it('has its segments weighed with one and two more; a full circle has a joint for each, others one less', () => {
    const { weighed, chosen } = rowOf(ROUND).own!.crown!.blank;
    const [fewest] = weighed.map(({ segments }) => segments);
    expect(weighed.map(({ segments }) => segments)).toEqual([fewest, fewest! + 1, fewest! + 2]);
    expect(chosen.joints).toBe(chosen.segments - 1);
    const circle = rowOf({ head: 'round', span: 30 }).own!.crown!.blank.chosen;
    expect(circle.joints).toBe(circle.segments);
    expect(rowOf({ ...ROUND, segmentsWanted: fewest! }).own!.crown!.blank.chosen.segments).toBe(fewest);
    expect(rowOf({ ...ROUND, segmentsWanted: fewest! - 1 }).needs.join()).toContain(`must be at least ${fewest}`);
  });
});

describe('how an opening runs', () => {
  // 6,000 rev/min, one knife: 6000/(12·4.5) cuts at the center, 6000/(12·12) of straight molding; the outside edge travels faster.
  const CENTER = 6000 / 54;
  const OUTSIDE = (CENTER * (18 + 3 / 16 + 3.5 / 2)) / (18 + 3 / 16 + 3.5);

  it('has the cuts of its arcs at the outside edge, of straight molding where there is no arc, the fewest for the grade', () => {
    const cuts = (given: Parameters<typeof opening>[0]) => {
      const { cutsPerInch, cutsOutside, cutsFewest } = rowOf(given).own!;
      return [cutsPerInch, cutsOutside, cutsFewest];
    };
    cuts(ROUND).forEach((each, at) => expectNear(each, [CENTER, OUTSIDE, OUTSIDE][at]!, 1e-12));
    cuts(STRAIGHT).forEach((each, at) => expectNear(each, [CENTER, 6000 / 144, 6000 / 144][at]!, 1e-12));
    const legs = cuts({ ...ROUND, ends: 'legs', leg: 60 });
    legs.forEach((each, at) => expectNear(each, [CENTER, OUTSIDE, 6000 / 144][at]!, 1e-12));
  });

  it('takes a pass for each deepest cut and what is left, rounding aside', () => {
    const passes = (deepestCut: number) => rowOf(ROUND, { profileDepth: 0.5, deepestCut }).own!.passes;
    expect([0.5, 0.25, 0.25 - 1e-12, 0.24995, 0.3].map(passes)).toEqual([1, 2, 2, 3, 2]);
  });

  it('has a knife for its sizes to a thousandth', () => {
    expect(rowOf({ ...ROUND, face: 3.5004, thickness: 0.7504 }).own!.knife).toBe('3.5 x 0.75 Casing');
    expect(rowOf({ ...ROUND, face: 3.5006, thickness: 0.7506 }).own!.knife).toBe('3.501 x 0.751 Casing');
  });

  it('has a splice for each arc in halves, two for a full circle, and one for a straight piece', () => {
    const splices = (given: Parameters<typeof opening>[0], largestTurn: number) =>
      splicesOf(rowOf(given, { largestTurn }).own!);
    expect(splices({ head: 'round', span: 30 }, 180)).toBe(2);
    expect(splices(ROUND, 100)).toBe(1);
    expect(splices({ head: 'radius corners', span: 60, rise: 12 }, 80)).toBe(2);
    expect(splices({ head: 'straight', span: 200, ends: 'square' }, 360)).toBe(1);
  });

  it('names the haunch beside the crown', () => {
    const { rings, crown, haunch } = rowOf({ head: 'three-centered', span: 48, rise: 14 }).own!;
    expect([crown, haunch]).toEqual(rings);
    expect(rowOf(ROUND).own!.haunch).toBeNull();
  });
});

describe('what should be looked at', () => {
  const said = (given: Parameters<typeof opening>[0], changes: Partial<Standards> = {}) =>
    rowOf(given, changes).attention;

  it('is a radius or a blank past what the machine takes, none at its limit', () => {
    expect(said(ROUND, { smallestRadius: 18.1875 })).not.toContain(ATTENTION.tight);
    expect(said(ROUND, { smallestRadius: 18.19 })).toContain(ATTENTION.tight);
    expect(said(ROUND, { widestFace: 4 })).not.toContain(ATTENTION.wide);
    expect(said(ROUND, { widestFace: 3.99 })).toContain(ATTENTION.wide);
    expect(said(STRAIGHT, { widestFace: 3.99 })).not.toContain(ATTENTION.wide);
  });

  it('is a segment longer than the longest board wide enough for it, its ends trimmed; none just as long', () => {
    const low = { head: 'segmental', span: 150, rise: 12 } as const;
    const segmentOf = (wanted: number | null) => {
      const { width, length } = rowOf({ ...low, segmentsWanted: wanted }).own!.crown!.blank.chosen;
      return { width, length };
    };
    const one = segmentOf(1);
    const saidOf = (length: number, width = one.width, segmentsWanted: number | null = 1) =>
      said(
        { ...low, segmentsWanted },
        {
          endTrim: 1,
          stock: SHOP.stock.flatMap((board) =>
            board.length === SHOP.stock[0]!.length
              ? [
                  { ...board, length: 12, width: 60 },
                  { ...board, width, length },
                ]
              : [],
          ),
        },
      );
    expect(saidOf(one.length + 2)).not.toContain(ATTENTION.long);
    expect(saidOf(one.length + 1.999)).toContain(ATTENTION.long);
    expect(saidOf(one.length + 1.999, one.width, 2)).not.toContain(ATTENTION.long);
    // A longer board that is too narrow doesn't count.
    expect(saidOf(one.length + 2, one.width - 0.01)).toContain(ATTENTION.long);
  });

  it('is fewer than 15 cuts per inch: the least of the Architectural Woodwork Standards, from memory', () => {
    expect(said(STRAIGHT, { rpm: 1800, straightFeed: 10 })).not.toContain(ATTENTION.finish);
    expect(said(STRAIGHT, { rpm: 1799, straightFeed: 10 })).toContain(ATTENTION.finish);
  });

  it('is a level end that adds more than a quarter, and legs however short under another end', () => {
    const { inputs, own } = rowOf({ head: 'segmental', span: 36, rise: 6 });
    const adds = (levelAdds: number) => attentionOf(inputs!, { ...own!, curve: { ...own!.curve, levelAdds } }, SHOP);
    expect(adds(0.25)).not.toContain(ATTENTION.level);
    expect(adds(0.251)).toContain(ATTENTION.level);
    expect(said({ head: 'segmental', span: 36, rise: 6, leg: 0.5 })).toContain(ATTENTION.unmitered);
  });

  it('is a four-centered head whose haunch is not given', () => {
    const tudor = { head: 'four-centered', span: 42, rise: 16 } as const;
    expect(said(tudor)).toContain(ATTENTION.publishedRule);
    expect(said({ ...tudor, haunch: 10 })).not.toContain(ATTENTION.publishedRule);
  });
});

describe('the set-ups of a job', () => {
  it('run its pieces and the spare ones, straight molding at its own feed and without spares', () => {
    const shop = { ...SHOP, sparePieces: 1 };
    const job = [opening({ ...ROUND, quantity: 2 }), opening({ ...STRAIGHT, row: 3, mark: 'B', quantity: 3 })];
    const { setups, setupMinutes } = planSetups(takeoff(job, shop));
    const [straight, curved] = setups;
    expect([straight!.insideRadius, curved!.insideRadius]).toEqual([null, 18.1875]);
    expect([straight!.count, curved!.count]).toEqual([3, 3]);
    expect([straight!.feed, curved!.feed]).toEqual([12, 4.5]);
    expectNear(straight!.runMinutes, (2 * 3 * 34) / 144 + 3 * 2, 1e-12);
    const [piece] = curved!.pieces;
    expectNear(curved!.runMinutes, (2 * 3 * piece!.runLength) / 54 + 3 * 2, 1e-12);
    expect(straight!.angle).toBe(0);
    expectNear(straight!.cutsCenter, 6000 / 144, 1e-12);
    expectNear(curved!.cutsCenter, 6000 / 54, 1e-12);
    expect([straight!.cutsOutside, piece!.strays]).toEqual([straight!.cutsCenter, 0]);
    // A knife of 15 minutes and two changes of guides or fences of 25.
    expect(setups.map(({ changeMinutes }) => changeMinutes)).toEqual([40, 25]);
    expect(setupMinutes).toBe(65);
  });

  it('have the cuts of their tightest ring at its outside edge', () => {
    const shop = { ...SHOP, guideTolerance: 1, clearance: 0.1 };
    const spans = [36.5, 36, 37];
    const job = spans.map((span, at) => opening({ row: at + 2, mark: `W${at}`, head: 'half round', span }));
    const { setups } = planSetups(takeoff(job, shop));
    expect(setups).toHaveLength(1);
    const inside = 18 + 3 / 16;
    expectNear(setups[0]!.cutsOutside, ((6000 / 54) * (inside + 1.75)) / (inside + 3.5), 1e-12);
  });
});
