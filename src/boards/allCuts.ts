import { patternKey } from '../stock/cutting';
import { cutOf, type Cut, type LaneFill, type Problem } from './problem';
import { laneSets } from './sections';

/** More cuts of a kind of board, or fillings of a lane, than this are too many. */
const MOST_CUTS = 15_000;
const MOST_FILLS = 400_000;
/** Equal stretches of a board, for a quick look at what a lane's neighbors can be worth at the most. */
const STRETCHES = 64;

export interface Filled {
  readonly fill: LaneFill;
  readonly room: number;
  /** The widest class in it; −1: it is empty. */
  readonly class: number;
}

/** A filling with its worth. */
interface Worthy extends Filled {
  readonly worth: number;
}

/** All fillings of a lane of the longest board, the shortest first. Null: too many. `step` is called for each case looked at. */
export function allFills(problem: Problem, step: (many: number) => void): readonly Filled[] | null {
  const { demand, kinds, classes, boards, hair } = problem;
  const longest = Math.max(...boards.map(({ room }) => room)) + hair;
  const widest = Math.max(...boards.map((board) => board.classes));
  const end = kinds.filter((kind) => kind.class < widest).length;
  const all: Filled[] = [{ fill: { pieces: [], counts: [] }, room: 0, class: -1 }];
  // Each filling that is found is gone on with by kinds behind its last one.
  for (let at = 0; at < all.length; at++) {
    const { fill, room, class: last } = all[at]!;
    if (all.length > MOST_FILLS) return null;
    const next = (fill.pieces.at(-1) ?? -1) + 1;
    step((end - next) / 8);
    for (let kind = next; kind < end; kind++) {
      const { step: long, class: c } = kinds[kind]!;
      const opened = room + (c === last ? 0 : classes[c]!.over);
      for (let count = 1; count <= demand[kind]! && opened + count * long <= longest; count++) {
        const more = { pieces: fill.pieces.concat(kind), counts: fill.counts.concat(count) };
        all.push({ fill: more, room: opened + count * long, class: c });
      }
    }
    step(1);
  }
  return all.sort((one, other) => one.room - other.room);
}

/** What lanes as wide as each class can be worth at the most, by the length they have. */
class Bests {
  private readonly rooms: number[][];
  private readonly worths: number[][];

  constructor(fills: readonly Filled[], worths: Float64Array, classes: number) {
    this.rooms = Array.from({ length: classes }, () => [0]);
    this.worths = Array.from({ length: classes }, () => [0]);
    fills.forEach((each, at) => {
      for (let c = Math.max(0, each.class); c < classes && worths[at]! > this.worths[c]!.at(-1)!; c++) {
        this.rooms[c]!.push(each.room);
        this.worths[c]!.push(worths[at]!);
      }
    });
  }

  within(c: number, length: number): number {
    const rooms = this.rooms[c]!;
    let low = 0;
    let high = rooms.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (rooms[middle]! <= length) low = middle;
      else high = middle;
    }
    return this.worths[c]![low]!;
  }
}

/**
 * All cuts that are worth at least so much, by kind of board (Infinity: none of that kind), those that make the same counted once.
 * Null: too many. `step` is called for the cases looked at.
 */
export function allCuts(
  problem: Problem,
  fills: readonly Filled[],
  worths: readonly number[],
  least: readonly number[],
  step: (many: number) => void,
): Cut[] | null {
  const worthOf = Float64Array.from(fills, ({ fill: { pieces, counts } }) =>
    pieces.reduce((sum, piece, at) => sum + counts[at]! * worths[piece]!, 0),
  );
  const bests = new Bests(fills, worthOf, problem.classes.length);
  const cuts: Cut[] = [];
  for (const [board, atLeast] of least.entries()) {
    if (atLeast === Infinity) continue;
    const its = cutsOf(problem, board, fills, worthOf, bests, atLeast, step);
    if (its === null) return null;
    cuts.push(...its);
  }
  return cuts;
}

