import type { Effort } from '../stock/effort';
import type { LaneFill, Problem } from './problem';

/** Work of one state merged, and of one sample. */
const A_STATE = 6;
const A_SAMPLE = 2;

/** Equal stretches of the longest board, for a quick look at where a crosscut may pay. */
export const STRETCHES = 32;

/** Lists longer than this are thinned: of the states in one of so many equal lengths of lane, only the one worth most is kept. */
export const MOST_STATES = 8_000;
/** The same for a quick answer. */
export const FEW_STATES = 400;

/** Places for states that a table begins with; it grows as it needs more. */
const AT_FIRST = 256;

/** A rising step function: what a lane can be worth by the length it has. Entries `start` up to `end` of a table's states. */
export interface Steps {
  readonly start: number;
  readonly end: number;
}

/**
 * The best a lane can hold, for every width and length at once: the states of a class are the fillings with pieces no wider than it
 * that none shorter is worth as much as. One bounded knapsack over the classes, narrowest first; opening a class costs its `over`.
 * Lengths are exact. Only where a list has to be thinned is something given up, and then by purpose: a plan keeps true
 * lengths, a bound gives what is kept the least length that is dropped.
 */
export class LaneTable {
  length: Float64Array;
  worth: Float64Array;
  private before: Int32Array;
  /** Kind and count added to the state before, as kind·4096 + count; −1: a class was opened. */
  private added: Int32Array;
  private states = 0;
  private readonly tops: Steps[] = [];
  private room = 0;
  private relaxed = false;
  private most = MOST_STATES;
  /** By class, what its lanes are worth at the ends of equal stretches of the longest board. */
  private samples = new Float64Array(0);

  constructor(places = 0) {
    const capacity = Math.max(places, AT_FIRST);
    this.length = new Float64Array(capacity);
    this.worth = new Float64Array(capacity);
    this.before = new Int32Array(capacity);
    this.added = new Int32Array(capacity);
  }

  /** States that it has. */
  get size(): number {
    return this.states;
  }

  /**
   * Fills the table anew, for these worths, whole numbers, with no more than `caps` of each kind in a lane. A table is large, so
   * one is used for many fillings.
   */
  fill(
    { classes, kinds, boards, hair }: Problem,
    { purpose, most }: { readonly purpose: 'plan' | 'bound'; readonly most: number },
    worths: ArrayLike<number>,
    caps: ArrayLike<number>,
    effort: Effort,
  ): this {
    this.room = Math.max(...boards.map((board) => board.room)) + hair;
    this.relaxed = purpose === 'bound';
    this.most = most;
    this.tops.length = 0;
    this.states = 1;
    this.length[0] = this.worth[0] = 0;
    this.before[0] = this.added[0] = -1;
    let top: Steps = { start: 0, end: 1 };
    for (const { first, end, over } of classes) {
      let inside: Steps | null = null;
      for (let kind = first; kind < end; kind++) {
        const { step } = kinds[kind]!;
        if (worths[kind]! <= 0) continue;
        const cap = Math.min(caps[kind]!, Math.floor((this.room - over) / step));
        // Lots of 1, 2, 4, … and a rest: any number up to the cap is a sum of some.
        for (let left = cap, lot = 1; left > 0; left -= lot, lot = Math.min(2 * lot, left)) {
          inside ??= this.opened(top, over);
          inside = this.merged(inside, inside, lot * step, lot * worths[kind]!, kind * 4096 + lot);
        }
      }
      if (inside !== null) top = over === 0 ? inside : this.merged(top, inside, 0, 0, 0);
      this.tops.push(top);
    }
    this.sample();
    effort.spend(A_STATE * this.states + A_SAMPLE * this.samples.length);
    return this;
  }

  private sample(): void {
    const { tops, length, worth, room } = this;
    if (this.samples.length < tops.length * (STRETCHES + 1))
      this.samples = new Float64Array(tops.length * (STRETCHES + 1));
    tops.forEach((top, c) => {
      const base = c * (STRETCHES + 1);
      if (c > 0 && top === tops[c - 1]) {
        this.samples.copyWithin(base, base - STRETCHES - 1, base);
        return;
      }
      let state = top.start;
      for (let at = 0; at <= STRETCHES; at++) {
        const end = (at * room) / STRETCHES;
        while (state + 1 < top.end && length[state + 1]! <= end) state++;
        this.samples[base + at] = worth[state]!;
      }
    });
  }

