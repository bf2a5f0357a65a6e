import { radians } from '../angle';
import type { ExtraKind } from '../extras';
import type { Arc, Piece, Point, Straight } from '../head/head';
import { isArc } from '../head/pieces';
import { SHAPES } from '../head/shapes';
import { straightReach } from '../head/straight';
import type { Standards } from '../standards';
import type { Inputs } from '../takeoff/inputs';
import type { OpeningTakeoff } from '../takeoff/takeoff';
import { longestPiece, straightBlank } from '../takeoff/straightPieces';
import { endCut, type EndCut } from './cuts';

/** An opening that lacks nothing. */
export type Ready = OpeningTakeoff & { inputs: Inputs; own: NonNullable<OpeningTakeoff['own']> };

/** A piece as it is finished: one of the head, or a leg. */
export interface TrimTicket {
  readonly piece: string;
  readonly insideEdge: number;
  readonly outsideEdge: number;
  /** Of a leg: its upper end; its foot is square. */
  readonly left: EndCut;
  readonly right: EndCut | null;
  /** What stands against it and may take from its length; null: nothing. */
  readonly meets: ExtraKind | null;
}

/** The pieces of an opening as they are finished: of the head left to right, then the legs. */
export function trimTickets(row: Ready, standards: Standards): TrimTicket[] {
  return [...headPieces(row, standards), ...legPieces(row, standards)];
}

/** The pieces along the casing's inside edge, and along its outside edge. */
export function edgesOf(
  { own, inputs }: Ready,
  standards: Standards,
): { low: readonly Piece[]; high: readonly Piece[] } {
  const { head } = own.curve;
  const { reveal, face, ends, arcs } = inputs;
  const reach = straightReach(ends, reveal, face, standards.overhang);
  const options = {
    ...(arcs === null ? {} : { arcs }),
    ...(head.shape === 'straight' && reach !== undefined ? { reach } : {}),
  };
  const pieces = (offset: number) => {
    const found = head.pieces(offset, ends, options);
    return found.ok ? found.value : [];
  };
  return { low: pieces(reveal), high: pieces(reveal + face) };
}

/** The pieces of the head, left to right. */
function headPieces(row: Ready, standards: Standards): TrimTicket[] {
  const { low, high } = edgesOf(row, standards);
  const crown = Math.floor((high.length - 1) / 2);
  const closedRing = high.length === 1 && SHAPES[row.own.curve.head.shape].closed;
  return high.flatMap((outer, at): TrimTicket[] => {
    const inner = low[at];
    if (inner === undefined) return [];
    const name = high.length === 1 ? 'head' : `head, ${isArc(outer) ? 'arc' : 'straight'} ${at + 1}`;
    const whole: TrimTicket = {
      piece: name,
      ...{ insideEdge: inner.length, outsideEdge: outer.length },
      left: closedRing ? SQUARE : endCut(inner, outer, 'left'),
      right: closedRing ? SQUARE : endCut(inner, outer, 'right'),
      meets: hasExtra(row, 'keystone') && at === crown ? 'keystone' : null,
    };
    if (!isArc(inner) && !isArc(outer)) return straightHalves(whole, inner, outer, row, standards);
    const inHalves = row.own.rings.some(({ ring, made }) => made.parts === 2 && ring.arcs.includes(arcAt(high, at)));
    if (!inHalves || !isArc(inner) || !isArc(outer)) return [whole];
    // A splice is cut on the radial line in the middle of the finished piece.
    const middle =
      (Math.max(inner.start, outer.start) + Math.min(inner.start - inner.degrees, outer.start - outer.degrees)) / 2;
    const edges = (end: 'left' | 'right') => {
      const along = ({ start, degrees: turn, radius }: Arc) =>
        radius * radians(end === 'left' ? start - middle : middle - (start - turn));
      return { insideEdge: along(inner), outsideEdge: along(outer) };
    };
    return [
      { ...whole, ...edges('left'), piece: `${name}, left half`, right: SQUARE },
      { ...whole, ...edges('right'), piece: `${name}, right half`, left: SQUARE },
    ];
  });
}

const SQUARE: EndCut = { inside: 0, outside: 0 };

/** A straight piece of the head, in halves where it is longer than the shop carries or a board holds: spliced square in the middle of its length. */
function straightHalves(
  whole: TrimTicket,
  inner: Straight,
  outer: Straight,
  { inputs }: Ready,
  standards: Standards,
): TrimTicket[] {
  const longest = longestPiece(inputs, standards);
  if (straightBlank(Math.max(inner.length, outer.length), longest, standards).parts === 1) return [whole];
  const along = ({ x, y }: Point) =>
    ((x - outer.from.x) * (outer.to.x - outer.from.x) + (y - outer.from.y) * (outer.to.y - outer.from.y)) /
    outer.length;
  const middle = (Math.min(0, along(inner.from)) + Math.max(outer.length, along(inner.from) + inner.length)) / 2;
  const left = { insideEdge: middle - along(inner.from), outsideEdge: middle };
  const right = { insideEdge: inner.length - left.insideEdge, outsideEdge: outer.length - left.outsideEdge };
  return [
    { ...whole, ...left, piece: `${whole.piece}, left half`, right: SQUARE },
    { ...whole, ...right, piece: `${whole.piece}, right half`, left: SQUARE },
  ];
}

/** Which of the head's arcs, counted without its straight pieces, this piece is. */
function arcAt(pieces: readonly Piece[], at: number): number {
  return pieces.slice(0, at).filter(isArc).length;
}

function hasExtra({ opening }: Ready, kind: ExtraKind): boolean {
  return opening.extras?.some((extra) => extra.kind === kind && extra.each > 0) ?? false;
}

/** The legs that the opening has. */
function legPieces(row: Ready, standards: Standards): TrimTicket[] {
  const { own, inputs } = row;
  return own.curve.legs.flatMap(({ side, inside, outside, miter }): TrimTicket[] => {
    const leg = side === 'right' ? (inputs.otherLeg ?? inputs.leg) : inputs.leg;
    if (leg <= 0) return [];
    const whole: TrimTicket = {
      piece: `${side} leg`,
      insideEdge: leg + inside,
      outsideEdge: leg + outside,
      left: { inside: miter, outside: miter },
      right: null,
      meets: hasExtra(row, 'plinth block') ? 'plinth block' : null,
    };
    const long = Math.max(whole.insideEdge, whole.outsideEdge);
    if (straightBlank(long, longestPiece(inputs, standards), standards).parts === 1) return [whole];
    const upper = { insideEdge: whole.insideEdge - long / 2, outsideEdge: whole.outsideEdge - long / 2 };
    return [
      { ...whole, ...upper, piece: `${side} leg, upper half`, right: SQUARE, meets: null },
      {
        ...{ ...whole, piece: `${side} leg, lower half` },
        ...{ insideEdge: long / 2, outsideEdge: long / 2, left: SQUARE },
      },
    ];
  });
}
