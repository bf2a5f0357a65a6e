import { degrees } from '../angle';
import { ok, type Result } from '../result';
import { perInch } from '../unit';
import { lengthText } from '../lengthText';
import { guideLayout, SCREW_INSET, type GuideBoards, type GuideLayout, type GuideShape } from './guideLayout';
import { radiusText } from './figureText';
import { roundSteps } from './roundSteps';
import { arc, circle, dimension, line, outline, polygon, text, type Point, type Scene, type Shape } from './scene';
import { sector } from './segment';
import { shortList, wrap } from './words';

const SCREW_RADIUS = 0.1;
/** Height of the letters on a pair of boards, in inches. */
export const LETTERS = 0.22;
const ROW = 1.7;

/** The pair as it lies on the bed, seen from above, the blank fed from left to right; full size. */
export function guideScene(boards: GuideBoards): Result<Scene> {
  const layout = guideLayout(boards);
  if (!layout.ok) return layout;
  const { unit } = boards;
  const { inside, outside, center, bedLine } = layout.value;
  const letters = LETTERS * perInch(unit);
  const low = inside.back - 2.2 * letters;
  const high = outside.back + 1.2 * letters;
  const foot = low - 1.4 * letters;
  const shapes: Shape[] = [
    ...bedLines(bedLine, low, high, letters),
    board(inside, center),
    board(outside, center),
    molding(boards, layout.value),
    ...blankEdges(layout.value),
    ...[inside, outside].flatMap((guide) => guide.screws.flatMap((at) => screw(at, perInch(unit)))),
    line('center', { x: 0, y: low - 2.6 * letters }, { x: 0, y: high + 1.2 * letters }),
    text({ x: 0, y: high + 1.7 * letters }, "center line: lowest point of the knife's swing", letters),
    ...[-bedLine, 0].map((x) =>
      dimension('x', { x, y: low }, { x: x + bedLine, y: low }, foot, {
        value: bedLine,
        text: lengthText(bedLine, unit, 32),
        height: letters,
      }),
    ),
    ...insideLabels(boards, layout.value, letters),
    ...outsideLabels(boards, layout.value, letters),
    ...gapLabels(boards, layout.value, letters),
  ];
  return ok({
    title: `Guide boards for ${boards.marks.join(', ') || 'one molding'}: inside radius ${lengthText(boards.radius, unit, 32)}`,
    description:
      `Two guide boards seen from above, arcs ${radiusText(inside.radius, unit)} and ${radiusText(outside.radius, unit)}, ` +
      `with the blank's path between them, a center line, two bed lines ${lengthText(bedLine, unit, 32)} from it and three screws in each board.`,
    unit,
    shapes,
  });
}

/** Half the turn of a board's arc, in degrees. */
function halfTurn({ radius, halfLength }: Pick<GuideShape, 'radius' | 'halfLength'>): number {
  return degrees(Math.asin(halfLength / radius));
}

function board(guide: GuideShape, center: Point): Shape {
  const { radius, halfLength, crown, rise, back } = guide;
  const turn = halfTurn(guide);
  return outline('guide', { x: halfLength, y: back }, [
    { to: { x: -halfLength, y: back } },
    { to: { x: -halfLength, y: crown - rise } },
    ...roundSteps(center, radius, 90 + turn, 90 - turn),
    { to: { x: halfLength, y: back } },
  ]);
}

/** The finished molding where it passes between the boards: the knife is set to it. */
function molding({ radius, face }: GuideBoards, { inside, center }: GuideLayout): Shape {
  return sector('casing', { inside: radius, outside: radius + face }, 90, halfTurn(inside), center);
}

/** The blank's sawn edges, a clearance away from each guide. */
function blankEdges({ inside, outside, clearance, center }: GuideLayout): Shape[] {
  return [
    { radius: inside.radius + clearance, halfLength: inside.halfLength },
    { radius: outside.radius - clearance, halfLength: outside.halfLength },
  ].map((edge) => arc('blank', center, edge.radius, 90 - halfTurn(edge), 90 + halfTurn(edge)));
}

