import type { Inputs } from '../../../src/takeoff/inputs';

/** One figure of an opening: what it is, how it comes about in words, and as a worksheet formula. */
export interface Figure {
  readonly key: string;
  readonly label: string;
  readonly kind: 'length' | 'degrees' | 'count' | 'number';
  readonly value: number;
  readonly words: string;
  /** Excel syntax, without `=`. */
  readonly formula: string;
}

/** A figure in the words that show how another comes about. */
export type Say = (figure: number) => string;

/** The first arguments of the head functions, as a formula has them. */
export function headArguments({ head: shape, span, rise }: Inputs): string {
  return `"${shape}",${span},${rise ?? ''}`;
}
