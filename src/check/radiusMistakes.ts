import { makeHead } from '../head/makeHead';
import { outsideOf, type Casing } from './casing';
import type { KnownFigure } from './lengthMistakes';
import { SCALE_MISTAKES, WRITING_MISTAKES } from './scaleMistakes';

interface RadiusMistake {
  readonly name: string;
  readonly scale?: number;
  readonly slip?: boolean;
  readonly figures: (casing: Casing, radius: number) => readonly number[];
}

/** `radius` is the opening's own; the right figure is the casing's inside radius, radius + reveal. */
const RADIUS_MISTAKES: readonly RadiusMistake[] = [
  { name: 'opening radius used for the casing', figures: (_, radius) => [radius] },
  { name: 'radius of the center of the face', figures: ({ reveal, face }, radius) => [radius + reveal + face / 2] },
  { name: 'outside radius', figures: (casing, radius) => [radius + outsideOf(casing)] },
  { name: 'reveal taken off, not added', figures: ({ reveal }, radius) => [radius - reveal] },
  { name: 'rise read as radius', figures: ({ head }) => (ownRise(head.shape) ? [head.rise] : []) },
  { name: 'half the span read as radius', figures: ({ head }) => (ownRise(head.shape) ? [head.span / 2] : []) },
  { name: 'span read as radius', figures: ({ head }) => (ownRise(head.shape) ? [head.span] : []) },
  {
    name: 'diameter read as radius',
    figures: (casing, radius) => [0, casing.reveal, outsideOf(casing)].map((offset) => 2 * (radius + offset)),
  },
  {
    name: 'radius read as diameter',
    figures: (casing, radius) => [0, casing.reveal, outsideOf(casing)].map((offset) => (radius + offset) / 2),
  },
  { name: 'reveal moved the center', figures: (casing) => grownRadii(casing) },
  {
    name: 'whole span used for half of it',
    figures: ({ head: { shape, span, rise } }) =>
      shape === 'segmental' ? [(span * span + rise * rise) / (2 * rise)] : [],
  },
  {
    name: 'half the rise left out',
    figures: ({ head: { shape, span, rise } }) => (shape === 'segmental' ? [(span * span) / (8 * rise)] : []),
  },
  ...SCALE_MISTAKES.map(({ name, scale }) => ({
    name,
    scale,
    figures: ({ reveal }: Casing, radius: number) => [scale * (radius + reveal)],
  })),
  ...WRITING_MISTAKES.map(({ name, figures }) => ({
    name,
    slip: true,
    figures: ({ reveal }: Casing, radius: number) => figures(radius + reveal),
  })),
];

/** Every mistake on the list, by name. */
export const RADIUS_MISTAKE_NAMES: readonly string[] = [...new Set(RADIUS_MISTAKES.map(({ name }) => name))];

/**
 * What radius each known mistake gives for this casing; empty for heads without a radius of their own (elliptical,
 * three-centered, straight). Left out are mistakes that give the right figure, the casing's inside radius.
 *
 * Example: a 36 × 6 segmental head, reveal 3/16: right is 30.1875; 'opening radius used for the casing' is 30.
 */
export function knownRadii(casing: Casing): readonly KnownFigure[] {
  const { radius } = casing.head;
  if (radius === null) return [];
  const right = radius + casing.reveal;
  return RADIUS_MISTAKES.flatMap(({ name, figures, scale = 1, slip = false }) =>
    figures(casing, radius)
      .filter((figure) => Number.isFinite(figure) && figure > 0 && Math.abs(figure - right) > 1e-9 * right)
      .map((figure) => ({ mistake: name, figure, scale, slip })),
  );
}

/** Heads whose rise is a figure of its own, not given by the span. */
function ownRise(shape: Casing['head']['shape']): boolean {
  return shape === 'segmental' || shape === 'pointed';
}

/** The radius figured anew over the width and height between the casing's inside edges, or its outside ones. */
function grownRadii(casing: Casing): number[] {
  const { head, reveal } = casing;
  if (!ownRise(head.shape)) return [];
  return [reveal, outsideOf(casing)].flatMap((more) => {
    const grown = makeHead(head.shape, head.span + 2 * more, head.rise + more);
    return grown.ok && grown.value.radius !== null ? [grown.value.radius] : [];
  });
}