function screw(at: Point, inch: number): Shape[] {
  const reach = SCREW_RADIUS * 2 * inch;
  return [
    circle('screw', at, SCREW_RADIUS * inch),
    line('screw', { x: at.x - reach, y: at.y }, { x: at.x + reach, y: at.y }),
    line('screw', { x: at.x, y: at.y - reach }, { x: at.x, y: at.y + reach }),
  ];
}

function bedLines(at: number, low: number, high: number, letters: number): Shape[] {
  return [-at, at].flatMap((x): Shape[] => [
    line('bed', { x, y: low - letters }, { x, y: high }),
    text({ x, y: high + 0.5 * letters }, 'bed line', letters),
  ]);
}

/** Rows of words on both sides of the center line, from the top down. */
function rows(left: readonly string[], right: readonly string[], top: number, letters: number): Shape[] {
  const column = (lines: readonly string[], x: number, anchor: 'start' | 'end') =>
    lines.map((words, row) => text({ x, y: top - row * ROW * letters }, words, letters, anchor));
  return [...column(left, -1.2 * letters, 'end'), ...column(right, 1.2 * letters, 'start')];
}

/** What stands on one board: what it is on the left, what runs on it on the right, clear of the screws. */
function labels(boards: GuideBoards, layout: GuideLayout, guide: 'inside' | 'outside', letters: number) {
  const { radius, halfLength: half } = layout[guide];
  const room = half - 2 * letters - SCREW_INSET * perInch(boards.unit);
  const left = [`${guide.toUpperCase()} GUIDE`, `R ${radiusText(radius, boards.unit)}`];
  if (layout.straight) left.push('AS GOOD AS STRAIGHT');
  if (boards.thinEdge === guide) left.push('THIN EDGE THIS SIDE');
  const right = [...wrap(boards.profile, room, letters, 2), ...wrap(shortList(boards.marks, 4), room, letters, 2)];
  return { left, right };
}

function insideLabels(boards: GuideBoards, layout: GuideLayout, letters: number): Shape[] {
  const { inside } = layout;
  const { left, right } = labels(boards, layout, 'inside', letters);
  return rows(left, right, inside.crown - inside.rise - 2 * letters, letters);
}

function outsideLabels(boards: GuideBoards, layout: GuideLayout, letters: number): Shape[] {
  const { outside } = layout;
  const { left, right } = labels(boards, layout, 'outside', letters);
  const lines = Math.max(left.length, right.length);
  return rows(left, right, outside.crown + (lines * ROW + 0.6) * letters, letters);
}

/** Between the boards: the molding's own figures, and the way it is fed. */
function gapLabels(boards: GuideBoards, { inside, center }: GuideLayout, letters: number): Shape[] {
  const { radius, face, unit } = boards;
  const middle = radius + face / 2;
  const half = Math.min(inside.halfLength, 3.4 * letters * 4);
  const drop = (x: number) => center.y + Math.sqrt(middle * middle - x * x);
  const tip = { x: half - 0.5 * letters, y: drop(half) };
  const shaft = 4 * letters;
  return [
    text(
      { x: -1.2 * letters, y: drop(0) + 0.5 * letters },
      `molding ${lengthText(face, unit, 32)} wide`,
      letters,
      'end',
    ),
    text({ x: -1.2 * letters, y: drop(0) - 1.3 * letters }, `R ${lengthText(radius, unit, 32)} inside`, letters, 'end'),
    text({ x: tip.x - shaft - 0.6 * letters, y: tip.y - letters / 2 }, 'feed', letters, 'end'),
    line('label', { x: tip.x - shaft, y: tip.y }, tip),
    polygon('dimension', [
      tip,
      { x: tip.x - letters, y: tip.y + 0.35 * letters },
      { x: tip.x - letters, y: tip.y - 0.35 * letters },
    ]),
  ];
}
