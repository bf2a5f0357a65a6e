import { describe, expect, it } from 'vitest';
import { defaultStandards, withSettings, type SettingKey, type Standards } from '../../src/standards';
import { toCents } from '../../src/rounding';
import { planBoards } from '../../src/takeoff/boards';
import { boardsToBuy } from '../../src/takeoff/boardsToBuy';
import { factorsOf } from '../../src/takeoff/factors';
import { partsOf } from '../../src/takeoff/parts';
import { takeoff, withFactors, type OpeningTakeoff } from '../../src/takeoff/takeoff';
import { random } from '../random';
import { expectNear, valueOf } from '../value';
import { opening, randomOpenings } from './openings';

const STANDARDS = defaultStandards();

function one(given: Parameters<typeof opening>[0], changes: Partial<Record<SettingKey, unknown>> = {}): OpeningTakeoff {
  const standards = valueOf(withSettings(STANDARDS, changes));
  return takeoff([opening(given)], standards).openings[0]!;
}

describe('figures of one opening', () => {
  it('span 96, rise 12 has radius 102 (worked example of a carpentry tip by C. W. Davis)', () => {
    expect(one({ head: 'segmental', span: 96, rise: 12 }).own!.curve.crown!.radius).toBe(102);
  });

  it.each([
    ['radial', 38.8513794433945, 43.3558872049475],
    ['level', 39.3486545631571, 52.4070213891136],
  ] as const)(
    '36 × 6, reveal 3/16, casing 3-1/2, ends %s: lengths computed independently to 15 digits',
    (ends, inside, outside) => {
      const { curve } = one({ head: 'segmental', span: 36, rise: 6, ends }).own!;
      expectNear(curve.insideLength, inside, 1e-14);
      expectNear(curve.length, outside, 1e-14);
    },
  );

  it('the reveal changes the radius, never the center', () => {
    const { crown } = one({ head: 'segmental', span: 36, rise: 6, reveal: 0.25 }).own!.curve;
    expect(crown).toMatchObject({ radius: 30, inside: 30.25, outside: 33.75 });
  });

  it('the blank covers the long point and an allowance at each end, measured at the inside edge', () => {
    const { crown } = one({ head: 'half round', span: 36 }, { endAllowance: 1 }).own!.curve;
    expectNear(crown!.blankAngle, 180 + (2 / 18.1875) * (180 / Math.PI), 1e-14);
    expect(one({ head: 'round', span: 36 }).own!.curve.crown!.blankAngle).toBe(360);
  });

  it('an ellipse is run as two haunches and a crown, and says how far they stray from it', () => {
    const { own } = one({ head: 'elliptical', span: 72, rise: 24 });
    expect([own!.curve.crown!.count, own!.curve.haunch!.count]).toEqual([1, 2]);
    expect(own!.curve.deviation).toBeLessThan(0.2497);
    expectNear(2 * own!.curve.haunch!.angle + own!.curve.crown!.angle, 180, 1e-12);
    // True parallel curve at the casing's outside edge: half the ellipse and π times the offset.
    expectNear(own!.curve.length, 95.1926375357435 + Math.PI * (3 / 16 + 3.5), 1e-13);
  });

  it('a miter to the legs is none at a half round, and 45 at a straight head', () => {
    expect(one({ head: 'half round', span: 36, ends: 'legs' }).own!.curve.miter).toBe(0);
    expect(one({ head: 'straight', span: 36, ends: 'legs' }).own!.curve.miter).toBe(45);
    expect(one({ head: 'segmental', span: 36, rise: 6 }).own!.curve.miter).toBeNull();
  });

  it('straight heads and legs are taken off as straight footage, with an allowance at each end', () => {
    const legs = one({ head: 'half round', span: 36, ends: 'legs', leg: 60 }, { endAllowance: 1 }).own!.straight!;
    expect(legs).toMatchObject({ length: 2 * 62, count: 2 });
    const head = one({ head: 'straight', span: 40, ends: 'legs', leg: 0 }, { endAllowance: 1 }).own!.straight!;
    expectNear(head.length, 40 + 2 * (3 / 16 + 3.5) + 2, 1e-14);
  });

  it('of the fewest segments, one more and two more the cheapest blank is taken', () => {
    const choose = (changes: Partial<Record<SettingKey, unknown>>) =>
      one({ head: 'half round', span: 60 }, changes).own!.crown!.blank;
    const costly = choose({ jointMinutes: 500 });
    expect(costly.chosen).toBe(costly.weighed[0]);
    const free = choose({ jointMinutes: 0 });
    expect(free.chosen.cost).toBe(Math.min(...free.weighed.map((blank) => blank.cost)));
    expect(free.chosen.segments).toBeGreaterThan(costly.chosen.segments);
  });

  it('a grain of 30° at the joints asks for three segments in a half round (ANSI/AWI 0622-2024, 3.3.2)', () => {
    const fewest = one({ head: 'half round', span: 36 }, { endAllowance: 0 }).own!.crown!.blank.weighed[0];
    expect(fewest.segments).toBe(3);
  });
});

