import { toCents } from '../rounding';
import type { Standards } from '../standards';
import type { StockBoard } from '../stockList';
import type { BoardNeeds, WoodBoards } from './boards';
import { priceOf } from './woodPlanning';

/** Boards of one size to buy for one wood. */
export interface BoardsToBuy {
  /** The wood's plan. */
  readonly plan: WoodBoards;
  readonly board: StockBoard;
  readonly price: number;
  readonly bought: number;
  /** Money for the boards bought. */
  readonly cost: number;
}

/** The boards to buy by wood and size: just those of the plans, which have the pieces for defects in them. */
export function boardsToBuy({ plans }: BoardNeeds, standards: Standards): BoardsToBuy[] {
  const inOrder = [...plans].sort(
    (one, other) => one.species.localeCompare(other.species, 'en') || one.thickness - other.thickness,
  );
  return inOrder.flatMap((plan) => {
    const counts = plan.sale.map(() => 0);
    for (const { board, count } of plan.boards) counts[board]! += count;
    return plan.sale
      .map((board, at): BoardsToBuy => {
        const price = priceOf(board, standards);
        return { plan, board, price, bought: counts[at]!, cost: toCents(counts[at]! * price) };
      })
      .filter(({ bought }) => bought > 0)
      .sort((one, other) => one.board.width - other.board.width || one.board.length - other.board.length);
  });
}
