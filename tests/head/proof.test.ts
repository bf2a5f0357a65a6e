import { describe, expect, it } from 'vitest';
import {
  ARC_ENDS,
  HEAD_SHAPES,
  ENDS,
  type Ends,
  type Head,
  type HeadShape,
  type Piece,
  type Point,
} from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { arcEndsOf, isArc, leftEnd, normalAt, rightEnd } from '../../src/head/pieces';
import { SHAPES } from '../../src/head/shapes';
import { straightReach } from '../../src/head/straight';
import { curveOf, type Curve } from '../../src/takeoff/curve';
import { random } from '../random';
import { valueOf } from '../value';
import { sizesOf } from './sizes';

/**
 * Laws that every head keeps, at every end rule, on random sizes: its pieces join, tangent or mitered on the line that halves
 * them; its ends stand where the rule puts them; a blank covers both corners of both ends. `HEAD_CASES=10000` tries more.
 */
const CASES = Number(process.env['HEAD_CASES'] ?? 300);

const NEAR = 1e-9;

function apart(one: Point, other: Point): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}

/** Where one piece meets the next, at both edges of the casing. */
function checkJoints(low: readonly Piece[], high: readonly Piece[], size: number, closed: boolean, say: string) {
  expect(low.length, say).toBe(high.length);
  for (let at = closed && low.length > 1 ? 0 : 1; at < low.length; at++) {
    const before = (at === 0 ? low.length : at) - 1;
    for (const pieces of [low, high]) {
      if (apart(rightEnd(pieces[before]!), leftEnd(pieces[at]!)) > NEAR * size) expect.fail(`${say}: open at ${at}`);
    }
    const [one, other] = [normalAt(low[before]!, 'right'), normalAt(low[at]!, 'left')];
    const cut = { x: leftEnd(high[at]!).x - leftEnd(low[at]!).x, y: leftEnd(high[at]!).y - leftEnd(low[at]!).y };
    const tangent = apart(one, other) < NEAR;
    const mitered = Math.abs(cut.x * (one.y + other.y) - cut.y * (one.x + other.x)) < NEAR * size * 2;
    // Two arcs of a pointed crown meet on the center line.
    const pointed = Math.abs(leftEnd(low[at]!).x) + Math.abs(leftEnd(high[at]!).x) < NEAR * size;
    if (!tangent && !mitered && !pointed) expect.fail(`${say}: neither tangent nor mitered at ${at}`);
  }
}

/** Where the rule puts the ends. */
function checkEnds(head: Head, curve: Curve, ends: Ends, reveal: number, face: number, overhang: number, say: string) {
  const { joints } = curve;
  if (joints === null) return;
  const shape = SHAPES[head.shape];
  const stops = head.shape === 'straight' ? ends : valueOf(arcEndsOf(ends));
  const size = head.span + head.rise + face;
  joints.forEach(({ side, inside, outside }) => {
    const out = side === 'left' ? -1 : 1;
    const high = side === 'right' && shape.highSide;
    for (const [offset, corner] of [
      [reveal, inside],
      [reveal + face, outside],
    ] as const) {
      // How far beyond the jamb a straight head reaches that isn't mitered, by its definitions.
      const butted = { square: 0, 'between legs': reveal, 'over legs': reveal + face + overhang };
      const beyond = head.shape === 'straight' && ends in butted ? butted[ends as keyof typeof butted] : offset;
      const away =
        stops === 'legs' || head.shape === 'straight'
          ? corner.x - out * (head.span / 2 + beyond)
          : stops === 'level' && !high
            ? corner.y
            : 0;
      if (Math.abs(away) > NEAR * size) expect.fail(`${say}: ${side} end ${away} off`);
    }
  });
}

