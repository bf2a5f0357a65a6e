import { describe, expect, it } from 'vitest';
import { defaultStandards, withSettings } from '../../src/standards';
import { planTakeoff } from '../../src/takeoff/planned';
import { takeoff } from '../../src/takeoff/takeoff';
import { ticketsOf, type Ticket } from '../../src/tickets/tickets';
import { ticketsSheet } from '../../src/workbook/ticketsSheet';
import { opening } from '../takeoff/openings';
import { valueOf } from '../value';

/*
 * Ten openings that the simple ones leave out, worked out again from first principles: an arc in halves, one glued up overlong, heads of
 * straight pieces, a high side, four centers, an ellipse of five arcs and one all round. Nothing of the core's geometry is used here.
 * Every casing is 3-1/2 wide with a reveal of 3/16, every blank has 1/4 on each edge and an inch at each end.
 */
const [D1, FACE, MARGIN] = [3 / 16, 3.5, 0.25];
const D2 = D1 + FACE;
const deg = (radians: number) => (radians * 180) / Math.PI;
const rad = (degrees: number) => (degrees * Math.PI) / 180;

const TEN = [
  { mark: 'B1', head: 'half round', span: 60, leg: 60, ends: 'legs' },
  { mark: 'B2', head: 'segmental', span: 12, rise: 3, ends: 'radial' },
  { mark: 'B3', head: 'gable', span: 36, rise: 12, leg: 60, ends: 'legs' },
  { mark: 'B4', head: 'clipped corners', span: 36, rise: 9, leg: 60, ends: 'legs' },
  { mark: 'B5', head: 'shed', span: 36, rise: 12, leg: 60, ends: 'legs' },
  { mark: 'B6', head: 'octagon', span: 20 },
  { mark: 'B7', head: 'full ellipse', span: 36, rise: 24, arcs: 3 },
  { mark: 'B8', head: 'elliptical', span: 72, rise: 24, leg: 58, ends: 'legs', arcs: 5 },
  { mark: 'B9', head: 'half segmental', span: 18, rise: 6, leg: 60, ends: 'legs', quantity: 2, remarks: 'LH and RH' },
  { mark: 'B10', head: 'four-centered', span: 36, rise: 12, haunch: 9, leg: 60, ends: 'legs' },
] as const;
const STANDARDS = valueOf(withSettings(defaultStandards(), { largestTurn: 170, shortestPiece: 18, smallestRadius: 0 }));
const { taken, boards } = planTakeoff(
  takeoff(
    TEN.map((given, at) => opening({ row: at + 2, quantity: 1, ...given })),
    STANDARDS,
  ),
);
const TICKETS = ticketsOf(taken, boards);
const of = (mark: string): Ticket => TICKETS.find((ticket) => ticket.mark === mark)!;

/** Radius of the opening's own curve, from what is sawn. */
const radiusOf = (ticket: Ticket, at: number) => ticket.saw[at]!.inside + MARGIN - D1;
const same = (one: number, other: number, places = 8) => expect(one).toBeCloseTo(other, places);

function expectGlued({ saw, glue }: Ticket, at: number, radius: number, blank: number) {
  const [sawn, glued] = [saw[at]!, glue[at]!];
  same(sawn.inside, radius + D1 - MARGIN);
  same(sawn.outside, radius + D2 + MARGIN);
  same(sawn.blankAngle, blank);
  const g = rad(blank / 2 / glued.segments);
  same(glued.miter, deg(g));
  same(glued.longEdge, 2 * sawn.outside * Math.tan(g));
  same(glued.width, sawn.outside - sawn.inside * Math.cos(g));
  expect(glued.boards.length).toBeGreaterThan(0);
}
const allowance = (radius: number) => deg(2 / (radius + D1));
/** Degrees that an arc is glued up for: with its allowances, but no shorter along its center than the rolls hold. */
const blankOf = (radius: number, turn: number) =>
  Math.max(turn + allowance(radius), deg(18 / (radius + D1 + FACE / 2)));

