/* eslint-disable @typescript-eslint/no-explicit-any -- a length is a number or text, and the metadata knows no unions */
import { cutsPerInch, feedRate, markDepth, runTime } from '../src/machine';
import { ok } from '../src/result';
import { bare, feetPerMinute, inches } from '../src/unit';
import {
  length as readLength,
  number,
  optionalLengthNotZero,
  optionalNumber,
  optionalNumberNotZero,
} from './arguments';
import { give } from './error';

/**
 * Knife cuts to the inch.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#cutsperinch
 * @param rpm Revolutions of the cutter head per minute, more than 0.
 * @param knives Knives that really mark, a whole number from 1 to 100: one, unless the head is jointed.
 * @param feed Feet per minute, more than 0.
 * @param feed_radius Radius at which the feed is held. Give both radii or neither.
 * @param edge_radius Radius at which cuts are counted. Give both radii or neither.
 * @returns Cuts to the inch.
 * @throws One radius without the other.
 * @remarks rpm·knives/(12·feed), and with both radii ·feed_radius/edge_radius: a ring turns as one, so its outside edge travels faster and gets fewer cuts. "Knife marks per inch", FDMC magazine, January 2009. Architectural Woodwork Standards (2009), section 8: at least 15 for Economy, 20 for Custom.
 * @example =ARCH.CUTSPERINCH(7000, 1, 12) → 48.6111111111
 * @example =ARCH.CUTSPERINCH(7000, 1, 12, 19.75, 21.5) → 44.6543927649
 */
export function CUTSPERINCH(rpm: any, knives: any, feed: any, feed_radius?: any, edge_radius?: any): number {
  return give(
    cutsPerInch(
      number('rpm', rpm),
      number('knives', knives),
      feetPerMinute(number('feed', feed), 'in'),
      optionalLengthNotZero('feed_radius', feed_radius),
      optionalLengthNotZero('edge_radius', edge_radius),
    ),
  );
}

/**
 * Feed that gives so many cuts to the inch.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#feedrate
 * @param cuts Cuts wanted to the inch, more than 0.
 * @param rpm Revolutions of the cutter head per minute, more than 0.
 * @param knives Knives that really mark, a whole number from 1 to 100.
 * @returns Feet per minute.
 * @throws Figures that aren't more than 0; knives that aren't whole.
 * @remarks rpm·knives/(12·cuts).
 * @example =ARCH.FEEDRATE(20, 7000, 1) → 29.1666666667
 */
export function FEEDRATE(cuts: any, rpm: any, knives: any): number {
  return give(feedRate(number('cuts', cuts), number('rpm', rpm), number('knives', knives)));
}

/**
 * Depth of one knife mark.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#markdepth
 * @param cuts Cuts to the inch, at least 1/diameter.
 * @param diameter Diameter of the cutting circle, inches, more than 0.
 * @returns Inches.
 * @throws Cuts so few that the marks would lie further apart than the cutting circle is wide.
 * @remarks r − √(r² − p²/4) with p = 1/cuts and r = diameter/2, worked without the loss of digits that this difference would bring.
 * @example =ARCH.MARKDEPTH(20, 5) → 0.000125003125156
 */
export function MARKDEPTH(cuts: any, diameter: any): number {
  const depth = markDepth(number('cuts', cuts), inches(readLength('diameter', diameter), 'in'));
  return give(depth.ok ? ok(bare(depth.value)) : depth);
}

/**
 * Minutes to run a length through the machine.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#runtime
 * @param length Length of the molding, inches, more than 0.
 * @param feed Feet per minute, more than 0.
 * @param passes How many passes, a whole number from 1 to 1,000. Left out: 1.
 * @param handling Minutes of handling added, 0 or more. Left out: 0.
 * @returns Minutes.
 * @throws Passes that aren't whole; negative handling.
 * @remarks passes·length/(12·feed) + handling.
 * @example =ARCH.RUNTIME(43.355887, 12) → 0.301082548611
 */
export function RUNTIME(length: any, feed: any, passes?: any, handling?: any): number {
  return give(
    runTime(
      readLength('length', length),
      number('feed', feed),
      optionalNumberNotZero('passes', passes),
      optionalNumber('handling', handling),
    ),
  );
}
