import { countOf, EXTRA_KINDS, type ExtraKind } from '../../extras';
import { dollars } from '../../quote/money';
import { amountOf, type QuoteLine } from '../../quote/quote';
import type { Standards } from '../../standards';
import { extraPrice, extrasOf } from '../../takeoff/extras';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { cantTell, differs, type Finding } from './finding';
import type { LineMatch } from './match';
import { countedTogether, extensionFinding, priceFinding } from './moneyFindings';
import type { NotQuoted } from './notQuoted';
import { sameOpening } from './sameOpening';
import { name } from './whichOpening';

/*
 * Keystones, plinth blocks and rosettes of a quote against those that the openings have, at the shop's price list. A line for them names
 * its opening, or is for those of the whole job.
 */

const NAMES: Readonly<Record<ExtraKind, RegExp>> = {
  keystone: /\bkey ?stones?\b/i,
  'plinth block': /\bplinths?(?: blocks?)?\b/i,
  rosette: /\brosettes?\b/i,
};
/** Before its name the line would be for the molding, with them or without. */
const OF_MOLDING = /\b(?:casings?|heads?|trim|mou?ldings?|with|w\/|w\/o|without|incl\w*|less|no|excl\w*|plus)\b/i;

/** What kind a line is for; null: it is for something else, or for several kinds as one. */
export function extraOf({ mark, description, length, radius }: QuoteLine): ExtraKind | null {
  if (length !== null || radius !== null) return null;
  const text = `${mark} ${description}`;
  const found = EXTRA_KINDS.flatMap((kind) => {
    const at = text.search(NAMES[kind]);
    return at < 0 ? [] : [{ kind, before: text.slice(0, at) }];
  });
  return found.length === 1 && !OF_MOLDING.test(found[0]!.before) ? found[0]!.kind : null;
}

/** Of one kind on some openings. */
interface Wanted {
  /** Null where the takeoff has no quantity for one of the openings. */
  readonly count: number | null;
  /** At the price list; null: not priced. */
  readonly each: number | null;
}

function wantedOf(kind: ExtraKind, rows: readonly OpeningTakeoff[], standards: Standards): Wanted {
  const lines = rows.flatMap((row) => extrasOf(row, standards)).filter((one) => one.kind === kind);
  const count = lines.reduce<number | null>(
    (sum, { quantity }) => (sum === null || quantity === null ? null : sum + quantity),
    0,
  );
  return { count, each: extraPrice(kind, standards) };
}

/** Lines of one kind that are for the same openings. */
interface Group {
  readonly kind: ExtraKind;
  readonly places: readonly number[];
  readonly lines: LineMatch[];
}

function groupsOf(matches: readonly LineMatch[]): readonly Group[] {
  const groups = new Map<string, Group>();
  for (const match of matches) {
    const kind = match.part === 'extra' ? extraOf(match.line) : null;
    if (kind === null) continue;
    const key = `${kind} ${match.places.join(' ')}`;
    const group = groups.get(key) ?? { kind, places: match.places, lines: [] };
    group.lines.push(match);
    groups.set(key, group);
  }
  return [...groups.values()];
}

export interface ExtrasCheck {
  readonly findings: ReadonlyMap<LineMatch, readonly Finding[]>;
  /** What the takeoff's list has for the lines that it prices, by line: our price beside the quoted amount. */
  readonly ours: ReadonlyMap<LineMatch, number>;
  readonly missing: readonly NotQuoted[];
}

export function checkExtras(
  matches: readonly LineMatch[],
  openings: readonly OpeningTakeoff[],
  standards: Standards,
): ExtrasCheck {
  const groups = groupsOf(matches);
  const findings = new Map<LineMatch, readonly Finding[]>();
  const ours = new Map<LineMatch, number>();
  for (const { kind, places, lines } of groups) {
    // A line for the whole job is for what no other line names.
    const named = new Set(groups.filter((one) => one.kind === kind).flatMap((one) => one.places));
    const rows =
      places.length > 0 ? places.map((place) => openings[place]!) : openings.filter((_row, at) => !named.has(at));
    const wanted = wantedOf(kind, rows, standards);
    const of = places.length > 0 ? rows.map(name).join(', ') : 'the whole job';
    for (const match of lines) findings.set(match, lineFindings(match, kind, lines, wanted, of, standards));
    if (wanted.count !== null && wanted.count > 0 && wanted.each !== null)
      ours.set(lines[0]!, wanted.count * wanted.each);
  }
  return { findings, ours, missing: missingExtras(matches, groups, openings, standards) };
}

function lineFindings(
  match: LineMatch,
  kind: ExtraKind,
  lines: readonly LineMatch[],
  { count, each }: Wanted,
  of: string,
  { priceBand }: Standards,
): Finding[] {
  const { line } = match;
  const amount = amountOf(line);
  const extension = extensionFinding(line, count);
  const own = extension === null ? [] : [extension];
  if (count === null) return [cantTell('quantity', `the takeoff has no quantity for ${of}`), ...own];
  if (count === 0)
    return [
      differs('opening', `the takeoff has no ${kind} for ${of}`, {
        cause: 'extras that the takeoff does not have',
        dollars: amount,
        stake: Math.abs(amount ?? 0),
      }),
      ...own,
    ];
  const same = sameOpening(lines, [], count);
  const first = lines[0]!;
  if (match !== first && same.sharing === 'surplus')
    return [
      differs('opening', `the ${kind} for ${of} is quoted already in row ${first.line.row}`, {
        cause: 'quoted twice',
        dollars: amount,
        stake: Math.abs(amount ?? 0),
      }),
      ...own,
    ];
  const unit = line.unitPrice ?? (amount !== null && line.quantity ? amount / line.quantity : null);
  const price =
    each === null
      ? cantTell('unit price', `the ${kind} is not priced yet in the Standards`)
      : unit !== null && line.by === 'piece'
        ? priceFinding('price of one', unit, each, count, priceBand, [])
        : amount === null
          ? cantTell('unit price', 'no price given', { notGiven: true })
          : priceFinding('amount', amount, count * each, 1, priceBand, []);
  return [countedTogether(match, same, count, unit ?? each), ...own, price];
}

/** Extras of openings that are quoted, but for which no line is, and whose own line doesn't say that it has them. */
function missingExtras(
  matches: readonly LineMatch[],
  groups: readonly Group[],
  openings: readonly OpeningTakeoff[],
  standards: Standards,
): readonly NotQuoted[] {
  return openings.flatMap((opening, place) => {
    const heads = matches.filter(({ part, places }) => part === 'head' && places.includes(place));
    return extrasOf(opening, standards).flatMap(({ kind, quantity, price }): NotQuoted[] => {
      const quoted = groups.some((one) => one.kind === kind && (one.places.length === 0 || one.places.includes(place)));
      const included = heads.some(({ line }) => NAMES[kind].test(line.description));
      if (quantity === 0 || heads.length === 0 || quoted || included) return [];
      const many = quantity === null ? `the ${kind}` : countOf(kind, quantity);
      const its = price === null ? 'not priced in the takeoff either' : `our price is ${dollars(price)}`;
      const finding = differs('opening', `${many} for ${name(opening)} not quoted; ${its}`, {
        cause: 'extras not quoted',
        dollars: price === null ? null : -price,
        stake: price ?? 0,
      });
      return [{ place, opening, extra: kind, price, finding }];
    });
  });
}
