import { ENDS, HEAD_SHAPES, type Ends, type HeadShape } from '../head/head';
import { leastArcs, type ArcCount } from '../head/leastArcs';
import { SHAPES } from '../head/shapes';
import { readEnds, readHead } from '../head/words';
import { quoted } from '../require';
import { listed } from '../schedule/figure';
import { roundTo } from '../rounding';
import type { Standards } from '../standards';
import { doubtIn, type Row, type RowField } from './row';
import { inStock, woodFor, type Wood } from './wood';

/** An opening's inputs with the shop's standards put in where its row gives nothing; complete, and possible. */
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
  /** Of each leg; 0: none. */
  readonly leg: number;
  /** The second leg, where it differs; null: as the first. */
  readonly otherLeg: number | null;
  /** Segments asked for in each ring; null: whatever costs least. */
  readonly segmentsWanted: number | null;
  /** Sides of the wall that are cased. */
  readonly sides: 1 | 2;
  /** Tangent arcs that stand for an ellipse, as many as asked for or the fewest that come near enough; null: no ellipse. */
  readonly arcs: ArcCount | null;
  readonly haunch: number | null;
  readonly wood: Wood;
}

/** The inputs that make the curve; the rest is wood and price. */
export type ShapeInputs = Pick<Inputs, 'head' | 'ends' | 'span' | 'rise' | 'reveal' | 'face' | 'arcs' | 'haunch'>;

/** The inputs of a row as far as they are known: a blank is the shop's standard, null is missing or in doubt. */
export type Known = { readonly [K in keyof Inputs]: Inputs[K] | null };

/**
 * What an input must be, in one sentence. The plain workbook's formulas say the same sentences under the same conditions
 * (`workbook/working/needs.ts`).
 */
export const NEEDS = {
  quantity: 'Needs a quantity: a whole number from 1.',
  head: `Needs a head: ${listed(HEAD_SHAPES, 'or')}.`,
  ends: `Needs ends: ${listed(ENDS, 'or')}.`,
  span: 'Needs a span: more than 0.',
  rise: 'Needs a rise: more than 0.',
  reveal: 'Needs a reveal: 0 or more.',
  face: 'Needs a casing width: more than 0.',
  thickness: 'Needs a thickness: more than 0.',
  leg: 'The leg must be 0 or more.',
  otherLeg: 'The other leg must be 0 or more.',
  segmentsWanted: 'Segments wanted must be a whole number from 1 to 200.',
  sides: 'Sides must be 1 or 2.',
  arcs: 'Arcs must be 3, 5 or 7.',
  haunch: 'The haunch must be more than 0.',
  profile: 'Needs a profile: a name without * ? ~.',
  species: 'Needs a species: one of the stock list.',
  width: 'No board of the stock list is wider than the casing with its margins.',
} as const;

/** Most segments a ring is ever glued of. */
const MOST_SEGMENTS = 200;

export function notInStock(species: string): string {
  return `Species ${quoted(species)} is not in the stock list.`;
}

export function tooThin(species: string, thickness: number): string {
  return `The stock list has no ${species} at least ${roundTo(4, thickness)} thick.`;
}

/** The sentence that asks for a head's rise; null for heads that have none of their own to judge. */
export function riseNeed(head: HeadShape): string | null {
  return SHAPES[head].rise.needs;
}

/** Whether a rise is possible for the head. */
function riseFits(head: HeadShape, span: number, rise: number): boolean {
  return SHAPES[head].rise.fits(span, rise);
}

/** A row read: its inputs, and what is missing or in doubt, each in a sentence, those of the curve first. */
export interface ReadRow {
  readonly known: Known;
  readonly missingShape: readonly string[];
  readonly missing: readonly string[];
}

