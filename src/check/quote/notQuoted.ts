import type { ExtraKind } from '../../extras';
import { marksOf } from '../../quote/marks';
import { dollars } from '../../quote/money';
import type { Quote } from '../../quote/quote';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { cantTell, differs, type Finding } from './finding';
import { namesNothing, type LineMatch } from './match';
import { name } from './whichOpening';

/** An opening of the takeoff, or what goes with one, that no line of the quote is for. */
export interface NotQuoted {
  /** Its place in the takeoff. */
  readonly place: number;
  readonly opening: OpeningTakeoff;
  /** What of it isn't quoted, where the opening itself is; null: the opening. */
  readonly extra: ExtraKind | null;
  /** Our own; null: not priced in the takeoff either. */
  readonly price: number | null;
  readonly finding: Finding;
}

/** Rows named before the rest is left to "…". */
const MOST_ROWS = 5;

/** Places of the openings that a row says aren't quoted, with its words. */
function declinedIn({ declined }: Quote, openings: readonly OpeningTakeoff[]): ReadonlyMap<number, string> {
  const marks = marksOf(openings.map(({ opening }) => opening.mark));
  return new Map(
    declined.flatMap(({ row, words, text }) =>
      (marks.within(text, true).length > 0 ? marks.within(text, true) : []).flatMap((places) =>
        places.map((place) => [place, `"${words}", row ${row}`] as const),
      ),
    ),
  );
}

/** Alternates stand beside the quote, extras are for no molding. */
const isOfOpenings = (part: LineMatch['part']) => part === 'head' || part === 'other';

/** Openings without a line, each with our price, or with why it can't be told whether one is for it. */
export function openingsNotQuoted(
  matches: readonly LineMatch[],
  openings: readonly OpeningTakeoff[],
  quote: Quote,
): NotQuoted[] {
  const declined = declinedIn(quote, openings);
  const quoted = new Set(matches.flatMap(({ part, places }) => (part === 'head' ? places : [])));
  const shared = new Set(matches.flatMap((match) => (match.shared ? match.places : [])));
  const sharedMarks = new Set([...shared].map((place) => openings[place]!.opening.mark.toLowerCase()));
  const lumps = matches
    .filter(({ line, places, part }) => line.by === 'lot' && places.length === 0 && isOfOpenings(part))
    .map(({ line }) => line.row);
  const unmatched = matches.filter(({ places, part }) => places.length === 0 && isOfOpenings(part));
  return openings.flatMap((opening, place): NotQuoted[] => {
    if (quoted.has(place)) return [];
    const price = opening.cost?.price ?? null;
    const named = name(opening);
    const stake = price ?? 0;
    const said = declined.get(place);
    const own = { place, opening, extra: null, price };
    if (lumps.length > 0 && said === undefined) {
      const why = `whether ${named} is in the lump sum of row ${lumps.join(', ')}`;
      return [{ ...own, finding: cantTell('opening', why, { stake }) }];
    }
    if (said === undefined && sharedMarks.has(opening.opening.mark.toLowerCase())) {
      const why = `${named} stands more than once in the takeoff and is quoted for another of its rows`;
      return [{ ...own, finding: cantTell('opening', why, { stake }) }];
    }
    const rows = unmatched
      .filter(({ line, akin }) => namesNothing(line) || akin.includes(place))
      .map(({ line }) => line.row);
    if (rows.length > 0 && said === undefined) {
      const which = `${rows.length === 1 ? 'row' : 'rows'} ${rows.slice(0, MOST_ROWS).join(', ')}${rows.length > MOST_ROWS ? ' …' : ''}`;
      const why = `whether ${named} is quoted: no line can be told to be its own, and ${which} could be`;
      return [{ ...own, finding: cantTell('opening', why, { stake }) }];
    }
    const ours = price === null ? 'it is not priced in the takeoff either' : `our price is ${dollars(price)}`;
    const finding = differs('opening', `${named} is not quoted${said === undefined ? '' : ` (${said})`}; ${ours}`, {
      cause: 'openings not quoted',
      dollars: price === null ? null : -price,
      stake,
    });
    return [{ ...own, finding }];
  });
}
