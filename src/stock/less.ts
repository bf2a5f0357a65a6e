import { plainLength } from './cuttext';
import type { StockPlan } from './plan';

/** A plan's boards as they are named to the user. */
export interface NamedBoards {
  readonly length: number;
  /** Share of the board under pieces. */
  readonly filled: number;
  /** What is cut from one: `3 × 24 1/2, 1 × 17`. */
  readonly cuts: string;
}

/** One sentence: what buying less than the plan would need. */
export function buyingLess(
  plan: Pick<StockPlan, 'proven' | 'measure' | 'gap'>,
  boards: readonly NamedBoards[],
  lengthText: (length: number) => string = plainLength,
): string {
  const emptiest = boards.reduce((least, board) => (board.filled < least.filled ? board : least));
  const without = `one board of ${lengthText(emptiest.length)} less would leave out ${emptiest.cuts}`;
  if (plan.proven)
    return `nothing that ${plan.measure === 'boards' ? 'is fewer' : 'costs less'} holds all the pieces; ${without}`;
  const gap = plan.measure === 'boards' ? `${plan.gap} ${plan.gap === 1 ? 'board' : 'boards'}` : plan.gap.toFixed(2);
  return `no plan saves more than ${gap}; ${without}`;
}
