import type { Cut } from './problem';

/** With more cuts than this there are too many pairs. */
const MOST_CUTS = 1_000;

/**
 * What one or two boards cut from a list make, all of it, as whole numbers that tell apart every making of no more than is wanted by no more
 * boards than there are: figures of a number whose places are the kinds of pieces and of boards.
 */
export class Pairs {
  private readonly places: readonly number[];
  private made: Set<number> | null = null;

  private constructor(
    private readonly cuts: readonly Cut[],
    private readonly demand: readonly number[],
    private readonly boards: readonly number[],
  ) {
    let place = 1;
    this.places = [...demand, ...boards].map((most) => {
      const its = place;
      place *= most + 1;
      return its;
    });
  }

  /** Null where there are too many, or no number has so many places. */
  static of(cuts: readonly Cut[], demand: readonly number[], boards: readonly number[]): Pairs | null {
    const makings = [...demand, ...boards].reduce((product, most) => product * (most + 1), 1);
    return cuts.length > MOST_CUTS || makings >= Number.MAX_SAFE_INTEGER ? null : new Pairs(cuts, demand, boards);
  }

  /** Whether two of the boards left, or one, cut like this make just these pieces. `step` is called for the pairs put down the first time. */
  makes(left: readonly number[], had: readonly number[], step: (many: number) => void): boolean {
    const made = (this.made ??= this.all(step));
    step(left.length / 2);
    const n = left.length;
    let pieces = 0;
    for (let kind = 0; kind < n; kind++) pieces += left[kind]! * this.places[kind]!;
    for (let board = 0; board < had.length; board++) {
      if (had[board] === 0) continue;
      const one = pieces + this.places[n + board]!;
      if (made.has(one)) return true;
      for (let other = board; other < had.length; other++) {
        if (had[other]! > (other === board ? 1 : 0) && made.has(one + this.places[n + other]!)) return true;
      }
    }
    return false;
  }

  private all(step: (many: number) => void): Set<number> {
    const { cuts, demand, boards, places } = this;
    const n = demand.length;
    const alone = cuts.map(({ board, pieces, counts }) =>
      pieces.reduce((sum, piece, at) => sum + counts[at]! * places[piece]!, places[n + board]!),
    );
    const made = new Set(alone);
    const one = new Int32Array(n);
    for (let a = 0; a < cuts.length; a++) {
      const first = cuts[a]!;
      one.fill(0);
      first.pieces.forEach((piece, at) => (one[piece] = first.counts[at]!));
      step(10 * (cuts.length - a));
      for (let b = a; b < cuts.length; b++) {
        const { board, pieces, counts } = cuts[b]!;
        if (board === first.board && boards[board]! < 2) continue;
        let fits = true;
        for (let at = 0; fits && at < pieces.length; at++)
          fits = one[pieces[at]!]! + counts[at]! <= demand[pieces[at]!]!;
        if (fits) made.add(alone[a]! + alone[b]!);
      }
    }
    return made;
  }
}
