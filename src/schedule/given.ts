import type { OpeningField, RoughFigures } from './opening';

/** A length as the row gives it: read, or present and unreadable (`fault` is the sentence), or null where it is blank. */
export type Given =
  { readonly value: number; readonly fault?: undefined } | { readonly value?: undefined; readonly fault: string };
export type GivenLengths = Partial<
  Record<
    'width' | 'roughWidth' | 'height' | 'headHeight' | 'roughHeight' | 'springHeight' | 'leg' | 'rise' | 'radius',
    Given
  >
>;

/** Collects what is to be said about one opening. */
export interface Findings {
  note(sentence: string): void;
  problem(field: OpeningField, sentence: string): void;
  /** The span or the rise is this rough figure less the shop's allowance. */
  rough(field: keyof RoughFigures, figure: number): void;
}