describe('an opening that lacks something', () => {
  it.each([
    [{ span: null }, 'span'],
    [{ quantity: null }, 'quantity'],
    [{ quantity: 1.5 }, 'quantity'],
    [{ rise: null }, 'rise'],
    [{ rise: -1 }, 'rise'],
    [{ head: null }, 'head'],
    [{ species: 'Ebony' }, 'species "ebony" is not in the stock list'],
    [{ species: 'Po*' }, 'species'],
    [{ thickness: 4 }, 'thick'],
    [{ face: 9 }, 'wider'],
    [{ profile: 'a*' }, 'profile'],
  ])('%j stays, says what it needs and is not priced', (lack, word) => {
    const row = one({ head: 'segmental', span: 36, rise: 6, ...lack });
    expect(row.needs).toHaveLength(1);
    expect(row.needs[0]!.toLowerCase()).toContain(word);
    expect(row.cost).toBeNull();
  });

  it('shows its curve as soon as the curve has its inputs, whatever wood and price still lack', () => {
    const row = one({ head: 'segmental', span: 36, rise: 6, quantity: null, species: 'Ebony' });
    expect(row.curve!.crown!.radius).toBe(30);
    expect(row.needs).toHaveLength(2);
    expect(row.own).toBeNull();
    expect(one({ head: 'segmental', span: 36 }).curve).toBeNull();
  });

  it('a doubtful figure is not replaced by the standard', () => {
    const problems = [{ row: 2, field: 'face' as const, message: 'Casing "3q" can\'t be read.' }];
    expect(one({ head: 'segmental', span: 36, rise: 6, problems })).toMatchObject({
      needs: [problems[0]!.message],
      cost: null,
    });
  });

  it('a mark used twice asks in the second row only, and no longer once it is changed', () => {
    const first = opening({ head: 'half round', span: 36 });
    const problems = [{ row: 3, field: 'mark' as const, message: 'The mark "W1" already stands in row 2.' }];
    const second = opening({ row: 3, head: 'half round', span: 40, problems });
    const needs = (mark: string) =>
      takeoff([first, { ...second, mark }], STANDARDS).openings.map((row) => row.needs.length);
    expect(needs('W1')).toEqual([0, 1]);
    expect(needs('W2')).toEqual([0, 0]);
  });

  it('openings in are rows out, whatever they lack', () => {
    const openings = randomOpenings(200, random(5));
    const { totals, openings: rows } = takeoff(openings, STANDARDS);
    expect(rows.map((row) => row.opening.row)).toEqual(openings.map(({ row }) => row));
    expect(totals.open).toBe(rows.filter((row) => row.cost === null).length);
    expect(totals.open).toBeGreaterThan(0);
  });
});

