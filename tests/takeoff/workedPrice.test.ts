import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { WoodOrder } from '../../src/boards/order';
import { defaultStandards } from '../../src/standards';
import { planTakeoff } from '../../src/takeoff/planned';
import { takeoff } from '../../src/takeoff/takeoff';
import { leastCost } from '../boards/bruteForce';
import { opening } from './openings';

/**
 * docs/worked-price.md, worked out from the openings and the shop's figures with school geometry. Nothing of the product is used
 * but to compare, and the boards come from trying every placing of the pieces.
 */
const PAGE = readFileSync('docs/worked-price.md', 'utf8').replace(/\s+/g, ' ');

const RADIUS = 30 + 3 / 16;
const FACE = 3.5;
const RING = { inside: RADIUS - 0.25, outside: RADIUS + FACE + 0.25 };
const WIDTHS = [5.5, 7.25, 9.25];
const PRICE = 3.9;
const cents = (money: number) => Math.round(money * 100 + 1e-9) / 100;
const sum = (all: readonly number[]) => all.reduce((total, each) => total + each, 0);

/** An arch of radius 30: its blank's angle, and the cheapest of three numbers of segments. */
function arch(halfSpan: number) {
  const angle = 2 * Math.asin(halfSpan / 30) + 2 / RADIUS;
  const choices = [2, 3, 4].map((segments) => {
    const half = angle / 2 / segments;
    const width = RING.outside - RING.inside * Math.cos(half);
    const length = 2 * RING.outside * Math.tan(half);
    const board = WIDTHS.find((each) => each >= width)!;
    const feet = (board * length * segments) / 144;
    return { segments, half, width, board, length, feet, cost: feet * PRICE * 1.15 + (segments - 1) * 6.3 };
  });
  expect(RING.outside - RING.inside * Math.cos(angle / 2)).toBeGreaterThan(9.25);
  const chosen = choices.reduce((best, each) => (each.cost < best.cost ? each : best));
  const feetOutside = (angle * (RADIUS + FACE)) / 12;
  const running = (2 * angle * (RADIUS + FACE / 2)) / (12 * 4.5) + 2;
  const bench = 7 * (chosen.segments - 1) + feetOutside * (1.5 + 0.5 + 0.75 + 2) + 3 + 2;
  return { angle, choices, chosen, feetOutside, running, bench };
}

const A = arch(18);
const B = arch(24);
const C = { feetOutside: 34 / 12, running: (2 * 34) / (12 * 12) + 2, bench: (34 / 12) * (0.75 + 2) + 3 + 2 };
const labor = [A, B, C].map(({ running, bench }) => (running / 60) * 68 + (bench / 60) * 54);

const knife = (110 + (15 / 60) * 68) / 3;
const change = (25 / 60) * 68;
const guides = (45 / 60) * 54 + 14;
const share = [knife + (guides + change) / 2, knife + (guides + change) / 2, knife + change];

const test = ((24 * 4) / 144) * PRICE;
const wood = [A.chosen.feet * PRICE + test / 2, B.chosen.feet * PRICE + test / 2, ((34 * 4) / 144) * PRICE + test];

/** The trapezoid of a segment. */
const face = ({ half, width, length }: (typeof A)['chosen']) =>
  (width * (length + 2 * RING.inside * Math.sin(half))) / 2;

/** The pieces to cut: 15 % of the wood is owed, counted up from the largest piece. */
function order(): WoodOrder {
  const pieces = [
    { at: 1, area: face(B.chosen), count: 2 },
    { at: 2, area: 34 * 4, count: 1 },
    { at: 0, area: face(A.chosen), count: 2 },
    { at: 3, area: 24 * 4, count: 2 },
  ];
  expect(pieces.map(({ area }) => area)).toEqual(pieces.map(({ area }) => area).sort((a, b) => b - a));
  const counts = [2, 2, 1, 2];
  let owed = 0;
  for (const { at, area, count } of pieces)
    for (let piece = 0; piece < count; piece++) {
      owed += 0.15 * area;
      for (; owed > 0; owed -= area) counts[at]!++;
    }
  expect(counts).toEqual([2, 3, 1, 2]);
  const segment = (half: number, count: number) => ({ kind: 'segment' as const, ...RING, half, count });
  return {
    parts: [
      segment(A.chosen.half, counts[0]!),
      segment(B.chosen.half, counts[1]!),
      { kind: 'straight', length: 34, width: 4, count: counts[2]! },
      { kind: 'straight', length: 24, width: 4, count: counts[3]! },
    ],
    boards: WIDTHS.flatMap((width) =>
      [96, 144].map((length) => ({ width, length, price: cents((PRICE * width * length) / 144), limit: null })),
    ),
    kerf: 1 / 8,
    trim: 1 / 2,
  };
}

