import { arcOrdinates, arcRise } from '../arc';
import { guides, GUIDE_CLEARANCE, isAsGoodAsStraight } from '../blank/guides';
import { ring } from '../blank/ring';
import { beyondTrammel } from '../blank/trammel';
import { figure, notNegative, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import { perInch, type Unit } from '../unit';
import type { Point } from './scene';

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
  /** Longest radius the shop swings a trammel at, of the blank's outside edge; default 10 ft. */
  readonly trammel?: number;
}

/** The figures of a pair as it is drawn, worked out once for the drawing, the ordinates and the tests. */
export interface GuideLayout {
  readonly inside: GuideShape;
  readonly outside: GuideShape;
  readonly blankWidth: number;
  readonly bedLine: number;
  readonly clearance: number;
  /** Both arcs rise so little over their boards that they are sawn straight. */
  readonly straight: boolean;
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
/** Of the outer screws from the ends of their board, inches. */
export const SCREW_INSET = 1.5;

/**
 * Where the arcs, edges and screws of a pair of guide boards lie. Refused: figures the guide radii refuse (see `guides`),
 * bed lines of no length, and boards too short or too shallow for their screws.
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
      `guide boards must be more than ${figure(2 * SCREW_INSET * inch)} long and at least ${figure(2 * inch)} deep, ` +
        `for the screws; got ${figure(2 * halfLength)} by ${figure(depth)}`,
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
    straight: isAsGoodAsStraight(radii.value.inside, halfLength, inch),
    center: { x: 0, y: -radius },
  });
}

/** The ordinates of one guide's arc from the straight line between its ends. */
export interface GuideOrdinates {
  readonly guide: 'inside' | 'outside';
  readonly radius: number;
  readonly rows: readonly (readonly [fromCenterLine: number, height: number])[];
}

/** Whether these arcs are laid out by ordinates, as their blank is. */
export function laidOutByOrdinates({ radius, face, margin = 0, unit, trammel }: GuideBoards): boolean {
  return beyondTrammel(radius + face + margin, unit, trammel);
}

/** An ordinate every inch, or every 25 mm. */
export function ordinateStep(unit: Unit): number {
  return unit === 'in' ? 1 : 25;
}

/** Ordinates of both guide arcs, from the straight line joining each arc's ends. */
export function guideOrdinates(
  boards: GuideBoards,
  step = ordinateStep(boards.unit),
): Result<readonly GuideOrdinates[]> {
  const layout = guideLayout(boards);
  if (!layout.ok) return layout;
  const found: GuideOrdinates[] = [];
  for (const guide of ['inside', 'outside'] as const) {
    const { radius, halfLength, rise } = layout.value[guide];
    const list = arcOrdinates(2 * halfLength, rise, step);
    if (!list.ok) return list;
    found.push({ guide, radius, rows: list.value });
  }
  return ok(found);
}
