import { ARC_ENDS, type ArcEnds, type Head, type HeadShape } from '../head/head';
import { makeHead } from '../head/makeHead';
import { leftEnd, rightEnd } from '../head/pieces';
import { SHAPES } from '../head/shapes';
import type { Result } from '../result';
import { outsideOf, type Casing } from './casing';
import { SCALE_MISTAKES, WRITING_MISTAKES } from './scaleMistakes';

/** A figure that a known mistake gives. */
export interface KnownFigure {
  readonly mistake: string;
  readonly figure: number;
  /** What the mistake multiplies a figure by: so does rounding grow or shrink. 1 unless said. */
  readonly scale?: number;
  /** Any figure has something near that a slip of the pen gives: it is named only where no other mistake fits. */
  readonly slip?: boolean;
}

/** One way to get a length wrong. Adding a mistake needs nothing but an entry here and a test that makes it. */
interface LengthMistake {
  readonly name: string;
  readonly scale?: number;
  readonly slip?: boolean;
  /** The lengths it can give; null or not finite where it can't be made. `right` is the outside (long-point) length. */
  readonly figures: (casing: Casing, right: number) => readonly (number | null)[];
}

const LENGTH_MISTAKES: readonly LengthMistake[] = [
  { name: 'measured along the inside edge', figures: (casing) => [along(casing, casing.reveal)] },
  {
    name: 'measured along the center',
    figures: (casing) => [along(casing, casing.reveal + casing.face / 2)],
  },
  { name: "measured along the opening's edge", figures: (casing) => [along(casing, 0)] },
  { name: 'reveal left out', figures: (casing) => [along(casing, casing.face)] },
  { name: 'reveal taken off, not added', figures: (casing) => [along(casing, casing.face - casing.reveal)] },
  { name: 'reveal counted twice', figures: (casing) => [along(casing, casing.face + 2 * casing.reveal)] },
  {
    name: 'face counted twice',
    figures: (casing) => [along(casing, casing.reveal + 2 * casing.face), along(casing, 2 * outsideOf(casing))],
  },
  ...ARC_ENDS.flatMap((wrong) => ARC_ENDS.filter((meant) => meant !== wrong).map((meant) => wrongEnds(wrong, meant))),
  { name: 'chord, not arc', figures: (casing) => (curved(casing.head) ? chords(casing) : []) },
  {
    name: 'diameter, not circumference',
    figures: ({ head, ...casing }) =>
      head.shape === 'round' ? [head.span, head.span + 2 * (casing.reveal + casing.face)] : [],
  },
  { name: 'half circle of this span', figures: (casing) => halfCircles(casing) },
  {
    name: 'full circle, not the arc',
    figures: (casing) => onRadius(casing, (radius) => 2 * Math.PI * (radius + outsideOf(casing)), ['round']),
  },
  { name: 'rise read as radius', figures: (casing) => riseAsRadius(casing) },
  {
    name: 'span read as radius',
    figures: (casing) =>
      onRadius(casing, (_, turn) => turn * (casing.head.span + outsideOf(casing)), [
        'half round',
        'quarter round',
        'round',
      ]),
  },
  {
    name: 'diameter read as radius',
    figures: (casing) => onRadius(casing, (radius, turn) => turn * (2 * radius + outsideOf(casing))),
  },
  {
    name: 'radius read as diameter',
    figures: (casing) => onRadius(casing, (radius, turn) => turn * (radius / 2 + outsideOf(casing))),
  },
  {
    name: 'the lesser arc of this radius',
    figures: ({ head, ...casing }) =>
      head.shape === 'segmental' && head.radius !== null && head.rise > head.span / 2
        ? [2 * (head.radius + casing.reveal + casing.face) * Math.asin(head.span / 2 / head.radius)]
        : [],
  },
  { name: 'span and rise grown, not a parallel curve', figures: (casing) => grown(casing) },
  {
    name: 'sides not run on to the center line',
    figures: (casing) =>
      casing.head.shape === 'pointed' ? onRadius(casing, (radius, turn) => turn * (radius + outsideOf(casing))) : [],
  },
  {
    name: 'length of the ellipse by a rough formula',
    figures: (casing) => (casing.head.shape === 'elliptical' ? roughEllipses(casing) : []),
  },
  reckonedAs('segmental', 'reckoned as a segmental arc', ['elliptical', 'three-centered', 'pointed']),
  reckonedAs('elliptical', 'reckoned as an ellipse', ['segmental', 'three-centered', 'pointed']),
  reckonedAs('three-centered', 'reckoned as three-centered', ['segmental', 'elliptical']),
  { name: 'one half of the head only', figures: (_, right) => [right / 2] },
  { name: 'the head counted twice', figures: (_, right) => [2 * right] },
  ...SCALE_MISTAKES.map(({ name, scale }) => ({
    name,
    scale,
    figures: (_: Casing, right: number) => [right * scale],
  })),
  {
    name: 'rounded to whole feet',
    figures: (_, right) => [12 * Math.floor(right / 12), 12 * Math.ceil(right / 12)],
  },
  ...WRITING_MISTAKES.map(({ name, figures }) => ({
    name,
    slip: true,
    figures: (_: Casing, right: number) => figures(right),
  })),
];