/** Every corner of every arc, seen from its center, lies on its blank. */
function checkBlanks(
  low: readonly Piece[],
  high: readonly Piece[],
  curve: Curve,
  reveal: number,
  allowance: number,
  say: string,
) {
  const [inner, outer] = [low.filter(isArc), high.filter(isArc)];
  const seen = new Set<number>();
  for (const ring of curve.rings) {
    expect(ring.count).toBe(ring.arcs.length);
    for (const at of ring.arcs) {
      seen.add(at);
      const center = inner[at]!.center;
      // From the middle of the arc, so that no direction wraps round.
      const middle = inner[at]!.start - inner[at]!.degrees / 2;
      const from = (corner: Point) => {
        const turn = (Math.atan2(corner.y - center.y, corner.x - center.x) * 180) / Math.PI - middle;
        return turn - 360 * Math.round(turn / 360);
      };
      const [left, right] = [inner[at]!, outer[at]!].reduce(
        ([most, least], arc) => [Math.max(most, from(leftEnd(arc))), Math.min(least, from(rightEnd(arc)))],
        [-Infinity, Infinity],
      );
      if (ring.finishedAngle < 359.99 && Math.abs(left - right - ring.finishedAngle) > 1e-7) {
        expect.fail(`${say}: arc ${at} turns through ${left - right}, its blank ${ring.finishedAngle}`);
      }
      const ends = ((2 * allowance) / (ring.radius + reveal)) * (180 / Math.PI);
      const wanted = Math.min(360, ring.finishedAngle + ends);
      if (ring.blankAngle < wanted - 1e-9 && ring.blankAngle !== 360 && !(ring.angle === 360))
        expect.fail(`${say}: blank ${ring.blankAngle}`);
    }
  }
  expect(seen.size, say).toBe(inner.length);
}

describe('on random sizes every head closes its joints to 1e-9, ends where the rule says and is covered by its blanks', () => {
  it.each(HEAD_SHAPES)(
    '%s',
    (shape) => {
      const any = random(shape.length * 7919 + shape.charCodeAt(0));
      for (let at = 0; at < CASES; at++) {
        const { span, rise, haunch } = sizesOf(shape, any);
        const [reveal, face, allowance] = [any.between(0, 0.5), any.between(0.5, 8), any.between(0, 2)];
        const shop = { endAllowance: allowance, overhang: any.between(0, 2), levelMost: 1e6 };
        const head = valueOf(makeHead(shape, span, rise, haunch));
        for (const ends of ENDS) {
          // Nothing curved stands between legs, which is refused: the other words come to one of the three ways an arc stops.
          if (ends === 'between legs' && shape !== 'straight') continue;
          const say = `${shape} ${span} × ${rise} (${haunch}), reveal ${reveal}, face ${face}, ${ends}`;
          const curve = valueOf(curveOf({ head: shape, span, rise, haunch, arcs: null, reveal, face, ends }, shop));
          const reach = shape === 'straight' ? straightReach(ends, reveal, face, shop.overhang) : undefined;
          const options = reach === undefined ? {} : { reach };
          const low = valueOf(head.pieces(reveal, ends, options));
          const high = valueOf(head.pieces(reveal + face, ends, options));
          checkJoints(low, high, span + head.top + face, SHAPES[shape].closed, say);
          checkEnds(head, curve, ends, reveal, face, shop.overhang, say);
          checkBlanks(low, high, curve, reveal, allowance, say);
        }
      }
    },
    Math.max(120_000, CASES * 60),
  );
});

/** Points of the opening's own edge, carried on past both ends as far as an offset may reach. */
function sampled(head: Head): Point[] {
  const points = valueOf(head.points(0, 'radial'));
  if (points !== null) return [...points];
  const pieces = valueOf(head.pieces(0, 'radial'));
  return pieces.flatMap((piece, at): Point[] => {
    const [first, last] = [at === 0, at === pieces.length - 1];
    if (piece.kind === 'straight') {
      const on = head.span;
      const [u, w] = [(piece.to.x - piece.from.x) / piece.length, (piece.to.y - piece.from.y) / piece.length];
      const from = first ? -on : 0;
      const to = piece.length + (last ? on : 0);
      return Array.from({ length: 3001 }, (_, part) => {
        const along = from + ((to - from) * part) / 3000;
        return { x: piece.from.x + u * along, y: piece.from.y + w * along };
      });
    }
    const more = (180 - Math.min(150, piece.degrees / 2)) / 2;
    const from = piece.start + (first ? more : 0);
    const to = piece.start - piece.degrees - (last ? more : 0);
    return Array.from({ length: 6001 }, (_, part) => {
      const angle = ((from + ((to - from) * part) / 6000) * Math.PI) / 180;
      return { x: piece.center.x + piece.radius * Math.cos(angle), y: piece.center.y + piece.radius * Math.sin(angle) };
    });
  });
}

