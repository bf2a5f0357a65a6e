import { roundTo } from '../rounding';
import type { Standards } from '../standards';
import type { StockBoard } from '../stockList';

/** The stock a molding is made from: one species in the thinnest dressed thickness that is thick enough. */
export interface Wood {
  /** Dressed thickness of the boards. */
  readonly thickness: number;
  readonly quarters: number;
  readonly boards: readonly StockBoard[];
  readonly widest: number;
}

/** Widths and thicknesses this little short still fit: it absorbs rounding, never a real difference. */
const FIT = 1e-9;

/** The wood for a finished thickness; null where the stock list has none. Species match whatever their letter case. */
export function woodFor(species: string, thickness: number, standards: Standards): Wood | null {
  const wanted = species.toLowerCase();
  const thickEnough = standards.stock.filter(
    (board) => board.species.toLowerCase() === wanted && board.thickness >= thickness - FIT,
  );
  const dressed = least(thickEnough.map((board) => board.thickness));
  if (dressed === null) return null;
  const boards = thickEnough.filter((board) => board.thickness === dressed);
  return {
    thickness: dressed,
    quarters: least(boards.map((board) => board.quarters))!,
    boards,
    widest: Math.max(...boards.map((board) => board.width)),
  };
}

/** What a wood is called in plans and sheets: `Poplar 0.8125`, as the stock list spells it, with the dressed thickness. */
export function stockName({ boards, thickness }: Wood): string {
  return `${boards[0]!.species} ${roundTo(4, thickness)}`;
}

export function inStock(species: string, standards: Standards): boolean {
  return standards.stock.some((board) => board.species.toLowerCase() === species.toLowerCase());
}

/** The narrowest board width a blank comes out of, and the least price per board foot at that width. */
export function boardFor(blankWidth: number, wood: Wood): { width: number; price: number } | null {
  const width = least(wood.boards.map((board) => board.width).filter((each) => each >= blankWidth - FIT));
  if (width === null) return null;
  const price = least(wood.boards.filter((board) => board.width === width).map((board) => board.pricePerBoardFoot))!;
  return { width, price };
}

/** The longest board at least this wide; 0 where there is none. */
export function longestBoard(width: number, wood: Wood): number {
  return Math.max(0, ...wood.boards.filter((board) => board.width >= width - FIT).map((board) => board.length));
}

function least(figures: readonly number[]): number | null {
  return figures.length === 0 ? null : Math.min(...figures);
}
