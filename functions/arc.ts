/* eslint-disable @typescript-eslint/no-explicit-any -- a length is a number or text, and the metadata knows no unions */
import { arcAngle, arcLength, arcOrdinates, arcRadius, arcRise, arcSpan } from '../src/arc';
import { length, optionalLength } from './arguments';
import { give } from './error';

/**
 * Radius of the arc through both spring points and the crown.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#radius
 * @param span Distance between the spring points, more than 0.
 * @param rise Height of the crown above the spring line, more than 0.
 * @returns In the unit of the lengths.
 * @throws A span or rise that isn't more than 0.
 * @remarks (span²/4 + rise²)/(2·rise). Machinery's Handbook, "Segments of a Circle".
 * @example =ARCH.RADIUS(36, 6) → 30
 * @example =ARCH.RADIUS("3'-0""", "6""") → 30
 */
export function RADIUS(span: any, rise: any): number {
  return give(arcRadius(length('span', span), length('rise', rise)));
}

/**
 * Rise of an arc of this span and radius; the lesser of the two there are.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#rise
 * @param span Distance between the spring points, more than 0.
 * @param radius Radius of the arc, at least span/2.
 * @returns In the unit of the lengths.
 * @throws A radius of less than half the span, which can't reach both spring points.
 * @remarks radius − √(radius² − span²/4), worked as (span²/4)/(radius + √(radius² − span²/4)) so that a flat arc keeps its digits. Machinery's Handbook, "Segments of a Circle".
 * @example =ARCH.RISE(36, 30) → 6
 */
export function RISE(span: any, radius: any): number {
  return give(arcRise(length('span', span), length('radius', radius)));
}

/**
 * Span of an arc of this rise and radius.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#span
 * @param rise Height of the crown above the spring line, more than 0, at most 2·radius.
 * @param radius Radius of the arc, more than 0.
 * @returns In the unit of the lengths; 0 for the full circle.
 * @throws A rise above 2·radius.
 * @remarks 2·√(rise·(2·radius − rise)). Machinery's Handbook, "Segments of a Circle".
 * @example =ARCH.SPAN(6, 30) → 36
 */
export function SPAN(rise: any, radius: any): number {
  return give(arcSpan(length('rise', rise), length('radius', radius)));
}

/**
 * Degrees the arc subtends at its center.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#angle
 * @param span Distance between the spring points, more than 0.
 * @param rise Height of the crown above the spring line, more than 0.
 * @returns Degrees: 180 for a half round, more where the rise is over half the span.
 * @throws A span or rise that isn't more than 0.
 * @remarks 4·atan(2·rise/span), right for every rise. 2·asin(span/(2·radius)) is not: above a half round it gives the lesser arc. Machinery's Handbook, "Segments of a Circle".
 * @example =ARCH.ANGLE(36, 6) → 73.739795291688
 * @example =ARCH.ANGLE(36, 24) → 212.520409416624
 */
export function ANGLE(span: any, rise: any): number {
  return give(arcAngle(length('span', span), length('rise', rise)));
}

/**
 * Length of the arc, at the opening's edge or at an offset from it.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#arclength
 * @param span Distance between the opening's spring points, more than 0.
 * @param rise Height of the opening's crown above the spring line, more than 0.
 * @param offset How far outside the opening's edge to measure; negative: inside. Left out: 0.
 * @returns In the unit of the lengths.
 * @throws An inside offset that reaches the center.
 * @remarks (radius + offset)·angle: the ends lie on the radial lines of the opening. HEADLENGTH has the other ways to end.
 * @example =ARCH.ARCLENGTH(36, 6) → 38.6100665276
 * @example =ARCH.ARCLENGTH(36, 18, 3.6875) → 68.1332906747
 */
export function ARCLENGTH(span: any, rise: any, offset?: any): number {
  return give(arcLength(length('span', span), length('rise', rise), optionalLength('offset', offset)));
}

/**
 * Points of the arc for laying it out: distance from the center line, height above the spring line.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#ordinates
 * @param span Distance between the spring points, more than 0.
 * @param rise Height of the crown above the spring line, more than 0.
 * @param step Distance between the points along the spring line, more than 0.
 * @returns Rows of distance and height, from the center line out by step; the last row is exactly at span/2.
 * @throws A step that would give more than 10,000 rows.
 * @remarks height = √(radius² − distance²) − (radius − rise). Above a half round the curve passes each distance beyond span/2 as well; the height is that of the upper crossing.
 * @example =ARCH.ORDINATES(36, 6, 9) → {0, 6; 9, 4.61817604251; 18, 0}
 */
export function ORDINATES(span: any, rise: any, step: any): number[][] {
  return give(arcOrdinates(length('span', span), length('rise', rise), length('step', step)));
}
