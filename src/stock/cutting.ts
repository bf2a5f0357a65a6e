/**
 * The cutting problem in whole numbers. A kerf is counted to every piece and one more to the board, so that n pieces take
 * n − 1 kerfs: pieces fit a board exactly when their sizes add up to no more than its room.
 */
export interface Cutting {
  /** Piece and kerf in grid steps, strictly decreasing. */
  readonly sizes: readonly number[];
  /** Pieces wanted of each size, at least 1. */
  readonly demand: readonly number[];
  readonly boards: readonly Board[];
}

export interface Board {
  /** Board less both trims, plus one kerf, in grid steps. */
  readonly room: number;
  /** Whole price units, at least 1; 1 where only the number of boards counts. */
  readonly price: number;
  /** Boards that can be had; Infinity: as many as wanted. */
  readonly limit: number;
}

/** What is cut from one board: `counts[i]` pieces of the size with index `pieces[i]`. */
export interface Pattern {
  readonly board: number;
  readonly pieces: readonly number[];
  readonly counts: readonly number[];
}

/** Boards cut alike. */
export interface Run {
  readonly pattern: Pattern;
  readonly times: number;
}

export function costOf(runs: readonly Run[], boards: readonly Board[]): number {
  return runs.reduce((sum, run) => sum + run.times * boards[run.pattern.board]!.price, 0);
}

export function usedRoom(pattern: Pattern, sizes: readonly number[]): number {
  return pattern.pieces.reduce((sum, piece, at) => sum + pattern.counts[at]! * sizes[piece]!, 0);
}

/** The same boards with equal patterns counted together, the most frequent first. */
export function gathered(runs: readonly Run[]): Run[] {
  const together = new Map<string, Run>();
  for (const { pattern, times } of runs) {
    const key = patternKey(pattern);
    together.set(key, { pattern, times: times + (together.get(key)?.times ?? 0) });
  }
  return [...together.values()].sort((a, b) => b.times - a.times);
}

/** The same for equal patterns only; pieces are in order of their index. */
export function patternKey({ board, pieces, counts }: Pattern): string {
  return `${board}:${pieces.join()}:${counts.join()}`;
}

/** One kind of board, as many as wanted: then little waste is left when few boards are. */
export function isSimple({ boards }: Cutting): boolean {
  return boards.length === 1 && boards[0]!.limit === Infinity;
}