  /** What lanes as wide as a class are worth at the end of a stretch. */
  sampled(c: number, stretch: number): number {
    return this.samples[c * (STRETCHES + 1) + stretch]!;
  }

  /** States of the lanes as wide as a class. */
  best(c: number): Steps {
    return this.tops[c]!;
  }

  /** The last state no longer than that. */
  at({ start, end }: Steps, length: number): number {
    let low = start;
    let high = end;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (this.length[middle]! <= length) low = middle;
      else high = middle;
    }
    return low;
  }

  /** The pieces of a state. */
  pieces(state: number): LaneFill {
    const counts = new Map<number, number>();
    for (let at = state; at > 0; at = this.before[at]!) {
      const added = this.added[at]!;
      if (added >= 0) counts.set(added >> 12, (counts.get(added >> 12) ?? 0) + (added & 4095));
    }
    const pieces = [...counts.keys()].sort((a, b) => a - b);
    return { pieces, counts: pieces.map((piece) => counts.get(piece)!) };
  }

  private opened({ start, end }: Steps, over: number): Steps {
    if (over === 0) return { start, end };
    this.reserve(end - start);
    const from = this.states;
    for (let at = start; at < end && this.length[at]! + over <= this.room; at++) {
      this.length[this.states] = this.length[at]! + over;
      this.worth[this.states] = this.worth[at]!;
      this.before[this.states] = at;
      this.added[this.states++] = -1;
    }
    return { start: from, end: this.states };
  }

  /** The best of two lists, all of the second longer by a length and worth more. */
  private merged(one: Steps, other: Steps, longer: number, more: number, adding: number): Steps {
    this.reserve(one.end - one.start + other.end - other.start);
    const { length, worth, before, added, room, relaxed } = this;
    const thin = one.end - one.start + other.end - other.start > this.most ? this.most / room : 0;
    const from = this.states;
    let to = from;
    let a = one.start;
    let b = other.start;
    let lastWorth = -1;
    let bucket = -1;
    for (;;) {
      const lengthA = a < one.end ? length[a]! : Infinity;
      const lengthB = b < other.end ? length[b]! + longer : Infinity;
      let way: number;
      let itsLength: number;
      let itsWorth: number;
      if (lengthA <= lengthB) {
        if (lengthA > room) break;
        [way, itsLength, itsWorth] = [-1, lengthA, worth[a]!];
      } else {
        if (lengthB > room) break;
        [way, itsLength, itsWorth] = [1, lengthB, worth[b]! + more];
      }
      if (itsWorth > lastWorth) {
        lastWorth = itsWorth;
        if (thin > 0) {
          const its = Math.floor(itsLength * thin);
          if (its === bucket) {
            to--;
            if (relaxed) itsLength = length[to]!;
          }
          bucket = its;
        }
        length[to] = itsLength;
        worth[to] = itsWorth;
        if (way < 0 || longer === 0) {
          const same = way < 0 ? a : b;
          before[to] = before[same]!;
          added[to] = added[same]!;
        } else {
          before[to] = b;
          added[to] = adding;
        }
        to++;
      }
      if (way < 0) a++;
      else b++;
    }
    this.states = to;
    return { start: from, end: to };
  }

  private reserve(more: number): void {
    const needed = this.states + more;
    if (needed <= this.length.length) return;
    const capacity = Math.max(needed, 2 * this.length.length);
    const grown = <T extends Float64Array | Int32Array>(from: T, to: T): T => {
      to.set(from);
      return to;
    };
    this.length = grown(this.length, new Float64Array(capacity));
    this.worth = grown(this.worth, new Float64Array(capacity));
    this.before = grown(this.before, new Int32Array(capacity));
    this.added = grown(this.added, new Int32Array(capacity));
  }
}
