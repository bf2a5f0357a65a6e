import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkLength } from '../../src/check/length';
import { benchPictures } from '../../src/drawing/benchPictures';
import { elevationScene } from '../../src/drawing/elevation';
import { jobFiles, pairsOf, templateFiles } from '../../src/drawing/template';
import { HEAD_SHAPES, type HeadShape } from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { SHAPES } from '../../src/head/shapes';
import { readSchedule } from '../../src/schedule';
import { defaultStandards } from '../../src/standards';
import { planTakeoff } from '../../src/takeoff/planned';
import { planSetups, type SetupPlan } from '../../src/takeoff/setups';
import { takeoff, type OpeningTakeoff } from '../../src/takeoff/takeoff';
import { ticketsOf } from '../../src/tickets/tickets';
import { setupsSheet } from '../../src/workbook/setupsSheet';
import { plainFormula } from '../../src/workbook/formulas/plain';
import { HEAD_CASES } from '../functions/cases/head';
import { opening } from '../takeoff/openings';
import { valueOf } from '../value';

/*
 * Every place that a head has, gone through for each of them: whoever adds one and leaves out a place learns it here, or from the
 * compiler. That its plain formulas give the same figures is held in LibreOffice (tests/spreadsheet/plainHeads.test.ts).
 */
const STANDARDS = defaultStandards();

function sizes(head: HeadShape) {
  const { span, rise, haunch = null, ends, leg } = SHAPES[head].example;
  return { head, span, rise, haunch, ends, leg };
}

type Taken = ReturnType<typeof planTakeoff> & { readonly row: OpeningTakeoff; readonly setups: SetupPlan };
const once = new Map<HeadShape, Taken>();

/** The example of a head through all of the takeoff. */
function taken(head: HeadShape): Taken {
  const before = once.get(head);
  if (before !== undefined) return before;
  const made = planTakeoff(takeoff([opening({ mark: 'W1', quantity: 2, ...sizes(head) })], STANDARDS));
  const all = { ...made, row: made.taken.openings[0]!, setups: planSetups(made.taken) };
  once.set(head, all);
  return all;
}

/** With the head in a cell the plain form asks for each that it knows, and is NA() for any other. It is long: made once. */
let anyHeadMade: ReturnType<typeof plainFormula> | undefined;
const lengthOfAnyHead = () => (anyHeadMade ??= plainFormula('ARCH.HEADLENGTH(A1,B1,C1,0.25,"legs",D1)', () => NaN));

