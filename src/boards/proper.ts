import { cutOf, type Cut, type LaneFill, type Problem } from './problem';
import type { Lanes } from './sections';

/** A board filled lane by lane, each lane the best by itself; together they may make more of a kind than is wanted. */
export interface Layout {
  readonly board: number;
  readonly lanes: Lanes;
  /** Room of the section that is ripped; the one that keeps its width has the rest. */
  readonly along: number;
  readonly worth: number;
}

/** What is asked: pieces worth so much, no more of each than wanted, and what each board costs in the same worth. */
export interface Question {
  readonly worths: ArrayLike<number>;
  readonly wanted: ArrayLike<number>;
  readonly prices: ArrayLike<number>;
}

export function worthOf({ pieces, counts }: Cut, worths: ArrayLike<number>): number {
  let worth = 0;
  for (let at = 0; at < pieces.length; at++) worth += counts[at]! * worths[pieces[at]!]!;
  return worth;
}

function madeOf(fills: readonly LaneFill[], kinds: number): Int32Array {
  const made = new Int32Array(kinds);
  for (const { pieces, counts } of fills) pieces.forEach((piece, at) => (made[piece]! += counts[at]!));
  return made;
}

/** The kind that most more are made of than wanted; null where there is none. */
export function mostOver(fills: readonly LaneFill[], wanted: ArrayLike<number>): number | null {
  const made = madeOf(fills, wanted.length);
  let most: number | null = null;
  for (let k = 0; k < wanted.length; k++) {
    const over = made[k]! - wanted[k]!;
    if (over > 0 && (most === null || over > made[most]! - wanted[most]!)) most = k;
  }
  return most;
}

/**
 * Cases that leave no proper filling out and each exclude this one, as caps by position: either one lane makes at most t, or
 * it makes more and the others at most wanted − t − 1 each. Where the second doesn't exclude this filling: one of the lanes makes
 * fewer than here, since they can't all make as many.
 */
export function parted(fills: readonly LaneFill[], kind: number, wanted: number): [position: number, cap: number][][] {
  const made = fills.map(({ pieces, counts }) => counts[pieces.indexOf(kind)] ?? 0);
  const order = made.map((_, at) => at).sort((a, b) => made[b]! - made[a]!);
  const most = order[0]!;
  const second = made[order[1]!]!;
  const t = Math.min(made[most]! - 1, Math.floor(wanted / 2));
  const rest = wanted - t - 1;
  if (second > rest) {
    return [[[most, t]], made.flatMap((_, at): [number, number][] => (at === most ? [] : [[at, rest]]))];
  }
  return made.flatMap((count, at): [number, number][][] => (count > 0 ? [[[at, count - 1]]] : []));
}

/** The filling without what is too much, and the room filled again with what is worth most for its length. */
export function proper(fills: readonly LaneFill[], layout: Layout, question: Question, problem: Problem): Cut | null {
  const { wanted, worths } = question;
  const { board, along } = layout;
  if (mostOver(fills, wanted) === null) {
    const cut = cutOf(board, fills.slice(1), fills[0]!, problem);
    if (cut !== null) return cut;
  }
  const { kinds, classes, boards, hair } = problem;
  const left = Int32Array.from(wanted);
  // The shortest lanes choose first: they have the fewest ways to make up for what others take.
  const order = fills.map((_, at) => at).sort((a, b) => fills[b]!.pieces.length - fills[a]!.pieces.length);
  const kept: LaneFill[] = [];
  for (const at of order) {
    const widest = at === 0 ? boards[board]!.classes - 1 : layout.lanes[at - 1]!;
    const room = at === 0 ? boards[board]!.room - along : along;
    const counts = new Map<number, number>();
    const opened = new Set<number>();
    let used = 0;
    const take = (kind: number, most: number) => {
      const { step, class: c } = kinds[kind]!;
      const over = opened.has(c) ? 0 : classes[c]!.over;
      const count = Math.min(most, left[kind]!, Math.floor((room + hair - used - over) / step));
      if (count <= 0) return;
      opened.add(c);
      counts.set(kind, (counts.get(kind) ?? 0) + count);
      left[kind]! -= count;
      used += over + count * step;
    };
    fills[at]!.pieces.forEach((piece, i) => take(piece, fills[at]!.counts[i]!));
    const liked = kinds
      .map((_, kind) => kind)
      .filter((kind) => kinds[kind]!.class <= widest && left[kind]! > 0 && worths[kind]! > 0)
      .sort((a, b) => worths[b]! / kinds[b]!.step - worths[a]! / kinds[a]!.step);
    for (const kind of liked) take(kind, Infinity);
    const pieces = [...counts.keys()].sort((a, b) => a - b);
    kept[at] = { pieces, counts: pieces.map((piece) => counts.get(piece)!) };
  }
  return cutOf(board, kept.slice(1), kept[0]!, problem);
}
