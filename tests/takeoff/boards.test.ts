import { describe, expect, it } from 'vitest';
import { halfSegment, ring } from '../../src/blank/ring';
import { defaultStandards, type Standards } from '../../src/standards';
import type { StockBoard } from '../../src/stockList';
import { GUARD_MS } from '../../src/stock/plan';
import { planBoards, type WoodBoards } from '../../src/takeoff/boards';
import { partsForWaste, priceOf } from '../../src/takeoff/woodPlanning';
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
  waste: 0,
  stock,
});
const segment = (radius: number, face: number, degrees: number) => ({
  kind: 'mitered' as const,
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
function made(plans: readonly WoodBoards[]): Map<string, number> {
  const out = new Map<string, number>();
  for (const { boards, parts } of plans) {
    for (const { count, sections } of boards) {
      const pieces = sections.flatMap(({ lanes }) => lanes.flatMap(({ rows }) => rows.flatMap((row) => row.pieces)));
      for (const { part: at } of pieces) {
        const name = parts[at]!.part.for;
        out.set(name, (out.get(name) ?? 0) + count);
      }
    }
  }
  return out;
}

function boardsIn({ boards }: WoodBoards): number {
  return boards.reduce((sum, { count }) => sum + count, 0);
}

describe('the boards that rings and legs need', () => {
  it('hold every piece and those for defects, at the price stated', () => {
    const parts = [
      part('A', 16, segment(18, 3.5, 45)),
      part('B', 12, segment(30, 3.5, 60)),
      part('C', 20, leg(76)),
      part('D', 5, leg(40, 2)),
    ];
    const standards = { ...shop([board(5.5, 96), board(5.5, 144), board(9.25, 120)]), waste: 0.15 };
    const { plans, problems } = planBoards(parts, standards);
    expect(problems).toEqual([]);
    expect(plans).toHaveLength(1);
    const extra = partsForWaste(parts, 0.15);
    expect(made(plans)).toEqual(new Map(parts.map((one, at) => [one.for, one.count + extra[at]!])));
    const [plan] = plans;
    const cost = plan!.boards.reduce(
      (sum, alike) => sum + alike.count * priceOf(plan!.sale[alike.board]!, standards),
      0,
    );
    expect(plan!.cost).toBeCloseTo(cost, 6);
    expect(plan!.cost).toBeGreaterThanOrEqual(plan!.lowerBound - 1e-9);
    expect(plan!.yield).toBeLessThanOrEqual(1);
  });

  it('are planned over all widths at once: a part shares a board with parts of another width', () => {
    // A board of 7.25 holds a leg of 4 and two of 3.5 abreast: by themselves they would take two boards.
    const { plans } = planBoards(
      [part('A', 1, leg(45, 6)), part('B', 2, leg(45, 3.5))],
      shop([board(7.25, 96), board(5.5, 96)]),
    );
    expect(plans.map(boardsIn)).toEqual([1]);
    expect(plans[0]!.proven).toBe(true);
  });

  it('take two lanes of legs from a board wide enough for two', () => {
    const { plans } = planBoards([part('C', 4, leg(90, 3.5))], shop([board(7.25, 96)]));
    expect(plans.map((plan) => [boardsIn(plan), plan.proven])).toEqual([[2, true]]);
  });

  it('flip mitered segments: 7 of 45°, radius 18, where square cuts would give 6', () => {
    // One 17.8112 long, each further one (17.8112 + 13.7766)/2 + kerf/cos 22.5° = 15.9292; seven take 113.387 of 119.
    const { plans } = planBoards([part('A', 7, segment(18, 3.5, 45))], shop([board(5.5, 120)]));
    expect(6 * (17.8112 + 0.125) - 0.125).toBeLessThan(119);
    expect(7 * (17.8112 + 0.125) - 0.125).toBeGreaterThan(119);
    expect(plans.map((plan) => [boardsIn(plan), plan.proven])).toEqual([[1, true]]);
    const [row] = plans[0]!.boards[0]!.sections[0]!.lanes[0]!.rows;
    expect(row!.pieces.map(({ flipped }) => flipped)).toEqual([false, true, false, true, false, true, false]);
    expect(row!.length).toBeCloseTo(113.387, 2);
  });

  it('let two rings of one miter angle and width share a row, and never two of different angles', () => {
    const parts = [
      part('A', 3, segment(18, 3.5, 45)),
      part('B', 3, segment(18, 3.5, 45)),
      part('C', 3, segment(18, 3.5, 36)),
    ];
    const { plans } = planBoards(parts, shop([board(5.5, 120)]));
    expect(made(plans)).toEqual(new Map([['A', 3], ['B', 3], ['C', 3]])); // prettier-ignore
    for (const { boards, parts: planned } of plans) {
      for (const row of boards.flatMap(({ sections }) =>
        sections.flatMap(({ lanes }) => lanes.flatMap(({ rows }) => rows)),
      )) {
        const angles = row.pieces
          .map(({ part: at }) => planned[at]!.part.shape)
          .map((shape) => shape.kind === 'mitered' && shape.half);
        expect(new Set(angles).size).toBe(1);
      }
    }
  });

  it('choose the cheaper width', () => {
    const dear = planBoards([part('C', 4, leg(90))], shop([board(5.5, 96, 9), board(7.25, 96, 3)]));
    expect(dear.plans.flatMap(({ boards, sale }) => boards.map((alike) => sale[alike.board]!.width))).toEqual([7.25]);
  });

  it('use no more boards than are on hand, and say what is left unmade', () => {
    const { plans, problems } = planBoards([part('C', 3, leg(90))], shop([board(5.5, 96, 4, 2)]));
    expect(plans.map((plan) => [boardsIn(plan), plan.proven])).toEqual([[2, false]]);
    expect(problems).toEqual(['C: the poplar boards on hand leave 1 of 3 pieces 90 × 4 unmade']);
  });

  it('take boards on hand together with others to be bought', () => {
    const { plans, problems } = planBoards([part('C', 3, leg(90))], shop([board(5.5, 96, 4, 2), board(5.5, 96, 4)]));
    expect(problems).toEqual([]);
    expect(plans.map(boardsIn)).toEqual([3]);
  });

  it('are planned in portions where there are more kinds than one plan takes', () => {
    const legs = Array.from({ length: 500 }, (_, at) => part(`L${at}`, 5, leg(20 + at / 64)));
    const { plans, problems } = planBoards(legs, shop([board(4.5, 96), board(4.5, 144)]), { work: 2e7 });
    expect(problems).toEqual([]);
    expect(made(plans)).toEqual(new Map(legs.map((one) => [one.for, one.count])));
    expect(plans[0]!.lowerBound).toBeGreaterThan(0.85 * plans[0]!.cost);
  });

  it('are all planned soon after the work is counted out, for 400 openings', () => {
    const standards = { ...defaultStandards(), waste: 0 };
    const parts = partsOf(takeoff(randomOpenings(400, random(7)), standards));
    // A search that didn't count its work would fail by the test's own time limit.
    const { plans, problems } = planBoards(parts, standards, { work: 2e7 });
    expect(problems).toEqual([]);
    const count = (of: readonly WoodPart[]) => of.reduce((sum, one) => sum + one.count, 0);
    expect([...made(plans).values()].reduce((sum, pieces) => sum + pieces, 0)).toBe(count(parts));
  });

  it('are the same however fast the clock goes, as long as it does not reach the guard', () => {
    const standards = defaultStandards();
    const parts = partsOf(takeoff(randomOpenings(20, random(7)), standards));
    let asked = 0;
    const work = 3e6;
    const still = planBoards(parts, standards, { work, now: () => 0 * ++asked });
    // One of these plans is searched for until its work is counted out: a clock that mattered would show.
    expect(still.plans.some((plan) => !plan.proven)).toBe(true);
    expect(still.plans.some((plan) => plan.interrupted)).toBe(false);
    for (const speed of [0.09, 0.9]) {
      let time = 0;
      const now = () => (time += (speed * GUARD_MS) / asked);
      expect(planBoards(parts, standards, { work, now })).toEqual(still);
      expect(time).toBeGreaterThan(0.9 * speed * GUARD_MS);
    }
  });

  it('say which plans the guard cut short, and still hold every piece', () => {
    const standards = { ...defaultStandards(), waste: 0 };
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
