import { usedRoom, type Cutting, type Pattern, type Run } from './cutting';

/** More tight patterns than this are left to the dives. */
const MOST_PATTERNS = 4_000;

/**
 * Looks through all plans of at most `aim` boards of one kind (exact cover). So few boards leave little room to waste, and few
 * patterns waste no more than that: the size that the fewest of them can make is decided first. `'none'`: there is no such plan.
 * Null: there are too many patterns, or `patience` patterns were tried.
 */
export function coverTightly(cutting: Cutting, aim: number, patience: number): Run[] | 'none' | null {
  const { sizes, demand, boards } = cutting;
  const room = boards[0]!.room;
  const spare = aim * room - sizes.reduce((sum, size, at) => sum + size * demand[at]!, 0);
  if (spare < 0) return 'none';
  const patterns = tightPatterns(sizes, demand, room, spare);
  if (patterns === null) return null;
  const left = [...demand];
  const chosen: Pattern[] = [];
  let tries = 0;
  const waste = new Map(patterns.map((pattern) => [pattern, room - usedRoom(pattern, sizes)]));
  patterns.sort((a, b) => waste.get(a)! - waste.get(b)!);

  /** True: the plan is whole. False: it can't be. Null: out of patience. */
  const decide = (possible: readonly Pattern[], spareLeft: number): boolean | null => {
    const makers = new Int32Array(sizes.length);
    for (const pattern of possible) for (const piece of pattern.pieces) makers[piece]!++;
    let scarce = -1;
    for (let piece = 0; piece < sizes.length; piece++) {
      if (left[piece]! > 0 && (scarce < 0 || makers[piece]! < makers[scarce]!)) scarce = piece;
    }
    if (scarce < 0) return true;
    let open = possible;
    for (const pattern of possible) {
      if (!pattern.pieces.includes(scarce)) continue;
      if (++tries > patience) return null;
      pattern.pieces.forEach((piece, at) => (left[piece]! -= pattern.counts[at]!));
      chosen.push(pattern);
      const spareThen = spareLeft - waste.get(pattern)!;
      const done = decide(
        open.filter((other) => waste.get(other)! <= spareThen && fits(other, left)),
        spareThen,
      );
      if (done !== false) return done;
      chosen.pop();
      pattern.pieces.forEach((piece, at) => (left[piece]! += pattern.counts[at]!));
      // Every plan with this pattern has been looked through.
      open = open.filter((other) => other !== pattern);
    }
    return false;
  };
  const done = decide(patterns, spare);
  if (done === null) return null;
  return done ? chosen.map((pattern) => ({ pattern, times: 1 })) : 'none';
}

function fits(pattern: Pattern, left: readonly number[]): boolean {
  for (let at = 0; at < pattern.pieces.length; at++) if (pattern.counts[at]! > left[pattern.pieces[at]!]!) return false;
  return true;
}

/** All patterns that waste no more than `spare`; null where there are too many. */
function tightPatterns(
  sizes: readonly number[],
  demand: readonly number[],
  room: number,
  spare: number,
): Pattern[] | null {
  const patterns: Pattern[] = [];
  const pieces: number[] = [];
  const counts: number[] = [];
  const after = new Array<number>(sizes.length + 1).fill(0);
  for (let at = sizes.length - 1; at >= 0; at--) after[at] = after[at + 1]! + sizes[at]! * demand[at]!;
  let steps = 0;
  const extend = (from: number, left: number): boolean => {
    if (++steps > 100 * MOST_PATTERNS) return false;
    if (left <= spare && pieces.length > 0) {
      patterns.push({ board: 0, pieces: [...pieces], counts: [...counts] });
      if (patterns.length > MOST_PATTERNS) return false;
    }
    for (let at = from; at < sizes.length && left - after[at]! <= spare; at++) {
      const most = Math.min(demand[at]!, Math.floor(left / sizes[at]!));
      for (let count = most; count >= 1; count--) {
        pieces.push(at);
        counts.push(count);
        if (!extend(at + 1, left - count * sizes[at]!)) return false;
        pieces.pop();
        counts.pop();
      }
    }
    return true;
  };
  return extend(0, room) ? patterns : null;
}
