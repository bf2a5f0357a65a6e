import { boardFeet } from '../lumber';
import { ok, type Result } from '../result';
import { toCents } from '../rounding';
import type { Effort } from '../stock/effort';
import { buyingLess } from '../stock/less';
import { planStock, type StockPlan } from '../stock/plan';
import type { Standards } from '../standards';
import type { StockBoard } from '../stockList';
import { perInch, type Unit } from '../unit';
import type { Layout, WoodPart } from './woodParts';

/** Boards of one species, thickness and width: what to buy and how to cut it. */
export interface BoardPlan {
  readonly species: string;
  readonly thickness: number;
  readonly quarters: number;
  readonly width: number;
  readonly parts: readonly PlacedPart[];
  readonly boards: number;
  readonly boardFeet: number;
  readonly cost: number;
  /** Share of the bought length under pieces, 0 to 1. */
  readonly yield: number;
  readonly buys: readonly { readonly length: number; readonly count: number; readonly price: number }[];
  readonly cutting: readonly BoardCut[];
  /** Least cost that any plan for these pieces, laid this way, can have. */
  readonly lowerBound: number;
  readonly proven: boolean;
  /** The clock ended the search: another time, or on another machine, it may come to another plan. */
  readonly interrupted: boolean;
  /** One sentence: what buying less would need. */
  readonly less: string;
}

export interface PlacedPart {
  readonly part: WoodPart;
  readonly layout: Layout;
  /** Pieces that come out over the count because they are cut several abreast. */
  readonly spare: number;
}

/** Boards cut alike. */
export interface BoardCut {
  readonly count: number;
  readonly length: number;
  /** Which part, and how many of it come from one such board. */
  readonly cuts: readonly { readonly part: WoodPart; readonly length: number; readonly pieces: number }[];
  readonly offcut: number;
}

/** The boards on sale of one species, thickness and width. */
export interface BoardKind {
  readonly species: string;
  readonly thickness: number;
  readonly quarters: number;
  readonly width: number;
  readonly boards: readonly StockBoard[];
}

/** A part and the way it is laid on its boards. */
export interface Placed {
  readonly part: WoodPart;
  readonly layout: Layout;
}

/** What one board costs, to the cent. */
export function priceOf(board: StockBoard, { unit }: Standards): number {
  return toCents(feetOf(board, unit) * board.pricePerBoardFoot);
}

/** Board feet of one board. */
export function feetOf(board: Pick<StockBoard, 'quarters' | 'width' | 'length'>, unit: Unit): number {
  const inch = perInch(unit);
  const feet = boardFeet(board.quarters / 4, board.width / inch, board.length / inch);
  return feet.ok ? feet.value : 0;
}

/** A cutting plan as far as it takes to weigh it against others. */
export interface PricedPlan {
  readonly cost: number;
  /** With its pieces given back to the parts. */
  readonly laidOut: () => BoardPlan;
}

/** Work of making one part ready for a plan. */
const A_PART = 5_000;

/**
 * One cutting plan. In a row, n parts take alone + (n − 1)·step: pieces of step − kerf on a board shorter by what the first one
 * takes over its step. `used` counts boards on hand that other plans take.
 */
export function planKindTogether(
  kind: BoardKind,
  placed: readonly Placed[],
  row: boolean,
  used: ReadonlyMap<StockBoard, number>,
  control: { readonly standards: Standards; readonly effort: Effort },
): Result<PricedPlan> {
  const { standards, effort } = control;
  const { kerf, endTrim } = standards;
  effort.spend(A_PART * placed.length);
  const over = row ? Math.max(0, ...placed.map(({ layout }) => layout.alone + kerf - layout.step)) : 0;
  const boards = kind.boards.filter((board) => board.length - over - 2 * endTrim > 0);
  const lots: Lot[] = placed.map(({ part, layout }) => ({
    part,
    layout,
    length: rounded(row ? layout.step - kerf : layout.alone),
    count: Math.ceil(part.count / layout.across),
  }));
  const planned = planStock({
    lengths: lots.map((lot) => lot.length),
    quantities: lots.map((lot) => lot.count),
    stock: boards.map((board) => rounded(board.length - over)),
    prices: boards.map((board) => priceOf(board, standards)),
    limits: boards.map((board) => (board.onHand === null ? null : Math.max(0, board.onHand - (used.get(board) ?? 0)))),
    kerf,
    trim: endTrim,
    effort,
  });
  if (!planned.ok) return planned;
  return ok({ cost: planned.value.cost, laidOut: () => layOut(planned.value, lots, kind, over, standards) });
}

