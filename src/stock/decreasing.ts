import { usedRoom, type Board, type Cutting, type Pattern, type Run } from './cutting';
import type { Effort } from './effort';

/** Work of one look at a size. */
const A_LOOK = 5;

/**
 * First-fit decreasing: each board takes the longest piece still wanted that fits, again and again. Of several kinds, the one
 * that costs least for the room it uses. Null where the boards that can be had run out.
 */
export function firstFitDecreasing({ sizes, demand, boards }: Cutting, effort: Effort): Run[] | null {
  const left = [...demand];
  const had = boards.map((board) => board.limit);
  const runs: Run[] = [];
  let first = 0;
  for (;;) {
    while (first < left.length && left[first] === 0) first++;
    if (first === left.length) return runs;
    effort.spend(A_LOOK * boards.length * (sizes.length - first));
    let chosen: Pattern | null = null;
    let least = Infinity;
    for (const [at, board] of boards.entries()) {
      if (had[at]! <= 0 || board.room < sizes[first]!) continue;
      const pattern = longestFirst(at, board, sizes, left, first);
      const rate = board.price / usedRoom(pattern, sizes);
      if (rate < least) [chosen, least] = [pattern, rate];
    }
    if (chosen === null) return null;
    const { board, pieces, counts } = chosen;
    const times = pieces.reduce(
      (most, piece, at) => Math.min(most, Math.floor(left[piece]! / counts[at]!)),
      had[board]!,
    );
    pieces.forEach((piece, at) => (left[piece]! -= times * counts[at]!));
    had[board]! -= times;
    runs.push({ pattern: chosen, times });
  }
}

function longestFirst(
  at: number,
  board: Board,
  sizes: readonly number[],
  left: readonly number[],
  first: number,
): Pattern {
  const pieces: number[] = [];
  const counts: number[] = [];
  let room = board.room;
  for (let piece = first; piece < sizes.length; piece++) {
    const count = Math.min(left[piece]!, Math.floor(room / sizes[piece]!));
    if (count === 0) continue;
    pieces.push(piece);
    counts.push(count);
    room -= count * sizes[piece]!;
  }
  return { board: at, pieces, counts };
}
