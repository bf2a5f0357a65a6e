import { describe, expect, it } from 'vitest';
import { halfSegment, ring } from '../../src/blank/ring';
import { defaultStandards, type Standards } from '../../src/standards';
import type { StockBoard } from '../../src/stockList';
import type { BoardPlan } from '../../src/takeoff/boardPlan';
import { GUARD_MS } from '../../src/stock/plan';
import { planBoards } from '../../src/takeoff/boards';
import { partsOf } from '../../src/takeoff/parts';
import { takeoff } from '../../src/takeoff/takeoff';
import type { WoodPart } from '../../src/takeoff/woodParts';
import { random } from '../random';
import { valueOf } from '../value';
import { randomOpenings } from './openings';

const board = (width: number, length: number, pricePerBoardFoot = 4, onHand: number | null = null): StockBoard => ({
  species: 'Poplar',
  quarters: 4,
  thickness: 13 / 16,
  width,
  length,
  pricePerBoardFoot,
  onHand,
});
const shop = (stock: readonly StockBoard[]): Standards => ({
  ...defaultStandards('in'),
  kerf: 0.125,
  endTrim: 0.5,
  stock,
});
const segment = (kind: 'mitered' | 'sawn', radius: number, face: number, degrees: number) => ({
  kind,
  ring: valueOf(ring(radius, face, 0)),
  half: halfSegment(degrees, 1),
});
const part = (of: string, count: number, shape: WoodPart['shape'], species = 'poplar'): WoodPart => ({
  for: of,
  species,
  thickness: 0.75,
  count,
  shape,
});
const leg = (length: number, width = 4) => ({ kind: 'straight' as const, length, width });

/** Pieces of each part that come out of the plans. */
function made(plans: readonly BoardPlan[]): Map<string, number> {
  const out = new Map<string, number>();
  for (const { cutting } of plans) {
    for (const { count, cuts } of cutting) {
      for (const cut of cuts) out.set(cut.part.for, (out.get(cut.part.for) ?? 0) + count * cut.pieces);
    }
  }
  return out;
}

