import { cellText } from '../schedule/cell';
import { figure } from '../schedule/figure';
import type { CellValue } from '../schedule/opening';
import { dollars, extensionTolerance } from './money';

/** What one price is of. */
export type PricePer = 'piece' | 'foot' | 'pair';

/** A length as a quote gives it for a price by the foot. */
export interface Feet {
  readonly feet: number;
  /** By how much it may be rounded as written. */
  readonly rounded: number;
  /** The heading says that it is of all the line's pieces. */
  readonly all: boolean;
}

/** What is counted on a line. */
export interface Counted {
  readonly count: number;
  readonly of: 'piece' | 'pair' | 'foot';
}

/** How a line's amount follows from its figures. */
export interface Reckoning {
  /** "3 × 5.68 ft × $45.42". */
  readonly words: string;
  readonly amount: number;
  /** By how much the amount may be off through what was rounded. */
  readonly tolerance: number;
  /** Quantity × unit price and nothing else: the plain case. */
  readonly plain: boolean;
  readonly pieces: number | null;
  /** Of one piece; of a foot where nothing says how many pieces the feet are of. */
  readonly unitPrice: number;
  readonly by: 'piece' | 'foot';
  /** The feet are of each piece, by the count they are multiplied with. */
  readonly ofEach?: boolean;
}

export interface Priced {
  readonly counted: Counted | null;
  readonly price: number;
  readonly per: PricePer;
  /** Taken off the price, as a fraction; 0: nothing. */
  readonly less: number;
  readonly lengths: readonly Feet[];
}

/** Half of the last decimal that a figure is written with: 0.005 for 5.68; 0 where it has none, or more than a person writes. */
export function halfLastDecimal(cell: CellValue): number {
  const decimals = /^\s*\d*\.(\d{1,4})(?!\d)/.exec(cellText(cell))?.[1]?.length ?? 0;
  return decimals === 0 ? 0 : 0.5 / 10 ** decimals;
}

/**
 * The ways in which a line's amount may follow from its figures, the plainest first: pieces × price; pairs × the price of a
 * pair; pieces × feet × the price of a foot; the feet of all pieces × the price of a foot.
 */
export function reckonings({ counted, price, per, less, lengths }: Priced): readonly Reckoning[] {
  const net = price * (1 - less);
  const off = less === 0 ? '' : ` less ${Number((less * 100).toFixed(3))}%`;
  const said = `${dollars(price)}${off}`;
  const { count, of } = counted ?? { count: 1, of: 'piece' as const };
  const pieces = of === 'foot' ? null : count * (of === 'pair' ? 2 : 1);
  if (of === 'foot')
    return [
      {
        words: `${figure(count)} ft × ${said}`,
        amount: count * net,
        tolerance: extensionTolerance(count),
        plain: less === 0,
        pieces: null,
        unitPrice: net,
        by: 'foot',
      },
    ];
  if (per === 'foot') return byFoot(counted === null ? null : pieces!, net, said, lengths);
  const way = (words: string, times: number, unitPrice: number, plain: boolean): Reckoning => ({
    words,
    amount: times * net,
    tolerance: extensionTolerance(times),
    plain: plain && less === 0,
    pieces: counted === null ? null : pieces,
    unitPrice,
    by: 'piece',
  });
  const ofPieces = way(`${pieces} × ${said}`, pieces!, net, true);
  const ofPairs = way(`${figure(pieces! / 2)} pr × ${said}`, pieces! / 2, net / 2, false);
  if (per === 'pair') return counted !== null && of === 'piece' && count % 2 === 1 ? [ofPieces] : [ofPairs, ofPieces];
  return of === 'pair' ? [ofPairs, ofPieces] : [ofPieces];
}

function byFoot(pieces: number | null, net: number, said: string, lengths: readonly Feet[]): readonly Reckoning[] {
  return lengths.flatMap(({ feet, rounded, all }) =>
    (all ? (['all', 'each'] as const) : (['each', 'all'] as const)).flatMap((of): Reckoning[] => {
      if (pieces === null && of === 'each') return [];
      const times = of === 'each' ? pieces! : 1;
      return [
        {
          words: `${times > 1 ? `${times} × ` : ''}${figure(feet)} ft × ${said}`,
          amount: times * feet * net,
          // The price of a foot is rounded to cents, and so is the amount.
          tolerance: 0.005 * times * feet + rounded * times * net + 0.0050001,
          plain: false,
          pieces,
          unitPrice: pieces === null ? net : (feet * net) / (of === 'each' ? 1 : pieces),
          by: pieces === null ? 'foot' : 'piece',
          ofEach: times > 1,
        },
      ];
    }),
  );
}

/** The first way that makes the amount; else the one that comes nearest; without an amount the plainest. Null: there is none. */
export function reckon(priced: Priced, extension: number | null): Reckoning | null {
  const ways = reckonings(priced);
  const [first] = ways;
  if (first === undefined) return null;
  if (extension === null) {
    // Whether feet are of each or of all can't be known: of one piece both are the same.
    return priced.per === 'foot' && priced.lengths[0]?.all === true && (first.pieces ?? 1) > 1 ? null : first;
  }
  return (
    ways.find((way) => makes(way, extension)) ??
    ways.reduce((best, way) => (off(way, extension) < off(best, extension) ? way : best))
  );
}

export function makes(way: Reckoning, extension: number): boolean {
  return off(way, extension) <= way.tolerance;
}

function off({ amount }: Reckoning, extension: number): number {
  return Math.abs(extension - amount);
}
