import type { LaneFill, Problem } from './problem';

/** More fillings of a lane than this are too many. */
const MOST_FILLS = 400_000;

/**
 * All fillings of a lane, the shortest first; the first is empty. Each but that one is another filling, `before`, with some pieces more of one
 * kind behind its last, so a filling always comes after the one it goes on from.
 */
export class Fills {
  readonly count: number;
  readonly room: Float64Array;
  /** The widest class in each; −1: it is empty. */
  readonly class: Int32Array;
  readonly before: Int32Array;
  readonly kind: Int32Array;
  readonly added: Int32Array;

  constructor({ room, class: classes, before, kind, added }: Found) {
    const count = (this.count = room.length);
    const rooms = Float64Array.from(room);
    const order = new Uint32Array(count);
    for (let at = 0; at < count; at++) order[at] = at;
    order.sort((one, other) => rooms[one]! - rooms[other]!);
    const place = new Int32Array(count);
    this.room = new Float64Array(count);
    this.class = new Int32Array(count);
    this.before = new Int32Array(count);
    this.kind = new Int32Array(count);
    this.added = new Int32Array(count);
    for (let at = 0; at < count; at++) {
      const from = order[at]!;
      place[from] = at;
      this.room[at] = rooms[from]!;
      this.class[at] = classes[from]!;
      this.before[at] = from === 0 ? -1 : place[before[from]!]!;
      this.kind[at] = kind[from]!;
      this.added[at] = added[from]!;
    }
  }

  /** What each is worth, pieces of a kind being worth so much. */
  worths(of: ArrayLike<number>): Float64Array {
    const worths = new Float64Array(this.count);
    for (let at = 1; at < this.count; at++) {
      worths[at] = worths[this.before[at]!]! + this.added[at]! * of[this.kind[at]!]!;
    }
    return worths;
  }

  /** The pieces of one, in the order of their kinds. */
  pieces(at: number): LaneFill {
    const pieces: number[] = [];
    const counts: number[] = [];
    for (let each = at; each > 0; each = this.before[each]!) {
      pieces.push(this.kind[each]!);
      counts.push(this.added[each]!);
    }
    return { pieces: pieces.reverse(), counts: counts.reverse() };
  }
}

/** Fillings in the order in which they are found. */
type Found = Readonly<Record<'room' | 'class' | 'before' | 'kind' | 'added', number[]>>;

/** Work of one filling that is found, put in order and written down. */
const A_FILL = 15;

/** All fillings of a lane of the longest board. Null: too many. `step` is called for the cases looked at. */
export function allFills(problem: Problem, step: (many: number) => void): Fills | null {
  const { demand, kinds, classes, boards, hair } = problem;
  const longest = Math.max(...boards.map(({ room }) => room)) + hair;
  const widest = Math.max(...boards.map((board) => board.classes));
  const end = kinds.filter((kind) => kind.class < widest).length;
  const all: Found = { room: [0], class: [-1], before: [-1], kind: [-1], added: [0] };
  // Each filling that is found is gone on with by kinds behind its last one.
  for (let at = 0; at < all.room.length; at++) {
    const room = all.room[at]!;
    const last = all.class[at]!;
    if (all.room.length > MOST_FILLS) return null;
    step(A_FILL + end - all.kind[at]!);
    for (let kind = all.kind[at]! + 1; kind < end; kind++) {
      const { step: long, class: c } = kinds[kind]!;
      const opened = room + (c === last ? 0 : classes[c]!.over);
      for (let added = 1; added <= demand[kind]! && opened + added * long <= longest; added++) {
        all.room.push(opened + added * long);
        all.class.push(c);
        all.before.push(at);
        all.kind.push(kind);
        all.added.push(added);
      }
    }
  }
  return new Fills(all);
}
