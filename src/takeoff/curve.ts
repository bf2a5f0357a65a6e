import { degrees } from '../angle';
import type { Arc, Head, HeadOptions, Piece, Point } from '../head/head';
import { endJoints, fromUp, legTops, mitersLegs, type EndJoint, type LegTop } from '../head/joints';
import { makeHead } from '../head/makeHead';
import { arcEndsOf, isArc, leftEnd, normalAt, rightEnd } from '../head/pieces';
import { SHAPES } from '../head/shapes';
import { straightEndsOf, straightReach } from '../head/straight';
import { figure } from '../require';
import { ok, refuse, type Result } from '../result';
import type { Standards } from '../standards';
import type { ShapeInputs } from './inputs';

/** One kind of constant-radius ring an opening needs, and how many of it make the head. */
export interface RingKind {
  readonly count: number;
  /** Which of the head's arcs, left to right, are cut from such a ring. */
  readonly arcs: readonly number[];
  /** Radius of the opening's own curve here. */
  readonly radius: number;
  readonly inside: number;
  readonly outside: number;
  /** Degrees of the opening's own curve, one ring. */
  readonly angle: number;
  /** Degrees of the finished piece: at either end up to its farther corner. */
  readonly finishedAngle: number;
  /** Degrees the blank must cover: the finished piece with the end allowances. */
  readonly blankAngle: number;
}

/** A straight piece of the head: its two edges, and its cuts in degrees off square, positive where the outside is longer. */
export interface StraightPart {
  readonly inside: number;
  readonly outside: number;
  readonly leftCut: number;
  readonly rightCut: number;
}

/** The curve over an opening, with its casing. Lengths are of one head, in the workbook's unit. */
export interface Curve {
  readonly head: Head;
  readonly insideLength: number;
  readonly centerLength: number;
  /** At the casing's outside edge: the long-point length. */
  readonly length: number;
  /** Degrees off square between the low leg and the head; null where the ends are not mitered to legs. */
  readonly miter: number | null;
  /** The same joint's cut of the head, degrees off its radial line at the inside corner; of a straight piece off square. */
  readonly headMiter: number | null;
  /** How each end is cut; null for a closed head. */
  readonly joints: readonly [EndJoint, EndJoint] | null;
  /** The legs it stands on, should there be any, with their upper corners. */
  readonly legs: readonly LegTop[];
  /** The arcs left to right, at the casing's outside edge. */
  readonly arcs: readonly Arc[];
  /** Greatest distance of the arcs from the true curve. */
  readonly deviation: number;
  /** Each kind of ring, the crown's first. */
  readonly rings: readonly RingKind[];
  /** The straight pieces of the head, left to right: the one of a straight head, none of a curve. */
  readonly straights: readonly StraightPart[];
  /** Joints between the head's own pieces. */
  readonly pieceJoints: number;
  /** By how much of the arc cutting the ends level makes the head longer: 0.21 where it adds 21 percent. */
  readonly levelAdds: number;
  /** The ring of the crown, or the only one; null for a head of straight pieces. */
  readonly crown: RingKind | null;
  /** The next kind of ring, at the springing of an elliptical or three-centered head. */
  readonly haunch: RingKind | null;
}

type Shop = Pick<Standards, 'endAllowance' | 'overhang' | 'levelMost'>;

export function curveOf(inputs: ShapeInputs, shop: Shop): Result<Curve> {
  const { reveal, face, ends } = inputs;
  const made = makeHead(inputs.head, inputs.span, inputs.rise, inputs.haunch ?? null);
  if (!made.ok) return made;
  const head = made.value;
  const { closed } = SHAPES[head.shape];
  const edge = reveal + face;
  const reach = straightReach(ends, reveal, face, shop.overhang);
  const options: HeadOptions = {
    ...(typeof inputs.arcs === 'number' ? { arcs: inputs.arcs } : {}),
    ...(head.shape === 'straight' && reach !== undefined ? { reach } : {}),
  };
  const inside = head.length(reveal, ends, options);
  if (!inside.ok) return inside;
  const center = head.length(reveal + face / 2, ends, options);
  if (!center.ok) return center;
  const outside = head.length(edge, ends, options);
  if (!outside.ok) return outside;
  const own = head.arcs(0, 'radial', options);
  if (!own.ok) return own;
  const low = head.pieces(reveal, ends, options);
  if (!low.ok) return low;
  const high = head.pieces(edge, ends, options);
  if (!high.ok) return high;
  const joints = endJoints(head, reveal, face, ends, options);
  if (!joints.ok) return joints;
  const mitered = mitersLegs(head, ends) ? joints.value?.[0] : undefined;
  const legs = legTops(head, reveal, face, ends, options);
  if (!legs.ok) return legs;
  const adds = levelAdds(head, edge, ends, outside.value);
  if (!adds.ok) return adds;
  if (adds.value > shop.levelMost) {
    const percent = (part: number) => `${figure(Math.round(part * 1000) / 10)} percent`;
    return refuse(
      `Ends cut level make this head ${percent(adds.value)} longer; Standards allow ${percent(shop.levelMost)} ` +
        '(Level ends, at most): miter it to legs, or end it radially.',
    );
  }

  const rings = ringsOf(own.value, low.value.filter(isArc), high.value.filter(isArc), reveal, face, shop.endAllowance);
  const pieces = high.value.length;
  return ok({
    head,
    insideLength: inside.value,
    centerLength: center.value,
    length: outside.value,
    miter: mitered?.legMiter ?? null,
    headMiter: mitered?.headInside ?? null,
    joints: joints.value,
    legs: legs.value,
    arcs: high.value.filter(isArc),
    deviation: Math.max(0, ...own.value.map((arc) => arc.deviation)),
    rings,
    straights: straightParts(low.value, high.value),
    pieceJoints: closed && pieces > 1 ? pieces : pieces - 1,
    levelAdds: adds.value,
    crown: rings[0] ?? null,
    haunch: rings[1] ?? null,
  });
}

