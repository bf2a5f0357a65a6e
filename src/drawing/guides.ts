import { arcOrdinates, arcRise } from '../arc';
import { guides, GUIDE_CLEARANCE } from '../blank/guides';
import { ring } from '../blank/ring';
import { notNegative, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import { perInch, type Unit } from '../unit';
import { textWidth } from './dimension';
import { lengthText, radiusText } from './label';
import {
  arc,
  circle,
  line,
  outline,
  polygon,
  roundSteps,
  text,
  type Point,
  type Scene,
  type Shape,
  type Step,
} from './scene';

/** One pair of guide boards: what runs between them and how they sit on the bed. Lengths in `unit`. */
export interface GuideBoards {
  /** Openings whose blanks run between these guides. */
  readonly marks: readonly string[];
  readonly profile: string;
  /** Inside radius of the molding, and its width. */
  readonly radius: number;
  readonly face: number;
  /** Oversize of the blank on each edge; default 0. */
  readonly margin?: number;
  /** Gap between blank and each guide; default 1/32 in. */
  readonly clearance?: number;
  readonly thinEdge: 'inside' | 'outside';
  readonly unit: Unit;
  /** From the center line to each of the two bed lines; default 5 in. */
  readonly bedLine?: number;
  /** From the center line to each end of the boards; default 1 in past the bed lines. */
  readonly halfLength?: number;
  /** Least depth of a board behind its arc; default 4 in. */
  readonly depth?: number;
}

/** The figures of a pair as it is drawn, worked out once for the drawing, the ordinates and the tests. */
export interface GuideLayout {
  readonly inside: GuideShape;
  readonly outside: GuideShape;
  readonly blankWidth: number;
  readonly bedLine: number;
  readonly clearance: number;
  /** Center of all arcs. The origin is the molding's inside edge on the center line, so that the knife is found from it. */
  readonly center: Point;
}
export interface GuideShape {
  readonly radius: number;
  /** From the center line to each end of this board; a tight arc ends before the full length. */
  readonly halfLength: number;
  /** Height of the arc over the straight line between its ends. */
  readonly rise: number;
  /** Height of the arc's crown and of the board's straight back. */
  readonly crown: number;
  readonly back: number;
  readonly screws: readonly [Point, Point, Point];
}

/** A guide stops where its arc has come round this far: beyond, it would only wrap round the blank. */
const WIDEST_ARC = 0.95;
const SCREW_INSET = 1.5;
const SCREW_RADIUS = 0.1;
const LETTERS = 0.22;
const ROW = 1.7;

/**
 * Where the arcs, edges and screws of a pair of guide boards lie. Refused: figures the guide radii refuse (see `guides`),
 * and bed lines or boards of no length.
 * Example: radius 18, face 3-1/2, margin 1/4, clearance 1/32: arcs of 17.71875 and 21.78125 round (0, -18).
 */
export function guideLayout(boards: GuideBoards): Result<GuideLayout> {
  const inch = perInch(boards.unit);
  const { radius, face, margin = 0, clearance = GUIDE_CLEARANCE * inch, bedLine = 5 * inch, depth = 4 * inch } = boards;
  const { halfLength = bedLine + inch } = boards;
  const radii = guides(radius, face, margin, clearance);
  if (!radii.ok) return radii;
  const blank = ring(radius, face, margin);
  if (!blank.ok) return blank;
  const refusal =
    positive('bed line distance', bedLine) ??
    positive('half length of the guides', halfLength) ??
    notNegative('depth of the guides', depth);
  if (refusal) return refusal;
  if (halfLength <= SCREW_INSET * inch || depth < 2 * inch) {
    return refuse(
      `guide boards must be more than ${2 * SCREW_INSET * inch} long and at least ${2 * inch} deep, for the screws; got ${2 * halfLength} by ${depth}`,
    );
  }
  const shape = (arcRadius: number, side: 1 | -1): Result<GuideShape> => {
    const half = Math.min(halfLength, WIDEST_ARC * arcRadius);
    const rise = arcRise(2 * half, arcRadius);
    if (!rise.ok) return rise;
    const crown = arcRadius - radius;
    // The inside board is thinnest at its ends, the outside board on the center line.
    const back = side < 0 ? crown - rise.value - depth : crown + depth;
    const inset = Math.min(SCREW_INSET * inch, half / 3);
    const ends = back - (side * (side < 0 ? depth : depth + rise.value)) / 2;
    const screws: GuideShape['screws'] = [
      { x: -half + inset, y: ends },
      { x: 0, y: back - side * inch },
      { x: half - inset, y: ends },
    ];
    return ok({ radius: arcRadius, halfLength: half, rise: rise.value, crown, back, screws });
  };
  const inside = shape(radii.value.inside, -1);
  if (!inside.ok) return inside;
  const outside = shape(radii.value.outside, 1);
  if (!outside.ok) return outside;
  return ok({
    inside: inside.value,
    outside: outside.value,
    blankWidth: blank.value.width,
    bedLine,
    clearance,
    center: { x: 0, y: -radius },
  });
}

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
    ...[-1, 1].map((side): Shape => ({
      kind: 'dimension',
      layer: 'dimension',
      along: 'x',
      from: { x: Math.min(0, side * bedLine), y: low },
      to: { x: Math.max(0, side * bedLine), y: low },
      line: foot,
      value: bedLine,
      text: lengthText(bedLine, unit, 32),
      height: letters,
    })),
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

function board({ radius, halfLength, crown, rise, back }: GuideShape, center: Point): Shape {
  const turn = (Math.asin(halfLength / radius) * 180) / Math.PI;
  return outline('guide', { x: halfLength, y: back }, [
    { to: { x: -halfLength, y: back } },
    { to: { x: -halfLength, y: crown - rise } },
    ...roundSteps(center, radius, 90 + turn, 90 - turn),
    { to: { x: halfLength, y: back } },
  ]);
}

/** The finished molding where it passes between the boards: the knife is set to it. */
function molding({ radius, face }: GuideBoards, { inside, center }: GuideLayout): Shape {
  const turn = (Math.asin(inside.halfLength / inside.radius) * 180) / Math.PI;
  const start = {
    x: center.x - radius * Math.sin((turn * Math.PI) / 180),
    y: center.y + radius * Math.cos((turn * Math.PI) / 180),
  };
  const outer = radius + face;
  const far = {
    x: center.x + outer * Math.sin((turn * Math.PI) / 180),
    y: center.y + outer * Math.cos((turn * Math.PI) / 180),
  };
  const steps: Step[] = [
    ...roundSteps(center, radius, 90 + turn, 90 - turn),
    { to: far },
    ...roundSteps(center, outer, 90 - turn, 90 + turn),
    { to: start },
  ];
  return outline('casing', start, steps);
}

/** The blank's sawn edges, a clearance away from each guide. */
function blankEdges({ inside, outside, clearance, center }: GuideLayout): Shape[] {
  return [
    { radius: inside.radius + clearance, half: inside.halfLength },
    { radius: outside.radius - clearance, half: outside.halfLength },
  ].map(({ radius, half }) => {
    const turn = (Math.asin(half / radius) * 180) / Math.PI;
    return arc('blank', center, radius, 90 - turn, 90 + turn);
  });
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

/** Rows of words on both sides of the center line, wrapped to the board. */
function rows(left: readonly string[], right: readonly string[], top: number, half: number, letters: number): Shape[] {
  const room = half - 2 * letters - (SCREW_INSET * letters) / LETTERS;
  const column = (lines: readonly string[], x: number, anchor: 'start' | 'end') =>
    wrap(lines, room, letters).map((words, row) => text({ x, y: top - row * ROW * letters }, words, letters, anchor));
  return [...column(left, -1.2 * letters, 'end'), ...column(right, 1.2 * letters, 'start')];
}

function insideLabels(boards: GuideBoards, { inside }: GuideLayout, letters: number): Shape[] {
  const left = ['INSIDE GUIDE', `R ${radiusText(inside.radius, boards.unit)}`];
  if (boards.thinEdge === 'inside') left.push('THIN EDGE THIS SIDE');
  const right = [boards.profile, shortList(boards.marks, 4)];
  return rows(left, right, inside.crown - inside.rise - 2 * letters, inside.halfLength, letters);
}

function outsideLabels(boards: GuideBoards, { outside }: GuideLayout, letters: number): Shape[] {
  const left = ['OUTSIDE GUIDE', `R ${radiusText(outside.radius, boards.unit)}`];
  if (boards.thinEdge === 'outside') left.push('THIN EDGE THIS SIDE');
  const right = [boards.profile, shortList(boards.marks, 4)];
  const lines = Math.max(
    wrappedRows(left, outside.halfLength, letters),
    wrappedRows(right, outside.halfLength, letters),
  );
  return rows(left, right, outside.crown + (lines * ROW + 0.6) * letters, outside.halfLength, letters);
}

function wrappedRows(lines: readonly string[], half: number, letters: number): number {
  return wrap(lines, half - 2 * letters - (SCREW_INSET * letters) / LETTERS, letters).length;
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

/** The ordinates of one guide's arc from the straight line between its ends. */
export interface GuideOrdinates {
  readonly guide: 'inside' | 'outside';
  readonly radius: number;
  readonly rows: readonly (readonly [fromCenterLine: number, height: number])[];
}

/** Longer than this a trammel is no longer practical in a shop: the arc is laid out by ordinates and a batten. From experience: 10 ft. */
export const LONGEST_TRAMMEL = 120;

/** Ordinates of both guide arcs, from the straight line joining each arc's ends, every `step` (default 1 in). */
export function guideOrdinates(boards: GuideBoards, step?: number): Result<readonly GuideOrdinates[]> {
  const layout = guideLayout(boards);
  if (!layout.ok) return layout;
  const found: GuideOrdinates[] = [];
  for (const guide of ['inside', 'outside'] as const) {
    const { radius, halfLength, rise } = layout.value[guide];
    const list = arcOrdinates(2 * halfLength, rise, step ?? perInch(boards.unit));
    if (!list.ok) return list;
    found.push({ guide, radius, rows: list.value });
  }
  return ok(found);
}

/** The first few of a list, and how many more there are. */
export function shortList(items: readonly string[], most: number): string {
  if (items.length <= most) return items.join(', ');
  return `${items.slice(0, most).join(', ')} and ${items.length - most} more`;
}

/** Breaks lines between words to fit a width; a word too long for it stays whole. */
export function wrap(lines: readonly string[], width: number, height: number): string[] {
  return lines.flatMap((whole) => {
    const done: string[] = [];
    let current = '';
    for (const word of whole.split(/\s+/)) {
      const longer = current === '' ? word : `${current} ${word}`;
      if (current !== '' && textWidth(longer, height) > width) {
        done.push(current);
        current = word;
      } else current = longer;
    }
    return [...done, current];
  });
}
