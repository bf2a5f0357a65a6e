import { toCents } from './rounding';
import type { Unit } from './unit';

/** One board size the shop buys. Width, dressed thickness and length in the workbook's unit. */
export interface StockBoard {
  readonly species: string;
  /** Rough thickness as it is sold, in quarters: 5 for 5/4. Board feet are counted by it. */
  readonly quarters: number;
  /** Dressed thickness. */
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  readonly pricePerBoardFoot: number;
  /** Boards at hand that may be used; null: as many as wanted can be bought. */
  readonly onHand: number | null;
}

/** Rough quarters, dressed thickness, and the price beside that of 4/4. */
const QUARTERS: readonly (readonly [quarters: number, inches: number, metric: number, price: number])[] = [
  [4, 13 / 16, 20, 1],
  [5, 17 / 16, 27, 1.1],
  [8, 1.75, 45, 1.3],
];
const WIDTHS: readonly (readonly [inches: number, metric: number])[] = [
  [5.5, 140],
  [7.25, 185],
  [9.25, 235],
];
const LENGTHS: readonly (readonly [inches: number, metric: number])[] = [
  [96, 2440],
  [144, 3660],
];
/** Invented prices per board foot of 4/4. */
const PRICES: readonly (readonly [species: string, price: number])[] = [
  ['Poplar', 3.9],
  ['Red oak', 5.6],
  ['White oak', 8.4],
  ['Hard maple', 6.9],
  ['Cherry', 8.1],
  ['Walnut', 12.6],
  ['Mahogany', 11.4],
  ['White pine', 3.2],
];

/** The invented stock list a new workbook starts with. */
export function defaultStock(unit: Unit): StockBoard[] {
  const at = unit === 'in' ? 0 : 1;
  return PRICES.flatMap(([species, price]) =>
    QUARTERS.flatMap(([quarters, inches, metric, dearer]) =>
      WIDTHS.flatMap((width) =>
        LENGTHS.map((length) => ({
          species,
          quarters,
          thickness: unit === 'in' ? inches : metric,
          width: width[at],
          length: length[at],
          pricePerBoardFoot: toCents(price * dearer),
          onHand: null,
        })),
      ),
    ),
  );
}
