import { listed } from '../../schedule/figure';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { cantTell, differs, type Finding } from './finding';
import { namesNothing, type LineMatch } from './match';
import { amountOf } from '../../quote/quote';
import type { SameOpening } from './sameOpening';

/** An opening in a sentence: its mark, or its row. */
export function name({ opening }: OpeningTakeoff): string {
  return opening.mark || `the opening of row ${opening.row}`;
}

/** Openings named as possible before it says too little. */
const MOST_LIKE = 3;

/** What is said of a line that no opening could be found for. */
export function noOpening({ line, akin }: LineMatch, openings: readonly OpeningTakeoff[]): Finding {
  const amount = amountOf(line);
  const stake = Math.abs(amount ?? 0);
  if (line.by === 'lot') return cantTell('opening', 'a lump sum that names no opening', { stake });
  const like = akin.slice(0, MOST_LIKE).map((place) => name(openings[place]!));
  const may = like.length === 0 ? '' : `; by its size it may be ${listed(like, 'or')}, which has no other line`;
  if (namesNothing(line))
    return cantTell('opening', `which opening it is for: no mark of the takeoff is named${may}`, { stake });
  if (like.length > 0) return cantTell('opening', `${line.mark} is no opening of the takeoff${may}`, { stake });
  return differs('opening', `${line.mark} is no opening of the takeoff`, {
    cause: 'lines for no opening of the takeoff',
    dollars: amount,
    stake,
  });
}

/** A further line for an opening whose pieces are all quoted already. */
export function surplus(match: LineMatch, { heads, sharing }: SameOpening, opening: OpeningTakeoff): Finding | null {
  const first = heads[0]!;
  if (first === match || sharing !== 'surplus') return null;
  const amount = amountOf(match.line);
  return differs('opening', `${name(opening)} is quoted already in row ${first.line.row}`, {
    cause: 'quoted twice',
    dollars: amount,
    stake: Math.abs(amount ?? 0),
  });
}
