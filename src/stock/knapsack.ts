import { greatestCommonDivisor } from './grid';

/** One board filled: its worth and the pieces that make it. */
export interface Filling {
  readonly worth: number;
  readonly pieces: readonly number[];
  readonly counts: readonly number[];
}

/** The best filling found, and the worth that none can exceed by `gain` or more; they are the same unless patience ran out. */
export interface Branching {
  readonly filling: Filling;
  readonly upper: number;
  readonly complete: boolean;
  readonly steps: number;
}

/**
 * The most worth a board can hold (bounded knapsack), by branch and bound. Pieces are taken in order of worth per size, as many
 * as fit; going back, one is given up wherever the rest of the room, filled at the next piece's rate, could still gain `gain`.
 * After `patience` steps it gives what it has.
 */
export function fillByBranching(
  sizes: readonly number[],
  worths: ArrayLike<number>,
  copies: ArrayLike<number>,
  room: number,
  gain: number,
  patience: number,
): Branching {
  const order: number[] = [];
  for (let piece = 0; piece < sizes.length; piece++) {
    if (worths[piece]! > 0 && copies[piece]! > 0 && sizes[piece]! <= room) order.push(piece);
  }
  order.sort((a, b) => worths[b]! / sizes[b]! - worths[a]! / sizes[a]!);
  const n = order.length;
  const size = new Float64Array(n + 1);
  const worth = new Float64Array(n);
  const rate = new Float64Array(n + 1);
  const most = new Float64Array(n);
  const shortest = new Float64Array(n + 1).fill(Infinity);
  for (let at = n - 1; at >= 0; at--) {
    const piece = order[at]!;
    size[at] = sizes[piece]!;
    worth[at] = worths[piece]!;
    rate[at] = worth[at]! / size[at]!;
    most[at] = copies[piece]!;
    shortest[at] = Math.min(shortest[at + 1]!, size[at]!);
  }
  const taken = new Float64Array(n);
  const best = new Float64Array(n);
  let bestWorth = 0;
  let left = room;
  let value = 0;
  let at = 0;
  let steps = 0;
  const stop = (): Branching => {
    let upper = Math.max(bestWorth, value + left * rate[at]!);
    for (let i = at - 1, room = left, worthSoFar = value; i >= 0; i--) {
      // What giving up one piece of kind i could still lead to.
      if (taken[i]! > 0) upper = Math.max(upper, worthSoFar - worth[i]! + (room + size[i]!) * rate[i + 1]!);
      room += taken[i]! * size[i]!;
      worthSoFar -= taken[i]! * worth[i]!;
    }
    return { filling: asFilling(bestWorth, best, order), upper, complete: false, steps };
  };
  for (;;) {
    while (at < n && left >= shortest[at]! && value + left * rate[at]! >= bestWorth + gain) {
      if (++steps > patience) return stop();
      const count = left >= size[at]! ? Math.min(most[at]!, Math.floor(left / size[at]!)) : 0;
      taken[at] = count;
      left -= count * size[at]!;
      value += count * worth[at]!;
      at++;
    }
    if (value >= bestWorth + gain) {
      bestWorth = value;
      best.fill(0);
      for (let i = 0; i < at; i++) best[i] = taken[i]!;
    }
    // Give up one piece of the last kind at which that can still pay.
    for (;;) {
      if (--at < 0) return { filling: asFilling(bestWorth, best, order), upper: bestWorth, complete: true, steps };
      if (taken[at] === 0) continue;
      left += size[at]!;
      value -= worth[at]!;
      taken[at]!--;
      if (value + left * rate[at + 1]! >= bestWorth + gain) break;
      left += taken[at]! * size[at]!;
      value -= taken[at]! * worth[at]!;
      taken[at] = 0;
    }
    at++;
  }
}

