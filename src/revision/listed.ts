import { extrasText } from '../extras';
import { extrasOf, extrasTotal } from '../takeoff/extras';
import { doubtIn } from '../takeoff/row';
import type { OpeningTakeoff, Takeoff } from '../takeoff/takeoff';
import { compare, type ListedPrice, type Refused, type Revision } from './compare';
import { COMPARED, type Figures } from './figures';

/**
 * A revised takeoff against the takeoff before. `numbered`: the revised openings already stand under their numbers in our
 * workbook; otherwise they are known by mark and figures.
 */
export function compareTakeoffs(
  old: Takeoff,
  now: Takeoff,
  { refused = [], numbered = false }: { readonly refused?: Refused; readonly numbered?: boolean } = {},
): Revision {
  return compare(
    old.openings.map((row) => listedFrom(row, old, true)),
    now.openings.map((row) => listedFrom(row, now, numbered)),
    refused,
  );
}

/**
 * What a row says, with the shop's standards where it says nothing, so that a figure written out is no change; and what it is
 * sold for with its extras.
 */
function listedFrom(row: OpeningTakeoff, { standards }: Takeoff, numbered: boolean): ListedPrice {
  const { no, opening, known, cells, cost } = row;
  const figures = Object.fromEntries(
    COMPARED.map(({ key }) => {
      if (key === 'extras') return [key, extrasText(opening.extras)];
      if (key === 'place' || key === 'remarks' || key === 'priceAgreed') return [key, opening[key]];
      const given = cells[key];
      return [key, known[key] ?? (typeof given === 'string' ? (doubtIn(given) ?? given) : given)];
    }),
  ) as Figures;
  const price = extrasTotal([{ price: cost?.price ?? null }, ...extrasOf(row, standards)]);
  const isOfExtras = cost === null && price !== null;
  return { no: numbered ? no : null, mark: opening.mark, figures, price, isOfExtras };
}
