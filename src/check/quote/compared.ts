import type { OpeningTakeoff } from '../../takeoff/takeoff';
import type { LineMatch } from './match';
import { amountOf, type Quote } from '../../quote/quote';
import type { SumCheck } from './sums';

/** The money of a quote, like beside like. Dollars. */
export interface ComparedMoney {
  /** Lines for openings and extras that both sides price, and our own price for the same. */
  readonly quoted: number;
  readonly ours: number;
  /** Lines for no opening that could be told, or for one that has no price of ours. */
  readonly otherLines: number;
  /** Discount, tax, freight and the like, in the quote's order; `checked`: its rate was held against what it is of. */
  readonly charges: readonly { readonly charge: string; readonly amount: number; readonly checked: boolean }[];
  /** The last total that the quote states, or what its lines and charges come to. */
  readonly total: number;
}

/** Alternates stand beside the quote and are left out. */
export function comparedMoney(
  matches: readonly LineMatch[],
  { items }: Quote,
  openings: readonly OpeningTakeoff[],
  extras: ReadonlyMap<LineMatch, number>,
  sums: readonly SumCheck[],
  total: number,
): ComparedMoney {
  const counted = matches.filter(({ part }) => part !== 'alternate' && part !== 'extra');
  const beside = matches.filter(({ part }) => part === 'extra');
  const checked = new Set(sums.flatMap(({ item, holds }) => (holds === null ? [] : [item.row])));
  // An opening with a line whose amount isn't known can't be compared, nor can the other lines for it.
  const open = new Set(counted.flatMap(({ line, places }) => (amountOf(line) === null ? places : [])));
  const priced = (place: number) => openings[place]!.cost !== null && !open.has(place);
  const isBoth = ({ places }: LineMatch) => places.length > 0 && places.every(priced);
  const sum = (lines: readonly LineMatch[]) => lines.reduce((all, { line }) => all + (amountOf(line) ?? 0), 0);
  const both = counted.filter(isBoth);
  const places = new Set(both.flatMap((match) => match.places));
  return {
    quoted: sum([...both, ...beside.filter((match) => extras.has(match))]),
    ours:
      [...places].reduce((all, place) => all + openings[place]!.cost!.price, 0) +
      [...extras.values()].reduce((all, one) => all + one, 0),
    otherLines: sum([...counted.filter((match) => !isBoth(match)), ...beside.filter((match) => !extras.has(match))]),
    charges: items.flatMap((item) =>
      item.kind === 'charge' && item.amount !== null
        ? [{ charge: item.charge, amount: item.amount, checked: checked.has(item.row) }]
        : [],
    ),
    total,
  };
}
