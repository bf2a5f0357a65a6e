import { addUp } from '../../rounding';
import type { Table } from '../../schedule/opening';
import { extrasTotal } from '../../takeoff/extras';
import { columnLetters } from '../address';
import { PRICE_AGREED } from './columns';
import { readExtras } from './extras';
import { isTakeoffHeading, placesIn } from './read';

/** A row of the Takeoff that says something is to be looked at. */
export interface ToLookAt {
  readonly no: number;
  readonly mark: string;
  /** Cell of its mark. */
  readonly address: string;
  /** What the sheet says of it. */
  readonly said: string;
}

/** What a Takeoff sheet adds up to as it stands. */
export interface TakeoffTotals {
  readonly openings: number;
  /** How many of them have a price, and what these cost together; null where none has. */
  readonly priced: number;
  readonly price: number | null;
  readonly toLookAt: readonly ToLookAt[];
  /** What the extras below the total cost together that have a price; null where none has. */
  readonly extras: number | null;
  readonly extrasNotPriced: number;
}

/** The totals of a Takeoff sheet's own cells, whoever changed them; null where the sheet is none of ours. */
export function takeoffTotals(table: Table): TakeoffTotals | null {
  const { rows, firstRow } = table;
  const heads = rows.findIndex(isTakeoffHeading);
  if (heads < 0) return null;
  const place = placesIn(rows[heads]!);
  const [mark, price, lookAt] = [place.get('mark')!, place.get('price')!, place.get('lookAt')!];
  const prices: number[] = [];
  const toLookAt: ToLookAt[] = [];
  let openings = 0;
  for (let at = heads + 1; at < rows.length; at++) {
    const cells = rows[at]!;
    const [no] = cells;
    if (typeof no !== 'number') continue;
    openings++;
    const cost = cells[price];
    if (typeof cost === 'number') prices.push(cost);
    // A price that was agreed is said there, too: nothing is to be done about it.
    const said = String(cells[lookAt] ?? '')
      .replace(PRICE_AGREED, '')
      .trim();
    if (said !== '')
      toLookAt.push({ no, mark: String(cells[mark] ?? ''), address: `${columnLetters(mark)}${firstRow + at}`, said });
  }
  const priced = prices.length;
  // In cents, so that the sum is the sheet's own and not a binary fraction beside it.
  const sum = addUp(prices);
  const extras = readExtras(table);
  for (const { no, mark: of, said, sheetRow } of extras)
    if (said !== '') toLookAt.push({ no, mark: of, address: `${columnLetters(lookAt)}${sheetRow}`, said });
  return {
    ...{ openings, priced, toLookAt },
    price: priced > 0 ? sum : null,
    extras: extrasTotal(extras),
    extrasNotPriced: extras.filter(({ price: cost }) => cost === null).length,
  };
}