/** Reads a row's cells; a standard is asked for only where its cell is blank. */
export function readRow(row: Row, standards: Standards): ReadRow {
  const shape: string[] = [];
  const rest: string[] = [];
  const cell = (field: RowField) => (row[field] === '' ? null : row[field]);
  const need = (to: string[], field: RowField, sentence: string) => {
    const given = cell(field);
    const said = doubtIn(given);
    if (said !== null) to.push(said === '' ? sentence : said);
    else to.push(given === null ? sentence : `${sentence.replace(/\.$/, '')}; got ${shown(given)}.`);
  };
  /** A figure, or the standard where the cell is blank; null where it is no such figure. */
  const figure = (
    to: string[],
    field: RowField & keyof typeof NEEDS,
    standard: () => number | null,
    fits: (value: number) => boolean,
  ): number | null => {
    const given = cell(field) ?? standard();
    if (typeof given === 'number' && fits(given)) return given;
    need(to, field, NEEDS[field] as string);
    return null;
  };
  const optional = (to: string[], field: RowField & keyof typeof NEEDS, fits: (value: number) => boolean) =>
    cell(field) === null ? null : figure(to, field, () => null, fits);
  const word = (to: string[], field: 'species' | 'profile', standard: () => string): string | null => {
    const given = cell(field);
    const text = given === null ? standard() : String(given).trim();
    if (doubtIn(given) === null && text !== '' && !(field === 'profile' && /[*?~]/.test(text))) return text;
    need(to, field, NEEDS[field]);
    return null;
  };

  const head = readWord(cell('head'), readHead);
  if (head === null) need(shape, 'head', NEEDS.head);
  const ends = cell('ends') === null ? standards.ends : readWord(cell('ends'), readEnds);
  if (ends === null) need(shape, 'ends', NEEDS.ends);
  const span = figure(shape, 'span', () => null, isPositive);
  const rise = readRise(cell('rise'), head, span, (sentence) => need(shape, 'rise', sentence));
  const reveal = figure(shape, 'reveal', () => standards.reveal, isNotNegative);
  const face = figure(shape, 'face', () => standards.face, isPositive);
  const isReady = head !== null && span !== null && cell('arcs') === null && shape.length === 0;
  const arcs = isReady
    ? leastArcs(head, span, rise, standards.deviation)
    : (optional(shape, 'arcs', (value) => value === 3 || value === 5 || value === 7) as ArcCount | null);
  const haunch = optional(shape, 'haunch', isPositive);

  const quantity = figure(
    rest,
    'quantity',
    () => null,
    (value) => value >= 1 && Number.isInteger(value),
  );
  const thickness = figure(rest, 'thickness', () => standards.thickness, isPositive);
  const leg = figure(rest, 'leg', () => 0, isNotNegative);
  const otherLeg = optional(rest, 'otherLeg', isNotNegative);
  const segmentsWanted = optional(
    rest,
    'segmentsWanted',
    (value) => value >= 1 && value <= MOST_SEGMENTS && Number.isInteger(value),
  );
  const sides = figure(
    rest,
    'sides',
    () => 1,
    (value) => value === 1 || value === 2,
  ) as 1 | 2 | null;
  const profile = word(rest, 'profile', () => standards.profile);
  const species = word(rest, 'species', () => standards.species);
  const wood = species === null || thickness === null ? null : woodFor(species, thickness, standards);
  if (species !== null && thickness !== null && wood === null)
    rest.push(inStock(species, standards) ? tooThin(species, thickness) : notInStock(species));
  if (wood !== null && face !== null && !(wood.widest > face + 2 * standards.margin)) rest.push(NEEDS.width);

  const known = {
    ...{ quantity, head, ends, span, rise, reveal, face, thickness, species, profile, leg, otherLeg },
    ...{ segmentsWanted, sides, arcs, haunch, wood },
  };
  return { known, missingShape: shape, missing: [...shape, ...rest] };
}

/** Heads that go by their rise need one that fits; elsewhere a figure is carried along, and only a doubt holds the row back. */
function readRise(
  cell: Row['rise'],
  head: HeadShape | null,
  span: number | null,
  need: (sentence: string) => void,
): number | null {
  const rise = typeof cell === 'number' ? cell : null;
  if (head === 'half round' && cell === null) return span === null ? null : span / 2;
  const asked = head === null ? null : riseNeed(head);
  if (head !== null && asked !== null) {
    if (rise !== null && (span === null || riseFits(head, span, rise))) return rise;
    need(asked);
    return null;
  }
  if (cell !== null && rise === null) need(NEEDS.rise);
  return rise;
}

function readWord<T>(cell: Row[RowField], read: (text: string) => { ok: true; value: T } | { ok: false }): T | null {
  const found = typeof cell === 'string' ? read(cell) : null;
  return found?.ok ? found.value : null;
}

function shown(cell: string | number): string {
  return typeof cell === 'number' ? String(cell) : quoted(cell);
}

function isPositive(figure: number): boolean {
  return figure > 0 && Number.isFinite(figure);
}

function isNotNegative(figure: number): boolean {
  return figure >= 0 && Number.isFinite(figure);
}
