/* eslint-disable @typescript-eslint/no-explicit-any -- a length is a number or text, and the metadata knows no unions */
import { guides } from '../src/blank/guides';
import { blankLength, CUTS } from '../src/blank/length';
import { nest } from '../src/blank/nest';
import { plies } from '../src/blank/plies';
import { segments as leastSegments } from '../src/blank/segments';
import { blankWidth } from '../src/blank/width';
import { length, number, optionalChoice, optionalLength, optionalNumberNotZero } from './arguments';
import { give } from './error';

/**
 * Least number of equal segments whose glued blank fits the board.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#segments
 * @param radius Inside radius of the molding, more than 0.
 * @param face Width of the molding's face, more than 0.
 * @param angle Degrees the whole arc turns through, more than 0 up to 360.
 * @param board_width Width of the board, more than face + 2·margin.
 * @param margin Oversize left on each edge, less than radius. Left out: 0.
 * @param grain Steepest grain angle allowed at a joint, degrees, up to 180. Left out: 30.
 * @returns A whole number.
 * @throws A board no wider than face + 2·margin, which no number of segments fits; a count above 10,000.
 * @remarks The least n with BLANKWIDTH(radius, face, angle, n, margin) ≤ board_width and n ≥ angle/(2·grain). A board exactly as wide as the blank takes it: sizes within 1e-12 of the outside radius count as equal. Straight grain runs angle/(2·n) off the curve at a joint; 30° is the limit of ANSI/AWI 0622-2024, 3.3.2.
 * @example =ARCH.SEGMENTS(18, 3.5, 180, 5.5) → 4
 * @example =ARCH.SEGMENTS(30, 3.5, 60, 40) → 1
 */
export function SEGMENTS(radius: any, face: any, angle: any, board_width: any, margin?: any, grain?: any): number {
  return give(
    leastSegments(
      length('radius', radius),
      length('face', face),
      number('angle', angle),
      length('board_width', board_width),
      optionalLength('margin', margin),
      optionalNumberNotZero('grain', grain),
    ),
  );
}

/**
 * Board width that one segment of a glued blank takes.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#blankwidth
 * @param radius Inside radius of the molding, more than 0.
 * @param face Width of the molding's face, more than 0.
 * @param angle Degrees the whole arc turns through, more than 0 up to 360.
 * @param segments How many equal segments, a whole number from 1 to 10,000.
 * @param margin Oversize left on each edge, less than radius. Left out: 0.
 * @returns In the unit of the lengths.
 * @throws A margin as large as the radius; segments that aren't whole.
 * @remarks Ro − (radius − margin)·cos g with Ro = radius + face + margin and g = angle/(2·segments). Past g = 90° the outer corners hang lowest: Ro − Ro·cos g.
 * @example =ARCH.BLANKWIDTH(18, 3.5, 180, 3) → 5.91154273188
 * @example =ARCH.BLANKWIDTH(30, "3 1/2""", 73.739795291688, 2) → 5.03950105849
 */
export function BLANKWIDTH(radius: any, face: any, angle: any, segments: any, margin?: any): number {
  return give(
    blankWidth(
      length('radius', radius),
      length('face', face),
      number('angle', angle),
      number('segments', segments),
      optionalLength('margin', margin),
    ),
  );
}

/**
 * Board length that one segment of a glued blank takes.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#blanklength
 * @param radius Inside radius of the molding, more than 0.
 * @param face Width of the molding's face, more than 0.
 * @param angle Degrees the whole arc turns through, more than 0 up to 360.
 * @param segments How many equal segments, a whole number from 1 to 10,000.
 * @param margin Oversize left on each edge, less than radius. Left out: 0.
 * @param cut "miter": boards mitered, glued, then sawn to the ring. "sawn": sawn to the ring before gluing. Left out: "miter".
 * @returns In the unit of the lengths.
 * @throws Mitered boards of 180° or more, which would never meet; a cut other than the two.
 * @remarks Miter: 2·Ro·tan g. Sawn: 2·Ro·sin g, and 2·Ro past g = 90°. Ro = radius + face + margin, g = angle/(2·segments).
 * @example =ARCH.BLANKLENGTH(18, 3.5, 180, 3) → 24.8260615752
 * @example =ARCH.BLANKLENGTH(18, 3.5, 180, 3, 0, "sawn") → 21.5
 */
