import { describe, expect, it } from 'vitest';
import { Pairs } from '../../src/boards/pairs';
import type { Cut } from '../../src/boards/problem';
import { random } from '../random';

const cut = (board: number, made: readonly number[]): Cut => {
  const pieces = made.flatMap((count, kind) => (count > 0 ? [kind] : []));
  return { board, pieces, counts: pieces.map((piece) => made[piece]!), lanes: [], whole: null };
};
const madeBy = ({ pieces, counts }: Cut, kinds: number) =>
  Array.from({ length: kinds }, (_, kind) => counts[pieces.indexOf(kind)] ?? 0);

describe('what one or two boards make', () => {
  it('is told as by trying every two of the cuts, or one', () => {
    const of = random(5);
    let yes = 0;
    for (let round = 0; round < 60; round++) {
      const demand = [of.whole(1, 5), of.whole(1, 4), of.whole(1, 6)];
      const boards = [of.whole(0, 2), of.whole(1, 3)];
      const cuts = Array.from({ length: of.whole(1, 8) }, () =>
        cut(
          of.whole(0, 1),
          demand.map((most) => of.whole(0, Math.min(most, 3))),
        ),
      ).filter(({ board, pieces }) => pieces.length > 0 && boards[board]! > 0);
      const pairs = Pairs.of(cuts, demand, boards)!;
      for (let each = 0; each < 30; each++) {
        const left = demand.map((most) => of.whole(0, most));
        const had = boards.map((most) => of.whole(0, most));
        const makes = (...chosen: readonly Cut[]) =>
          left.every((wanted, kind) => chosen.reduce((sum, one) => sum + madeBy(one, 3)[kind]!, 0) === wanted) &&
          had.every((count, board) => chosen.filter((one) => one.board === board).length <= count);
        const tried = cuts.some((one) => makes(one)) || cuts.some((one) => cuts.some((other) => makes(one, other)));
        if (tried) yes++;
        expect(pairs.makes(left, had, () => undefined)).toBe(tried);
      }
    }
    expect(yes).toBeGreaterThan(50);
  });

  it('is not told of more makings than a number can tell apart, nor of too many cuts', () => {
    expect(Pairs.of([], Array<number>(60).fill(1), [1])).toBeNull();
    expect(Pairs.of(Array<Cut>(1001).fill(cut(0, [1])), [1], [1])).toBeNull();
    expect(Pairs.of(Array<Cut>(1000).fill(cut(0, [1])), [1], [1])).not.toBeNull();
  });
});