/** The plan's lengths given back to the boards and parts. `over`: what each board was taken shorter. */
function layOut(plan: StockPlan, lots: readonly Lot[], kind: BoardKind, over: number, standards: Standards): BoardPlan {
  const { boards } = kind;
  const boardOf = (length: number) => boards.find((board) => rounded(board.length - over) === length)!;
  const bought = new Map<StockBoard, number>();
  for (const { stock, count } of plan.plan) bought.set(boardOf(stock), (bought.get(boardOf(stock)) ?? 0) + count);
  const sum = (of: (board: StockBoard) => number) =>
    [...bought].reduce((all, [board, count]) => all + count * of(board), 0);
  const cutting = boardCuts(plan, lots).map((cut) => ({ ...cut, length: boardOf(cut.length).length }));
  const { species, thickness, quarters, width } = kind;
  return {
    species,
    thickness,
    quarters,
    width,
    parts: lots.map(({ part, layout, count }) => ({ part, layout, spare: count * layout.across - part.count })),
    boards: plan.boards,
    boardFeet: sum((board) => feetOf(board, standards.unit)),
    cost: plan.cost,
    yield: lots.reduce((all, lot) => all + lot.count * lot.length, 0) / sum((board) => board.length),
    buys: [...bought].map(([board, count]) => ({ length: board.length, count, price: priceOf(board, standards) })),
    cutting,
    lowerBound: plan.measure === 'boards' ? (plan.cost / plan.boards) * plan.lowerBound : plan.lowerBound,
    proven: plan.proven,
    interrupted: plan.interrupted,
    less: buyingLess(
      plan,
      cutting.map(({ length, cuts, offcut }) => ({
        length,
        filled: 1 - offcut / length,
        cuts: cuts.map(({ part, pieces }) => `${pieces} × ${part.for}`).join(', '),
      })),
    ),
  };
}

/** So many parts abreast, cut as one. */
interface Lot extends Placed {
  readonly length: number;
  readonly count: number;
}

/** To a billionth: the rounding of sines must not tell pieces of one length apart. */
function rounded(length: number): number {
  return Math.round(length * 1e9) / 1e9;
}

/** The plan's lengths given back to the parts, board by board; boards that come out alike are counted together. */
function boardCuts(plan: StockPlan, lots: readonly Lot[]): BoardCut[] {
  /** By length, what is still wanted of the lots, the first of which is cut next. */
  const open = new Map<number, { readonly lot: Lot; readonly at: number; left: number }[]>();
  for (const [at, lot] of lots.entries()) {
    const alike = open.get(lot.length);
    if (alike) alike.push({ lot, at, left: lot.part.count });
    else open.set(lot.length, [{ lot, at, left: lot.part.count }]);
  }
  const together = new Map<string, { -readonly [K in keyof BoardCut]: BoardCut[K] }>();
  for (const { count, stock, cuts, offcut } of plan.plan) {
    for (let board = 0; board < count; board++) {
      const named: BoardCut['cuts'][number][] = [];
      let key = `${stock}|${offcut}`;
      for (const [length, wanted] of cuts) {
        const alike = open.get(length)!;
        for (let cut = 0; cut < wanted;) {
          const next = alike[0]!;
          const { part, layout } = next.lot;
          const taken = Math.min(wanted - cut, Math.ceil(next.left / layout.across));
          const pieces = Math.min(next.left, taken * layout.across);
          next.left -= pieces;
          if (next.left === 0) alike.shift();
          cut += taken;
          named.push({ part, length: layout.alone, pieces });
          key += `|${next.at}:${pieces}`;
        }
      }
      const alike = together.get(key);
      if (alike) alike.count++;
      else together.set(key, { count: 1, length: stock, cuts: named, offcut });
    }
  }
  return [...together.values()];
}