describe('the tickets of ten harder openings, worked out again from first principles', () => {
  it('are one for each', () => {
    expect(TICKETS.map(({ mark }) => mark)).toEqual(TEN.map(({ mark }) => mark));
  });

  it('a half round in halves: a quarter each, spliced square', () => {
    const ticket = of('B1');
    expectGlued(ticket, 0, 30, 90 + allowance(30));
    expect(ticket.glue[0]!.rings).toBe(2);
    expect(ticket.pack.pieces).toEqual(['head, left half', 'head, right half', 'left leg', 'right leg']);
    for (const half of ticket.trim.slice(0, 2)) {
      same(half.insideEdge, (Math.PI / 2) * (30 + D1));
      same(half.outsideEdge, (Math.PI / 2) * (30 + D2));
      expect([half.left, half.right]).toEqual([
        { inside: 0, outside: 0 },
        { inside: 0, outside: 0 },
      ]);
    }
    same(ticket.run[0]!.runLength, rad(90 + allowance(30)) * (30 + D1 + FACE / 2));
    expect(ticket.finished).toMatchObject({ width: expect.closeTo(2 * (30 + D2), 8) as number });
  });

  it('a small arc is glued up as long as the rolls hold, and finished at its own length', () => {
    const ticket = of('B2');
    const R = (36 + 9) / 6;
    const theta = 4 * Math.atan(0.5);
    const center = R + D1 + FACE / 2;
    // Its own blank would be shorter.
    expect((theta + 2 / (R + D1)) * center).toBeLessThan(25);
    const long = Math.max(18, (theta + 2 / (R + D1)) * center);
    expectGlued(ticket, 0, R, deg(long / center));
    same(ticket.trim[0]!.outsideEdge, (R + D2) * theta);
    same(ticket.trim[0]!.insideEdge, (R + D1) * theta);
  });

  it('a gable on legs: each slope mitered at the leg and at the ridge', () => {
    const ticket = of('B3');
    const slope = Math.atan(12 / 18);
    const [foot, ridge] = [(Math.PI / 2 - slope) / 2, slope];
    const edge = (d: number) => Math.hypot(18, 12) + d * (Math.tan(foot) + Math.tan(ridge));
    // Worked out independently: both slopes 52.1302621911 along the outside; 28.1549662 at the leg.
    same(2 * edge(D2), 52.1302621911);
    same(deg(foot), 28.1549662, 6);
    expect(ticket.glue).toEqual([]);
    const [left, right, leg] = ticket.trim;
    for (const [piece, atLeg, atRidge] of [
      [left!, left!.left, left!.right!],
      [right!, right!.right!, right!.left],
    ] as const) {
      same(piece.insideEdge, edge(D1));
      same(piece.outsideEdge, edge(D2));
      same(atLeg.inside, deg(foot));
      same(atLeg.outside, deg(foot));
      same(atRidge.outside, deg(ridge));
    }
    same(leg!.insideEdge, 60 + D1 * Math.tan(foot));
    same(leg!.outsideEdge, 60 + D2 * Math.tan(foot));
    same(leg!.left.outside, deg(foot));
    same(ticket.finished!.width, 2 * (18 + D2));
  });

  it('clipped corners at 45°: every joint at 22.5°', () => {
    const { trim } = of('B4');
    // Worked out independently: slope 15.7827470839, level piece 21.0548250225 along the outside.
    expect(trim.slice(0, 3).map(({ outsideEdge }) => outsideEdge)).toEqual(
      [15.7827470839, 21.0548250225, 15.7827470839].map((length) => expect.closeTo(length, 8) as number),
    );
    const grown = Math.tan(rad(22.5));
    same(trim[0]!.insideEdge, 9 * Math.SQRT2 + 2 * D1 * grown);
    same(trim[1]!.insideEdge, 18 + 2 * D1 * grown);
    for (const { left, right } of trim.slice(0, 3))
      for (const end of [left, right!]) for (const mark of [end.inside, end.outside]) same(mark, 22.5);
    same(trim[3]!.outsideEdge, 60 + D2 * grown);
  });

  it('a shed on a low leg and a high one', () => {
    const { trim, finished } = of('B5');
    const slope = Math.atan(12 / 36);
    const [low, high] = [(Math.PI / 2 - slope) / 2, (Math.PI / 2 + slope) / 2];
    // Worked out independently: 35.7825256 and 54.2174745 off square, 45.7212645033 long.
    same(trim[0]!.outsideEdge, 45.7212645033);
    same(trim[0]!.left.outside, 35.7825256, 6);
    same(trim[0]!.right!.outside, 54.2174745, 6);
    same(trim[0]!.left.inside, deg(low));
    same(trim[1]!.insideEdge, 60 + D1 * Math.tan(low));
    same(trim[1]!.outsideEdge, 60 + D2 * Math.tan(low));
    same(trim[2]!.insideEdge, 60 + 12 + D1 * Math.tan(high));
    same(trim[2]!.outsideEdge, 60 + 12 + D2 * Math.tan(high));
    same(trim[2]!.left.inside, deg(high));
    same(finished!.height, 12 + D2 * Math.tan(high) - D1 * Math.tan(low));
  });

  it('an octagon: eight pieces alike, sawn no shorter than the rolls hold', () => {
    const ticket = of('B6');
    const side = (d: number) => (20 + 2 * d) * (Math.SQRT2 - 1);
    expect(ticket.trim).toHaveLength(8);
    for (const { insideEdge, outsideEdge, left, right } of ticket.trim) {
      same(insideEdge, side(D1));
      same(outsideEdge, side(D2));
      for (const end of [left, right!]) same(end.outside, 22.5);
    }
    expect(side(D2) + 2).toBeLessThan(18);
    expect(ticket.run).toMatchObject([{ pieces: 8, runLength: 18 }]);
    same(ticket.finished!.width, 20 + 2 * D2);
    same(ticket.finished!.height, 20 + 2 * D2);
  });

  it('a full ellipse as four arcs that touch, all round', () => {
    const ticket = of('B7');
    const [R, r] = [radiusOf(ticket, 0), radiusOf(ticket, 1)];
    same(Math.hypot(18 - r, R - 12), R - r);
    const phi = Math.atan2(R - 12, 18 - r);
    expectGlued(ticket, 0, R, 180 - 2 * deg(phi) + allowance(R));
    expect(ticket.glue.map(({ rings }) => rings)).toEqual([2, 2]);
    expect(ticket.trim).toHaveLength(4);
    const edges = ticket.trim.map(({ outsideEdge }) => outsideEdge).sort((one, other) => one - other);
    const [crown, haunch] = [(R + D2) * (Math.PI - 2 * phi), (r + D2) * 2 * phi];
    const wanted = [crown, crown, haunch, haunch].sort((one, other) => one - other);
    expect(edges).toEqual(wanted.map((edge) => expect.closeTo(edge, 7) as number));
    // Worked out independently: the true parallel curve is 118.361883356 long.
    expect(Math.abs(edges.reduce((sum, edge) => sum + edge, 0) - 118.361883356)).toBeLessThan(0.3);
    same(ticket.finished!.width, 36 + 2 * D2);
    same(ticket.finished!.height, 24 + 2 * D2);
  });

  it('half an ellipse as five arcs: each touches the next, and together they turn half round', () => {
    const ticket = of('B8');
    const [crown, second, haunch] = [0, 1, 2].map((at) => radiusOf(ticket, at));
    const [low, next, middle] = [haunch!, second!, crown!].map((radius, at) =>
      deg(ticket.trim[at]!.outsideEdge / (radius + D2)),
    ) as [number, number, number];
    same(middle + 2 * next + 2 * low, 180, 7);
    // From the left spring point up: centers lie on the line of the radius that two arcs share.
    const haunchAt = { x: haunch! - 36, y: 0 };
    const on = (from: { x: number; y: number }, by: number, at: number) => ({
      x: from.x + by * Math.cos(rad(at)),
      y: from.y - by * Math.sin(rad(at)),
    });
    const secondAt = on(haunchAt, second! - haunch!, low);
    const crownAt = on(secondAt, crown! - second!, low + next);
    same(crownAt.x, 0, 6);
    same(crownAt.y + crown!, 24, 6);
    expect(ticket.glue.map(({ rings }) => rings)).toEqual([1, 2, 2]);
    for (const [at, turn] of [middle, next, low].entries())
      expectGlued(ticket, at, radiusOf(ticket, at), blankOf(radiusOf(ticket, at), turn));
    expect(ticket.trim.map(({ outsideEdge }) => outsideEdge)).toEqual(
      [
        (haunch! + D2) * rad(low),
        (second! + D2) * rad(next),
        (crown! + D2) * rad(middle),
        (second! + D2) * rad(next),
        (haunch! + D2) * rad(low),
        58,
        58,
      ].map((edge) => expect.closeTo(edge, 6) as number),
    );
  });

  it('one of a raked pair, its high side on a leg of its own, one of each hand', () => {
    const ticket = of('B9');
    const R = (18 * 18 + 36) / 12;
    const k = R - 6;
    const low = (d: number) => Math.asin((18 + d) / (R + d));
    const beyond = (d: number) => Math.asin(d / (R + d));
    const [yLow, yHigh] = [low, beyond].map((turn) => (d: number) => (R + d) * Math.cos(turn(d)) - k);
    const [head, left, right] = ticket.trim;
    // Worked out independently: 23.5622 + 3.69490388025.
    same(head!.outsideEdge, 23.5621874204 + 3.69490388025);
    same(head!.insideEdge, (R + D1) * (low(D1) + beyond(D1)));
    const muLow = Math.atan((yLow!(D2) - yLow!(D1)) / FACE);
    const muHigh = Math.atan((yHigh!(D2) - yHigh!(D1)) / FACE);
    same(head!.left.inside, 90 - deg(low(D1) + muLow));
    same(head!.left.outside, 90 - deg(low(D2) + muLow));
    same(head!.right!.inside, 90 - deg(beyond(D1) + muHigh));
    same(head!.right!.outside, 90 - deg(beyond(D2) + muHigh));
    same(left!.outsideEdge, 60 + yLow!(D2));
    same(right!.insideEdge, 60 + yHigh!(D1));
    same(right!.outsideEdge, 60 + yHigh!(D2));
    expect(ticket.hands).toEqual({ right: 1, left: 1 });
    expectGlued(ticket, 0, R, deg(Math.max(low(D1), low(D2)) + Math.max(beyond(D1), beyond(D2))) + allowance(R));
  });

  it('four centers: haunches of 60°, and a crown whose joint is plumb', () => {
    const ticket = of('B10');
    // Worked out independently, by the rule of a haunch radius of a quarter of the span: 32.1682956077 and 60°.
    const R = 32.1682956077;
    const x = 9 - 18 + (R - 9) / 2;
    const upper = (d: number) => Math.acos(x / (R + d)) - Math.PI / 3;
    const [haunch, crown] = ticket.trim;
    same(haunch!.outsideEdge, (9 + D2) * (Math.PI / 3));
    same(crown!.outsideEdge, (R + D2) * upper(D2));
    same(2 * (haunch!.outsideEdge + crown!.outsideEdge), 58.9479589545);
    same(crown!.right!.inside, deg(Math.asin(x / (R + D1))));
    same(crown!.right!.outside, deg(Math.asin(x / (R + D2))));
    same(crown!.left.inside, 0);
    expectGlued(ticket, 0, R, blankOf(R, deg(Math.max(upper(D1), upper(D2)))));
    expectGlued(ticket, 1, 9, blankOf(9, 60));
  });

  it('print on at most six pages', () => {
    expect(ticketsSheet(TICKETS, 'in', 'ten.csv').pageBreaks!.length + 1).toBeLessThanOrEqual(6);
  });
});