describe('the length at an offset is that of a curve sampled, moved out along its normals and cut where the rule says', () => {
  // Corners, where the parallel curves of two pieces run on to one another, are cut by the law test above.
  const smooth: readonly HeadShape[] = [
    'segmental',
    'half round',
    'quarter round',
    'half segmental',
    'shed',
    'radius corners',
    'three-centered',
  ];
  it.each(smooth.flatMap((shape) => ARC_ENDS.map((ends) => [shape, ends] as const)))('%s, %s', (shape, ends) => {
    const any = random(shape.length * 104729 + ends.length);
    for (let at = 0; at < 60; at++) {
      const { span, rise } = sizesOf(shape, any);
      const head = valueOf(makeHead(shape, span, rise));
      if (shape === 'segmental' && head.rise > span / 2) continue; // a level cut crosses such a curve four times
      const offset = any.between(0, 8);
      const points = sampled(head);
      const own = { left: leftEnd(valueOf(head.pieces(0, 'radial'))[0]!), pieces: valueOf(head.pieces(0, 'radial')) };
      const right = rightEnd(own.pieces.at(-1)!);
      const normals = [normalAt(own.pieces[0]!, 'left'), normalAt(own.pieces.at(-1)!, 'right')];
      const { highSide } = SHAPES[shape];
      /** How far inside the cut a point stands, at the left or the right end. */
      const within = (point: Point, side: 0 | 1): number => {
        const high = side === 1 && highSide;
        // Upright on the spring line a curve touches its leg, and ends on the spring line.
        if (ends === 'legs' && (high || !SHAPES[shape].plumb))
          return span / 2 + offset + (side === 0 ? point.x : -point.x);
        if (ends === 'level' && !high) return point.y;
        // On the radial line: by the tangent at the opening's own end.
        const n = normals[side]!;
        const from = side === 0 ? own.left : right;
        const along = { x: n.y, y: -n.x };
        return ((point.x - from.x) * along.x + (point.y - from.y) * along.y) * (side === 0 ? 1 : -1);
      };
      const moved = (i: number): Point => {
        const [before, after] = [points[i - 1]!, points[i + 1]!];
        const [x, y] = [after.x - before.x, after.y - before.y];
        const size = Math.hypot(x, y);
        return { x: points[i]!.x - (y / size) * offset, y: points[i]!.y + (x / size) * offset };
      };
      /** From the middle outward until the cut is crossed. */
      const walk = (side: 0 | 1): number => {
        const step = side === 0 ? -1 : 1;
        let length = 0;
        let a = moved(Math.floor(points.length / 2));
        for (let index = Math.floor(points.length / 2) + step; index > 0 && index < points.length - 1; index += step) {
          const b = moved(index);
          const [inA, inB] = [within(a, side), within(b, side)];
          const size = Math.hypot(b.x - a.x, b.y - a.y);
          if (inB < 0) return length + (size * inA) / (inA - inB);
          length += size;
          a = b;
        }
        return NaN;
      };
      const length = walk(0) + walk(1);
      const exact = valueOf(head.length(offset, ends));
      if (!(Math.abs(length - exact) < 5e-4 * exact)) {
        expect.fail(`${shape} ${span} × ${rise} at ${offset}, ${ends}: sampled ${length}, worked out ${exact}`);
      }
    }
  });
});
