import type { HeadShape } from '../head/head';
import { SHAPES } from '../head/shapes';
import type { Standards } from '../standards';
import { figure } from './figure';
import type { Findings, GivenLengths } from './given';

/** One way the row gives the rise. */
export interface Candidate {
  readonly rise: number;
  /** "rise 6", "radius 30 on a width of 36 gives a rise of 6". */
  readonly how: string;
  /** For the note where this one is used; null where it was simply copied. */
  readonly note: string | null;
  readonly agrees: (rise: number) => boolean;
  /** The rough figure behind it, where there is one. */
  readonly rough?: number;
}

/** Crown less spring line. Gives back a sentence where the two can't be. */
export function fromHeights(
  given: GivenLengths,
  standards: Standards,
  near: (value: number) => (rise: number) => boolean,
  candidates: Candidate[],
  faults: string[],
  say: Findings,
): string | null {
  const { width, springHeight, headHeight, height, roughHeight } = given;
  for (const figure of [springHeight, headHeight, height])
    // A size that can't be read is said of the width.
    if (figure?.fault !== undefined && figure.fault !== width?.fault) faults.push(figure.fault);
  const spring = springHeight?.value;
  if (spring === undefined) return null;
  let top = headHeight?.value ?? height?.value;
  let name = headHeight?.value === undefined ? 'height' : 'head height';
  let rough: number | undefined;
  if (top === undefined && roughHeight?.value !== undefined) {
    top = roughHeight.value - standards.roughHeight;
    name = 'height';
    rough = roughHeight.value - spring;
    say.note(
      `Height ${figure(top)} is the rough opening ${figure(roughHeight.value)} less ${figure(standards.roughHeight)}.`,
    );
  }
  if (top === undefined) return null;
  if (top <= spring) return `Spring height ${figure(spring)} is not below the ${name} ${figure(top)}.`;
  const rise = top - spring;
  candidates.push({
    rise,
    how: `${name} ${figure(top)} less spring height ${figure(spring)} gives ${figure(rise)}`,
    note: `Rise ${figure(rise)} is the ${name} ${figure(top)} less the spring height ${figure(spring)}.`,
    agrees: near(rise),
    ...(rough === undefined ? {} : { rough }),
  });
  return null;
}

/** Radius and width. Gives back a sentence where the radius can't reach across. */
export function fromRadius(
  given: GivenLengths,
  head: HeadShape | null,
  span: number | null,
  tolerance: number,
  candidates: Candidate[],
  faults: string[],
  say: Findings,
): string | null {
  if (given.radius?.fault !== undefined) faults.push(given.radius.fault);
  const radius = given.radius?.value;
  if (radius === undefined || span === null) return null;
  const rule = SHAPES[head ?? 'segmental'].rise;
  const { ofRadius } = rule;
  if (!ofRadius) {
    const why = SHAPES[head ?? 'segmental'].words.radius === null ? 'no radius' : 'more than one radius';
    const sentence = `A head of this shape has ${why}, yet the radius ${figure(radius)} is given`;
    if (say.headIsMeant || head === null) say.note(`${sentence}; it was not used.`);
    else
      say.problem('head', `${sentence}; please confirm the head.`, [
        head,
        radius * 2 === span ? 'half round' : 'segmental',
      ]);
    return null;
  }
  const { least, words } = rule.leastRadius?.(span) ?? { least: span / 2, words: 'half the width' };
  if (radius < least - tolerance) return `A radius of ${figure(radius)} is less than ${words} ${figure(span)}.`;
  const rise = ofRadius(span, Math.max(radius, least));
  const radiusOf = (h: number) => rule.radius?.(span, h) ?? h;
  candidates.push({
    rise,
    how: `radius ${figure(radius)} on a width of ${figure(span)} gives ${figure(rise)}`,
    note: `Rise ${figure(rise)} follows from the radius ${figure(radius)} and the width ${figure(span)}.`,
    // Near a half round a rounded radius moves the rise far, so either figure may be the one that agrees.
    agrees: (h) => Math.abs(h - rise) <= tolerance || Math.abs(radiusOf(h) - radius) <= tolerance,
  });
  return null;
}

/** Height less leg, only where nothing else gives the rise: a leg may be cut to a sill or a plinth. */
export function fromLeg(
  given: GivenLengths,
  near: (value: number) => (rise: number) => boolean,
  candidates: Candidate[],
): void {
  const leg = given.leg?.value;
  const top = given.height?.value;
  if (candidates.length > 0 || leg === undefined || leg === 0 || top === undefined || top <= leg) return;
  const rise = top - leg;
  candidates.push({
    rise,
    how: `height ${figure(top)} less leg ${figure(leg)} gives ${figure(rise)}`,
    note: `Rise ${figure(rise)} is the height ${figure(top)} less the leg ${figure(leg)}.`,
    agrees: near(rise),
  });
}
