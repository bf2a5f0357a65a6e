import { inches, inWorkbook, type Unit } from '../unit';
import type { OpeningField, RoughFigures } from './opening';

/** A length as the row gives it: read, or present and unreadable (`fault` is the sentence), or null where it is blank. */
export type Given =
  | { readonly value: number; readonly fault?: undefined }
  | { readonly value?: undefined; readonly fault: string; readonly choices?: readonly string[] };
export type GivenLengths = Partial<
  Record<
    | 'width'
    | 'roughWidth'
    | 'height'
    | 'headHeight'
    | 'roughHeight'
    | 'springHeight'
    | 'leg'
    | 'rise'
    | 'radius'
    | 'diameter',
    Given
  >
>;

/** Collects what is to be said about one opening. */
export interface Findings {
  note(sentence: string): void;
  /** Somebody gave the rise for this very row: an unusual one is meant. */
  readonly riseIsMeant?: boolean;
  /** The rise as it would be if its figure were in inches, where the list is metric and the figure has no unit. */
  readonly riseInInches?: number | null;
  /** The same of the head. */
  readonly headIsMeant?: boolean;
  problem(field: OpeningField, sentence: string, choices?: readonly string[]): void;
  /** The span or the rise is this rough figure less the shop's allowance. */
  rough(field: keyof RoughFigures, figure: number): void;
}

/** As schedules are rounded. */
const ROUNDED_TO = inches(1 / 32, 'in');

/** How far figures that should agree may lie apart, in the workbook's unit: 1/32 in, as schedules are rounded. */
export function agreement(unit: Unit): number {
  // A little more, so that two figures exactly 1/32 apart agree.
  return inWorkbook(ROUNDED_TO, unit) * (1 + 1e-9);
}
