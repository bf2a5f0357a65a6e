import { describe, expect, it } from 'vitest';
import { laidOutByOrdinates } from '../../src/drawing/guideLayout';
import { guideBoardsOf } from '../../src/drawing/template';
import { defaultStandards } from '../../src/standards';
import { planTakeoff } from '../../src/takeoff/planned';
import { planSetups } from '../../src/takeoff/setups';
import { takeoff } from '../../src/takeoff/takeoff';
import { ticketsOf, type Ticket } from '../../src/tickets/tickets';
import { ticketsSheet } from '../../src/workbook/ticketsSheet';
import { opening } from '../takeoff/openings';
import { valueOf } from '../value';

/*
 * Ten openings worked out again from first principles: nothing of the core's geometry is used here. Every casing is 3-1/2 wide
 * with a reveal of 3/16, every blank has 1/4 on each edge and an inch of arc at each end of its inside edge.
 */
const [REVEAL, FACE, MARGIN, ALLOWANCE] = [3 / 16, 3.5, 0.25, 1];
const D1 = REVEAL;
const D2 = REVEAL + FACE;
const deg = (radians: number) => (radians * 180) / Math.PI;
const rad = (degrees: number) => (degrees * Math.PI) / 180;

const TEN = [
  { mark: 'A1', head: 'segmental', span: 36, rise: 6, quantity: 2, leg: 60, ends: 'legs', place: 'Hall' },
  { mark: 'A2', head: 'half round', span: 40, leg: 62, ends: 'legs' },
  { mark: 'A3', head: 'elliptical', span: 72, rise: 24, leg: 58, ends: 'legs' },
  { mark: 'A4', head: 'segmental', span: 48, rise: 4, quantity: 3, ends: 'radial', species: 'Red oak' },
  { mark: 'A5', head: 'three-centered', span: 72, rise: 18, leg: 64, ends: 'legs' },
  { mark: 'A6', head: 'pointed', span: 36, rise: 34 },
  { mark: 'A7', head: 'quarter round', span: 30 },
  { mark: 'A8', head: 'round', span: 30, sides: 2 },
  { mark: 'A9', head: 'straight', span: 42, leg: 80, ends: 'mitered' },
  { mark: 'A10', head: 'segmental', span: 120, rise: 6, leg: 80, ends: 'legs' },
] as const;

const STANDARDS = { ...defaultStandards(), reveal: REVEAL, face: FACE, margin: MARGIN, endAllowance: ALLOWANCE };
const { taken, boards } = planTakeoff(
  takeoff(
    TEN.map((given, at) => opening({ row: at + 2, quantity: 1, ...given })),
    STANDARDS,
  ),
);
const TICKETS = ticketsOf(taken, boards);
const of = (mark: string): Ticket => TICKETS.find((ticket) => ticket.mark === mark)!;

it('legs of unequal length are cut each to its own, and casing on both sides of the wall doubles every count', () => {
  const made = planTakeoff(
    takeoff(
      [
        opening({ mark: 'U1', quantity: 1, head: 'half round', span: 36, ends: 'legs', leg: 60, otherLeg: 48 }),
        opening({
          mark: 'U2',
          quantity: 1,
          head: 'half round',
          span: 36,
          ends: 'legs',
          leg: 60,
          otherLeg: 48,
          sides: 2,
        }),
      ],
      STANDARDS,
    ),
  );
  const [one, both] = ticketsOf(made.taken, made.boards);
  const legs = (ticket: Ticket) =>
    ticket.trim.flatMap(({ piece, outsideEdge }) => (piece.endsWith('leg') ? [[piece, outsideEdge]] : []));
  expect(legs(one!)).toEqual([
    ['left leg', 60],
    ['right leg', 48],
  ]);
  expect(legs(both!)).toEqual(legs(one!));
  expect(both!.heads).toBe(2 * one!.heads);
});