describe.each(HEAD_SHAPES)('%s', (head) => {
  it('has worksheet functions with a known answer, and stands in their help', () => {
    const known = HEAD_CASES.filter(({ args }) => args[0] === head).map(({ name }) => name);
    expect(known).toContain('HEADLENGTH');
    const help = JSON.parse(readFileSync('functions/functions.json', 'utf8')) as {
      functions: { id: string; parameters: { name: string; description: string }[] }[];
    };
    const words = help.functions.find(({ id }) => id === 'HEADLENGTH')!.parameters.find(({ name }) => name === 'head')!;
    expect(words.description).toContain(head);
    expect(readFileSync('docs/functions.md', 'utf8')).toContain(head);
  });

  it('is read from a list', () => {
    const rows = [
      ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Haunch'],
      ['W1', 1, head, sizes(head).span, sizes(head).rise ?? '', sizes(head).haunch ?? ''],
    ];
    const { openings } = valueOf(readSchedule({ name: 'list', firstRow: 1, rows }, STANDARDS));
    expect(openings[0]).toMatchObject({ head, span: sizes(head).span, problems: [] });
  });

  it('is priced, its blanks on boards', () => {
    const { row, boards } = taken(head);
    expect(row.needs).toEqual([]);
    expect(row.cost!.price).toBeGreaterThan(0);
    expect(boards.problems).toEqual([]);
    expect(boards.plans).toHaveLength(1);
  });

  it('has a plain form of its length', () => {
    const anyHead = lengthOfAnyHead();
    expect(anyHead).toMatchObject({ fixed: false });
    expect(anyHead.formula).toContain(`IF(A1="${head}",`);
    expect(anyHead.formula).not.toContain('ARCH');
  });

  it('has set-ups with a card each, and guide boards for every ring', () => {
    const { row, setups, taken: all } = taken(head);
    const curved = setups.setups.filter(({ insideRadius }) => insideRadius !== null);
    expect(curved).toHaveLength(row.own!.rings.length);
    expect(setups.setups.length).toBeGreaterThan(0);
    const text = setupsSheet(setups, all).rows.flatMap((cells) => cells.map((cell) => String(cell?.value ?? '')));
    for (const [at, { name }] of setups.setups.entries()) expect(text).toContain(`${at + 1}. ${name}`);
    const pairs = valueOf(pairsOf(curved, STANDARDS));
    for (const { name, boards } of pairs) expect(valueOf(templateFiles(boards, name)).length).toBeGreaterThanOrEqual(3);
    expect(valueOf(jobFiles(pairs))).toHaveLength(pairs.length === 0 ? 0 : 2);
  });

  it('has tickets at every station: rings glued and sawn, pieces run, each piece of the head and its legs trimmed and packed', () => {
    const { row, boards, taken: all } = taken(head);
    const [ticket] = ticketsOf(all, boards);
    const { curve, rings, straight } = row.own!;
    expect(ticket!.glue).toHaveLength(rings.length);
    expect(ticket!.saw).toHaveLength(rings.length);
    for (const { boards: from } of ticket!.glue) expect(from.length).toBeGreaterThan(0);
    const run = ticket!.run.reduce((sum, { pieces }) => sum + pieces, 0);
    expect(run).toBe(2 * (rings.reduce((sum, { ring }) => sum + ring.count, 0) + (straight?.count ?? 0)));
    const legs = row.inputs!.leg > 0 ? curve.legs.length : 0;
    expect(ticket!.trim).toHaveLength(curve.arcs.length + curve.straights.length + legs);
    expect(ticket!.pack.pieces).toHaveLength(ticket!.trim.length);
    const outside = ticket!.trim.slice(0, ticket!.trim.length - legs).reduce((sum, one) => sum + one.outsideEdge, 0);
    // Arcs that stand for an ellipse may differ from it by no more than the pieces say.
    expect(Math.abs(outside - curve.length)).toBeLessThanOrEqual(SHAPES[head].rings === 'fitted' ? 0.5 : 1e-9);
  });

  it('is drawn: the opening with its casing, its rings and its boards', () => {
    const { row, boards, taken: all } = taken(head);
    const { ends, leg } = sizes(head);
    const figures = { head: row.curve!.head, reveal: 0.1875, face: 3.5, ends, leg, unit: 'in' } as const;
    expect(valueOf(elevationScene(figures)).shapes.length).toBeGreaterThan(3);
    const page = benchPictures(all, boards, 'list');
    expect(page.match(/<figure>/g)!.length).toBeGreaterThan(0);
    expect(page.includes('<h2>Rings</h2>')).toBe(row.own!.rings.length > 0);
  });

  it('is checked: its right length agrees, the inside edge is known for what it is', () => {
    const { span, rise, ends } = sizes(head);
    // The check is given no second figure: what needs one is asked by a size that does without.
    const given = makeHead(head, span, rise, null).ok ? { span, rise } : { span: 36, rise: 12 };
    const casing = { head, ...given, ends, face: 3.5, reveal: 3 / 16 };
    const made = valueOf(makeHead(head, given.span, given.rise, null));
    const quoted = (offset: number) => valueOf(checkLength({ ...casing, quoted: valueOf(made.length(offset, ends)) }));
    expect(quoted(3.5 + 3 / 16).verdict).toBe('agrees');
    expect(quoted(3 / 16).mistakes).toContain('measured along the inside edge');
  });
});
