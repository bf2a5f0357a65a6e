/* eslint-disable @typescript-eslint/no-explicit-any -- a length is a number or text, and the metadata knows no unions */
import type { Head } from '../src/head/head';
import { makeHead } from '../src/head/makeHead';
import { miter } from '../src/head/miter';
import { length, optionalLength, optionalLengthNotZero, optionalNumberNotZero } from './arguments';
import { give, worksheetError } from './error';
import { arcEnds, headShape } from './headArguments';

/**
 * Length of the curve over an opening, at its edge or at an offset from it.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.md#headlength
 * @param head "segmental", "half round", "quarter round", "round", "elliptical", "three-centered", "pointed" or "straight"; usual abbreviations are understood.
 * @param span Distance between the opening's spring points, more than 0.
 * @param rise Height of the opening's crown above the spring line. May be left out for half round, quarter round, round and straight heads.
 * @param offset How far outside the opening's edge to measure; negative: inside. Left out: 0.
 * @param ends How the arc stops: "radial" on the radial lines of the opening, "level" on the spring line, "legs" mitered to vertical legs of the same face. Left out: "radial".
 * @returns In the unit of the lengths.
 * @throws A head not known; a rise the head can't have; an inside offset past the curve's own center.
 * @remarks The curve at an offset is the true parallel curve. With R the radius and d the offset: segmental radial (R+d)·θ, level 2(R+d)·acos((R−rise)/(R+d)), legs 2(R+d)·asin((span/2+d)/(R+d)); half ellipse: half the perimeter + π·d; pointed: 2(R+d)·acos((R−span/2)/(R+d)), R = (span²/4+rise²)/span.
 * @example =ARCH.HEADLENGTH("segmental", 36, 6, 3.6875) → 43.3558872049
 * @example =ARCH.HEADLENGTH("elliptical", 72, 24, 3.5) → 106.188211823
 * @example =ARCH.HEADLENGTH("half round", 36) → 56.5486677646
 */
export function HEADLENGTH(head: any, span: any, rise?: any, offset?: any, ends?: any): number {
  const curve = headOf(head, span, rise);
  return give(curve.length(optionalLength('offset', offset) ?? 0, arcEnds('ends', ends)));
}

/**
 * The constant-radius pieces of the curve, left to right: radius, degrees, length, deviation.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.md#headarcs
 * @param head "segmental", "half round", "quarter round", "round", "elliptical", "three-centered" or "pointed"; usual abbreviations are understood.
 * @param span Distance between the opening's spring points, more than 0.
 * @param rise Height of the opening's crown above the spring line. May be left out for half round, quarter round and round heads.
 * @param offset How far outside the opening's edge to measure; negative: inside. Left out: 0.
 * @param ends How the arc stops: "radial", "level" or "legs"; see HEADLENGTH. Left out: "radial".
 * @param arcs How many tangent arcs stand for an ellipse: 3, 5 or 7. Left out: 3.
 * @returns Rows of radius, degrees, length and deviation, the greatest distance from the true curve: 0 where the arcs are exact.
 * @throws A straight head, which has no arcs; a number of arcs other than 3, 5 and 7; what HEADLENGTH refuses.
 * @remarks A machine's guides hold one radius at a time. The arcs of an ellipse are tangent to one another, symmetric, meet the spring points exactly and have the least greatest distance from the ellipse; at an offset every radius grows by the offset and the deviation stays.
 * @example =ARCH.HEADARCS("segmental", 36, 6, 3.6875) → {33.6875, 73.739795291688, 43.3558872049, 0}
 */
export function HEADARCS(head: any, span: any, rise?: any, offset?: any, ends?: any, arcs?: any): number[][] {
  const curve = headOf(head, span, rise);
  const pieces = give(
    curve.arcs(optionalLength('offset', offset) ?? 0, arcEnds('ends', ends), optionalNumberNotZero('arcs', arcs)),
  );
  if (pieces.length === 0) throw worksheetError(`head must be one with a curve; a ${curve.shape} head has no arcs`);
  return pieces.map((arc) => [arc.radius, arc.degrees, arc.length, arc.deviation]);
}

/**
 * Saw setting of the joint between a leg and the head, degrees off square.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.md#miter
 * @param span Distance between the opening's spring points, more than 0.
 * @param rise Height of the opening's crown above the spring line, more than 0.
 * @param face Width of the casing, more than 0.
 * @param reveal From the opening's edge to the casing's inside edge. Left out: 0.
 * @returns Degrees: 0 at a half round, near 45 for a flat arc.
 * @throws A span, rise or face that isn't more than 0.
 * @remarks The joint is the straight line from the inside corner to the outside corner, where each edge of the head meets that edge of the leg.
 * @example =ARCH.MITER(36, 18, 3.5) → 0
 * @example =ARCH.MITER(36, 6, 3.5, 0.1875) → 25.6985864973
 */
export function MITER(span: any, rise: any, face: any, reveal?: any): number {
  return give(
    miter(length('span', span), length('rise', rise), length('face', face), optionalLength('reveal', reveal)),
  );
}

function headOf(head: any, span: any, rise: any): Head {
  return give(makeHead(headShape('head', head), length('span', span), optionalLengthNotZero('rise', rise) ?? null));
}