function cutsOf(
  problem: Problem,
  board: number,
  fills: readonly Filled[],
  worthOf: Float64Array,
  bests: Bests,
  least: number,
  step: (many: number) => void,
): Cut[] | null {
  const { boards, demand, hair, kinds } = problem;
  const { classes, width } = boards[board]!;
  const room = boards[board]!.room + hair;
  const { sets } = laneSets(problem, 'plan').find((each) => each.width === width)!;
  const stretch = room / STRETCHES;
  const best = (c: number, at: number) => bests.within(c, (at + 1) * stretch);
  const whole = Array.from({ length: STRETCHES }, (_, at) => bests.within(classes - 1, room - at * stretch));
  /** What lanes of a set hold at the most, in each stretch that the crosscut may lie in. */
  const inSet = sets.map((set) => Float64Array.from(whole, (_, at) => set.reduce((sum, c) => sum + best(c, at), 0)));
  const lanesAtMost = Float64Array.from(whole, (_, at) => inSet.reduce((most, sums) => Math.max(most, sums[at]!), 0));
  step(sets.length * STRETCHES);
  const useful = (limit: number, rest: (at: number) => number): Worthy[] => {
    const found: Worthy[] = [];
    for (let at = 0; at < fills.length; at++) {
      const each = fills[at]!;
      if (each.room > room) break;
      if (each.class >= limit) continue;
      const worth = worthOf[at]!;
      if (worth + rest(each.room) >= least) found.push({ ...each, worth });
    }
    step(fills.length / 8);
    return found.sort((one, other) => other.worth - one.worth);
  };
  const lanesOf = new Map<number, Worthy[]>();
  for (const c of new Set(sets.flat())) {
    // What all others hold where this lane is as long as the section, or longer: the most from a stretch on.
    const others = new Float64Array(STRETCHES);
    sets.forEach((set, index) => {
      if (!set.includes(c)) return;
      for (let at = 0; at < STRETCHES; at++)
        others[at] = Math.max(others[at]!, inSet[index]![at]! - best(c, at) + whole[at]!);
    });
    for (let at = STRETCHES - 2; at >= 0; at--) others[at] = Math.max(others[at]!, others[at + 1]!);
    lanesOf.set(
      c,
      useful(c + 1, (length) => others[Math.min(STRETCHES - 1, Math.floor(length / stretch))]!),
    );
  }
  const wholes = useful(
    classes,
    (length) => lanesAtMost[Math.max(0, Math.min(STRETCHES - 1, Math.floor((room - length) / stretch)))]!,
  );

  const found = new Map<string, Cut>();
  const made = kinds.map(() => 0);
  const keep = (lanes: readonly Filled[], kept: Filled) => {
    const cut = cutOf(
      board,
      lanes.map(({ fill }) => fill),
      kept.fill,
      problem,
    );
    if (cut === null || cut.pieces.length === 0) return;
    const key = patternKey(cut);
    if (!found.has(key)) found.set(key, cut);
  };
  const add = ({ pieces, counts }: LaneFill, sign: number) => {
    for (let at = 0; at < pieces.length; at++) made[pieces[at]!]! += sign * counts[at]!;
  };
  const fits = ({ pieces, counts }: LaneFill) => {
    for (let at = 0; at < pieces.length; at++)
      if (made[pieces[at]!]! + counts[at]! > demand[pieces[at]!]!) return false;
    return true;
  };
  for (const kept of wholes) {
    if (found.size > MOST_CUTS) return null;
    if (kept.worth >= least) keep([], kept);
    const along = room - kept.room;
    const at = Math.max(0, Math.min(STRETCHES - 1, Math.floor(along / stretch)));
    step(1 + sets.length / 8);
    add(kept.fill, 1);
    sets.forEach((set, index) => {
      if (kept.worth + inSet[index]![at]! < least) return;
      const most = set.map((c) => bests.within(c, along));
      const after = set.map((_, from) => most.slice(from + 1).reduce((sum, each) => sum + each, 0));
      const lanes: Filled[] = [];
      const choose = (lane: number, worth: number) => {
        if (lane === set.length) return keep(lanes, kept);
        for (const each of lanesOf.get(set[lane]!)!) {
          if (worth + each.worth + after[lane]! < least) break;
          step(1);
          if (each.room > along || !fits(each.fill)) continue;
          lanes.push(each);
          add(each.fill, 1);
          choose(lane + 1, worth + each.worth);
          add(each.fill, -1);
          lanes.pop();
        }
      };
      choose(0, kept.worth);
    });
    add(kept.fill, -1);
  }
  return [...found.values()];
}