it('keystones, plinth blocks and rosettes stand on the tickets: at what they meet, and counted where it is packed', () => {
  const given = { mark: 'X1', quantity: 2, head: 'half round', span: 36, ends: 'legs', leg: 60 } as const;
  const extras = [
    { kind: 'plinth block', each: 2 },
    { kind: 'keystone', each: 1 },
    { kind: 'rosette', each: 0, listed: 2 },
  ] as const;
  const made = planTakeoff(takeoff([opening({ ...given, extras })], STANDARDS));
  const tickets = ticketsOf(made.taken, made.boards);
  expect(tickets[0]!.pack.extras).toBe('2 keystones, 4 plinth blocks');
  expect(tickets[0]!.trim.map(({ piece, meets }) => [piece, meets])).toEqual([
    ['head', 'keystone'],
    ['left leg', 'plinth block'],
    ['right leg', 'plinth block'],
  ]);
  const said = ticketsSheet(tickets, 'in', 'list.csv').rows.flatMap((row) =>
    row.map((cell) => String(cell?.value ?? '')),
  );
  const words = said.join(' ').replace(/\s+/g, ' ');
  expect(words).toContain('with all: 2 keystones, 4 plinth blocks');
  expect(words).toContain('2 sets: 2 of this; less the plinth block it stands on');
  const [without] = ticketsOf(...bare(given));
  expect([without!.pack.extras, ...without!.trim.map(({ meets }) => meets)]).toEqual([null, null, null, null]);
});

it('a raked pair is trimmed and packed by hands: of a high side left the cuts and legs change sides', () => {
  const said = (given: Parameters<typeof opening>[0]) =>
    ticketsSheet(ticketsOf(...bare(given)), 'in', 'list.csv')
      .rows.flatMap((row) => row.flatMap((cell) => (cell ? [String(cell.value)] : [])))
      .join(' ')
      .replace(/\s+/g, ' ');
  const raked = { mark: 'P1', head: 'half segmental', span: 18, rise: 6, ends: 'legs', leg: 60 } as const;
  const three = said({ ...raked, quantity: 3, remarks: '2 high side left, 1 high side right' });
  expect(three).toContain('1 high side right, as drawn; 2 high side left: cuts and legs change sides');
  expect(three).toContain('set 1 of 3 high side right, set 2 to 3 of 3 high side left: 1 of 3 head');
  const open = said({ ...raked, quantity: 2 });
  expect(open).toContain('how many have the high side left is not said');
  expect(open).toContain('set 1 to 2 of 2, high side left or right: 1 of 3 head');
});

function bare(given: Parameters<typeof opening>[0]): Parameters<typeof ticketsOf> {
  const made = planTakeoff(takeoff([opening(given)], STANDARDS));
  return [made.taken, made.boards];
}

/** The radii to saw, and the least blank angle from the finished one. */
function expectRing(ticket: Ticket, at: number, radius: number, finished: number) {
  const [saw, glue] = [ticket.saw[at]!, ticket.glue[at]!];
  const inside = radius + D1;
  expect(saw.inside).toBeCloseTo(inside - MARGIN, 8);
  expect(saw.outside).toBeCloseTo(inside + FACE + MARGIN, 8);
  const angle = Math.min(360, finished + (finished === 360 ? 0 : deg((2 * ALLOWANCE) / inside)));
  expect(saw.blankAngle).toBeCloseTo(angle, 8);
  const g = rad(angle / 2 / glue.segments);
  expect(glue.miter).toBeCloseTo(deg(g), 8);
  expect(glue.longEdge).toBeCloseTo(2 * saw.outside * Math.tan(g), 8);
  expect(glue.shortEdge).toBeCloseTo(2 * saw.inside * Math.sin(g), 8);
  expect(glue.width).toBeCloseTo(saw.outside - saw.inside * Math.cos(g), 8);
  expect(glue.joints).toBe(angle === 360 ? glue.segments : glue.segments - 1);
  expect(glue.boardWidth).toBeGreaterThanOrEqual(glue.width - 1e-9);
  expect(glue.boards.length).toBeGreaterThan(0);
  expect(saw.high).toBeCloseTo(
    saw.outside - Math.min(saw.inside * Math.cos(rad(angle / 2)), saw.outside * Math.cos(rad(angle / 2))),
    8,
  );
  expect(saw.across).toBeCloseTo(2 * saw.outside * Math.sin(Math.min(rad(angle / 2), Math.PI / 2)), 8);
}

