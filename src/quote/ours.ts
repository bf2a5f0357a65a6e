import { marksOf, type Marks } from './marks';
import type { SideFigure } from './quote';

/** What a column of lengths can hold. */
export type OurFigure =
  SideFigure | 'length' | 'insideLength' | 'centerLength' | 'radius' | 'outsideRadius' | 'openingRadius';

/** One opening of the takeoff as the reader of a quote needs it. Lengths in the workbook's unit. */
export interface OurOpening {
  readonly mark: string;
  readonly quantity: number | null;
  readonly figures: Readonly<Partial<Record<OurFigure, number>>>;
}

/**
 * What a quote is for. It never makes a figure of the quote right: it only tells which column holds marks, and what a column is
 * of whose heading doesn't say.
 */
export interface Ours {
  readonly marks: Marks;
  readonly openings: readonly OurOpening[];
}

export function oursOf(openings: readonly OurOpening[]): Ours {
  return { marks: marksOf(openings.map(({ mark }) => mark)), openings };
}

/** A quote read by itself, without a takeoff. */
export const NO_OPENINGS: Ours = oursOf([]);
