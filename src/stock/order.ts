import { notNegative, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import type { Cutting } from './cutting';
import { gridFor, onGrid, type Grid } from './grid';

/** What is to be cut, and the boards to cut it from. All lengths are in one unit; the answer is in the same. */
export interface StockOrder {
  /** Length of each kind of piece. A row blank in both `lengths` and `quantities` is passed over. */
  readonly lengths: readonly (number | null)[];
  /** How many of each, whole. */
  readonly quantities: readonly (number | null)[];
  /** Length of each kind of board on sale. Blanks are passed over. */
  readonly stock: readonly (number | null)[];
  /** Price of one board of each kind; left out: its length. */
  readonly prices?: readonly (number | null)[] | undefined;
  /** Boards of each kind that can be had; null: as many as wanted. */
  readonly limits?: readonly (number | null)[] | undefined;
  /** Width of a saw cut; left out: 0. */
  readonly kerf?: number | undefined;
  /** Taken off each end of every board; left out: 0. */
  readonly trim?: number | undefined;
}

/** An order that makes sense: the problem in whole numbers and the way back to the user's lengths. */
export interface CheckedOrder {
  readonly cutting: Cutting;
  /** Length of each piece of `cutting`, decreasing. */
  readonly lengths: readonly number[];
  /** Length and price of each board of `cutting`. */
  readonly stock: readonly number[];
  readonly prices: readonly number[];
  readonly kerf: number;
  readonly trim: number;
  readonly grid: Grid;
  readonly measure: 'boards' | 'cost';
  /** Price units of `cutting` to one unit of `measure`. */
  readonly priceSteps: number;
}

const MOST_LENGTHS = 1_000;
const MOST_PIECES = 20_000;
const MOST_BOARD_KINDS = 100;

/** Grid steps in the longest board, and price units in the dearest: sums of them stay exact in a double. */
const MOST_STEPS = 2 ** 40;
const MOST_PRICE_STEPS = 1e8;

/** Refuses, in one sentence, whatever a plan can't be made from. */
export function readOrder(order: StockOrder): Result<CheckedOrder> {
  const kerf = order.kerf ?? 0;
  const trim = order.trim ?? 0;
  const refusal = notNegative('kerf', kerf) ?? notNegative('trim', trim);
  if (refusal) return refusal;
  const wanted = readPieces(order);
  if (!wanted.ok) return wanted;
  const bought = readStock(order);
  if (!bought.ok) return bought;

  const pieces = [...wanted.value].sort((a, b) => b[0] - a[0]);
  const boards = bought.value;
  const grid = gridFor(
    [...pieces.map(([length]) => length), ...boards.map((board) => board.length), kerf, trim],
    MOST_STEPS,
  );
  const rooms = boards.map((board) => onGrid(board.length, grid) - 2 * onGrid(trim, grid));
  const longest = Math.max(...rooms);
  if (longest <= 0) {
    return refuse(
      `trim ${trim} at each end leaves nothing of the longest board, ${Math.max(...boards.map((b) => b.length))}`,
    );
  }
  const tooLong = pieces.filter(([length]) => onGrid(length, grid) > longest).map(([length]) => length);
  if (tooLong.length > 0) {
    const left = trim > 0 ? ` less ${trim} of trim at each end` : '';
    return refuse(
      `${tooLong.length === 1 ? 'piece' : 'pieces'} ${tooLong.slice(0, 5).join(', ')}${tooLong.length > 5 ? ' …' : ''} ` +
        `${tooLong.length === 1 ? 'is' : 'are'} longer than every board; the longest is ${Math.max(...boards.map((b) => b.length))}${left}`,
    );
  }
  const measure = boards.length === 1 ? 'boards' : 'cost';
  const priceGrid = gridFor(
    boards.map((board) => board.price),
    MOST_PRICE_STEPS,
  );
  return ok({
    cutting: {
      sizes: pieces.map(([length]) => onGrid(length, grid) + onGrid(kerf, grid)),
      demand: pieces.map(([, count]) => count),
      boards: boards.map((board, at) => ({
        room: Math.max(0, rooms[at]!) + onGrid(kerf, grid),
        price: measure === 'boards' ? 1 : Math.max(1, onGrid(board.price, priceGrid)),
        limit: board.limit,
      })),
    },
    lengths: pieces.map(([length]) => length),
    stock: boards.map((board) => board.length),
    prices: boards.map((board) => board.price),
    kerf,
    trim,
    grid,
    measure,
    priceSteps: measure === 'boards' ? 1 : priceGrid.steps,
  });
}

/** Pieces wanted by length. */
function readPieces({ lengths, quantities }: StockOrder): Result<Map<number, number>> {
  if (lengths.length !== quantities.length) {
    return refuse(
      `lengths and quantities must be as many; got ${lengths.length} lengths and ${quantities.length} quantities`,
    );
  }
  const wanted = new Map<number, number>();
  let total = 0;
  for (let row = 0; row < lengths.length; row++) {
    const length = lengths[row] ?? null;
    const quantity = quantities[row] ?? null;
    if (length === null && quantity === null) continue;
    if (length === null) return refuse(`length ${row + 1} is missing; its quantity is ${quantity}`);
    if (quantity === null) return refuse(`quantity ${row + 1} is missing; its length is ${length}`);
    const lengthRefusal = positive(`length ${row + 1}`, length);
    if (lengthRefusal) return lengthRefusal;
    if (!(quantity >= 0 && Number.isInteger(quantity))) {
      return refuse(`quantity ${row + 1} must be a whole number of pieces, 0 or more; got ${quantity}`);
    }
    if (quantity === 0) continue;
    total += quantity;
    wanted.set(length, (wanted.get(length) ?? 0) + quantity);
  }
  if (total === 0) return refuse('lengths and quantities must name at least one piece; got none');
  if (wanted.size > MOST_LENGTHS)
    return refuse(`there must be at most ${MOST_LENGTHS} different lengths; got ${wanted.size}`);
  if (total > MOST_PIECES) return refuse(`there must be at most ${MOST_PIECES} pieces; got ${total}`);
  return ok(wanted);
}

interface BoardOnSale {
  readonly length: number;
  readonly price: number;
  readonly limit: number;
}

function readStock({ stock, prices, limits }: StockOrder): Result<readonly BoardOnSale[]> {
  if (prices && prices.length !== stock.length) {
    return refuse(`prices and stock must be as many; got ${prices.length} prices and ${stock.length} stock lengths`);
  }
  if (limits && limits.length !== stock.length) {
    return refuse(`limits and stock must be as many; got ${limits.length} limits and ${stock.length} stock lengths`);
  }
  const boards: BoardOnSale[] = [];
  for (let row = 0; row < stock.length; row++) {
    const length = stock[row] ?? null;
    const price = prices ? (prices[row] ?? null) : length;
    const limit = limits?.[row] ?? null;
    if (length === null && (!prices || price === null)) continue;
    if (length === null) return refuse(`stock length ${row + 1} is missing; its price is ${price}`);
    const lengthRefusal = positive(`stock length ${row + 1}`, length);
    if (lengthRefusal) return lengthRefusal;
    if (price === null) return refuse(`price ${row + 1} is missing; its stock length is ${length}`);
    const priceRefusal = positive(`price ${row + 1}`, price);
    if (priceRefusal) return priceRefusal;
    if (limit !== null && !(limit >= 0 && Number.isInteger(limit))) {
      return refuse(`limit ${row + 1} must be a whole number of boards, 0 or more, or blank; got ${limit}`);
    }
    if (limit === 0 || boards.some((b) => b.length === length && b.price === price && b.limit === Infinity)) continue;
    boards.push({ length, price, limit: limit ?? Infinity });
  }
  if (boards.length === 0) return refuse('stock must name at least one board length that can be had; got none');
  if (boards.length > MOST_BOARD_KINDS)
    return refuse(`there must be at most ${MOST_BOARD_KINDS} kinds of board; got ${boards.length}`);
  return ok(boards);
}