/** A segmental head mitered to legs: the corners lie on the verticals of the legs' edges. */
function expectSegmentalOnLegs(mark: string, span: number, rise: number, leg: number) {
  const ticket = of(mark);
  const a = span / 2;
  const R = (a * a + rise * rise) / (2 * rise);
  const k = R - rise;
  const theta = (d: number) => Math.asin((a + d) / (R + d));
  const y = (d: number) => (R + d) * Math.cos(theta(d)) - k;
  const mu = deg(Math.atan((y(D2) - y(D1)) / FACE));
  expectRing(ticket, 0, R, 2 * deg(Math.max(theta(D1), theta(D2))));
  const [head, left, right] = ticket.trim;
  expect(head!.insideEdge).toBeCloseTo(2 * (R + D1) * theta(D1), 8);
  expect(head!.outsideEdge).toBeCloseTo(2 * (R + D2) * theta(D2), 8);
  for (const end of [head!.left, head!.right!]) {
    expect(end.inside).toBeCloseTo(90 - deg(theta(D1)) - mu, 8);
    expect(end.outside).toBeCloseTo(90 - deg(theta(D2)) - mu, 8);
  }
  for (const one of [left!, right!]) {
    expect(one.insideEdge).toBeCloseTo(leg + y(D1), 8);
    expect(one.outsideEdge).toBeCloseTo(leg + y(D2), 8);
    expect(one.left.inside).toBeCloseTo(mu, 8);
  }
  expect(ticket.finished!.width).toBeCloseTo(2 * (a + D2), 8);
  expect(ticket.finished!.longPoints).toBeCloseTo(2 * (a + D2), 8);
  expect(ticket.finished!.height).toBeCloseTo(rise + D2 - Math.min(y(D1), y(D2)), 8);
}

