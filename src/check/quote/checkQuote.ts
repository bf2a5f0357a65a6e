import { oursOf, type Ours } from '../../quote/ours';
import { readQuote, type ReadingOptions } from '../../quote/readQuote';
import { ok, type Result } from '../../result';
import type { Table } from '../../schedule/opening';
import type { OpeningTakeoff, Takeoff } from '../../takeoff/takeoff';
import { namedByNeighbors } from './neighbors';
import { pricedBesideOthers } from './outliers';
import { countsFeetOfEach, type Beside } from './curveFindings';
import { comparedMoney, type ComparedMoney } from './compared';
import { checkedLine, checkLine, type LineCheck } from './checkLine';
import { checkExtras } from './extraLines';
import { openingsNotQuoted, type NotQuoted } from './notQuoted';
import { name } from './whichOpening';
import type { VerdictWord } from '../rules/verdict';
import type { Finding } from './finding';
import { matchLines, type LineMatch } from './match';
import { amountOf, type Quote, type QuoteSum } from '../../quote/quote';
import { atTop } from './atTop';
import { correctedSums, type Corrected } from './corrected';
import { sameOpening } from './sameOpening';
import { stakesOf, type Stakes } from './stakes';
import { checkSums, type SumCheck } from './sums';

/** Differences of one cause, added up. */
export interface CauseSum {
  readonly cause: string;
  readonly count: number;
  /** Marks or rows where it was found, in the order of money. */
  readonly where: readonly string[];
  /** By how much the quote is off in money for this cause; null where no figure tells. */
  readonly dollars: number | null;
  /** Money that hangs on it, that of a line once. */
  readonly stake: number;
}

/** The money that is said of a cause: the difference where it is known, else what hangs on it. */
export function moneyOf({ dollars, stake }: CauseSum): number {
  return dollars === null ? stake : Math.abs(dollars);
}

export interface QuoteCheck {
  readonly quote: Quote;
  readonly takeoff: Takeoff;
  /** Every line, in the order of the quote. */
  readonly lines: readonly LineCheck[];
  readonly sums: readonly SumCheck[];
  readonly notQuoted: readonly NotQuoted[];
  /** Most money first, as `moneyOf` has it. */
  readonly causes: readonly CauseSum[];
  readonly counts: Readonly<Record<VerdictWord, number>>;
  /** The quote's own total; null where it states none. */
  readonly stated: QuoteSum | null;
  readonly compared: ComparedMoney;
  /** What its charges, sums and total come to once its lines are right. */
  readonly corrected: Corrected;
  readonly stakes: Stakes;
  /** What has to be known first: an empty quote, another job's. */
  readonly atTop: readonly string[];
}

/** What the reader of a quote may know of a takeoff. */
function oursIn({ openings }: Takeoff): Ours {
  return oursOf(
    openings.map(({ opening, known, own }) => {
      const ring = own?.crown && !own.haunch ? own.crown.ring : null;
      return {
        mark: opening.mark,
        quantity: known.quantity,
        figures: {
          ...(known.span !== null && { span: known.span }),
          ...(known.face !== null && { face: known.face }),
          ...(known.thickness !== null && { thickness: known.thickness }),
          ...(known.leg !== null && known.leg > 0 && { leg: known.leg }),
          ...(own && {
            rise: own.curve.head.rise,
            length: own.curve.length,
            insideLength: own.curve.insideLength,
            centerLength: own.curve.centerLength,
          }),
          ...(ring && { radius: ring.inside, outsideRadius: ring.outside, openingRadius: ring.radius }),
        },
      };
    }),
  );
}

/** Reads a table as a quote for this takeoff and checks it. */
export function checkTable(
  table: Table,
  takeoff: Takeoff,
  options: Omit<ReadingOptions, 'ours'> = {},
): Result<QuoteCheck> {
  const quote = readQuote(table, takeoff.standards, { ...options, ours: oursIn(takeoff) });
  return quote.ok ? ok(checkQuote(quote.value, takeoff)) : quote;
}

/**
 * Checks a quote against the takeoff line by line: which opening a line is for, its quantity, radius, length and price against
 * ours, its extension and the quote's sums against its own figures; what is not quoted, quoted twice or for no opening. Where
 * something can't be known it says so and nothing is called wrong.
 */
