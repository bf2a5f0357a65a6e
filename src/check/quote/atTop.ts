import { amountOf, type Quote } from '../../quote/quote';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import type { LineCheck } from './checkLine';
import type { About } from './finding';
import type { LineMatch } from './match';

/** Fewer lines say nothing of whose quote it is. */
const FEWEST = 3;
/** Of a quote for another job at most this share of the lines fits by chance. */
const BY_CHANCE = 0.25;

const SHAPE: ReadonlySet<About> = new Set<About>(['width', 'rise', 'radius', 'length']);

/**
 * What has to be known before anything else is read of a check: the quote, or the takeoff, is empty; it looks like another job's. A
 * sentence each; none for most quotes.
 */
export function atTop(
  { lines }: Quote,
  matches: readonly LineMatch[],
  checks: readonly LineCheck[],
  openings: readonly OpeningTakeoff[],
): string[] {
  if (openings.length === 0) return ['The takeoff has no openings: there is nothing to check the quote against.'];
  const all = openings.length === 1 ? 'the one opening' : `any of the ${openings.length} openings`;
  if (lines.length === 0) return [`The quote is empty: it has no line for ${all} of the takeoff.`];
  const unpriced = lines.every((line) => (amountOf(line) ?? 0) === 0 && !line.unitPrice && !line.footPrice);
  return [...(unpriced ? ['The quote has no prices.'] : []), ...otherJob(checks, matches)];
}

function otherJob(checks: readonly LineCheck[], matches: readonly LineMatch[]): string[] {
  const all = checks.filter(({ part }) => part !== 'alternate' && part !== 'extra');
  if (all.length < FEWEST) return [];
  const named = all.filter(({ places }) => places.length > 0);
  const may = 'this may be the quote for another job, or an older list';
  const akin = matches.filter((match) => match.akin.length > 0).length;
  if (named.length + akin <= BY_CHANCE * all.length && all.some(({ line }) => line.mark !== ''))
    return [`Of ${all.length} lines ${few(named.length)} an opening of the takeoff: ${may}.`];
  const shaped = named.flatMap(({ findings }) => {
    const found = findings.filter(({ about, notGiven }) => SHAPE.has(about) && !notGiven);
    return found.length === 0 ? [] : [found];
  });
  const fitting = shaped.filter((found) => found.some(({ verdict }) => verdict === 'agrees')).length;
  // A mistake that is known is made on the right opening.
  const explained = shaped.filter((found) => found.some(({ mistakes }) => mistakes.length > 0)).length;
  if (shaped.length < FEWEST || fitting > BY_CHANCE * shaped.length || explained > shaped.length / 2) return [];
  const said = fitting === 0 ? 'none has' : fitting === 1 ? 'one has' : `${fitting} have`;
  return [`Of ${shaped.length} lines with a size ${said} that of the opening with their mark: ${may}.`];
}

function few(count: number): string {
  return count === 0 ? 'none names' : count === 1 ? 'one names' : `${count} name`;
}
