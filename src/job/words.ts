import type { Ends, HeadShape } from '../head/head';
import { riseFollows } from '../head/shapes';
import { lengthText } from '../lengthText';
import { capital } from '../schedule/figure';
import type { Unit } from '../unit';

/** What the words of an opening are made from; null: not known. */
export interface Described {
  readonly head: HeadShape | null;
  readonly profile: string | null;
  readonly face: number | null;
  readonly thickness: number | null;
  readonly species: string | null;
  readonly span: number | null;
  readonly rise: number | null;
  readonly ends: Ends | null;
  readonly leg: number | null;
  readonly otherLeg?: number | null;
  readonly sides?: number | null;
}

/**
 * What an opening is, in words a customer reads. Example: `Half round casing, 3-1/2 × 3/4 Poplar, 36 wide, radial ends`. What
 * isn't known is left out.
 */
export function openingWords(opening: Described, unit: Unit): string {
  const { head, profile, species, span, rise, ends, sides } = opening;
  const said: string[] = [head === null ? 'Casing' : `${capital(head)} casing`];
  if (profile !== null && profile.toLowerCase() !== 'casing') said.push(`profile ${profile}`);
  const section = sectionWords(opening, unit);
  if (section !== null || species !== null) said.push([section, species].filter((part) => part !== null).join(' '));
  if (span !== null) said.push(`${length(span, unit)} wide`);
  if (rise !== null && head !== null && !riseFollows(head)) said.push(`rise ${length(rise, unit)}`);
  if (head !== 'round' && ends !== null) said.push(endsWords(ends, head));
  said.push(...legWords(opening, unit));
  if (sides === 2) said.push('both sides of the wall');
  return said.join(', ');
}

/** 3 1/2 → 3-1/2, so that two lengths beside a × can't be mixed up. */
function length(value: number, unit: Unit): string {
  return lengthText(value, unit).replace(' ', '-') + (unit === 'mm' ? ' mm' : '');
}

function sectionWords({ face, thickness }: Described, unit: Unit): string | null {
  if (face === null || thickness === null) return null;
  return `${length(face, unit)} × ${length(thickness, unit)}`;
}

function endsWords(ends: string, head: HeadShape | null): string {
  switch (ends) {
    case 'radial':
      return 'radial ends';
    case 'level':
      return 'ends cut level';
    case 'legs':
      return head === 'straight' ? 'mitered to uprights' : 'mitered to legs';
    default:
      return `ends ${ends}`;
  }
}

function legWords({ head, leg, otherLeg = null }: Described, unit: Unit): string[] {
  // What stands under a straight head is no leg of a curve, but casing like it.
  const [one, many] = head === 'straight' ? ['upright', 'uprights'] : ['leg', 'legs'];
  const legs = [leg ?? 0, otherLeg ?? leg ?? 0].filter((each) => each > 0);
  if (legs.length === 0) return [];
  if (legs.length === 1) return [`1 ${one} ${length(legs[0]!, unit)}`];
  return legs[0] === legs[1]
    ? [`2 ${many} ${length(legs[0]!, unit)}`]
    : [`${many} ${length(legs[0]!, unit)} and ${length(legs[1]!, unit)}`];
}