export function checkQuote(quote: Quote, takeoff: Takeoff): QuoteCheck {
  const { openings, standards } = takeoff;
  const matches = matchLines(quote.lines, openings, standards.tolerance);
  const byPlace = new Map<number, { heads: LineMatch[]; others: LineMatch[] }>();
  for (const match of matches) {
    if (match.places.length !== 1 || match.part === 'alternate' || match.part === 'extra') continue;
    const there = byPlace.get(match.places[0]!) ?? { heads: [], others: [] };
    (match.part === 'head' ? there.heads : there.others).push(match);
    byPlace.set(match.places[0]!, there);
  }
  const same = new Map(
    [...byPlace].map(([place, { heads, others }]) => {
      return [place, sameOpening(heads, others, openings[place]!.known.quantity)] as const;
    }),
  );
  const none = sameOpening([], [], null);
  const beside = besideOf(matches, openings, standards.tolerance);
  const extras = checkExtras(matches, openings, standards);
  const judged = matches.map((match) => {
    const found = extras.findings.get(match);
    if (found !== undefined) return checkedLine(match, found, null);
    const alike = (match.places.length === 1 && same.get(match.places[0]!)) || none;
    return checkLine(match, alike, openings, standards, beside);
  });
  const lines = pricedBesideOthers(namedByNeighbors(judged, openings, standards.tolerance), openings);
  const alternates = new Set(matches.filter(({ part }) => part === 'alternate').map(({ line }) => line.row));
  const sums = checkSums(quote, alternates);
  const notQuoted = [...openingsNotQuoted(matches, openings, quote), ...extras.missing];
  const stated = statedTotal(quote);
  const total = stated?.amount ?? comesTo(quote, alternates);
  const corrected = correctedSums(quote, lines, sums, stated);
  return {
    quote,
    takeoff,
    lines,
    sums,
    notQuoted,
    causes: causesOf(lines, sums, notQuoted, openings),
    counts: {
      agrees: lines.filter(({ verdict }) => verdict === 'agrees').length,
      differs: lines.filter(({ verdict }) => verdict === 'differs').length,
      "can't tell": lines.filter(({ verdict }) => verdict === "can't tell").length,
    },
    stated,
    compared: comparedMoney(matches, quote, openings, extras.ours, sums, total),
    corrected,
    stakes: stakesOf(lines, notQuoted, total, corrected.total),
    atTop: atTop(quote, matches, lines, openings),
  };
}

/** Whether lines of several pieces give the length of one, or of all: what most do, another that does otherwise has wrong. */
function besideOf(matches: readonly LineMatch[], openings: readonly OpeningTakeoff[], tolerance: number): Beside {
  const said = { each: 0, all: 0 };
  const underTotal = { each: 0, all: 0 };
  for (const { line, places } of matches) {
    const opening = places.length === 1 ? openings[places[0]!] : undefined;
    const [pieces, right] = [opening?.known.quantity ?? 1, opening?.own?.curve.length];
    if (pieces < 2 || right === undefined || line.length === null) continue;
    const counts = line.lengthOf === 'all pieces' && !countsFeetOfEach(line) ? underTotal : said;
    if (Math.abs(line.length - right) <= tolerance) counts.each += 1;
    else if (Math.abs(line.length - pieces * right) <= tolerance * pieces) counts.all += 1;
  }
  return {
    faces: [...new Set(openings.flatMap(({ known }) => known.face ?? []))],
    eachPiece: said.each >= 2 && said.each > 2 * said.all,
    allPieces: underTotal.each === underTotal.all ? null : underTotal.all > underTotal.each,
  };
}

/** The quote's own total: the last one it states, but for what is left to pay after a deposit. */
function statedTotal({ items }: Quote): QuoteSum | null {
  let stated: QuoteSum | null = null;
  let paid = false;
  for (const item of items) {
    if (item.kind === 'charge' && item.charge === 'deposit') paid = true;
    if (item.kind === 'sum' && item.sum === 'total' && item.amount !== null && !(paid && stated !== null))
      stated = item;
  }
  return stated;
}

/** What its lines and charges come to by the quote's own figures: without offers beside it, whatever is paid before. */
function comesTo({ items }: Quote, alternates: ReadonlySet<number>): number {
  return items.reduce((sum, item) => {
    if (item.kind === 'line') return alternates.has(item.row) ? sum : sum + (amountOf(item) ?? 0);
    return item.kind === 'charge' && item.charge !== 'deposit' ? sum + (item.amount ?? 0) : sum;
  }, 0);
}

function causesOf(
  lines: readonly LineCheck[],
  sumChecks: readonly SumCheck[],
  notQuoted: readonly NotQuoted[],
  openings: readonly OpeningTakeoff[],
): CauseSum[] {
  const found: { where: string; finding: Finding }[] = [
    ...lines.flatMap(({ line, places, findings }) => {
      const mark = places.length === 1 ? name(openings[places[0]!]!) : line.mark;
      const where = mark === '' ? `row ${line.row}` : `${mark} (row ${line.row})`;
      return findings.map((finding) => ({ where, finding }));
    }),
    ...sumChecks.map(({ item, finding }) => ({ where: `row ${item.row}`, finding })),
    ...notQuoted.map(({ opening, finding }) => ({ where: name(opening), finding })),
  ].filter(({ finding }) => finding.verdict === 'differs');
  found.sort((one, other) => other.finding.stake - one.finding.stake);
  const sums = new Map<string, { stakes: Map<string, number>; dollars: number | null }>();
  for (const { where, finding } of found) {
    const cause = finding.cause ?? finding.about;
    const sum = sums.get(cause) ?? { stakes: new Map<string, number>(), dollars: null };
    // Of several findings on one line the largest holds its money.
    sum.stakes.set(where, Math.max(sum.stakes.get(where) ?? 0, finding.stake));
    if (finding.dollars !== null) sum.dollars = (sum.dollars ?? 0) + finding.dollars;
    sums.set(cause, sum);
  }
  return [...sums]
    .map(([cause, { stakes, dollars: off }]) => {
      const stake = [...stakes.values()].reduce((sum, one) => sum + one, 0);
      return { cause, count: stakes.size, where: [...stakes.keys()], dollars: off, stake };
    })
    .sort((one, other) => moneyOf(other) - moneyOf(one));
}