describe('the tickets of ten openings, worked out again from first principles', () => {
  it('are one for each, by No.', () => {
    expect(TICKETS.map(({ no }) => no)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });

  it('a segmental head on legs; its miters also as published figures have them', () => {
    expectSegmentalOnLegs('A1', 36, 6, 60);
    const [head, leg] = of('A1').trim;
    // Worked out independently with 50 digits: miter of the leg, and the head's two marks.
    expect(leg!.left.inside).toBeCloseTo(25.6985864973, 9);
    expect(head!.left.inside).toBeCloseTo(27.2533706567, 9);
    expect(head!.left.outside).toBeCloseTo(24.2267895238, 9);
    expect(of('A1').glue[0]!.rings).toBe(2);
    expect(of('A1').pack).toEqual({ sets: 2, pieces: ['head', 'left leg', 'right leg'], extras: null });
    expect(of('A1').place).toBe('Hall');
  });

  it('a half round on legs', () => {
    const ticket = of('A2');
    expectRing(ticket, 0, 20, 180);
    const [head, left] = ticket.trim;
    expect(head!.insideEdge).toBeCloseTo(Math.PI * (20 + D1), 8);
    expect(head!.outsideEdge).toBeCloseTo(Math.PI * (20 + D2), 8);
    expect(head!.left).toEqual({ inside: 0, outside: 0 });
    expect(left).toMatchObject({ insideEdge: 62, outsideEdge: 62, left: { inside: 0, outside: 0 } });
    expect(ticket.finished!.width).toBeCloseTo(2 * (20 + D2), 8);
    expect(ticket.finished!.height).toBeCloseTo(20 + D2, 8);
  });

  it('an ellipse as three arcs: least greatest deviation, by a search of its own', () => {
    const ticket = of('A3');
    const [crown, haunch] = ticket.saw;
    // Worked out independently: haunch 18.242, crown 48.504.
    expect(crown!.inside - D1 + MARGIN).toBeCloseTo(48.504, 1);
    expect(haunch!.inside - D1 + MARGIN).toBeCloseTo(18.242, 1);
    const [R, r] = [crown!.inside + MARGIN - D1, haunch!.inside + MARGIN - D1];
    // Tangent arcs over a half span of 36 with rise 24.
    expect(Math.hypot(36 - r, R - 24)).toBeCloseTo(R - r, 8);
    const phi = Math.atan2(R - 24, 36 - r);
    expectRing(ticket, 0, R, 180 - 2 * deg(phi));
    expectRing(ticket, 1, r, deg(phi));
    expect(ticket.trim.map(({ outsideEdge }) => outsideEdge)).toEqual(
      [(r + D2) * phi, (R + D2) * (Math.PI - 2 * phi), (r + D2) * phi, 58, 58].map((length) =>
        expect.closeTo(length, 7),
      ),
    );
    expect(ticket.glue.map(({ rings }) => rings)).toEqual([1, 2]);
  });

  it('a segmental head cut on its radial lines', () => {
    const ticket = of('A4');
    const R = (24 * 24 + 16) / 8;
    const half = 2 * Math.atan(4 / 24);
    expectRing(ticket, 0, R, 2 * deg(half));
    expect(ticket.trim).toHaveLength(1);
    expect(ticket.trim[0]!.left.inside).toBeCloseTo(0, 9);
    expect(ticket.trim[0]!.insideEdge).toBeCloseTo((R + D1) * 2 * half, 8);
    expect(ticket.finished!.longPoints).toBeCloseTo(2 * (R + D2) * Math.sin(half), 8);
    expect(ticket.finished!.height).toBeCloseTo(R + D2 - (R + D1) * Math.cos(half), 8);
    expect(ticket.glue[0]!.rings).toBe(3);
  });

  it('a three-centered head by the bisector construction', () => {
    const ticket = of('A5');
    const c = Math.hypot(36, 18);
    const r = (c * c - 18 * c) / 72;
    const R = (c * c + 18 * c) / 36;
    const phi = Math.atan2(R - 18, 36 - r);
    expectRing(ticket, 0, R, 180 - 2 * deg(phi));
    expectRing(ticket, 1, r, deg(phi));
    for (const piece of ticket.trim)
      for (const end of [piece.left, piece.right]) expect(end?.inside ?? 0).toBeCloseTo(0, 6);
  });

  it('a pointed head: the joint at the crown is plumb', () => {
    const ticket = of('A6');
    const R = (18 * 18 + 34 * 34) / 36;
    const turn = (d: number) => Math.acos((R - 18) / (R + d));
    expectRing(ticket, 0, R, deg(Math.max(turn(D1), turn(D2))));
    const [left, right] = ticket.trim;
    expect(left!.outsideEdge).toBeCloseTo((R + D2) * turn(D2), 8);
    expect(left!.left.inside).toBeCloseTo(0, 9);
    // The plumb line seen from the radial line at each corner.
    expect(left!.right!.inside).toBeCloseTo(90 - deg(turn(D1)), 8);
    expect(left!.right!.outside).toBeCloseTo(90 - deg(turn(D2)), 8);
    expect(right!.left).toEqual({
      inside: expect.closeTo(90 - deg(turn(D1)), 8),
      outside: expect.closeTo(90 - deg(turn(D2)), 8),
    });
    expect(ticket.finished!.height).toBeCloseTo((R + D2) * Math.sin(turn(D2)), 8);
    expect(ticket.finished!.width).toBeCloseTo(2 * (18 + D2), 8);
  });

  it('a quarter round, a full circle on both sides of the wall, a straight head', () => {
    expectRing(of('A7'), 0, 30, 90);
    expect(of('A7').finished!.longPoints).toBeCloseTo((30 + D2) * Math.SQRT2, 8);
    expectRing(of('A8'), 0, 15, 360);
    expect(of('A8').glue[0]!.rings).toBe(2);
    expect(of('A8').finished).toEqual({
      width: expect.closeTo(2 * (15 + D2), 8),
      height: expect.closeTo(2 * (15 + D2), 8),
      longPoints: null,
    });
    const [head, leg] = of('A9').trim;
    expect(of('A9').saw).toEqual([]);
    expect([head!.insideEdge, head!.outsideEdge]).toEqual([
      expect.closeTo(42 + 2 * D1, 9),
      expect.closeTo(42 + 2 * D2, 9),
    ]);
    expect(head!.left).toEqual({ inside: expect.closeTo(45, 9), outside: expect.closeTo(45, 9) });
    expect([leg!.insideEdge, leg!.outsideEdge]).toEqual([expect.closeTo(80 + D1, 9), expect.closeTo(80 + D2, 9)]);
  });

  it('an arc beyond the trammel is laid out by ordinates over the line between its ends', () => {
    expectSegmentalOnLegs('A10', 120, 6, 80);
    const saw = of('A10').saw[0]!;
    expect(
      TICKETS.filter(({ saw: all }) => all.some(({ ordinates }) => ordinates !== null)).map(({ mark }) => mark),
    ).toEqual(['A10']);
    for (const { arc, rows } of saw.ordinates!) {
      const R = saw[arc];
      const half = R * Math.sin(rad(saw.blankAngle / 2));
      expect(rows[0]![0]).toBe(0);
      for (const [x, height] of rows) {
        expect(height).toBeCloseTo(Math.sqrt(R * R - x * x) - Math.sqrt(R * R - half * half), 7);
      }
      expect(rows.at(-1)![0]).toBeCloseTo(half, 8);
    }
  });

  it('run in the order of the set-ups, each length along the center', () => {
    const [first] = of('A1').run;
    const saw = of('A1').saw[0]!;
    expect(first!.runLength).toBeCloseTo(rad(saw.blankAngle) * (30 + D1 + FACE / 2), 8);
    expect(first!.pieces).toBe(2);
    expect(first!.setup).toBe(of('A7').run[0]!.setup);
    expect(first!.order).toBe(of('A7').run[0]!.order);
    expect(new Set(TICKETS.flatMap(({ run }) => run.map(({ order }) => order))).size).toBe(11);
  });

  it('print on at most six pages', () => {
    const sheet = ticketsSheet(TICKETS, 'in', 'ten.csv');
    expect(sheet.pageBreaks!.length + 1).toBeLessThanOrEqual(6);
    const breaks = [0, ...sheet.pageBreaks!, sheet.rows.length];
    // A landscape letter page takes 48 rows at the width of these columns.
    for (const [at, from] of breaks.slice(0, -1).entries()) expect(breaks[at + 1]! - from).toBeLessThanOrEqual(48);
    const said = sheet.rows.map((row) => row.map((cell) => String(cell?.value ?? '')).join(' ')).join('\n');
    expect(said).toContain('27.25° 24.23°');
    expect(said).toContain('43 3/8 wide × 9 5/8 high');
    expect(said).toContain('set 1 to 2 of 2: 1 of 3 head; 2 of 3 left leg; 3 of 3 right leg; Hall');
  });

  it('of a longer list begin each page of a station with its headings, and clip no word on paper', () => {
    const places = ['Dining room north wall', 'Hall'];
    const many = Array.from({ length: 30 }, (_, at) => ({
      ...{ row: at + 2, mark: `LONGMARK-${at}-EAST`, place: places[at % 2]!, quantity: 2 },
      ...{ head: 'segmental', span: 36, rise: 6, leg: 145, ends: 'legs' },
    }));
    const job = planTakeoff(
      takeoff(
        many.map((given) => opening(given as Parameters<typeof opening>[0])),
        STANDARDS,
      ),
      {
        work: 1e6,
      },
    );
    const { rows, pageBreaks, widths } = ticketsSheet(ticketsOf(job.taken, job.boards), 'in', 'many.csv');
    const starts = [2, ...pageBreaks!];
    const at = (row: number) => String(rows[row]?.find((cell) => cell !== null)?.value ?? '');
    expect(starts.length).toBeGreaterThan(5);
    expect(starts.map(at).filter((title) => /^Trim, continued$/.test(title)).length).toBeGreaterThan(1);
    for (const start of starts) expect(at(start)).toMatch(/^(Glue-up|Saw|Run|Trim|Pack)(, continued)?$/);
    for (const [page, start] of starts.entries())
      expect((starts[page + 1] ?? rows.length) - start).toBeLessThanOrEqual(48);
    for (const row of rows.slice(2))
      for (const [column, cell] of row.entries())
        if (cell?.style === 'text' && row[column + 1]?.value)
          expect(String(cell.value).length).toBeLessThanOrEqual(widths[column]! + 1);
  });

  it('leave out what can not be made yet', () => {
    const lacking = planTakeoff(takeoff([opening({ head: 'segmental', span: 36 })], STANDARDS));
    expect(ticketsOf(lacking.taken, lacking.boards)).toEqual([]);
  });
});

describe('a trammel', () => {
  // 120 in of trammel is from memory.
  it.each([
    // Its guides are a clearance of 1/32 longer: they go by the blank, too.
    [119.99, false],
    [120.01, true],
    [123, true],
  ])('for an outside radius of %d in: ordinates instead is %s', (outside, instead) => {
    const radius = outside - REVEAL - FACE - MARGIN;
    const rise = radius - Math.sqrt(radius ** 2 - 30 ** 2);
    const { taken: job, boards: plan } = planTakeoff(
      takeoff([opening({ row: 2, mark: 'T', head: 'segmental', span: 60, rise })], STANDARDS),
    );
    const [saw] = ticketsOf(job, plan)[0]!.saw;
    expect(saw!.outside).toBeCloseTo(outside, 8);
    expect(saw!.ordinates !== null).toBe(instead);
    const [setup] = planSetups(job).setups;
    // The guide boards that it runs between are laid out in the same way.
    expect(laidOutByOrdinates(valueOf(guideBoardsOf(setup!, STANDARDS)))).toBe(instead);
  });
});

describe('what is run where near radii share guides', () => {
  it('stands under the set-up of the shared guides, by the name and place that their card has', () => {
    const shop = { ...defaultStandards(), guideTolerance: 1 };
    const near = [36, 36.5].map((span, at) =>
      opening({ row: at + 2, mark: `B${at}`, head: 'segmental', span, rise: 6 }),
    );
    const { taken: job, boards: plan } = planTakeoff(takeoff(near, shop));
    const { setups } = planSetups(job);
    expect(setups).toHaveLength(1);
    const runs = ticketsOf(job, plan).map(({ run }) => run.map(({ order, setup, pieces }) => [order, setup, pieces]));
    expect(runs).toEqual([[[1, setups[0]!.name, 1]], [[1, setups[0]!.name, 1]]]);
  });
});
