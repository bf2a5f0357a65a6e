import type { OpeningTakeoff } from '../../takeoff/takeoff';
import type { LineMatch } from './match';
import { amountOf, type Quote } from '../../quote/quote';

/** The money of a quote, like beside like. Dollars. */
export interface ComparedMoney {
  /** Lines for openings that both sides price, and our own price for the same openings. */
  readonly quoted: number;
  readonly ours: number;
  /** Lines for no opening that could be told, or for one that has no price of ours. */
  readonly otherLines: number;
  /** Discount, tax, freight and the like, in the quote's order. */
  readonly charges: readonly { readonly charge: string; readonly amount: number }[];
  /** The last total that the quote states, or what its lines and charges come to. */
  readonly total: number;
}

/** Alternates stand beside the quote and are left out. */
export function comparedMoney(
  matches: readonly LineMatch[],
  { items }: Quote,
  openings: readonly OpeningTakeoff[],
  total: number,
): ComparedMoney {
  const counted = matches.filter(({ part }) => part !== 'alternate');
  // An opening with a line whose amount isn't known can't be compared, nor can the other lines for it.
  const open = new Set(counted.flatMap(({ line, places }) => (amountOf(line) === null ? places : [])));
  const priced = (place: number) => openings[place]!.cost !== null && !open.has(place);
  const isBoth = ({ places }: LineMatch) => places.length > 0 && places.every(priced);
  const sum = (lines: readonly LineMatch[]) => lines.reduce((all, { line }) => all + (amountOf(line) ?? 0), 0);
  const both = counted.filter(isBoth);
  const places = new Set(both.flatMap((match) => match.places));
  return {
    quoted: sum(both),
    ours: [...places].reduce((all, place) => all + openings[place]!.cost!.price, 0),
    otherLines: sum(counted.filter((match) => !isBoth(match))),
    charges: items.flatMap((item) =>
      item.kind === 'charge' && item.amount !== null ? [{ charge: item.charge, amount: item.amount }] : [],
    ),
    total,
  };
}