/** How much longer level ends make the head than radial ones; 0 where it ends otherwise, or springs plumb. */
function levelAdds(head: Head, edge: number, ends: ShapeInputs['ends'], level: number): Result<number> {
  if (head.shape === 'straight') return ok(0);
  const stops = arcEndsOf(ends);
  if (!stops.ok || stops.value !== 'level' || SHAPES[head.shape].plumb) return ok(0);
  const radial = head.length(edge, 'radial');
  return radial.ok ? ok(Math.max(0, level / radial.value - 1)) : radial;
}

/**
 * Arcs of one radius and one angle are one kind. A straight cut is seen from the arc's center at its greatest angle at one of
 * its corners: the outer one under a flat arc, the inner one above a half round; each end counts its own.
 */
function ringsOf(
  own: readonly Arc[],
  low: readonly Arc[],
  high: readonly Arc[],
  reveal: number,
  face: number,
  allowance: number,
): RingKind[] {
  const kinds: (Omit<RingKind, 'count' | 'arcs'> & { arcs: number[]; fromUp: number })[] = [];
  own.forEach((arc, at) => {
    const [inner, outer] = [low[at]!, high[at]!];
    const start = Math.max(inner.start, outer.start);
    const end = Math.min(inner.start - inner.degrees, outer.start - outer.degrees);
    const { radius } = arc;
    const inside = radius + reveal;
    const finishedAngle = Math.min(360, start - end);
    const blankAngle = Math.min(360, finishedAngle + degrees((2 * allowance) / inside));
    const alike = kinds.find(
      (kind) => same(kind.radius, radius) && same(kind.blankAngle, blankAngle) && same(kind.angle, arc.degrees),
    );
    if (alike) {
      alike.arcs.push(at);
      alike.fromUp = Math.min(alike.fromUp, fromUp(arc));
      return;
    }
    const size = { radius, inside, outside: inside + face, angle: arc.degrees };
    kinds.push({ ...size, finishedAngle, blankAngle, arcs: [at], fromUp: fromUp(arc) });
  });
  return kinds
    .sort((one, other) => one.fromUp - other.fromUp)
    .map(({ fromUp: _, ...kind }) => ({ ...kind, count: kind.arcs.length }));
}

function same(one: number, other: number): boolean {
  return Math.abs(one - other) <= 1e-9 * one;
}

function straightParts(low: readonly Piece[], high: readonly Piece[]): StraightPart[] {
  return high.flatMap((outer, at): StraightPart[] => {
    const inner = low[at];
    if (outer.kind !== 'straight' || inner?.kind !== 'straight') return [];
    const normal = normalAt(outer, 'left');
    const along = { x: normal.y, y: -normal.x };
    /** Off square of the cut from an inside corner to an outside one, growing along the piece. */
    const cut = (from: Point, to: Point) => {
      const [x, y] = [to.x - from.x, to.y - from.y];
      return degrees(Math.atan2(x * along.x + y * along.y, x * normal.x + y * normal.y));
    };
    return [
      {
        inside: inner.length,
        outside: outer.length,
        leftCut: 0 - cut(leftEnd(inner), leftEnd(outer)),
        rightCut: cut(rightEnd(inner), rightEnd(outer)),
      },
    ];
  });
}

/** Whether a straight head is sawn at an angle to its legs, or square. */
export function isButted({ head, ends }: Pick<ShapeInputs, 'head' | 'ends'>): boolean {
  return head === 'straight' && straightEndsOf(ends) !== 'mitered';
}

/** How long a leg is from its foot to its farther upper corner, its foot `leg` below the spring line. */
export function legLength(leg: number, { inside, outside }: LegTop): number {
  return leg + Math.max(inside, outside);
}
