import { ENDS, HEAD_SHAPES, type Ends, type HeadShape } from '../head/head';
import { listed } from '../schedule/figure';
import type { Opening, OpeningField, Problem } from '../schedule/opening';
import { roundTo } from '../rounding';
import type { Standards } from '../standards';
import { inStock, woodFor, type Wood } from './wood';

/** An opening's inputs with the shop's standards put in where the schedule gives nothing; complete, and possible. */
export interface Inputs {
  readonly quantity: number;
  readonly head: HeadShape;
  readonly ends: Ends;
  readonly span: number;
  readonly rise: number | null;
  readonly reveal: number;
  readonly face: number;
  readonly thickness: number;
  readonly species: string;
  readonly profile: string;
  readonly leg: number;
  readonly wood: Wood;
}

/** The inputs that make the curve; the rest is wood and price. */
export type ShapeInputs = Pick<Inputs, 'head' | 'ends' | 'span' | 'rise' | 'reveal' | 'face'>;

/** An opening's inputs as far as they are known: a blank is the shop's standard, unless what stood there was in doubt. */
export type Known = { readonly mark: string } & { readonly [K in keyof Inputs]: Inputs[K] | null };

export function known(opening: Opening, standards: Standards): Known {
  const doubtful = new Set(opening.problems.map((problem) => problem.field));
  const given = <K extends OpeningField, T>(field: K, standard: T) =>
    opening[field] ?? (doubtful.has(field) ? null : standard);
  const species = given('species', standards.species);
  const thickness = given('thickness', standards.thickness);
  const { head, rough } = opening;
  const less = (figure: number | null, from: number | undefined, allowance: number) =>
    figure === null || from === undefined ? figure : from - allowance;
  const span = less(opening.span, rough?.span, standards.roughWidth);
  const rise = less(opening.rise, rough?.rise, standards.roughHeight);
  return {
    mark: opening.mark,
    quantity: opening.quantity,
    head,
    ends: given('ends', standards.ends),
    span,
    rise: isHalfSpan(opening) && span !== null ? span / 2 : rise,
    reveal: given('reveal', standards.reveal),
    face: given('face', standards.face),
    thickness,
    species,
    profile: given('profile', standards.profile),
    leg: given('leg', 0),
    wood: species === null || thickness === null ? null : woodFor(species, thickness, standards),
  };
}

/** Half-round heads whose rise simply is half the span, as a reader finds or supplies it: it goes on following the span. */
export function isHalfSpan({ head, span, rise, problems }: Opening): boolean {
  if (head !== 'half round' || span === null || problems.some(({ field }) => field === 'rise')) return false;
  return rise === null || riseFits(head, span, rise);
}

/**
 * What an input must be, in one sentence. The workbook's formulas say the same sentences under the same conditions
 * (`workbook/needsFormula.ts`).
 */
export const NEEDS = {
  quantity: 'Needs a quantity: a whole number from 1.',
  head: `Needs a head: ${listed(HEAD_SHAPES, 'or')}.`,
  ends: `Needs ends: ${listed(ENDS, 'or')}.`,
  span: 'Needs a span: more than 0.',
  rise: {
    segmental: 'Needs a rise: more than 0.',
    'half round': 'A half round rises half its span: correct the span, the rise or the head.',
    elliptical: 'Needs a rise: more than 0, and not half the span, which is a half round.',
    'three-centered': 'Needs a rise: more than 0, less than half the span.',
    pointed: 'Needs a rise: more than half the span, which would be a half round.',
  },
  reveal: 'Needs a reveal: 0 or more.',
  face: 'Needs a casing width: more than 0.',
  thickness: 'Needs a thickness: more than 0.',
  leg: 'The leg must be 0 or more.',
  profile: 'Needs a profile: a name without * ? ~.',
  species: 'Needs a species: one of the stock list.',
  width: 'No board of the stock list is wider than the casing with its margins.',
  mark: 'This mark is used twice: give one of the openings another.',
} as const;

export function notInStock(species: string): string {
  return `Species "${species}" is not in the stock list.`;
}

export function tooThin(species: string, thickness: number): string {
  return `The stock list has no ${species} at least ${roundTo(4, thickness)} thick.`;
}

export type RiseHead = keyof typeof NEEDS.rise;

/** Whether a rise is possible for the head; null: heads that have no rise of their own to judge. */
export function riseFits(head: RiseHead, span: number, rise: number): boolean {
  const halfSpan = Math.abs(rise - span / 2) <= 1e-9 * span;
  switch (head) {
    case 'segmental':
      return rise > 0;
    case 'elliptical':
      return rise > 0 && !halfSpan;
    case 'half round':
      return halfSpan;
    case 'three-centered':
      return rise > 0 && rise < span / 2 && !halfSpan;
    case 'pointed':
      return rise > span / 2 && !halfSpan;
  }
}

/** What a reader said of each input; several sentences about one are joined. */
export function saidByField(problems: readonly Problem[]): Map<OpeningField, string> {
  const said = new Map<OpeningField, string>();
  for (const { field, message } of problems) {
    const before = said.get(field);
    said.set(field, before === undefined ? message : `${before} ${message}`);
  }
  return said;
}

/** What is missing, each in a sentence: of the curve, and of the rest. Nothing in either: the figures can be computed. */
export interface Needs {
  readonly shape: readonly string[];
  readonly rest: readonly string[];
}

export function needsOf(opening: Opening, at: Known, standards: Standards, markUsed: (mark: string) => number): Needs {
  const said = saidByField(opening.problems);
  const shape: string[] = [];
  const rest: string[] = [];
  const need = (list: string[], field: OpeningField, sentence: string) => list.push(said.get(field) ?? sentence);

  if (at.head === null) need(shape, 'head', NEEDS.head);
  if (at.ends === null) need(shape, 'ends', NEEDS.ends);
  if (!positive(at.span)) need(shape, 'span', NEEDS.span);
  if (at.head !== null && at.head in NEEDS.rise) {
    const head = at.head as RiseHead;
    if (at.rise === null || (positive(at.span) && !riseFits(head, at.span, at.rise))) {
      need(shape, 'rise', NEEDS.rise[head]);
    }
  } else if (at.rise === null && said.has('rise')) {
    need(shape, 'rise', NEEDS.rise.segmental);
  }
  if (at.reveal === null || !(at.reveal >= 0)) need(shape, 'reveal', NEEDS.reveal);
  if (!positive(at.face)) need(shape, 'face', NEEDS.face);

  if (said.has('mark') && markUsed(at.mark) > 1) need(rest, 'mark', NEEDS.mark);
  if (at.quantity === null || at.quantity < 1 || !Number.isInteger(at.quantity)) {
    need(rest, 'quantity', NEEDS.quantity);
  }
  if (!positive(at.thickness)) need(rest, 'thickness', NEEDS.thickness);
  if (at.leg === null || !(at.leg >= 0)) need(rest, 'leg', NEEDS.leg);
  if (at.profile === null || at.profile === '' || /[*?~]/.test(at.profile)) need(rest, 'profile', NEEDS.profile);
  if (at.species === null || at.species === '') need(rest, 'species', NEEDS.species);
  else if (positive(at.thickness) && at.wood === null) {
    const sentence = inStock(at.species, standards) ? tooThin(at.species, at.thickness) : notInStock(at.species);
    need(rest, 'species', sentence);
  }
  if (at.wood !== null && positive(at.face) && !(at.wood.widest > at.face + 2 * standards.margin)) {
    rest.push(NEEDS.width);
  }
  return { shape, rest };
}

function positive(figure: number | null): figure is number {
  return figure !== null && figure > 0;
}
