import { isPerThousand } from './arithmetic';
import { extensionTolerance } from './money';
import type { QuoteLine } from './quote';
import { makes, reckon, type Counted, type Feet, type PricePer } from './reckon';

/** What a line says it costs, each piece, foot or pair. */
export interface Price {
  readonly amount: number;
  readonly per: PricePer;
  /** A list price stands beside it: what is taken off is taken off already. */
  readonly net: boolean;
}

interface Paid {
  readonly lot: boolean;
  readonly counted: Counted | null;
  readonly price: Price | null;
  readonly extension: number | null;
}

type Amounts = Pick<QuoteLine, 'quantity' | 'by' | 'unitPrice' | 'byFoot' | 'footPrice' | 'reckoning'>;

/** What a line counts and what one of it costs: pieces, feet or the lot. */
export function amounts({ lot, counted, price, extension }: Paid, lengths: readonly Feet[], less: number): Amounts {
  const pieces = counted === null || counted.of === 'foot' ? null : counted.count * (counted.of === 'pair' ? 2 : 1);
  if (lot || (counted === null && price === null && extension !== null))
    return { quantity: pieces, by: 'lot', unitPrice: null, byFoot: false, footPrice: null, reckoning: null };
  if (price === null)
    return {
      quantity: counted?.of === 'foot' ? counted.count : pieces,
      by: counted?.of === 'foot' ? 'foot' : 'piece',
      unitPrice: null,
      byFoot: false,
      footPrice: null,
      reckoning: null,
    };
  const isFoot = price.per === 'foot' || counted?.of === 'foot';
  // Without an amount of its own a price follows from nothing.
  const ways = {
    counted: asFeet(counted, price, extension, lengths),
    price: price.amount,
    per: price.per,
    less,
    lengths,
  };
  // Beside a net price the discount is taken off already.
  const plain = less === 0 ? null : reckon({ ...ways, less: 0 }, extension);
  const found =
    plain !== null && (extension === null ? price.net : Math.abs(extension - plain.amount) <= plain.tolerance)
      ? plain
      : reckon(price.net ? { ...ways, less: 0 } : ways, extension);
  if (isFoot && ways.counted?.of === 'foot' && counted !== null) {
    // "LF" as unit of measure may be the price's alone: beside a length the amount says whether pieces or feet are counted.
    const isPieces =
      Number.isInteger(counted.count) && lengths.length > 0
        ? reckon({ ...ways, counted: { count: counted.count, of: 'piece' }, per: 'foot' }, extension)
        : null;
    const right =
      extension !== null && isPieces !== null && Math.abs(extension - isPieces.amount) <= isPieces.tolerance;
    if (right && !(Math.abs(extension - counted.count * price.amount) <= extensionTolerance(counted.count)))
      return {
        quantity: counted.count,
        by: 'piece',
        unitPrice: isPieces.unitPrice,
        byFoot: true,
        footPrice: null,
        reckoning: isPieces,
      };
    return {
      quantity: counted.count,
      by: 'foot',
      unitPrice: price.amount * (1 - less),
      byFoot: true,
      footPrice: null,
      reckoning: null,
    };
  }
  if (found === null)
    return {
      quantity: pieces,
      by: 'piece',
      unitPrice: isFoot ? null : price.amount * (1 - less),
      byFoot: isFoot,
      footPrice: isFoot ? price.amount * (1 - less) : null,
      reckoning: null,
    };
  if (found.by === 'foot') {
    const [first] = lengths;
    return {
      quantity: first?.feet ?? null,
      by: 'foot',
      unitPrice: found.unitPrice,
      byFoot: true,
      footPrice: null,
      reckoning: found,
    };
  }
  return {
    quantity: pieces,
    by: 'piece',
    unitPrice: found.unitPrice,
    byFoot: isFoot,
    footPrice: null,
    reckoning: found.plain ? null : found,
  };
}

/** "Price/M ft" is the price of a thousand feet, unless the amount is figured from it as the price of one. */
export function ofOneFoot(
  price: Price | null,
  heading: string,
  extension: number | null,
  paidAt: (price: Price) => Amounts,
): Price | null {
  if (price?.per !== 'foot' || !isPerThousand(heading)) return price;
  const { reckoning } = paidAt(price);
  const isOfOne = extension !== null && reckoning !== null && makes(reckoning, extension);
  return isOfOne ? price : { ...price, amount: price.amount / 1000 };
}

/** Beside a price by the foot a bare figure is feet where the amount says so, or where it can't be pieces. */
function asFeet(
  counted: Counted | null,
  price: Price,
  extension: number | null,
  lengths: readonly Feet[],
): Counted | null {
  if (counted === null || price.per !== 'foot' || counted.of === 'foot') return counted;
  if (!Number.isInteger(counted.count)) return { count: counted.count, of: 'foot' };
  const isFeet =
    extension !== null && Math.abs(counted.count * price.amount - extension) <= extensionTolerance(counted.count);
  return isFeet && lengths.length === 0 ? { count: counted.count, of: 'foot' } : counted;
}
