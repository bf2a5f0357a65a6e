import { degrees } from '../angle';
import type { Arc, Head } from '../head/head';
import { makeHead } from '../head/makeHead';
import { ok, refuse, type Result } from '../result';
import { miter } from '../head/miter';
import { legTop } from '../head/segmental';
import type { ShapeInputs } from './inputs';

/** One kind of constant-radius ring an opening needs, and how many of it make the head. */
export interface RingKind {
  readonly count: number;
  /** Radius of the opening's own curve here. */
  readonly radius: number;
  readonly inside: number;
  readonly outside: number;
  /** Degrees of the opening's own curve, one ring. */
  readonly angle: number;
  /** Degrees the blank must cover: the piece to its long point, with the end allowances. */
  readonly blankAngle: number;
}

/** The curve over an opening, with its casing. Lengths are of one head, in the workbook's unit. */
export interface Curve {
  readonly head: Head;
  readonly insideLength: number;
  readonly centerLength: number;
  /** At the casing's outside edge: the long-point length. */
  readonly length: number;
  /** Degrees off square between leg and head; null where the ends are not mitered to legs. */
  readonly miter: number | null;
  /** The arcs left to right, at the casing's outside edge. */
  readonly arcs: readonly Arc[];
  /** Greatest distance of the arcs from the true curve. */
  readonly deviation: number;
  /** The ring of the crown, or the only one; null for a straight head. */
  readonly crown: RingKind | null;
  /** The ring at the springing of an elliptical or three-centered head. */
  readonly haunch: RingKind | null;
}

export function curveOf(inputs: ShapeInputs, endAllowance: number): Result<Curve> {
  const { reveal, face, ends } = inputs;
  const made = makeHead(inputs.head, inputs.span, inputs.rise);
  if (!made.ok) return made;
  const head = made.value;
  const edge = reveal + face;
  const inside = head.length(reveal, ends);
  if (!inside.ok) return inside;
  const center = head.length(reveal + face / 2, ends);
  if (!center.ok) return center;
  const outside = head.length(edge, ends);
  if (!outside.ok) return outside;
  const arcs = head.arcs(edge, ends);
  if (!arcs.ok) return arcs;
  const joint = miterOf(inputs);
  if (!joint.ok) return joint;

  const own = head.arcs(0, 'radial');
  if (!own.ok) return own;
  const ring = (at: number, count: number): Result<RingKind> => {
    const arc = own.value[at];
    const covered = arcs.value[at];
    if (arc === undefined || covered === undefined) return refuse('The head has no arc to be glued up.');
    const radius = arc.radius;
    const allowance = head.shape === 'round' ? 0 : degrees((2 * endAllowance) / (radius + reveal));
    return ok({
      count,
      radius,
      inside: radius + reveal,
      outside: radius + reveal + face,
      angle: arc.degrees,
      blankAngle: Math.min(360, covered.degrees + allowance),
    });
  };
  let crown: RingKind | null = null;
  let haunch: RingKind | null = null;
  if (own.value.length > 0) {
    const several = own.value.length === 3;
    const first = ring(several ? 1 : 0, own.value.length === 2 ? 2 : 1);
    if (!first.ok) return first;
    crown = first.value;
    if (several) {
      const second = ring(0, 2);
      if (!second.ok) return second;
      haunch = second.value;
    }
  }
  return ok({
    head,
    insideLength: inside.value,
    centerLength: center.value,
    length: outside.value,
    miter: joint.value,
    arcs: arcs.value,
    deviation: Math.max(0, ...own.value.map((arc) => arc.deviation)),
    crown,
    haunch,
  });
}

/** A segmental head meets its legs at a slant, a straight one at 45°; every other head springs plumb. */
function miterOf(inputs: ShapeInputs): Result<number | null> {
  if (inputs.ends !== 'legs') return ok(null);
  if (inputs.head === 'straight') return ok(45);
  if (inputs.head !== 'segmental' || inputs.rise === null) return ok(0);
  return miter(inputs.span, inputs.rise, inputs.face, inputs.reveal);
}

/** How far the leg's long point stands above the spring line. */
export function legAboveSpring(inputs: ShapeInputs): number {
  if (inputs.ends !== 'legs') return 0;
  const edge = inputs.reveal + inputs.face;
  if (inputs.head === 'straight') return edge;
  if (inputs.head !== 'segmental' || inputs.rise === null) return 0;
  return legTop(inputs.span, inputs.rise, edge);
}
