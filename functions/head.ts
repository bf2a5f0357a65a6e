/* eslint-disable @typescript-eslint/no-explicit-any -- a length is a number or text, and the metadata knows no unions */
import { crownRadius, endJoints, miter } from '../src/head/joints';
import { length, optionalLength, optionalNumberNotZero } from './arguments';
import { give, worksheetError } from './error';
import { headOf } from './headArguments';

/**
 * Length of the curve over an opening, at its edge or at an offset from it.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#headlength
 * @param head "segmental", "half round", "quarter round", "round", "elliptical", "three-centered", "pointed", "straight", "radius corners", "full ellipse", "half segmental", "quarter ellipse", "four-centered", "gable", "clipped corners", "shed" or "octagon"; usual abbreviations are understood.
 * @param span Distance between the opening's spring points, more than 0.
 * @param rise Height of the opening's crown above the spring line; radius corners: their radius; full ellipse: the whole height; half segmental, quarter ellipse, gable, shed: height of the high end or ridge; clipped corners: height of the corners. May be left out for half round, quarter round, round, straight and octagon heads, and for "equilateral".
 * @param offset How far outside the opening's edge to measure; negative: inside. Left out: 0.
 * @param ends How the head stops: "radial" on the radial lines of the opening (straight pieces: square), "level" on the spring line, "legs" mitered to vertical legs of the same face; a straight head "mitered", "over legs", "between legs" or "square". Left out: "radial"; a straight head is then mitered.
 * @param haunch Radius of the haunches of a four-centered head, may be left out where the published rule applies; length of clipped corners along the span, left out: cut at 45°.
 * @returns In the unit of the lengths.
 * @throws A head not known; a rise or haunch the head can't have; an inside offset past the curve's own center.
 * @remarks The curve at an offset is the true parallel curve. With R the radius and d the offset: segmental radial (R+d)·θ, level 2(R+d)·acos((R−rise)/(R+d)), legs 2(R+d)·asin((span/2+d)/(R+d)); half ellipse: half the perimeter + π·d; pointed: 2(R+d)·acos((R−span/2)/(R+d)), R = (span²/4+rise²)/span. A high side (quarter round, half segmental, quarter ellipse) stops plumb at the jamb line, and with "legs" runs on to its own leg: (R+d)·asin(d/(R+d)) more. Straight pieces gain d·tan(δ/2) at a miter that turns by δ. A straight head over or between its legs is span + 2·offset: give the offset of the edge it reaches to. Four-centered, haunch left out: a quarter of the span, turning through 60° (The Practical Brick and Tile Book, figure 29), for rises from 0.317 to 0.433 of the span.
 * @example =ARCH.HEADLENGTH("segmental", 36, 6, 3.6875) → 43.3558872049
 * @example =ARCH.HEADLENGTH("elliptical", 72, 24, 3.5) → 106.188211823
 * @example =ARCH.HEADLENGTH("half round", 36) → 56.5486677646
 * @example =ARCH.HEADLENGTH("four-centered", 36, 12, 3.6875, "radial", 9) → 58.9479589545
 */
export function HEADLENGTH(head: any, span: any, rise?: any, offset?: any, ends?: any, haunch?: any): number {
  const of = headOf(head, span, rise, ends, haunch);
  return give(of.curve.length(optionalLength('offset', offset) ?? 0, of.ends ?? 'radial'));
}

/**
 * The constant-radius pieces of the curve, left to right: radius, degrees, length, deviation.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#headarcs
 * @param head Any head with a curve, by the names of HEADLENGTH; usual abbreviations are understood.
 * @param span Distance between the opening's spring points, more than 0.
 * @param rise Height of the opening's crown above the spring line; see HEADLENGTH. May be left out for half round, quarter round and round heads.
 * @param offset How far outside the opening's edge to measure; negative: inside. Left out: 0.
 * @param ends How the arc stops: "radial", "level" or "legs"; see HEADLENGTH. Left out: "radial".
 * @param arcs How many tangent arcs stand for half an ellipse: 3, 5 or 7. Left out: 3.
 * @param haunch Radius of the haunches of a four-centered head; see HEADLENGTH.
 * @returns Rows of radius, degrees, length and deviation, the greatest distance from the true curve: 0 where the arcs are exact.
 * @throws A head of straight pieces, which has no arcs; a number of arcs other than 3, 5 and 7; what HEADLENGTH refuses.
 * @remarks A machine's guides hold one radius at a time. The arcs of an ellipse are tangent to one another, symmetric, meet the spring points exactly and have the least greatest distance from the ellipse; at an offset every radius grows by the offset and the deviation stays. Straight pieces between arcs are left out.
 * @example =ARCH.HEADARCS("segmental", 36, 6, 3.6875) → {33.6875, 73.739795291688, 43.3558872049, 0}
 */
