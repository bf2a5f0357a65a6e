/** A quote as read: what is asked for each line, and the figures around the lines. Lengths in the workbook's unit, money in dollars. */

import type { QuoteKey } from './meanings';
import type { Reckoning } from './reckon';

/**
 * What a quoted length or radius is said to be of by its heading or its words; a bare "Length" or "Radius" is the casing's.
 * "with legs": the head and its two legs as one run.
 */
export type LengthBasis = 'outside' | 'inside' | 'center' | 'all pieces' | 'with legs';
export type RadiusBasis = 'inside' | 'outside' | 'opening';

/** A length on a line that is compared with ours, beside its length and its radius. */
export type SideFigure = 'span' | 'rise' | 'face' | 'thickness' | 'reveal' | 'leg';
export const SIDE_FIGURES: readonly SideFigure[] = ['span', 'rise', 'face', 'thickness', 'reveal', 'leg'];

export type QuoteField =
  'quantity' | 'size' | 'radius' | 'length' | 'unitPrice' | 'extension' | 'legCount' | SideFigure;

/** Why a figure of the quote can't be used. */
export interface QuoteProblem {
  readonly row: number;
  readonly field: QuoteField;
  readonly message: string;
}

/** A figure that stands in a line's words, or in a second column of its kind. */
export interface Described {
  readonly kind:
    SideFigure | 'length' | 'radius' | 'diameter' | 'section' | 'size' | 'quantity' | 'legCount' | 'unknown';
  readonly value: number;
  /** The second figure of a section or a size: `3/4 × 3 1/2`, `36 × 54`. */
  readonly other?: number;
  readonly lengthOf?: LengthBasis;
  readonly radiusOf?: RadiusBasis;
  /** As it is written: `68 1/8" LP`. */
  readonly text: string;
}

/** One priced line. What it doesn't say, or what can't be read, is null. */
export interface QuoteLine {
  readonly kind: 'line';
  /** Source row as the user counts it, from 1. */
  readonly row: number;
  /** What stands under mark or item. */
  readonly mark: string;
  /** Everything else the line says in words. */
  readonly description: string;
  /** Under headings of their own; blank where there are none. */
  readonly head: string;
  readonly species: string;
  readonly ends: string;
  readonly quantity: number | null;
  /** What the price is by: a piece, a foot of molding, or the lot. */
  readonly by: 'piece' | 'foot' | 'lot';
  readonly size: { readonly width: number; readonly height: number } | null;
  readonly radius: number | null;
  readonly radiusOf: RadiusBasis;
  /** Words that don't say of which edge: the casing's inside or the opening's own. */
  readonly radiusBare?: boolean;
  /** The quote gives a diameter, which may be of any edge: `radius` is half of it. */
  readonly byDiameter: boolean;
  readonly length: number | null;
  readonly lengthOf: LengthBasis;
  /** Figures under headings of their own: casing width, thickness, rise and so on. */
  readonly side: Readonly<Partial<Record<SideFigure, number>>>;
  /** Straight legs, all of them; null where the line doesn't count any. */
  readonly legCount: number | null;
  /** Figures in the words that no column gives. */
  readonly described: readonly Described[];
  /** Of one piece, or of a foot where the line counts feet. */
  readonly unitPrice: number | null;
  /** The price that the quote gives is of a foot. */
  readonly byFoot: boolean;
  /** The price of a foot where the line gives no length to figure it by. */
  readonly footPrice: number | null;
  /** How the amount follows, where it isn't quantity × unit price: by the foot, by the pair, less a discount. */
  readonly reckoning: Reckoning | null;
  readonly extension: number | null;
  /** What stands on the line and isn't understood: columns and figures, as sentences name them. */
  readonly unread: readonly string[];
  readonly problems: readonly QuoteProblem[];
}

/** A column that nothing is compared by. */
export interface SetAside {
  /** From 0. */
  readonly index: number;
  /** As sentences name it: `column "Trim"`, `column 3 (no heading)`. */
  readonly name: string;
  /** Its heading is known, or it needs none: it counts the lines. */
  readonly understood: boolean;
  /** It holds figures that aren't understood: no line with one of them is called right. */
  readonly unread: boolean;
  /** What was done with it: `not compared`, `not used: column "Unit price" is read in its place`. */
  readonly done: string;
}

export type ChargeKind = 'freight' | 'tax' | 'discount' | 'deposit' | 'other charge';

/** Money that is no molding. */
export interface QuoteCharge {
  readonly kind: 'charge';
  readonly row: number;
  readonly charge: ChargeKind;
  readonly text: string;
  /** "7%" in its words, as a fraction. */
  readonly rate: number | null;
  /** Below 0 for a discount or a deposit, whichever way it is written; null where it can't be read. */
  readonly amount: number | null;
}

/** A sum that the quote states of the amounts above it. */
export interface QuoteSum {
  readonly kind: 'sum';
  readonly row: number;
  readonly sum: 'subtotal' | 'total';
  readonly text: string;
  readonly amount: number | null;
}

export type QuoteItem = QuoteLine | QuoteCharge | QuoteSum;

export interface Quote {
  readonly name: string;
  readonly headings: readonly string[];
  /** What each column was understood as; null: not used for figures. */
  readonly meaning: readonly (QuoteKey | null)[];
  /** Columns that nothing is compared by, from left to right. */
  readonly setAside: readonly SetAside[];
  readonly headingRow: number;
  /** What is worth knowing of the whole: the unit taken from a note, a column known by its figures. */
  readonly remarks: readonly string[];
  /** Lines, charges and sums in the order of the quote. */
  readonly items: readonly QuoteItem[];
  readonly lines: readonly QuoteLine[];
  /** Rows that say of an opening that it isn't quoted: "NIC", "by others", "no bid". */
  readonly declined: readonly { readonly row: number; readonly words: string; readonly text: string }[];
  readonly passedOver: readonly { readonly row: number; readonly why: string; readonly text: string }[];
}

/** What a line comes to: its extension, or quantity × unit price where it gives none; null where neither can be known. */
export function amountOf({ extension, quantity, unitPrice, problems }: QuoteLine): number | null {
  if (extension !== null) return extension;
  if (problems.some(({ field }) => field === 'extension')) return null;
  return quantity !== null && unitPrice !== null ? Math.round(quantity * unitPrice * 100) / 100 : null;
}
