import { figure, notNegative, positive, wholeBetween } from './require';
import { ok, refuse, type Result } from './result';
import { bare, inches, type FeetPerMinute, type Inches } from './unit';

const MOST_KNIVES = 100;
const MOST_PASSES = 1000;

/**
 * Knife cuts to the inch: rpm·knives/(12·feed), feed in feet a minute, knives those that really mark (one, unless the
 * head is jointed). On a ring all parts turn together: with the feed held at `feedRadius`, the wood at `edgeRadius`
 * travels edgeRadius/feedRadius times as fast, so there are as many times fewer cuts to the inch.
 *
 * Example: 7,000 rpm, 1 knife, 12 ft/min: 48.6111.
 * Source: "Knife marks per inch", FDMC magazine, January 2009.
 */
export function cutsPerInch(
  rpm: number,
  knives: number,
  at: FeetPerMinute,
  feedRadius?: number,
  edgeRadius?: number,
): Result<number> {
  const feed = bare(at);
  const refusal = positive('rpm', rpm) ?? wholeBetween('knives', knives, 1, MOST_KNIVES) ?? positive('feed', feed);
  if (refusal) return refusal;
  const straight = (rpm * knives) / (12 * feed);
  if (feedRadius === undefined && edgeRadius === undefined) return ok(straight);
  if (feedRadius === undefined) return refuse('feed_radius is missing: give it together with edge_radius, or neither');
  if (edgeRadius === undefined) return refuse('edge_radius is missing: give it together with feed_radius, or neither');
  const radiusRefusal = positive('feed_radius', feedRadius) ?? positive('edge_radius', edgeRadius);
  return radiusRefusal ?? ok((straight * feedRadius) / edgeRadius);
}

/**
 * Feed, feet a minute, for that many cuts to the inch: rpm·knives/(12·cuts).
 *
 * Example: 20 cuts, 7,000 rpm, 1 knife: 29.1667 ft/min.
 */
export function feedRate(cuts: number, rpm: number, knives: number): Result<number> {
  const refusal = positive('cuts', cuts) ?? positive('rpm', rpm) ?? wholeBetween('knives', knives, 1, MOST_KNIVES);
  return refusal ?? ok((rpm * knives) / (12 * cuts));
}

/**
 * Depth of a knife mark: r − √(r² − p²/4) with p = 1/cuts and r half the diameter of the cutting circle. Written as
 * (p²/4)/(r + √(r² − p²/4)): the depth is a few millionths of r, and the difference would lose most of its digits.
 *
 * Example: 20 cuts to the inch, cutting circle 5: 0.000125003.
 *
 * @param cuts to the inch; the pitch 1/cuts can't be more than the diameter
 * @param diameter of the cutting circle, inches
 */
export function markDepth(cuts: number, across: Inches): Result<Inches> {
  const diameter = bare(across);
  const refusal = positive('cuts', cuts) ?? positive('diameter', diameter);
  if (refusal) return refusal;
  const halfPitch = 1 / cuts / 2;
  const radius = diameter / 2;
  if (halfPitch > radius) {
    return refuse(`cuts must be at least 1/diameter, here ${figure(1 / diameter)}; got ${figure(cuts)}`);
  }
  return ok(inches((halfPitch * halfPitch) / (radius + Math.sqrt((radius - halfPitch) * (radius + halfPitch))), 'in'));
}

/**
 * Minutes to run a length: passes·length/(12·feed) + handling.
 *
 * Example: 43.355887 in at 12 ft/min, one pass: 0.301083.
 *
 * @param length inches, more than 0
 * @param feed feet a minute, more than 0
 * @param handling minutes, 0 or more
 */
export function runTime(length: number, feed: number, passes = 1, handling = 0): Result<number> {
  const refusal =
    positive('length', length) ??
    positive('feed', feed) ??
    wholeBetween('passes', passes, 1, MOST_PASSES) ??
    notNegative('handling', handling);
  return refusal ?? ok((passes * length) / (12 * feed) + handling);
}

/**
 * The finish that many knife cuts to the inch allow on profiled wood: Economy from 15, Custom from 20.
 * Source: Architectural Woodwork Standards, 1st edition (2009), section 8, 4.3.1.1. Premium is sanded, so no count of
 * cuts gives it.
 */
export function finishGrade(cuts: number): Result<'below Economy' | 'Economy' | 'Custom'> {
  const refusal = positive('cuts', cuts);
  if (refusal) return refusal;
  return ok(cuts >= 20 ? 'Custom' : cuts >= 15 ? 'Economy' : 'below Economy');
}