/** Every mistake on the list, by name. */
export const LENGTH_MISTAKE_NAMES: readonly string[] = [...new Set(LENGTH_MISTAKES.map(({ name }) => name))];

/**
 * What length each known mistake gives for this casing, in the list's order. Left out are mistakes that can't be made here and
 * those that give the right figure: measuring a half round's level ends costs nothing.
 *
 * Example: a 36 × 6 segmental head, face 3-1/2, reveal 3/16, radial ends: among others 'measured along the inside edge'
 * 38.8514 and 'reveal left out' 43.1145.
 */
export function knownLengths(casing: Casing): readonly KnownFigure[] {
  const right = along(casing, outsideOf(casing));
  if (right === null) return [];
  return LENGTH_MISTAKES.flatMap(({ name, figures, scale = 1, slip = false }) =>
    figures(casing, right)
      .filter((figure): figure is number => figure !== null && Number.isFinite(figure) && figure > 0)
      .filter((figure) => Math.abs(figure - right) > 1e-9 * right)
      .map((figure) => ({ mistake: name, figure, scale, slip })),
  );
}

function valueOf<T>(result: Result<T>): T | null {
  return result.ok ? result.value : null;
}

function along({ head, ends }: Casing, offset: number): number | null {
  return valueOf(head.length(offset, ends));
}

function curved(head: Head): boolean {
  return head.shape !== 'straight' && !SHAPES[head.shape].closed;
}

function wrongEnds(wrong: ArcEnds, meant: ArcEnds): LengthMistake {
  const words: Readonly<Record<ArcEnds, string>> = { radial: 'radial ends', level: 'level ends', legs: 'legs' };
  const name = `${words[wrong]} where ${words[meant]} were meant`;
  return {
    name,
    figures: (casing) => (casing.ends === meant ? [along({ ...casing, ends: wrong }, outsideOf(casing))] : []),
  };
}

/** Straight across: the opening, the inside and the outside edge on the spring line, and from end to end of the curve. */
function chords(casing: Casing): (number | null)[] {
  const { head, reveal, ends } = casing;
  const outside = outsideOf(casing);
  const pieces = valueOf(head.pieces(outside, ends));
  const first = pieces?.[0];
  const last = pieces?.[pieces.length - 1];
  const from = first && leftEnd(first);
  const to = last && rightEnd(last);
  const endToEnd = from && to ? Math.hypot(to.x - from.x, to.y - from.y) : null;
  return [head.span, head.span + 2 * reveal, head.span + 2 * outside, endToEnd];
}

function halfCircles(casing: Casing): number[] {
  const { head, reveal } = casing;
  if (['half round', 'quarter round', 'round'].includes(head.shape)) return [];
  const half = head.span / 2;
  return [half + outsideOf(casing), half, half + reveal].map((radius) => Math.PI * radius);
}

/** Figures from the opening's one radius and the turn of its curve in radians; none for the shapes in `not`. */
function onRadius(
  { head }: Casing,
  figure: (radius: number, turn: number) => number,
  not: readonly HeadShape[] = [],
): number[] {
  const edge = valueOf(head.length(0, 'radial'));
  if (head.radius === null || edge === null || not.includes(head.shape)) return [];
  return [figure(head.radius, edge / head.radius)];
}

function riseAsRadius(casing: Casing): number[] {
  const { head } = casing;
  if (head.rise === 0 || ['half round', 'quarter round', 'round'].includes(head.shape)) return [];
  const radius = head.rise + outsideOf(casing);
  return [Math.PI * radius, Math.PI * head.rise, ...onRadius(casing, (_, turn) => turn * radius)];
}

/** The outside edge taken for a curve of the same kind over the outside width and height; or only the inside edge. */
function grown({ head, face, reveal, ends }: Casing): (number | null)[] {
  if (head.shape === 'straight' || head.radius === head.span / 2) return [];
  const over = (more: number, offset: number, stops: Casing['ends']) => {
    const other = valueOf(makeHead(head.shape, head.span + 2 * more, head.rise + more));
    return other && valueOf(other.length(offset, stops));
  };
  return [over(reveal + face, 0, 'radial'), over(reveal, face, ends)];
}

function roughEllipses(casing: Casing): number[] {
  const half = casing.head.span / 2;
  const { rise } = casing.head;
  const turned = Math.PI * outsideOf(casing);
  return [(Math.PI * (half + rise)) / 2 + turned, Math.PI * Math.sqrt((half * half + rise * rise) / 2) + turned];
}

function reckonedAs(shape: HeadShape, name: string, instead: readonly HeadShape[]): LengthMistake {
  return {
    name,
    figures: (casing) => {
      const { head } = casing;
      if (!instead.includes(head.shape)) return [];
      const other = valueOf(makeHead(shape, head.span, head.rise));
      return [other && along({ ...casing, head: other }, outsideOf(casing))];
    },
  };
}