export function BLANKLENGTH(radius: any, face: any, angle: any, segments: any, margin?: any, cut?: any): number {
  return give(
    blankLength(
      length('radius', radius),
      length('face', face),
      number('angle', angle),
      number('segments', segments),
      optionalLength('margin', margin),
      optionalChoice('cut', cut, CUTS),
    ),
  );
}

/**
 * How many sawn segments stand above one another across the board.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#nest
 * @param radius Inside radius of the molding, more than 0.
 * @param face Width of the molding's face, more than 0.
 * @param angle Degrees the whole arc turns through, more than 0 up to 360.
 * @param segments How many equal segments, a whole number from 1 to 10,000.
 * @param board_width Width of the board, more than 0.
 * @param margin Oversize left on each edge, less than radius. Left out: 0.
 * @param kerf Clear between neighbors everywhere, 0 or more. Left out: 0.
 * @returns A whole number; 0 where the board is narrower than one segment.
 * @throws A board_width that isn't more than 0; a negative kerf.
 * @remarks 1 + ⌊(board_width − BLANKWIDTH)/p⌋ with the pitch p = √((Ro + kerf)² − (Ri·sin g)²) − Ri·cos g, Ri = radius − margin, Ro = radius + face + margin, g = angle/(2·segments). The inner end corners come nearest to the neighbor, so a kerf added to the pitch alone would be too little. Past g = 90° the nearest point moves out along the ends.
 * @example =ARCH.NEST(18, 3.5, 180, 4, 11, 0, 0.125) → 2
 */
export function NEST(
  radius: any,
  face: any,
  angle: any,
  segments: any,
  board_width: any,
  margin?: any,
  kerf?: any,
): number {
  return give(
    nest(
      length('radius', radius),
      length('face', face),
      number('angle', angle),
      number('segments', segments),
      length('board_width', board_width),
      optionalLength('margin', margin),
      optionalLength('kerf', kerf),
    ),
  );
}

/**
 * Radii of the two curved guides the blank runs between: inside guide, outside guide.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#guides
 * @param radius Inside radius of the molding, more than 0.
 * @param face Width of the molding's face, more than 0.
 * @param margin Oversize left on each edge, less than radius. Left out: 0.
 * @param clearance Gap between the blank and each guide, 0 or more. Left out: 1/32.
 * @returns One row: inside guide radius, outside guide radius.
 * @throws A clearance that leaves no inside guide.
 * @remarks radius − margin − clearance and radius + face + margin + clearance: the blank must slide. The default of 1/32 is inches; give the clearance where lengths are in another unit.
 * @example =ARCH.GUIDES(18, 3.5) → {17.96875, 21.53125}
 */
export function GUIDES(radius: any, face: any, margin?: any, clearance?: any): number[][] {
  const { inside, outside } = give(
    guides(
      length('radius', radius),
      length('face', face),
      optionalLength('margin', margin),
      optionalLength('clearance', clearance),
    ),
  );
  return [[inside, outside]];
}

/**
 * Plies of a bent lamination: how many, and how thick each is.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#plies
 * @param radius Radius of the inside face, more than 0.
 * @param thickness Finished thickness across the bend, more than 0.
 * @param ratio Least radius of a ply in ply thicknesses, more than 0. Left out: 100.
 * @returns One row: number of plies, thickness of one.
 * @throws More than 10,000 plies.
 * @remarks The least number of equal plies no thicker than radius/ratio. The National Design Specification for Wood Construction limits thickness to radius ratios to 1/100 for hardwoods and Southern Pine, 1/125 for other softwoods.
 * @example =ARCH.PLIES(30, 0.75) → {3, 0.25}
 */
export function PLIES(radius: any, thickness: any, ratio?: any): number[][] {
  const bent = give(
    plies(length('radius', radius), length('thickness', thickness), optionalNumberNotZero('ratio', ratio)),
  );
  return [[bent.count, bent.thickness]];
}