describe('the price', () => {
  it("worked by hand: one straight head, sawn square at the opening's width", () => {
    // 40 in with 1 in at each end is 42 in, 4 in wide of 4/4: 42 × 4 / 144 = 7/6 board feet; test piece 24 × 4 / 144 = 2/3.
    // Wood 11/6 × 3.90 × 1.15 = 8.2225. Run 2 × 42/12/12 + 2 = 2.5833 min at 68 an hour; at 54 an hour trimming 42/12 × 0.75 = 2.625,
    // two end cuts 3, sanding 42/12 × 2 = 7, packing 2: 14.625 min. Labor 2.9278 + 13.1625 = 16.0903.
    // Knife 110, knife and guide change 40/60 × 68 = 45.3333. Cost 179.6461, with 35 % markup 242.52.
    const { cost } = one({ head: 'straight', span: 40, ends: 'square' });
    const labor = ((31 / 12) * 68 + 14.625 * 54) / 60;
    expectNear(cost!.material, 8.2225, 1e-12);
    expectNear(cost!.labor, labor, 1e-12);
    expectNear(cost!.cost, 8.2225 + labor + 110 + 136 / 3, 1e-12);
    expect(cost!.unitPrice).toBe(242.52);
  });

  it.each([
    ['markup', 0.2, 2400],
    ['margin', 0.2, 2500],
  ])('a cost of 2,000 at 20 %% %s sells at the published figure', (pricing, pricingRate, price) => {
    // Only the knife costs anything here, so the cost is known. Figures: cfooncall.com.au, markup against margin.
    const free = { shopRate: 0, benchRate: 0, guideMaterial: 0, knifeGrinding: 2000, testPiece: 0, waste: 0 };
    const standards = valueOf(withSettings(STANDARDS, { ...free, pricing, pricingRate }));
    const stock = standards.stock.map((board) => ({ ...board, pricePerBoardFoot: 0 }));
    const row = takeoff([opening({ head: 'half round', span: 36 })], { ...standards, stock }).openings[0]!;
    expect(row.cost!.price).toBe(price);
  });

  it('shares a knife and a guide set among the openings that use them, to the last cent of cost', () => {
    const openings = [
      opening({ row: 2, mark: 'A', head: 'half round', span: 36, quantity: 3 }),
      opening({ row: 3, mark: 'B', head: 'half round', span: 36 }),
      opening({ row: 4, mark: 'C', head: 'half round', span: 48, profile: 'casing' }),
    ];
    const shares = takeoff(openings, STANDARDS).openings.map((row) => row.share!.money);
    const { knifeGrinding, knifeChange, guideChange, guideMinutes, shopRate, benchRate, guideMaterial } = STANDARDS;
    const knife = knifeGrinding + (knifeChange / 60) * shopRate;
    const setUp = (guideMinutes / 60) * benchRate + guideMaterial + (guideChange / 60) * shopRate;
    // One knife, changed once, for five heads; one guide set for four pieces, another for one.
    [(3 * knife) / 5 + 0.75 * setUp, knife / 5 + 0.25 * setUp, knife / 5 + setUp].forEach((expected, at) =>
      expectNear(shares[at]!, expected, 1e-12),
    );
  });

  it('an opening that can not be priced bears no share', () => {
    const openings = [
      opening({ head: 'half round', span: 36 }),
      opening({ row: 3, mark: 'B', head: 'half round', span: null }),
    ];
    const alone = takeoff(openings.slice(0, 1), STANDARDS).openings[0]!.share;
    expect(takeoff(openings, STANDARDS).openings.map(({ share }) => share)).toEqual([alone, null]);
  });

  it('totals add up to the cent', () => {
    const { openings, totals } = takeoff(randomOpenings(300, random(9)), STANDARDS);
    const cents = openings.reduce((sum, row) => sum + Math.round((row.cost?.price ?? 0) * 100), 0);
    expect(totals.price).toBe(cents / 100);
  });

  it('twice as many of everything cost no more each', () => {
    const price = (quantity: number) => one({ head: 'segmental', span: 50, rise: 8, quantity }).cost!.unitPrice;
    expect(price(2)).toBeLessThan(price(1));
  });

  it('spare pieces are made and paid for by the openings of their guide set', () => {
    const given = { head: 'half round', span: 36, quantity: 4 } as const;
    const none = one(given);
    const two = one(given, { sparePieces: 2 });
    expect(two.ownCost).toEqual(none.ownCost);
    // Two more pieces of the four that the opening makes for itself: half its wood and its labor again.
    expectNear(two.share!.wood - none.share!.wood, none.ownCost!.wood / 2, 1e-12);
    expectNear(two.share!.money - none.share!.money, none.ownCost!.labor / 2, 1e-12);
  });

  it('a knife and guides that the shop owns are not charged again', () => {
    const row = [opening({ head: 'half round', span: 36 })];
    const owned = [
      { kind: 'knife', profile: 'CASING', face: 3.5, thickness: 0.75, insideRadius: null },
      { kind: 'guides', profile: 'casing', face: 3.5, thickness: 0.75, insideRadius: 18.1875 },
    ] as const;
    const money = (onHand: Standards['onHand']) => takeoff(row, { ...STANDARDS, onHand }).openings[0]!.share!.money;
    const { knifeGrinding, guideMinutes, benchRate, guideMaterial } = STANDARDS;
    expectNear(money([]) - money(owned.slice(0, 1)), knifeGrinding, 1e-12);
    expectNear(money([]) - money(owned.slice(1)), (guideMinutes / 60) * benchRate + guideMaterial, 1e-12);
    expect(money([{ ...owned[1], insideRadius: 18.25 }])).toBe(money([]));
  });

  it('both sides of a wall take twice the pieces', () => {
    const cost = (sides: number) => one({ head: 'segmental', span: 50, rise: 8, sides }).ownCost!;
    expectNear(cost(2).wood, 2 * cost(1).wood, 1e-14);
    expectNear(cost(2).labor, 2 * cost(1).labor, 1e-14);
  });

  it('two legs that differ are as long together as they are', () => {
    const straight = (leg: number, otherLeg: number | null) =>
      one({ head: 'half round', span: 36, ends: 'legs', leg, otherLeg }).own!.straight;
    expect(straight(40, 60)!.length).toBe(straight(50, null)!.length);
    expect(straight(40, 60)!.pieces.map(({ count }) => count)).toEqual([1, 1]);
    expect(straight(40, 0)!.count).toBe(1);
  });

  it('takes as many segments as are wanted, and refuses fewer than the boards and the grain allow', () => {
    const wanted = (segmentsWanted: number) => one({ head: 'half round', span: 36, segmentsWanted });
    expect(wanted(7).own!.crown!.blank.chosen.segments).toBe(7);
    expect(wanted(1).needs.join()).toMatch(
      /^Segments wanted must be at least \d for the boards and the grain there are; got 1\.$/,
    );
  });

  it('a price agreed replaces the unit price, and leaves the cost as it is', () => {
    const [free, agreed] = [null, 100].map((priceAgreed) =>
      one({ head: 'half round', span: 36, quantity: 3, priceAgreed }),
    );
    expect(agreed!.cost).toEqual({ ...free!.cost, unitPrice: 100, price: 300 });
  });

  it('openings keep the number they have; the others get the next that was never given', () => {
    const openings = [opening({ head: 'round', span: 20 }), opening({ head: 'round', span: 20, no: 3 })];
    expect(takeoff(openings, STANDARDS).openings.map(({ no }) => no)).toEqual([4, 3]);
    const later = takeoff(openings, STANDARDS, { numbersGiven: 9 });
    expect(later.openings.map(({ no }) => no)).toEqual([10, 3]);
    expect(later.numbersGiven).toBe(10);
  });

  it('has the same shares in whatever order the openings stand', () => {
    const { openings } = takeoff(randomOpenings(40, random(4)), STANDARDS);
    const rows = openings.map(({ opening: given, no }) => ({ ...given, no }));
    const share = (from: readonly (typeof rows)[number][]) =>
      new Map(takeoff(from, STANDARDS).openings.map((row) => [row.no, row.share]));
    expect(share([...rows].reverse())).toEqual(new Map([...share(rows)].reverse()));
  });

  it('the material of all rows, rounded once, is what the boards of the plan cost', () => {
    const openings = randomOpenings(25, random(8)).map((each) => ({ ...each, species: 'Poplar', thickness: null }));
    const taken = takeoff(openings, STANDARDS);
    const boards = planBoards(partsOf(taken), STANDARDS);
    const planned = withFactors(taken, factorsOf(taken, boards));
    const material = planned.openings.reduce((sum, { cost }) => sum + (cost?.material ?? 0), 0);
    const bought = boardsToBuy(boards, STANDARDS).reduce((sum, { cost }) => sum + cost, 0);
    expect(material).toBeGreaterThan(100);
    expect(toCents(material)).toBe(toCents(bought));
    expect(planned.openings.every(({ cost }) => cost === null || cost.planned)).toBe(true);
  });
});

