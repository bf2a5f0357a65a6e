import type { Part, WoodOrder } from '../../src/boards/order';

/**
 * The least cost of a small order by trying everything: every piece in every place of every board. It follows the rules of sawing
 * as they are printed and shares nothing with the planner. For up to some eight pieces.
 */
export function leastCost(order: WoodOrder): number {
  const pieces = order.parts.flatMap((part) => Array.from({ length: part.count }, () => part));
  const all = 1 << pieces.length;
  const chosen = (set: number) => pieces.filter((_, at) => (set & (1 << at)) !== 0);
  const cheapest = new Array<number>(all).fill(Infinity);
  for (let set = 1; set < all; set++) {
    for (const board of order.boards) {
      const cents = Math.round(board.price * 100);
      if (cents < cheapest[set]! && fitsOne(chosen(set), board, order)) cheapest[set] = cents;
    }
  }
  const least = new Array<number>(all).fill(Infinity);
  least[0] = 0;
  for (let set = 1; set < all; set++) {
    // The lowest piece lies on some board together with some others.
    const lowest = set & -set;
    for (let board = set; board > 0; board = (board - 1) & set) {
      if ((board & lowest) === 0 || cheapest[board] === Infinity) continue;
      least[set] = Math.min(least[set]!, cheapest[board]! + least[set ^ board]!);
    }
  }
  return least[all - 1]! / 100;
}

const MOST_LANES = 4;
const NEAR = 1e-9;

/** Every piece in the section that keeps its width (0) or in one of the lanes of the other. */
export function fitsOne(
  pieces: readonly Part[],
  board: { width: number; length: number },
  { kerf, trim }: WoodOrder,
): boolean {
  const places = pieces.map(() => 0);
  const usable = board.length - 2 * trim;
  const check = (): boolean => {
    const lengths: number[] = [];
    let across = -kerf;
    for (let place = 0; place <= MOST_LANES; place++) {
      const here = pieces.filter((_, at) => places[at] === place);
      if (here.length === 0) {
        lengths.push(0);
        continue;
      }
      const widest = Math.max(...here.map(widthOf));
      if (widest > board.width + NEAR) return false;
      if (place > 0) across += widest + kerf;
      lengths.push(laneLength(here, kerf));
    }
    const ripped = Math.max(...lengths.slice(1));
    const between = ripped > 0 && lengths[0]! > 0 ? kerf : 0;
    return across <= board.width + NEAR && ripped + between + lengths[0]! <= usable + NEAR;
  };
  const place = (at: number, lanes: number): boolean => {
    if (at === pieces.length) return check();
    for (let lane = 0; lane <= Math.min(MOST_LANES, lanes + 1); lane++) {
      places[at] = lane;
      if (place(at + 1, Math.max(lanes, lane))) return true;
    }
    return false;
  };
  return place(0, 0);
}

function widthOf(part: Part): number {
  return part.kind === 'straight' ? part.width : part.outside - part.inside * Math.cos(part.half);
}

/** Straight pieces one by one, segments of one width and angle in a flipped row: the formula of the row in words. */
function laneLength(parts: readonly Part[], kerf: number): number {
  const rows = new Map<string, number>();
  for (const part of parts) {
    if (part.kind === 'straight') {
      rows.set(`straight ${rows.size}`, part.length);
      continue;
    }
    const key = `${widthOf(part).toFixed(6)} ${part.half.toFixed(9)}`;
    const middle = part.outside * Math.tan(part.half) + part.inside * Math.sin(part.half);
    const slant = widthOf(part) * Math.tan(part.half);
    const before = rows.get(key);
    rows.set(key, before === undefined ? slant + middle : before + middle + kerf / Math.cos(part.half));
  }
  return [...rows.values()].reduce((sum, length) => sum + length + kerf, -kerf);
}
