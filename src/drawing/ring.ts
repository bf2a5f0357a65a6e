import { blankLength, type Cut } from '../blank/length';
import { halfSegment, ring } from '../blank/ring';
import { blankWidth } from '../blank/width';
import { positive } from '../require';
import { ok, type Result } from '../result';
import type { Unit } from '../unit';
import { lengthText } from '../lengthText';
import { degreesText } from './label';
import {
  line,
  outline,
  polar,
  polygon,
  roundSteps,
  text,
  type Layer,
  type Leader,
  type Outline,
  type Point,
  type Scene,
  type Shape,
} from './scene';

/** A glued ring, as the blank functions take it. */
export interface RingFigures {
  /** Inside radius of the molding, its width, and the degrees of the arc. */
  readonly radius: number;
  readonly face: number;
  readonly angle: number;
  readonly segments: number;
  readonly margin?: number;
  /** `miter`: the boards are drawn mitered, before the ring is sawn from them. `sawn`: segments only. */
  readonly cut?: Cut;
  readonly unit: Unit;
  readonly lettersAcross?: number;
}

/** Of more segments the grain would only blacken the picture. */
const MOST_WITH_GRAIN = 100;

/** The ring lying flat, its middle upward: segments with their grain, joints, the boards they come from, and the figures. */
export function ringScene(figures: RingFigures): Result<Scene> {
  const { radius, face, angle, segments, margin = 0, cut = 'miter', unit, lettersAcross = 36 } = figures;
  const width = blankWidth(radius, face, angle, segments, margin);
  if (!width.ok) return width;
  const length = blankLength(radius, face, angle, segments, margin, cut);
  if (!length.ok) return length;
  const of = ring(radius, face, margin);
  if (!of.ok) return of;
  const refusal = positive('letters across', lettersAcross);
  if (refusal) return refusal;
  const { inside, outside } = of.value;
  const half = halfSegment(angle, segments);
  const across = 2 * outside * Math.sin(Math.min(angle / 2, 90) * (Math.PI / 180));
  const letters = across / lettersAcross;
  const step = angle / segments;
  const middles = Array.from({ length: segments }, (_, segment) => 90 + angle / 2 - (segment + 0.5) * step);
  const shapes: Shape[] = [
    ...(cut === 'miter' ? middles.map((middle) => boardShape(middle, half, inside, outside)) : []),
    ...middles.flatMap((middle) => [
      sector('casing', { x: 0, y: 0 }, middle, step / 2, inside, outside),
      ...(segments <= MOST_WITH_GRAIN ? grainLines(middle, half, inside, outside) : []),
    ]),
    ...ringDimensions(figures, { inside, outside, half, letters, middles, width: width.value, length: length.value }),
  ];
  return ok({
    title: `Ring of ${segments} ${segments === 1 ? 'segment' : 'segments'}, inside radius ${lengthText(radius, unit)}`,
    description:
      `A ring of ${degreesText(angle)} glued up of ${segments} equal segments, grain along each segment's chord; each takes a board ` +
      `${lengthText(width.value, unit)} wide and ${lengthText(length.value, unit)} long.`,
    unit,
    shapes,
  });
}

/** The part of a ring round `middle` (degrees), as a closed outline. */
export function sector(
  layer: Layer,
  center: Point,
  middle: number,
  half: number,
  inside: number,
  outside: number,
): Outline {
  const [left, right] = [middle + half, middle - half];
  return outline(layer, polar(center, inside, left), [
    ...roundSteps(center, inside, left, right),
    { to: polar(center, outside, right) },
    ...roundSteps(center, outside, right, left),
    { to: polar(center, inside, left) },
  ]);
}

/** The mitered board a segment is sawn from: a trapezoid between the two joints. */
function boardShape(middle: number, half: number, inside: number, outside: number): Shape {
  const low = inside * Math.cos(half);
  const spread = Math.tan(half);
  return polygon(
    'blank',
    [
      { across: -low * spread, out: low },
      { across: -outside * spread, out: outside },
      { across: outside * spread, out: outside },
      { across: low * spread, out: low },
    ].map(({ across, out }) => placed(middle, across, out)),
    false,
  );
}

/** A point given across and outward from the middle of a segment. */
function placed(middle: number, across: number, out: number, center: Point = { x: 0, y: 0 }): Point {
  const outward = polar({ x: 0, y: 0 }, 1, middle);
  return { x: center.x + out * outward.x + across * outward.y, y: center.y + out * outward.y - across * outward.x };
}