function asFilling(worth: number, best: Float64Array, order: readonly number[]): Filling {
  const taken = order.map((piece, at) => [piece, best[at]!] as const).filter(([, count]) => count > 0);
  taken.sort((a, b) => a[0] - b[0]);
  return { worth, pieces: taken.map(([piece]) => piece), counts: taken.map(([, count]) => count) };
}

/**
 * The same by dynamic programming over the room, for all boards at once: `worthAt(c)` is the most worth whose sizes add up to
 * exactly c. Its cost is known beforehand and grows with the room, so it is for coarse grids.
 */
export class FillTable {
  private readonly step: number;
  private readonly top: number;
  private value = new Float64Array(0);
  private takes = new Uint8Array(0);
  private readonly lot: { piece: number; count: number; size: number; worth: number }[] = [];

  constructor(
    private readonly sizes: readonly number[],
    longestRoom: number,
  ) {
    this.step = sizes.reduce(greatestCommonDivisor, 0) || 1;
    this.top = Math.floor(longestRoom / this.step);
  }

  /** Table cells a filling takes, for `lots` lots of pieces. */
  cells(lots = this.sizes.length): number {
    return lots * this.top;
  }

  /** Gives the cells worked on. With `worthless`, pieces of no worth are counted too: they may be needed to leave little waste. */
  fill(worths: ArrayLike<number>, copies: ArrayLike<number>, worthless = false): number {
    const { lot, top } = this;
    // Not before it is filled: the cells are counted first, and on a fine grid there are too many to hold.
    if (this.value.length === 0) this.value = new Float64Array(top + 1);
    const { value } = this;
    lot.length = 0;
    for (let piece = 0; piece < this.sizes.length; piece++) {
      if (!(worths[piece]! > 0 || worthless)) continue;
      const size = this.sizes[piece]! / this.step;
      // Any number up to the most is a sum of lots of 1, 2, 4, … and a rest.
      for (let left = Math.min(copies[piece]!, Math.floor(top / size)), count = 1; left > 0; count *= 2) {
        const take = Math.min(count, left);
        lot.push({ piece, count: take, size: take * size, worth: take * worths[piece]! });
        left -= take;
      }
    }
    const width = top + 1;
    if (this.takes.length < lot.length * width) this.takes = new Uint8Array(lot.length * width);
    else this.takes.fill(0, 0, lot.length * width);
    const takes = this.takes;
    value.fill(-Infinity);
    value[0] = 0;
    let reach = 0;
    let cells = lot.length * width;
    for (let at = 0; at < lot.length; at++) {
      const { size, worth } = lot[at]!;
      const base = at * width;
      reach = Math.min(top, reach + size);
      cells += reach - size;
      for (let c = reach; c >= size; c--) {
        const gained = value[c - size]! + worth;
        if (gained > value[c]!) {
          value[c] = gained;
          takes[base + c] = 1;
        }
      }
    }
    return cells;
  }

  /** The best filling of a room that leaves at most `waste` of it; null where there is none. */
  best(room: number, waste = room): Filling | null {
    let at = -1;
    let worth = -Infinity;
    const low = Math.max(0, Math.ceil((room - waste) / this.step));
    for (let c = Math.min(this.top, Math.floor(room / this.step)); c >= low; c--) {
      if (this.value[c]! > worth) [at, worth] = [c, this.value[c]!];
    }
    return at < 0 ? null : { worth, ...this.trace(at) };
  }

  private trace(sum: number): { pieces: number[]; counts: number[] } {
    const width = this.top + 1;
    const pieces: number[] = [];
    const counts: number[] = [];
    let left = sum;
    for (let at = this.lot.length - 1; at >= 0 && left > 0; at--) {
      if (this.takes[at * width + left] === 0) continue;
      const { piece, count, size } = this.lot[at]!;
      left -= size;
      if (pieces[pieces.length - 1] === piece) counts[counts.length - 1]! += count;
      else {
        pieces.push(piece);
        counts.push(count);
      }
    }
    return { pieces: pieces.reverse(), counts: counts.reverse() };
  }
}
