import { mitersLegs } from '../head/joints';
import { SHAPES } from '../head/shapes';
import type { Standards } from '../standards';
import type { Inputs } from './inputs';
import { NEARLY } from './arcPieces';
import type { Blank } from './blankChoice';
import { isButted } from './curve';
import { splicesOf, type OwnFigures } from './ownFigures';
import { longestBoard, type Wood } from './wood';

/**
 * What can be computed but should be looked at before the order goes out. The workbook says the same sentences by
 * formula (`workbook/working/needs.ts`).
 */
export const ATTENTION = {
  short: 'A blank is shorter than the rolls hold.',
  split: 'A piece is larger than the shop carries or a board holds: it is made in halves, with a finished splice.',
  large: 'Even a half of a piece is larger than the shop carries or a board holds.',
  long: 'A segment is longer than every board that is wide enough for it, and no boards are planned for it: with more segments wanted it is shorter.',
  tight: 'An inside radius is smaller than the machine takes.',
  wide: 'The blank is wider than the machine takes.',
  ellipse: 'The arcs stray from the true ellipse by more than is allowed.',
  finish: 'An edge gets fewer knife cuts than the Economy grade asks for.',
  legless: 'The head is mitered to legs, but their length is missing: the price is of the head alone.',
  unmitered:
    'There are legs, but the ends of the head are not mitered to them: see how the two meet, and how long a leg is then.',
  level:
    'Cutting the ends level adds more than a quarter to the arc: see whether it should meet legs, or end radially.',
  publishedRule:
    'The haunch radius is not given: it is taken as a quarter of the span, by the published rule. Make no guides before it is confirmed.',
  oneLeg:
    'The high side stops at the jamb line, as beside another opening, and has no leg: ends "legs" run it on to one.',
} as const;

export function attentionOf(inputs: Inputs, own: OwnFigures, standards: Standards): string[] {
  const plans = own.rings;
  const straight = own.straight?.pieces ?? [];
  const isShort = (length: number) => length < standards.shortestPiece - NEARLY;
  const said: string[] = [];
  if (plans.some((plan) => isShort(plan.runLength)) || straight.some(({ length }) => isShort(length)))
    said.push(ATTENTION.short);
  if (splicesOf(own) > 0) said.push(ATTENTION.split);
  if (plans.some(({ made }) => made.tooLarge) || straight.some(({ tooLarge }) => tooLarge)) said.push(ATTENTION.large);
  if (plans.some(({ blank }) => isLonger(blank.chosen, inputs.wood, standards))) said.push(ATTENTION.long);
  if (plans.some((plan) => plan.ring.inside < standards.smallestRadius)) said.push(ATTENTION.tight);
  if (plans.length > 0 && inputs.face + 2 * standards.margin > standards.widestFace) said.push(ATTENTION.wide);
  if (own.curve.deviation > standards.deviation) said.push(ATTENTION.ellipse);
  if (own.cutsFewest < 15) said.push(ATTENTION.finish);
  const { head, levelAdds } = own.curve;
  if (levelAdds > 0.25) said.push(ATTENTION.level);
  if (inputs.head === 'four-centered' && inputs.haunch === null) said.push(ATTENTION.publishedRule);
  const { plumb, closed, highSide } = SHAPES[inputs.head];
  const mitered = mitersLegs(head, inputs.ends);
  // A straight head is mitered unless something else is said: without legs it may well stand alone.
  if (mitered && inputs.leg === 0 && (inputs.head !== 'straight' || inputs.ends === 'legs'))
    said.push(ATTENTION.legless);
  if (!mitered && inputs.leg > 0 && !closed && !isButted(inputs)) {
    if (highSide) said.push(ATTENTION.oneLeg);
    if (!plumb) said.push(ATTENTION.unmitered);
  }
  return said;
}

/** Whether no board is long enough for a segment, once its ends are trimmed. */
function isLonger({ width, length }: Blank, wood: Wood, { endTrim }: Standards): boolean {
  return length > longestBoard(width, wood) - 2 * endTrim + NEARLY;
}