describe('the boards that rings and legs need', () => {
  it('hold every piece, at the price stated', () => {
    const parts = [
      part('A', 16, segment('mitered', 18, 3.5, 45)),
      part('B', 12, segment('sawn', 30, 3.5, 60)),
      part('C', 20, leg(76)),
      part('D', 5, leg(40, 2)),
    ];
    const { plans, problems } = planBoards(parts, shop([board(5.5, 96), board(5.5, 144), board(9.25, 120)]));
    expect(problems).toEqual([]);
    expect(made(plans)).toEqual(new Map(parts.map((one) => [one.for, one.count])));
    for (const plan of plans) {
      expect(plan.cost).toBeCloseTo(
        plan.buys.reduce((sum, buy) => sum + buy.count * buy.price, 0),
        6,
      );
      expect(plan.boards).toBe(plan.cutting.reduce((sum, cut) => sum + cut.count, 0));
      expect(plan.cost).toBeGreaterThanOrEqual(plan.lowerBound - 1e-9);
      expect(plan.yield).toBeLessThanOrEqual(1);
    }
  });

  it('take two strips of legs from a board wide enough for two', () => {
    const { plans } = planBoards([part('C', 4, leg(90, 3.5))], shop([board(7.25, 96)]));
    expect(plans).toMatchObject([{ boards: 2, proven: true, parts: [{ spare: 0, layout: { across: 2 } }] }]);
  });

  it('flip mitered segments: 7 of 45°, radius 18, where square cuts would give 6', () => {
    // One 17.8112 long, each further one (17.8112 + 13.7766)/2 + kerf/cos 22.5° = 15.9292; seven take 113.387 of 119.
    const { plans } = planBoards([part('A', 7, segment('mitered', 18, 3.5, 45))], shop([board(5.5, 120)]));
    expect(6 * (17.8112 + 0.125) - 0.125).toBeLessThan(119);
    expect(7 * (17.8112 + 0.125) - 0.125).toBeGreaterThan(119);
    expect(plans).toMatchObject([{ boards: 1, proven: true, parts: [{ layout: { way: 'flipped' } }] }]);
  });

  it('nest sawn segments across a board where that buys less wood than half-turn rows', () => {
    const { plans } = planBoards([part('B', 12, segment('sawn', 30, 3.5, 30))], shop([board(9.25, 96)]));
    expect(plans[0]!.parts[0]!.layout).toMatchObject({ way: 'nested', across: 2 });
  });

  it('turn every second one where the board takes only one across', () => {
    const { plans } = planBoards([part('B', 12, segment('sawn', 30, 3.5, 60))], shop([board(9.25, 192)]));
    expect(plans[0]!.parts[0]!.layout).toMatchObject({ way: 'half-turn', across: 1 });
    expect(made(plans)).toEqual(new Map([['B', 12]]));
  });

  it('let two rings of one miter angle and width share a row, and never two of different angles', () => {
    const parts = [
      part('A', 3, segment('mitered', 18, 3.5, 45)),
      part('B', 3, segment('mitered', 18, 3.5, 45)),
      part('C', 3, segment('mitered', 18, 3.5, 36)),
    ];
    const { plans } = planBoards(parts, shop([board(5.5, 120)]));
    expect(made(plans)).toEqual(new Map([['A', 3], ['B', 3], ['C', 3]])); // prettier-ignore
    for (const plan of plans) {
      const flipped = plan.parts.filter(({ layout }) => layout.step < layout.alone);
      expect(
        new Set(flipped.map(({ part: one }) => one.shape.kind !== 'straight' && one.shape.half)).size,
      ).toBeLessThanOrEqual(1);
    }
  });

  it('choose the cheaper width', () => {
    const dear = planBoards([part('C', 4, leg(90))], shop([board(5.5, 96, 9), board(7.25, 96, 3)]));
    expect(dear.plans.map((plan) => plan.width)).toEqual([7.25]);
  });

  it('use no more boards than are on hand, and say what does not fit', () => {
    const { plans, problems } = planBoards([part('C', 3, leg(90))], shop([board(5.5, 96, 4, 2)]));
    expect(plans).toEqual([]);
    expect(problems).toEqual(["Poplar 0.8125 × 5.5: the boards on hand (96) don't hold all the pieces"]);
  });

  it('say what buying less would need', () => {
    const { plans } = planBoards([part('C', 3, leg(60))], shop([board(5.5, 144)]));
    expect(plans[0]!.less).toBe(
      'nothing that is fewer holds all the pieces; one board of 144 less would leave out 1 × C',
    );
  });

  it('are planned in portions where there are more lengths or pieces than one plan takes', () => {
    const legs = Array.from({ length: 2_500 }, (_, at) => part(`L${at}`, 20, leg(20 + at / 64)));
    const { plans, problems } = planBoards(legs, shop([board(4.5, 96), board(4.5, 144)]), { work: 1e8 });
    expect(problems).toEqual([]);
    expect(made(plans)).toEqual(new Map(legs.map((one) => [one.for, one.count])));
  });

  it('are all planned soon after the work is counted out, for 2,000 openings', () => {
    const standards = defaultStandards();
    const parts = partsOf(takeoff(randomOpenings(2_000, random(7)), standards));
    // A search that didn't count its work would fail by the test's own time limit.
    const { plans, problems } = planBoards(parts, standards, { work: 1e8 });
    expect(problems).toEqual([]);
    const count = (of: readonly WoodPart[]) => of.reduce((sum, one) => sum + one.count, 0);
    expect([...made(plans).values()].reduce((sum, pieces) => sum + pieces, 0)).toBe(count(parts));
  });

  it('are the same however fast the clock goes, as long as it does not reach the guard', () => {
    const standards = defaultStandards();
    const parts = partsOf(takeoff(randomOpenings(60, random(7)), standards));
    let asked = 0;
    const still = planBoards(parts, standards, { now: () => 0 * ++asked });
    // One of these plans is searched for until its work is counted out: a clock that mattered would show.
    expect(still.plans.some((plan) => !plan.proven)).toBe(true);
    expect(still.plans.some((plan) => plan.interrupted)).toBe(false);
    for (const speed of [0.09, 0.9]) {
      let time = 0;
      const now = () => (time += (speed * GUARD_MS) / asked);
      expect(planBoards(parts, standards, { now })).toEqual(still);
      expect(time).toBeGreaterThan(0.9 * speed * GUARD_MS);
    }
  });

  it('say which plans the guard cut short, and still hold every piece', () => {
    const standards = defaultStandards();
    const parts = partsOf(takeoff(randomOpenings(60, random(7)), standards));
    let time = 0;
    const { plans, problems } = planBoards(parts, standards, { now: () => (time += GUARD_MS / 50) });
    expect(problems).toEqual([]);
    const cutShort = plans.filter((plan) => plan.interrupted);
    expect(cutShort.length).toBeGreaterThan(0);
    expect(cutShort.every((plan) => !plan.proven)).toBe(true);
    const count = parts.reduce((sum, one) => sum + one.count, 0);
    expect([...made(plans).values()].reduce((sum, pieces) => sum + pieces, 0)).toBe(count);
  });

  it.each([
    [part('C', 3, leg(60), 'Teak'), 'C: no Teak at least 0.75 thick is in the stock list'],
    [
      part('C', 3, leg(160)),
      'C: a piece 160 × 4 is larger than every poplar board 0.8125 thick; the largest are 144 long, trimmed 0.5 at each end, and 5.5 wide',
    ],
  ])('name a part that no board can hold', (one, sentence) => {
    expect(planBoards([one], shop([board(5.5, 144)])).problems).toEqual([sentence]);
  });
});
