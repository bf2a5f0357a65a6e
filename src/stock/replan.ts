import { coverTightly } from './cover';
import { gathered, type Cutting, type Pattern, type Run } from './cutting';
import type { DiveControl } from './dive';
import type { Pricing } from './pricing';
import { allOf, partOf, toWhole } from './rest';

export interface ReplanControl extends DiveControl {
  /** Every cost is a whole multiple of this. */
  readonly unit: number;
}

/** Boards planned anew together: from this many to so many more. */
const FEWEST_BOARDS = 3;
const MORE_BOARDS = 8;
const PATIENCE = 1_500;
/** Work of ranking one board. */
const A_BOARD = 300;

/**
 * Takes a few boards out of a plan and looks for other ones that hold their pieces and cost less. What a plan costs over the
 * bound is what its boards lose, each its price over the worth of its pieces, so the boards taken are those that lose much,
 * with others that lend them pieces to exchange. Null: these boards can't be bettered, or patience ran out.
 */
export function replanBoards(
  cutting: Cutting,
  runs: readonly Run[],
  pricing: Pricing,
  control: ReplanControl,
): Run[] | null {
  const { sizes, boards } = cutting;
  const lossOf = (pattern: Pattern) =>
    pattern.pieces.reduce(
      (loss, piece, at) => loss - pattern.counts[at]! * pricing.worths[piece]!,
      pricing.scale * boards[pattern.board]!.price + pricing.scarcity[pattern.board]!,
    );
  const all = runs.flatMap(({ pattern, times }) => new Array<Pattern>(times).fill(pattern));
  control.effort.spend(A_BOARD * all.length);
  const count = Math.min(all.length, FEWEST_BOARDS + Math.floor(control.random() * MORE_BOARDS));
  // Half are drawn by what they lose, half by chance.
  const even = control.random() < 0.5;
  const rank = all.map((pattern) => ({
    pattern,
    key: control.random() * (even ? 1 : lossOf(pattern) + pricing.scale * control.unit),
  }));
  rank.sort((a, b) => b.key - a.key);
  const half = Math.ceil(count / 2);
  const others = rank
    .slice(half)
    .map((one) => ({ ...one, key: control.random() }))
    .sort((a, b) => b.key - a.key);
  const taken = [...rank.slice(0, half), ...others.slice(0, count - half)].map((one) => one.pattern);
  const kept = [...others.slice(count - half)].map((one) => one.pattern);

  const wanted = sizes.map(() => 0);
  for (const { pieces, counts } of taken) pieces.forEach((piece, at) => (wanted[piece]! += counts[at]!));
  const had = boards.map((board) => board.limit);
  for (const { board } of kept) had[board]!--;
  const part = partOf(allOf(cutting), wanted, had);
  if (part === null) return null;
  const aim = taken.reduce((sum, { board }) => sum + boards[board]!.price, 0) - control.unit;
  const worths = part.whole.map((at) => pricing.worths[at]!);
  const found = coverTightly(part.cutting, aim, { ...pricing, worths }, PATIENCE, control.effort);
  if (found === null || found === 'none') return null;
  return gathered([...kept.map((pattern) => ({ pattern, times: 1 })), ...found.map((run) => toWhole(run, part))]);
}
