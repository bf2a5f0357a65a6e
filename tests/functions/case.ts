import type { Answer } from '../../functions/metadata';

/** One call of a worksheet function and what its cell must show. The hosts' tests run the same table. */
export interface Case {
  readonly name: string;
  readonly args: readonly unknown[];
  readonly answer: Answer;
  /** Relative; set by the digits the source prints. Left out: 1e-12. */
  readonly within?: number;
  /** Where the figure is published, or how it was worked out apart from this program. */
  readonly source: string;
}

/** A call that must be refused, and the sentence. */
export interface RefusedCase {
  readonly name: string;
  readonly args: readonly unknown[];
  readonly message: string;
}

/** Digits worked out apart from this program, with 30-digit arithmetic. */
export const WORKED = 'worked apart from this program with 30 digits';