describe('a metric workbook', () => {
  it('gives the same price and times for the same sizes', () => {
    const inches = valueOf(withSettings(STANDARDS, {}));
    const lengths = [
      'reveal',
      'face',
      'thickness',
      'margin',
      'endAllowance',
      'testPiece',
      'kerf',
      'deepestCut',
      'profileDepth',
    ] as const;
    const scaled = Object.fromEntries(lengths.map((key) => [key, inches[key] * 25.4]));
    const perFoot = Object.fromEntries(
      (['sawMinutes', 'planeMinutes', 'trimMinutes', 'sandMinutes'] as const).map((key) => [key, inches[key] / 0.3048]),
    );
    const feeds = { feed: inches.feed * 0.3048, straightFeed: inches.straightFeed * 0.3048 };
    const metric = {
      ...valueOf(withSettings(defaultStandards('mm'), { ...scaled, ...perFoot, ...feeds })),
      stock: inches.stock.map((board) => ({
        ...board,
        thickness: board.thickness * 25.4,
        width: board.width * 25.4,
        length: board.length * 25.4,
      })),
    };
    const inch = takeoff([opening({ head: 'segmental', span: 36, rise: 6, leg: 50 })], inches).openings[0]!;
    const mm = takeoff([opening({ head: 'segmental', span: 914.4, rise: 152.4, leg: 1270 })], metric).openings[0]!;
    expectNear(mm.cost!.cost, inch.cost!.cost, 1e-12);
    expectNear(mm.cost!.runMinutes, inch.cost!.runMinutes, 1e-12);
    expectNear(mm.own!.cutsOutside, inch.own!.cutsOutside, 1e-12);
    expect(mm.own!.grade).toBe(inch.own!.grade);
  });
});
