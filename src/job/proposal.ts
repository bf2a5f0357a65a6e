import { countOf, type ExtraKind } from '../extras';
import { addUp, toCents } from '../rounding';
import { capital } from '../schedule/figure';
import type { Unit } from '../unit';
import { sumsOf, type Sums } from './charges';
import type { Job, PricedLine } from './fields';

/** An opening as a proposal takes it. */
export interface Offered {
  /** Its permanent number in the workbook. */
  readonly no: number;
  readonly mark: string;
  readonly place: string | null;
  readonly head: string | null;
  readonly words: string;
  readonly quantity: number | null;
  /** For one, in whole cents, by the job's rule for set-ups; null: not priced. */
  readonly unitPrice: number | null;
  /** What its part of knives, guides and set-ups sells for where these stand apart, unrounded. */
  readonly setups: number;
  /** Molding of the whole quantity along its outside edge, feet or meters. */
  readonly length: number;
  /** Which of its legs, left and right, the head stands on. */
  readonly legs: readonly [left: boolean, right: boolean];
  readonly needs: readonly string[];
}

/** One line of the proposal: an opening, or a group of openings at one amount. */
export interface ProposalLine {
  readonly mark: string;
  readonly words: string;
  readonly quantity: number;
  /** Null where openings of several prices stand on the line. */
  readonly unitPrice: number | null;
  readonly amount: number;
  readonly openings: readonly Priced[];
}
export interface Priced extends Offered {
  readonly quantity: number;
  readonly unitPrice: number;
}

export interface ExtraLine extends PricedLine {
  readonly amount: number;
  /** Of an extra at the shop's price list, whose count follows the openings. */
  readonly kind?: ExtraKind;
}

/** Extras of an opening as a proposal takes them. */
export interface OfferedExtra {
  readonly mark: string;
  readonly kind: ExtraKind;
  readonly each: number;
  /** Null: the opening's quantity isn't known. */
  readonly quantity: number | null;
  /** Null: not priced yet. */
  readonly unitPrice: number | null;
}

export interface Proposal extends Sums {
  readonly job: Job;
  readonly unit: Unit;
  readonly lines: readonly ProposalLine[];
  readonly extras: readonly ExtraLine[];
  /** Priced apart; the total is without them. */
  readonly alternates: readonly ProposalLine[];
  readonly notPriced: readonly Offered[];
  /** Extras that no amount holds, each in words. */
  readonly extrasNotPriced: readonly string[];
  /** Marks named as alternates that no opening has. */
  readonly unknownAlternates: readonly string[];
  /** Whole weeks at the machine; null where the proposal doesn't say. */
  readonly weeks: number | null;
}

export interface ProposalInput {
  readonly openings: readonly Offered[];
  readonly extras?: readonly OfferedExtra[];
  readonly job: Job;
  readonly unit: Unit;
  /** Whole weeks of the whole job. */
  readonly weeks: number;
}

/** A job's openings as a customer is offered them: lines, charges, total; apart from these, alternates and what could not be priced. */
export function proposalOf({ openings, extras: offered = [], job, unit, weeks }: ProposalInput): Proposal {
  const named = new Map(job.alternates.map((mark) => [key(mark), mark]));
  const priced = openings.filter(isPriced);
  const base = priced.filter(({ mark }) => !named.has(key(mark)));
  const apart = priced.filter(({ mark }) => named.has(key(mark)));
  const lines = linesBy(job.linesBy, base);
  const shop = extrasOffered(offered, isAlternateOf(job));
  const extras = [...shop.lines, ...job.extras].map((line): ExtraLine => ({
    ...line,
    amount: toCents(line.quantity * line.unitPrice),
  }));
  const goods = {
    amounts: [...lines, ...extras].map(({ amount }) => amount),
    setups: base.reduce((sum, opening) => sum + opening.setups, 0),
    length: base.reduce((sum, opening) => sum + opening.length, 0),
  };
  const marks = new Set(openings.map(({ mark }) => key(mark)));
  return {
    ...{ job, unit, lines, extras },
    alternates: linesBy('opening', apart),
    notPriced: openings.filter((opening) => !isPriced(opening)),
    extrasNotPriced: shop.notPriced,
    unknownAlternates: [...named].flatMap(([mark, written]) => (marks.has(mark) ? [] : [written])),
    weeks: job.leadTime === 'shown' && weeks > 0 ? weeks : null,
    ...sumsOf(goods, job, unit),
  };
}