/**
 * Grain along the chord of a segment, cut off at its edges: at a distance v from the center, |u| runs from the inside arc,
 * √(Ri² − v²), to the nearer of joint, v·tan g, and outside arc, √(Ro² − v²). Spacing varies a little, always the same way.
 */
export function grainLines(
  middle: number,
  half: number,
  inside: number,
  outside: number,
  center: Point = { x: 0, y: 0 },
): Shape[] {
  const quarter = Math.min(half, Math.PI / 2 - 1e-6);
  const low = inside * Math.cos(quarter);
  const lines: Shape[] = [];
  const spacing = (outside - inside) / 7;
  for (let row = 0; ; row++) {
    const out = low + spacing * (row + 0.5 + 0.28 * Math.sin(row * 2.4));
    if (out >= outside) return lines;
    const reach = Math.min(out * Math.tan(quarter), Math.sqrt(Math.max(0, outside * outside - out * out)));
    const hollow = out < inside ? Math.sqrt(inside * inside - out * out) : 0;
    if (hollow >= reach) continue;
    const spans =
      hollow > 0
        ? [
            [-reach, -hollow],
            [hollow, reach],
          ]
        : [[-reach, reach]];
    for (const [from = 0, to = 0] of spans) {
      const trim = 0.04 * (to - from);
      lines.push(line('grain', placed(middle, from + trim, out, center), placed(middle, to - trim, out, center)));
    }
  }
}

interface Drawn {
  readonly inside: number;
  readonly outside: number;
  readonly half: number;
  readonly letters: number;
  readonly middles: readonly number[];
  readonly width: number;
  readonly length: number;
}

function ringDimensions(figures: RingFigures, drawn: Drawn): Shape[] {
  const { unit, segments, angle, cut = 'miter', margin = 0 } = figures;
  const { inside, outside, half, letters, middles, width, length } = drawn;
  const top = middles[Math.floor((middles.length - 1) / 2)] ?? 90;
  const lift = cut === 'miter' ? 1.6 * letters : 1.6 * letters + outside * (1 - Math.cos(half));
  const edge = cut === 'miter' ? outside : outside * Math.cos(half);
  const ends = [-1, 1].map((side) => placed(top, (side * length) / 2, edge));
  const [from = { x: 0, y: 0 }, to = { x: 0, y: 0 }] = ends;
  const g = (half * 180) / Math.PI;
  const direction = 90 - angle * 0.17;
  const tail = polar({ x: 0, y: 0 }, inside - Math.min(3 * letters, 0.7 * inside), direction);
  // Below the ends, the boards' corners and the leader's words.
  const end = ((angle / 2) * Math.PI) / 180;
  const corner = cut === 'miter' ? outside / Math.cos(half) : outside;
  const base = Math.min(
    inside * Math.cos(end),
    angle > 180 ? (angle > 270 ? -corner : corner * Math.cos(end)) : Infinity,
    tail.y - 1.3 * letters,
  );
  const radius: Leader = {
    kind: 'leader',
    layer: 'dimension',
    tip: polar({ x: 0, y: 0 }, inside, direction),
    tail,
    value: inside,
    text: `${margin > 0 ? 'ring' : 'inside'} radius ${lengthText(inside, unit)}`,
    height: letters,
  };
  const words = [
    `${segments} ${segments === 1 ? 'segment' : 'segments'} of ${degreesText(angle / segments)}`,
    ...(cut === 'miter' ? [`mitered ${degreesText(g)}`] : [`ends sawn ${degreesText(g)} off square`]),
    `grain at the joint ${degreesText(g)}`,
  ];
  return [
    {
      kind: 'dimension',
      layer: 'dimension',
      along: 'points',
      from,
      to,
      line: lift,
      value: length,
      text: `board length ${lengthText(length, unit)}`,
      height: letters,
    },
    radius,
    text({ x: 0, y: base - 2.6 * letters }, words.join(', '), letters),
    text(
      { x: 0, y: base - 4.3 * letters },
      `board width ${lengthText(width, unit)}, outside radius ${lengthText(outside, unit)}` +
        (margin > 0 ? `, margin ${lengthText(margin, unit)} on each edge` : ''),
      letters,
    ),
  ];
}
