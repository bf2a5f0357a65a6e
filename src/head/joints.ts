import { degrees } from '../angle';
import { insideOffset } from '../insideOffset';
import { finite, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import type { Ends, Head, HeadEnd, HeadOptions, Point, Spring } from './head';
import { arcEndsOf } from './pieces';
import { SHAPES } from './shapes';
import { straightEndsOf } from './straight';

/**
 * Saw setting in degrees off square of the joint between a leg and a head of one arc: that of the straight line from the
 * joint's inside corner, `reveal` outside the opening's edge, to its outside corner, `face` farther out. With a = span/2
 * and d₁ = reveal, d₂ = reveal + face its tangent is 2·(a − rise) / (√((a+rise)² + 4·rise·d₁) + √((a+rise)² + 4·rise·d₂)),
 * the height gained by the legs' ends over the face, divided out. Near 45 for a flat arc, 0 at a half round; below 0
 * above a half round, where the joint falls toward the outside. Refused: span, rise or face not more than 0.
 *
 * Example: span 36, rise 6, face 3-1/2, reveal 3/16: 25.7 degrees.
 */
export function miter(span: number, rise: number, face: number, reveal = 0): Result<number> {
  const refusal =
    positive('span', span) ?? positive('rise', rise) ?? positive('face', face) ?? finite('reveal', reveal);
  if (refusal) return refusal;
  const half = span / 2;
  const insideReach = insideOffset(reveal, half, 'where the legs would meet', 'reveal');
  if (insideReach) return insideReach;
  const corner = (offset: number) => Math.sqrt((half + rise) ** 2 + 4 * rise * offset);
  const tangent = (2 * (half - rise)) / (corner(reveal) + corner(reveal + face));
  return ok(degrees(Math.atan(tangent)));
}

/** How a head is cut at one end, and what stands under it. Degrees are off square, positive where the outside is longer. */
export interface EndJoint {
  readonly side: 'left' | 'right';
  /** Corners of the cut: at the casing's inside edge and at its outside one. */
  readonly inside: Point;
  readonly outside: Point;
  /** Saw setting of the leg. */
  readonly legMiter: number;
  /** Saw setting of the head off its radial line, as seen at the inside corner and at the outside one. */
  readonly headInside: number;
  readonly headOutside: number;
  /** How far the straight cut strays from the curved miter of like profiles. */
  readonly gap: number;
}

export function mitersLegs(head: Pick<Head, 'shape'>, ends: Ends): boolean {
  if (SHAPES[head.shape].closed) return false;
  if (head.shape === 'straight') return straightEndsOf(ends) === 'mitered';
  const stops = arcEndsOf(ends);
  return stops.ok && stops.value === 'legs';
}

/**
 * Both ends of a head with a casing `face` wide, `reveal` outside the opening; null for a closed one. The leg's cut is the
 * straight line from corner to corner; the head's is the same line, off the radial line at each corner, and the two differ on a
 * curve. A joint of like profiles is truly a curve, as far from the head's edge as from the leg's: `gap` is the greatest
 * distance between them; over a circle, with q the corners' heights above its center, (q₂ − q₁)²/(4·(q₁ + q₂)) across the cut.
 *
 * Example: span 36, rise 6, face 3-1/2, reveal 3/16, legs: 25.6986, then 27.2534 and 24.2268; gap 0.0128.
 */
export function endJoints(
  head: Head,
  reveal: number,
  face: number,
  ends: Ends,
  options: HeadOptions = {},
): Result<readonly [EndJoint, EndJoint] | null> {
  const refusal = positive('face', face) ?? finite('reveal', reveal);
  if (refusal) return refusal;
  const inside = head.ends(reveal, ends, options);
  if (!inside.ok) return inside;
  const outside = head.ends(reveal + face, ends, options);
  if (!outside.ok) return outside;
  if (inside.value === null || outside.value === null) return ok(null);
  const legs = mitersLegs(head, ends);
  const joint = (side: 'left' | 'right'): EndJoint => {
    const at = side === 'left' ? 0 : 1;
    const [low, high] = [inside.value![at], outside.value![at]];
    const place = { side, inside: { x: low.x, y: low.y }, outside: { x: high.x, y: high.y } } as const;
    const out = side === 'left' ? -1 : 1;
    const across = out * (high.x - low.x);
    const plain = { ...place, legMiter: 0, headInside: 0, headOutside: 0, gap: 0 };
    // A butt joint, or a high side cut plumb: no leg is sawn to fit.
    if (!legs && (head.shape === 'straight' || (side === 'right' && SHAPES[head.shape].highSide))) return plain;
    const spring = legs ? (head.springs[at] ?? null) : null;
    const slope = legs ? legSlope(spring, low, high, face, reveal) : Math.atan2(high.y - low.y, across);
    const off = (end: HeadEnd) => degrees(Math.atan2(end.normal.y, out * end.normal.x) - slope);
    const headInside = off(low);
    const headOutside = off(high);
    const gap = legs ? gapOf(head, at, reveal, face, ends, options, spring, slope) : 0;
    return { ...place, legMiter: degrees(slope), headInside, headOutside, gap };
  };
  return ok([joint('left'), joint('right')]);
}

/** √((R − p)(R + p + 2d)): height of the curve above its center where the leg's edge meets it. */
function legHeight({ less, more }: Spring, offset: number): number {
  return Math.sqrt(less * (more + 2 * offset));
}

function legSlope(spring: Spring | null, low: Point, high: Point, face: number, reveal: number): number {
  if (spring === null) return Math.atan2(high.y - low.y, face);
  if (spring.less === 0) return 0;
  const rose = (2 * spring.less) / (legHeight(spring, reveal) + legHeight(spring, reveal + face));
  return Math.atan(spring.below ? -rose : rose);
}

function gapOf(
  head: Head,
  at: 0 | 1,
  reveal: number,
  face: number,
  ends: Ends,
  options: HeadOptions,
  spring: Spring | null,
  slope: number,
): number {
  if (spring?.less === 0) return 0;
  if (spring !== null) {
    const sum = legHeight(spring, reveal) + legHeight(spring, reveal + face);
    return (((2 * spring.less * face) / sum) ** 2 / (4 * sum)) * Math.cos(slope);
  }
  const heightAt = (offset: number) => {
    const found = head.ends(offset, ends, options);
    return found.ok && found.value ? found.value[at].y : NaN;
  };
  const from = heightAt(reveal);
  const over = (offset: number) => Math.abs(heightAt(offset) - from - Math.tan(slope) * (offset - reveal));
  let [low, high] = [reveal, reveal + face];
  for (let round = 0; round < 60; round++) {
    const third = (high - low) / 3;
    if (over(low + third) < over(high - third)) low += third;
    else high -= third;
  }
  const gap = over((low + high) / 2) * Math.cos(slope);
  return gap < 1e-12 * face ? 0 : gap;
}

/** A leg: how far its two upper corners stand above the spring line. */
export interface LegTop {
  readonly side: 'left' | 'right';
  /** At the casing's inside edge: the short point under a flat arch. */
  readonly inside: number;
  readonly outside: number;
  readonly miter: number;
}

/**
 * The legs under a head, none for a closed one. Mitered, a leg ends at the head's two corners. A head that isn't mitered stands
 * on the spring line; a straight one lies on its legs or stands between them. A high side that stops plumb has no leg.
 */
export function legTops(
  head: Head,
  reveal: number,
  face: number,
  ends: Ends,
  options: HeadOptions = {},
): Result<readonly LegTop[]> {
  const joints = endJoints(head, reveal, face, ends, options);
  if (!joints.ok) return joints;
  if (joints.value === null) return ok([]);
  const mitered = mitersLegs(head, ends);
  const square = (height: number) => ({ inside: height, outside: height, miter: 0 });
  return ok(
    joints.value.flatMap(({ side, inside, outside, legMiter }): LegTop[] => {
      if (mitered) return [{ side, inside: inside.y, outside: outside.y, miter: legMiter }];
      if (head.shape === 'straight') {
        return [{ side, ...square(straightEndsOf(ends) === 'over legs' ? reveal : reveal + face) }];
      }
      return side === 'right' && SHAPES[head.shape].highSide ? [] : [{ side, ...square(0) }];
    }),
  );
}

/**
 * The one radius of a head's edge: of the crown, where it has several; of the crown's arc where arcs stand for an ellipse.
 * Refused for a head of straight pieces.
 */
export function crownRadius(head: Head, arcs?: number): Result<number> {
  if (head.radius !== null) return ok(head.radius);
  const found = head.arcs(0, 'radial', arcs === undefined ? {} : { arcs });
  if (!found.ok) return found;
  const highest = found.value.reduce<(typeof found.value)[number] | null>(
    (best, arc) => (best === null || fromUp(arc) < fromUp(best) - 1e-9 ? arc : best),
    null,
  );
  return highest ? ok(highest.radius) : refuse(`head must be one with a curve; a ${head.shape} head has no radius`);
}

/** How far the middle of an arc points from straight up, degrees. */
export function fromUp({ start, degrees: turn }: { readonly start: number; readonly degrees: number }): number {
  return Math.abs(start - turn / 2 - 90);
}
