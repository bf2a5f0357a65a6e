import { EXTRA_PRICE, type ExtraKind } from '../extras';
import { addUp, toCents } from '../rounding';
import type { Standards } from '../standards';
import type { OpeningTakeoff, Takeoff } from './takeoff';

/** The extras of one opening and kind, at the shop's price list. */
export interface ExtraLine {
  /** The opening's number and mark. */
  readonly no: number;
  readonly mark: string;
  readonly kind: ExtraKind;
  readonly each: number;
  /** How many the list gives; `each` may be changed by hand. */
  readonly listed: number;
  /** For the whole quantity; null where the opening's quantity isn't known. */
  readonly quantity: number | null;
  /** In whole cents; null: not priced yet. */
  readonly unitPrice: number | null;
  readonly price: number | null;
}

/** What one of a kind sells for; null where the shop has not priced it yet, which a price of 0 means. */
export function extraPrice(kind: ExtraKind, standards: Standards): number | null {
  const price = toCents(standards[EXTRA_PRICE[kind]]);
  return price > 0 ? price : null;
}

/** The extras of an opening, whether the opening itself can be priced or not. */
export function extrasOf({ no, opening, known }: OpeningTakeoff, standards: Standards): ExtraLine[] {
  return (opening.extras ?? []).map(({ kind, each, listed = each }) => {
    const quantity = known.quantity === null ? null : known.quantity * each;
    const unitPrice = extraPrice(kind, standards);
    const price = quantity === null || unitPrice === null ? null : toCents(quantity * unitPrice);
    return { no, mark: opening.mark, kind, each, listed, quantity, unitPrice, price };
  });
}

/** All extras of a takeoff, in the order of its openings. */
export function allExtras({ openings, standards }: Takeoff): ExtraLine[] {
  return openings.flatMap((row) => extrasOf(row, standards));
}

/** What the extras that have a price come to, added up as whole cents; null where none has: that is not nothing. */
export function extrasTotal(lines: readonly Pick<ExtraLine, 'price'>[]): number | null {
  if (lines.every(({ price }) => price === null)) return null;
  return addUp(lines.map(({ price }) => price ?? 0));
}
