import { cellText } from '../schedule/cell';
import type { CellValue } from '../schedule/opening';

/** A length as a quote gives it for a price by the foot. */
export interface Feet {
  readonly feet: number;
  /** By how much it may be rounded as written. */
  readonly rounded: number;
}

/** What a price by the foot comes to for a line that counts pieces. */
export interface PerFoot {
  /** Of one foot. */
  readonly price: number;
  readonly feet: number;
  /** The feet are of one piece, or of all the line's pieces: either is usual, and the extension says which. */
  readonly of: 'each' | 'all';
  /** By how much the extension may be off through what was rounded. */
  readonly tolerance: number;
  /** Feet × price is the extension. */
  readonly makesIt: boolean;
}

/** Half of the last decimal that a figure is written with: 0.005 for 5.68; 0 where it has none, or more than a person writes. */
export function halfLastDecimal(cell: CellValue): number {
  const decimals = /^\s*\d*\.(\d{1,4})(?!\d)/.exec(cellText(cell))?.[1]?.length ?? 0;
  return decimals === 0 ? 0 : 0.5 / 10 ** decimals;
}

/**
 * How a line of `quantity` pieces follows from its price by the foot: the first of its lengths, taken of all pieces or of each,
 * that makes the extension; else the one that comes nearest. Without an extension a length is of each piece, `all` of them
 * where the heading says so. Null: no length, or it can't be told.
 */
export function perFoot(
  price: number,
  lengths: readonly (Feet & { readonly all: boolean })[],
  quantity: number,
  extension: number | null,
): PerFoot | null {
  const ways = lengths.flatMap(({ feet, rounded, all }) =>
    (all ? (['all', 'each'] as const) : (['each', 'all'] as const)).map((of) => {
      const pieces = of === 'each' ? quantity : 1;
      // The price of a foot is rounded to cents, and so is the extension.
      const tolerance = 0.005 * pieces * feet + rounded * pieces * price + 0.0050001;
      const off = extension === null ? 0 : Math.abs(extension - pieces * feet * price);
      return { price, feet, of, tolerance, off, makesIt: extension !== null && off <= tolerance };
    }),
  );
  const [first] = ways;
  if (first === undefined) return null;
  if (extension === null) return quantity === 1 || !lengths[0]!.all ? first : null;
  return ways.find(({ makesIt }) => makesIt) ?? ways.reduce((best, way) => (way.off < best.off ? way : best));
}

/** Of one piece. */
export function piecePrice({ price, feet, of }: PerFoot, quantity: number): number {
  return (price * feet) / (of === 'each' ? 1 : quantity);
}
