import type { QuoteCheck } from '../../../src/check/quote';
import { defaultStandards } from '../../../src/standards';
import { takeoff } from '../../../src/takeoff/takeoff';
import { opening } from '../../takeoff/openings';
import { checkRows } from './example';

// Worked out independently here: casing 3 1/2 in wide with 3/16 in of reveal, ends on the radius. The long point is the arc at the
// casing's outside edge.
export const OUTSIDE = 3.5 + 3 / 16;
export const arcRadius = (span: number, rise: number) => (span * span + 4 * rise * rise) / (8 * rise);
export const arc = (span: number, rise: number, out = OUTSIDE) =>
  2 * Math.asin(span / 2 / arcRadius(span, rise)) * (arcRadius(span, rise) + out);
export const W1 = arc(36, 6);
export const W2 = arc(48, 9);
export const W3 = Math.PI * (18 + OUTSIDE);
export const LENGTHS = [W1, W2, W3] as const;

// A band this wide calls any price right: these quotes are about wording and figures.
export const TAKEN = takeoff(
  [
    opening({ head: 'segmental', span: 36, rise: 6, row: 2, mark: 'W1', quantity: 1 }),
    opening({ head: 'segmental', span: 48, rise: 9, row: 3, mark: 'W2', quantity: 2 }),
    opening({ head: 'half round', span: 36, row: 4, mark: 'W3', quantity: 4 }),
  ],
  { ...defaultStandards(), priceBand: 100 },
);
export const MARKS = ['W1', 'W2', 'W3'];
export const COUNTS = [1, 2, 4];
export const PRICES = [110, 150, 175];

export type Cell = string | number;
export const cents = (amount: number) => Math.round(amount * 100) / 100;
export const inches = (length: number) => Number(length.toFixed(3));
export const check = (...rows: Cell[][]) => checkRows(rows, TAKEN);
/** A line for each opening. */
export const each = (cells: (at: number) => Cell[]) => MARKS.map((_mark, at) => cells(at));
export const verdicts = ({ lines }: QuoteCheck) => lines.map(({ verdict }) => verdict);
export const agreesIn = ({ lines }: QuoteCheck) => lines.map((line) => line.agreesIn);
export const found = ({ lines }: QuoteCheck, mark: string, about: string) =>
  lines.find(({ line }) => line.mark === mark)!.findings.find((one) => one.about === about)!;

/** Goods of 1,110.00 with these rows below: what each says, and what the quote comes to. */
export const below = (...rows: [string, number][]) =>
  check(
    ['Mark', 'Description', 'Qty', 'Length', 'Price', 'Amount'],
    ...each((at) => [MARKS[at]!, 'casing', COUNTS[at]!, inches(LENGTHS[at]!), PRICES[at]!, COUNTS[at]! * PRICES[at]!]),
    ...rows.map(([words, amount]): Cell[] => ['', words, '', '', '', amount]),
  );
export const says = ({ sums }: QuoteCheck) => sums.map(({ finding: { verdict, text } }) => `${verdict}: ${text}`);