/** A line for each kind that has a price; the rest in words: what has none, and what goes with alternates. */
function extrasOffered(offered: readonly OfferedExtra[], isAlternate: (mark: string) => boolean) {
  const lines = new Map<ExtraKind, { words: string; quantity: number; unitPrice: number; kind: ExtraKind }>();
  const open = new Map<ExtraKind, number>();
  const apart: string[] = [];
  for (const { mark, kind, each, quantity, unitPrice } of offered) {
    if (isAlternate(mark) || quantity === null) {
      const why = quantity === null ? 'the quantity is not known' : 'an alternate, not in the total';
      apart.push(`${mark === '' ? 'No mark' : mark}: ${countOf(kind, each)} for each opening (${why}).`);
    } else if (unitPrice === null) open.set(kind, (open.get(kind) ?? 0) + quantity);
    else {
      const line = lines.get(kind) ?? { words: capital(kind), quantity: 0, unitPrice, kind };
      lines.set(kind, { ...line, quantity: line.quantity + quantity });
    }
  }
  return {
    lines: [...lines.values()],
    notPriced: [...[...open].map(([kind, count]) => `${capital(countOf(kind, count))}.`), ...apart],
  };
}

/** Whether an opening of this mark, and what goes with it, is priced apart and not in the total. */
export function isAlternateOf({ alternates }: Job): (mark: string) => boolean {
  const marks = new Set(alternates.map(key));
  return (mark) => marks.has(key(mark));
}

function isPriced(opening: Offered): opening is Priced {
  return opening.unitPrice !== null && opening.quantity !== null;
}

function key(mark: string): string {
  return mark.trim().toLowerCase();
}

/** Openings by themselves, or those of one place or head together, in the order they first stand in the list. */
function linesBy(by: Job['linesBy'], openings: readonly Priced[]): ProposalLine[] {
  if (by === 'opening') return openings.map((opening) => lineOf([opening], opening.words));
  const groups = new Map<string, { title: string; openings: Priced[] }>();
  for (const opening of openings) {
    const title =
      (by === 'place' ? opening.place : opening.head)?.trim() || (by === 'place' ? 'Place not given' : 'Other');
    const group = groups.get(title.toLowerCase());
    if (group) group.openings.push(opening);
    else groups.set(title.toLowerCase(), { title, openings: [opening] });
  }
  return [...groups.values()].map((group) =>
    lineOf(group.openings, `${capital(group.title)}: ${groupWords(group.openings)}`),
  );
}

function lineOf(openings: readonly Priced[], words: string): ProposalLine {
  const quantity = openings.reduce((sum, opening) => sum + opening.quantity, 0);
  const amount = addUp(openings.map(({ unitPrice, quantity }) => toCents(unitPrice * quantity)));
  return {
    mark: firstOf(
      openings.map(({ mark }) => mark).filter((mark) => mark !== ''),
      ', ',
    ),
    words,
    quantity,
    unitPrice: openings.length === 1 ? openings[0]!.unitPrice : null,
    amount,
    openings,
  };
}

/** What a group holds: how many of each kind of words. */
function groupWords(openings: readonly Priced[]): string {
  const kinds = new Map<string, number>();
  for (const { words, quantity } of openings) kinds.set(words, (kinds.get(words) ?? 0) + quantity);
  return firstOf(
    [...kinds].map(([words, quantity]) => `${quantity} ${words.charAt(0).toLowerCase()}${words.slice(1)}`),
    '; ',
  );
}

/** A line lists so many; the rest is counted. */
const MOST_LISTED = 12;

function firstOf(texts: readonly string[], between: string): string {
  const more = texts.length - MOST_LISTED;
  return [...texts.slice(0, MOST_LISTED), ...(more > 0 ? [`and ${more} more`] : [])].join(between);
}

/** How the money is rounded: stands on the proposal once. */
export const ROUNDING =
  'All prices are in whole cents. An amount is quantity times unit price; the total is the sum of the amounts shown.';