const boards = leastCost(order());
const factor = boards / sum(wood);
const material = wood.map((each) => each * factor);
const cost = material.map((each, at) => each + labor[at]! + share[at]!);
const price = cost.map((each) => cents(each * 1.35));

const { taken, boards: bought } = planTakeoff(
  takeoff(
    [
      opening({ no: 1, row: 2, mark: 'A', head: 'segmental', span: 36, rise: 6 }),
      opening({ no: 2, row: 3, mark: 'B', head: 'segmental', span: 48, rise: 12 }),
      opening({ no: 3, row: 4, mark: 'C', head: 'straight', span: 32, ends: 'square' }),
    ],
    defaultStandards(),
  ),
);

describe('the price of three openings worked by hand', () => {
  it('is what the takeoff gives, figure by figure', () => {
    const near = (got: readonly (number | undefined)[], by: readonly number[]) =>
      got.forEach((figure, at) => expect(figure).toBeCloseTo(by[at]!, 9));
    const { openings } = taken;
    for (const [at, hand] of [A, B].entries()) {
      const { blank, ring } = openings[at]!.own!.crown!;
      expect(ring.blankAngle).toBeCloseTo((hand.angle * 180) / Math.PI, 9);
      for (const [choice, its] of hand.choices.entries()) {
        const { segments, width, boardWidth, length, boardFeet, cost: money } = blank.weighed[choice]!;
        expect([segments, boardWidth]).toEqual([its.segments, its.board]);
        near([width, length, boardFeet, money], [its.width, its.length, its.feet, its.cost]);
      }
      expect(blank.chosen.segments).toBe(hand.chosen.segments);
    }
    const costs = openings.map((row) => row.cost!);
    near(costs.map((each) => each.labor), labor); // prettier-ignore
    near(costs.map((each) => each.share), share); // prettier-ignore
    expect(bought.plans.map((plan) => [plan.cost, plan.proven])).toEqual([[boards, true]]);
    near(costs.map((each) => each.material), material); // prettier-ignore
    near(costs.map((each) => each.cost), cost); // prettier-ignore
    expect(costs.map(({ unitPrice }) => unitPrice)).toEqual(price);
    expect(taken.totals.price).toBeCloseTo(sum(price), 9);
  });

  it('is what the page says', () => {
    const four = (figure: number) => figure.toFixed(4);
    const money = (figure: number) => cents(figure).toFixed(2);
    const row = (...cells: readonly string[]) => `| ${cells.join(' | ')} |`;
    const said = PAGE.replace(/\| [-| ]+\|/g, '|');
    const expected = [
      ...[A, B].map(({ angle }) => `${four((angle * 180) / Math.PI)}°`),
      ...[A, B].flatMap(({ choices }, at) =>
        choices.map(({ segments, width, board, length, feet, cost: its }) =>
          row('AB'[at]!, `${segments}`, four(width), `${board}`, four(length), four(feet), money(its)),
        ),
      ),
      row('feet of outside edge', ...[A, B, C].map(({ feetOutside }) => four(feetOutside))),
      row('running and handling, min', ...[A, B, C].map(({ running }) => four(running))),
      row('at the bench, min', ...[A, B, C].map(({ bench }) => four(bench))),
      row('labor, $', ...labor.map(money)),
      `the shares are ${money(share[0]!)}, ${money(share[1]!)} and ${money(share[2]!)}`,
      `$${money(boards)}. No boards`,
      `is ${money(wood[0]!)}, ${money(wood[1]!)} and ${money(wood[2]!)}, together ${money(sum(wood))}`,
      `${four(factor)} dollars of boards`,
      row('material', ...[...material, sum(material)].map(money)),
      row('labor', ...[...labor, sum(labor)].map(money)),
      row('share', ...[...share, sum(share)].map(money)),
      row('cost', ...[...cost, sum(cost)].map(money)),
      row('price (35 %)', ...[...price, sum(price)].map(money)),
    ];
    for (const text of expected) expect(said).toContain(text);
  });
});
