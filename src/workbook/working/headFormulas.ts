import { EDGE, HALF_SPAN } from './formulas';
import { its } from './keys';

/** Pieces of formula that several heads share. Arguments that are figures stand in parentheses already. */

/** a = half the span. */
export const half = (span: string) => `(${span}/2)`;

/** Radius of the arc over a span. */
export const arcRadius = (span: string, rise: string) => `((${half(span)}^2+${rise}^2)/(2*${rise}))`;

/** Radius of one unit of a pair, its crown over the high jamb. */
export const oneSidedRadius = (span: string, rise: string) => `((${span}^2+${rise}^2)/(2*${rise}))`;

/** Midpoints of 64 equal parts of a right angle, in 128ths: the midpoint rule converges like a power on an ellipse. */
const MIDPOINTS = `{${Array.from({ length: 64 }, (_, at) => 2 * at + 1).join(',')}}*PI()/256`;

/** 128 times a quarter of an ellipse's edge, in units of π. */
export const ellipse = (across: string, up: string) =>
  `SUMPRODUCT(SQRT((${across}*SIN(${MIDPOINTS}))^2+(${up}*COS(${MIDPOINTS}))^2))*PI()`;

/** How much longer a slope gets at its foot for each unit of offset: its `side` long, rising `h` over `run`. */
export function endGain(ends: string, side: string, h: string, run: string): string {
  return `IF(${ends}="legs",(${side}-${h})/(${run}),IF(${ends}="level",(${run})/${h},0))`;
}

/**
 * A four-centered head by its haunch radius, left out a quarter of the span: the radius of its upper arcs, and in radians how far
 * one of them turns at an offset.
 */
export function fourCentered(
  s: string,
  h: string,
  given: string,
): { haunch: string; crown: string; upper: (d: string) => string } {
  const haunch = `IF(${given}="",${s}/4,${given})`;
  const side = `(${half(s)}-${haunch})`;
  const along = `((SQRT(3)*${h}-${side})/2)`;
  const crown = `((${side}^2+${h}^2+${haunch}^2-2*${haunch}*${along})/(2*(${haunch}-${along})))`;
  const center = `((${crown}-${haunch})/2-${side})`;
  const upper = (d: string) => `ACOS(${center}/(${crown}+${d}))-PI()/3`;
  return { haunch, crown, upper };
}

/** Radii of the three-centered arch by the bisector construction. */
export function bisector(s: string, h: string): { haunch: string; crown: string } {
  const diagonal = `SQRT(${half(s)}^2+${h}^2)`;
  return {
    haunch: `((${diagonal}^2-(${half(s)}-${h})*${diagonal})/${s})`,
    crown: `((${diagonal}^2+(${half(s)}-${h})*${diagonal})/(2*${h}))`,
  };
}

/** A rise that would make it another shape: half the span, or all of it. */
export const NOT_HALF_SPAN = `ABS(${its.rise}-${its.span}/2)>0.000000001*${its.span}`;
export const NOT_SPAN = `ABS(${its.rise}-${its.span})>0.000000001*${its.span}`;

/** A rise that is given although it follows, and is another. */
export const anotherRise = (own: string) => `IF(${its.rise}="",FALSE,ABS(${its.rise}-${own})>0.000000001*${its.span})`;

/** Radius or angle of a kind of ring, the crown 1, of the arcs that best fit an ellipse: `workbook/working/sheet.ts` writes them. */
export const fitted = (kind: number, column: 1 | 2) =>
  `INDEX(ARCH.HEADARCS(${its.head},${its.span},${its.rise}),${kind},${column})`;

/** Height above the spring line where an arc's edge meets its leg; `halfSpan` is half the span of the whole arc. */
export const legTop = (halfSpan: string, offset: string) =>
  `${its.rise}-(${halfSpan}^2+${its.rise}^2)/(2*${its.rise})+(${halfSpan}-${its.rise})*SQRT((${halfSpan}+${its.rise})^2+4*${its.rise}*${offset})/(2*${its.rise})`;

/** The same for a slope that rises over `run`. */
export const slopeTop = (run: string, sign: '-' | '+' = '-') =>
  `${EDGE}*(SQRT((${run})^2+${its.rise}^2)${sign}${its.rise})/(${run})`;

/** Degrees off square between a plumb leg and a slope that rises over `run`. */
export const slopeMiter = (run: string) => `DEGREES(ATAN((SQRT((${run})^2+${its.rise}^2)-${its.rise})/(${run})))`;

/** Degrees between the radial line of an arc at its inside corner and the joint with its leg; `halfSpan` is half the span of the whole arc. */
export const arcMiter = (halfSpan: string) =>
  `DEGREES(ATAN2(${halfSpan}+${its.reveal},(${halfSpan}-${its.rise})*SQRT((${halfSpan}+${its.rise})^2+4*${its.rise}*${its.reveal})/(2*${its.rise})))-${its['leg miter']}`;

/** Height of the outer corner of a leg at the crown of one side's arc. */
export const highTop = (radius: string, above: string) => `SQRT(${radius}*(${radius}+2*${EDGE}))-(${above})`;

/** Degrees from the crown to a high leg that the arc meets, at the outside edge. */
export const BEYOND_CROWN = `IF(${its.stops}="legs",DEGREES(ATAN2(SQRT(${its.radius}*(${its.radius}+2*${EDGE})),${EDGE})),0)`;

/** Degrees of a finished arc that its ends cut: at the edge where it turns farther. */
export const CUT_ARC = `DEGREES(MAX(${its['inside length']}/${its['inside radius']},${its['long point']}/${its['outside radius']}))`;

/** How far along the span a clipped corner is cut. */
export const ALONG = `IF(${its.haunch}="",${its.rise},${its.haunch})`;

const TUDOR_SIDE = `(${its.span}/2-IF(${its.haunch}="",${its.span}/4,${its.haunch}))`;
/** Where `head/fourCentered.ts` finds no such arcs. */
export const NO_TUDOR =
  `NOT(AND(${its.span}/2-${TUDOR_SIDE}>MAX(0,SQRT(3)*${its.rise}-${its.span}/2),` +
  `${its.span}/2-${TUDOR_SIDE}<MIN(${its.span}/2,((SQRT(3)+1)*${its.rise}-(SQRT(3)-1)*${its.span}/2)/2)))`;
export const TUDOR = fourCentered(its.span, its.rise, its.haunch);

/** Whether radius corners leave a straight piece between them. */
export const HAS_FLAT = `${its.rise}<${HALF_SPAN}`;