export function HEADARCS(
  head: any,
  span: any,
  rise?: any,
  offset?: any,
  ends?: any,
  arcs?: any,
  haunch?: any,
): number[][] {
  const { curve, ends: stops } = headOf(head, span, rise, ends, haunch);
  const count = optionalNumberNotZero('arcs', arcs);
  const options = count === undefined ? {} : { arcs: count };
  const pieces = give(curve.arcs(optionalLength('offset', offset) ?? 0, stops ?? 'radial', options));
  if (pieces.length === 0) throw worksheetError(`head must be one with a curve; a ${curve.shape} head has no arcs`);
  return pieces.map((arc) => [arc.radius, arc.degrees, arc.length, arc.deviation]);
}

/**
 * Radius of the curve over an opening, at its edge: of the crown where there are several.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#headradius
 * @param head Any head with a curve, by the names of HEADLENGTH; usual abbreviations are understood.
 * @param span Distance between the opening's spring points, more than 0.
 * @param rise Height of the opening's crown above the spring line; see HEADLENGTH. May be left out for half round, quarter round and round heads.
 * @param arcs How many tangent arcs stand for half an ellipse: 3, 5 or 7. Left out: 3.
 * @param haunch Radius of the haunches of a four-centered head; see HEADLENGTH.
 * @returns In the unit of the lengths.
 * @throws A head of straight pieces, which has no radius; what HEADLENGTH refuses.
 * @remarks Segmental (span²/4 + rise²)/(2·rise), half segmental (span² + rise²)/(2·rise), pointed (span²/4 + rise²)/span. Of an ellipse it is the radius of the crown's arc among those that stand for it.
 * @example =ARCH.HEADRADIUS("segmental", 36, 6) → 30
 * @example =ARCH.HEADRADIUS("four-centered", 36, 12) → 32.1682956077
 */
export function HEADRADIUS(head: any, span: any, rise?: any, arcs?: any, haunch?: any): number {
  const { curve } = headOf(head, span, rise, null, haunch);
  return give(crownRadius(curve, optionalNumberNotZero('arcs', arcs)));
}

/**
 * Saw settings of the joint between leg and head: of the leg, of the head at both corners, and what a straight cut misses.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#headmiter
 * @param head Any head with ends, by the names of HEADLENGTH; usual abbreviations are understood.
 * @param span Distance between the opening's spring points, more than 0.
 * @param rise Height of the opening's crown above the spring line; see HEADLENGTH. May be left out for half round, quarter round and straight heads.
 * @param face Width of the casing, more than 0.
 * @param reveal From the opening's edge to the casing's inside edge. Left out: 0.
 * @param ends How the head stops; see HEADLENGTH. Left out: "legs".
 * @param haunch Radius of the haunches of a four-centered head, or length of clipped corners along the span; see HEADLENGTH.
 * @returns One row [leg's angle off square, head's angle off its radial line at the inside corner, at the outside corner, gap]; two where the sides differ, the low side first. A straight piece's angles are off square.
 * @throws A head without ends; a face that isn't more than 0; what HEADLENGTH refuses.
 * @remarks The joint is the straight line from the inside corner to the outside corner. Off a radial line the head's angle differs from corner to corner by as much as these are apart; a fence that touches the convex edge at the long point shows the outside one. The gap is the greatest distance of the curved miter of like profiles from the straight cut.
 * @example =ARCH.HEADMITER("segmental", 36, 6, 3.5, 0.1875) → {25.6985864973, 27.2533706567, 24.2267895238, 0.0128147244052}
 * @example =ARCH.HEADMITER("half round", 36, , 3.5) → {0, 0, 0, 0}
 */
export function HEADMITER(
  head: any,
  span: any,
  rise: any,
  face: any,
  reveal?: any,
  ends?: any,
  haunch?: any,
): number[][] {
  const { curve, ends: stops } = headOf(head, span, rise, ends, haunch);
  const joints = give(endJoints(curve, optionalLength('reveal', reveal) ?? 0, length('face', face), stops ?? 'legs'));
  if (joints === null) throw worksheetError(`head must be one with ends; a ${curve.shape} head goes all round`);
  const rows = joints.map(({ legMiter, headInside, headOutside, gap }) => [legMiter, headInside, headOutside, gap]);
  const [left, right] = rows as [number[], number[]];
  return left.every((figure, at) => Math.abs(figure - right[at]!) <= 1e-9) ? [left] : rows;
}

/**
 * Saw setting of the joint between a leg and the head, degrees off square.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#miter
 * @param span Distance between the opening's spring points, more than 0.
 * @param rise Height of the opening's crown above the spring line, more than 0.
 * @param face Width of the casing, more than 0.
 * @param reveal From the opening's edge to the casing's inside edge. Left out: 0.
 * @returns Degrees: 0 at a half round, near 45 for a flat arc.
 * @throws A span, rise or face that isn't more than 0.
 * @remarks The joint is the straight line from the inside corner to the outside corner, where each edge of the head meets that edge of the leg. It serves the leg: the head's own setting differs, see HEADMITER.
 * @example =ARCH.MITER(36, 18, 3.5) → 0
 * @example =ARCH.MITER(36, 6, 3.5, 0.1875) → 25.6985864973
 */
export function MITER(span: any, rise: any, face: any, reveal?: any): number {
  return give(
    miter(length('span', span), length('rise', rise), length('face', face), optionalLength('reveal', reveal)),
  );
}
