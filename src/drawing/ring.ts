import { degrees, polar, radians } from '../angle';
import { blankLength, type Cut } from '../blank/length';
import { segmentOf, type Ring } from '../blank/ring';
import { blankWidth } from '../blank/width';
import { lengthText } from '../lengthText';
import { ok, type Result } from '../result';
import type { Unit } from '../unit';
import { degreesText } from './figureText';
import { dimension, leader, polygon, text, type Point, type Scene, type Shape } from './scene';
import { placed, sector, segmentShapes } from './segment';

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
}

/** Of more segments the grain would only blacken the picture. */
const MOST_WITH_GRAIN = 100;
/** Heights of a letter across the picture. */
const LETTERS_ACROSS = 36;
const CENTER: Point = { x: 0, y: 0 };

/** The ring lying flat, its middle upward: segments with their grain, joints, the boards they come from, and the figures. */
export function ringScene(figures: RingFigures): Result<Scene> {
  const { radius, face, angle, segments, margin = 0, cut = 'miter', unit } = figures;
  const width = blankWidth(radius, face, angle, segments, margin);
  if (!width.ok) return width;
  const length = blankLength(radius, face, angle, segments, margin, cut);
  if (!length.ok) return length;
  const segment = segmentOf(radius, face, margin, angle, segments);
  if (!segment.ok) return segment;
  const { of, half } = segment.value;
  const across = 2 * of.outside * Math.sin(radians(Math.min(angle / 2, 90)));
  const step = angle / segments;
  const middles = Array.from({ length: segments }, (_, segment) => 90 + angle / 2 - (segment + 0.5) * step);
  const drawn = {
    of,
    half,
    letters: across / LETTERS_ACROSS,
    top: middles[Math.floor((segments - 1) / 2)] ?? 90,
    width: width.value,
    length: length.value,
  };
  return ok({
    title: `Ring of ${segments} ${segments === 1 ? 'segment' : 'segments'}, inside radius ${lengthText(radius, unit)}`,
    description:
      `A ring of ${degreesText(angle)} glued up of ${segments} equal segments, grain along each segment's chord; each takes a board ` +
      `${lengthText(width.value, unit)} wide and ${lengthText(length.value, unit)} long.`,
    unit,
    shapes: [
      ...(cut === 'miter' ? middles.map((middle) => boardShape(of, middle, half)) : []),
      ...middles.flatMap((middle) =>
        segments <= MOST_WITH_GRAIN ? segmentShapes(of, middle, half) : [sector('casing', of, middle, step / 2)],
      ),
      ...ringDimensions(figures, drawn),
    ],
  });
}

/** The mitered board a segment is sawn from: a trapezoid between the two joints. */
function boardShape({ inside, outside }: Ring, middle: number, half: number): Shape {
  const low = inside * Math.cos(half);
  const spread = Math.tan(half);
  return polygon(
    'blank',
    [
      placed(middle, -low * spread, low),
      placed(middle, -outside * spread, outside),
      placed(middle, outside * spread, outside),
      placed(middle, low * spread, low),
    ],
    false,
  );
}

interface Drawn {
  readonly of: Ring;
  /** Half of one segment's angle, in radians. */
  readonly half: number;
  readonly letters: number;
  /** Middle of the segment that carries the board's length, in degrees. */
  readonly top: number;
  readonly width: number;
  readonly length: number;
}

function ringDimensions(figures: RingFigures, drawn: Drawn): Shape[] {
  const { unit, angle, cut = 'miter', margin = 0 } = figures;
  const { of, half, letters, top, width, length } = drawn;
  const { inside, outside } = of;
  const lift = cut === 'miter' ? 1.6 * letters : 1.6 * letters + outside * (1 - Math.cos(half));
  const edge = cut === 'miter' ? outside : outside * Math.cos(half);
  const direction = 90 - angle * 0.17;
  const tail = polar(CENTER, inside - Math.min(3 * letters, 0.7 * inside), direction);
  // Below the ends, the boards' corners and the leader's words.
  const end = radians(angle / 2);
  const corner = cut === 'miter' ? outside / Math.cos(half) : outside;
  const base = Math.min(
    inside * Math.cos(end),
    angle > 180 ? (angle > 270 ? -corner : corner * Math.cos(end)) : Infinity,
    tail.y - 1.3 * letters,
  );
  const said = (name: string, value: number) => ({ value, text: name + lengthText(value, unit), height: letters });
  return [
    dimension(
      'points',
      placed(top, -length / 2, edge),
      placed(top, length / 2, edge),
      lift,
      said('board length ', length),
    ),
    leader(polar(CENTER, inside, direction), tail, said(`${margin > 0 ? 'ring' : 'inside'} radius `, inside)),
    text({ x: 0, y: base - 2.6 * letters }, segmentsInWords(figures, degrees(half)), letters),
    text(
      { x: 0, y: base - 4.3 * letters },
      `board width ${lengthText(width, unit)}, outside radius ${lengthText(outside, unit)}` +
        (margin > 0 ? `, margin ${lengthText(margin, unit)} on each edge` : ''),
      letters,
    ),
  ];
}

function segmentsInWords({ segments, angle, cut = 'miter' }: RingFigures, half: number): string {
  return [
    `${segments} ${segments === 1 ? 'segment' : 'segments'} of ${degreesText(angle / segments)}`,
    cut === 'miter' ? `mitered ${degreesText(half)}` : `ends sawn ${degreesText(half)} off square`,
    `grain at the joint ${degreesText(half)}`,
  ].join(', ');
}
