import { HALF_ROUND, ROUND } from './circles';
import { ELLIPTICAL, FULL_ELLIPSE } from './elliptical';
import { FOUR_CENTERED } from './fourCentered';
import { HEAD_SHAPES, type HeadShape } from './head';
import { HALF_SEGMENTAL, QUARTER_ROUND } from './oneSided';
import { POINTED } from './pointed';
import { QUARTER_ELLIPSE } from './quarterEllipse';
import { RADIUS_CORNERS } from './radiusCorners';
import { SEGMENTAL } from './segmental';
import type { Shape } from './shape';
import { STRAIGHT } from './straight';
import { CLIPPED_CORNERS, GABLE, OCTAGON, SHED } from './straightPieces';
import { THREE_CENTERED } from './threeCentered';

/** Every shape, by its name: what the rest of the program knows of heads it asks here. */
export const SHAPES: Readonly<Record<HeadShape, Shape>> = {
  segmental: SEGMENTAL,
  'half round': HALF_ROUND,
  'quarter round': QUARTER_ROUND,
  round: ROUND,
  elliptical: ELLIPTICAL,
  'three-centered': THREE_CENTERED,
  pointed: POINTED,
  straight: STRAIGHT,
  'radius corners': RADIUS_CORNERS,
  'full ellipse': FULL_ELLIPSE,
  'half segmental': HALF_SEGMENTAL,
  'quarter ellipse': QUARTER_ELLIPSE,
  'four-centered': FOUR_CENTERED,
  gable: GABLE,
  'clipped corners': CLIPPED_CORNERS,
  shed: SHED,
  octagon: OCTAGON,
};

/** Heads whose rise follows from the span, or that have none: the span alone tells them. */
export function riseFollows(head: string | number | null): boolean {
  const shape = HEAD_SHAPES.find((name) => name === head);
  return shape !== undefined && SHAPES[shape].rise.ofSpan !== null;
}

/** The names for which something holds, in their order. */
export function shapesWhere(holds: (shape: Shape) => boolean): HeadShape[] {
  return HEAD_SHAPES.filter((name) => holds(SHAPES[name]));
}
