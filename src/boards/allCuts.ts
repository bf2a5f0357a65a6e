import type { Fills } from './fills';
import { cutOf, type Cut, type Problem } from './problem';
import { laneSets } from './sections';

/** More cuts of a kind of board than this are too many. */
const MOST_CUTS = 15_000;
/** Equal stretches of a board, for a quick look at what a lane's neighbors can be worth at the most. */
const STRETCHES = 64;

/** What lanes as wide as each class can be worth at the most, by the length they have. */
class Bests {
  private readonly rooms: number[][];
  private readonly worths: number[][];

  constructor(fills: Fills, worths: Float64Array, classes: number) {
    this.rooms = Array.from({ length: classes }, () => [0]);
    this.worths = Array.from({ length: classes }, () => [0]);
    const most = new Float64Array(classes);
    for (let at = 0; at < fills.count; at++) {
      const worth = worths[at]!;
      for (let c = Math.max(0, fills.class[at]!); c < classes && worth > most[c]!; c++) {
        most[c] = worth;
        this.rooms[c]!.push(fills.room[at]!);
        this.worths[c]!.push(worth);
      }
    }
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
  fills: Fills,
  worths: readonly number[],
  least: readonly number[],
  step: (many: number) => void,
): Cut[] | null {
  const worthOf = fills.worths(worths);
  const bests = new Bests(fills, worthOf, problem.classes.length);
  step(fills.count);
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
  fills: Fills,
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
  const stretchAt = (length: number) => Math.max(0, Math.min(STRETCHES - 1, Math.floor(length / stretch)));
  const atEnds = Array.from({ length: classes }, (_, c) =>
    Float64Array.from({ length: STRETCHES }, (__, at) => bests.within(c, (at + 1) * stretch)),
  );
  const whole = Array.from({ length: STRETCHES }, (_, at) => bests.within(classes - 1, room - at * stretch));
  /** What lanes of a set hold at the most, in each stretch that the crosscut may lie in. */
  const inSet = sets.map((set) =>
    Float64Array.from(whole, (_, at) => set.reduce((sum, c) => sum + atEnds[c]![at]!, 0)),
  );
  const lanesAtMost = Float64Array.from(whole, (_, at) => inSet.reduce((most, sums) => Math.max(most, sums[at]!), 0));
  step(sets.length * STRETCHES);
  /** The fillings with classes before `limit` that are worth enough with the most that the rest of the board can be, those worth most first. */
  const useful = (limit: number, rest: ArrayLike<number>): Int32Array => {
    const found: number[] = [];
    for (let at = 0; at < fills.count && fills.room[at]! <= room; at++) {
      if (fills.class[at]! < limit && worthOf[at]! + rest[stretchAt(fills.room[at]!)]! >= least) found.push(at);
    }
    step(fills.count / 4 + 5 * found.length);
    return Int32Array.from(found.sort((one, other) => worthOf[other]! - worthOf[one]!));
  };
  const lanesOf = new Map<number, Int32Array>();
  for (const c of new Set(sets.flat())) {
    // What all others hold where this lane is as long as the section, or longer: the most from a stretch on.
    const others = new Float64Array(STRETCHES);
    sets.forEach((set, index) => {
      if (!set.includes(c)) return;
      for (let at = 0; at < STRETCHES; at++)
        others[at] = Math.max(others[at]!, inSet[index]![at]! - atEnds[c]![at]! + whole[at]!);
    });
    for (let at = STRETCHES - 2; at >= 0; at--) others[at] = Math.max(others[at]!, others[at + 1]!);
    lanesOf.set(c, useful(c + 1, others));
  }
  // The longer the section that keeps its width is, the less the lanes have.
  const wholes = useful(classes, lanesAtMost.slice().reverse());

  const found = new Map<string, Cut>();
  const made = new Int32Array(kinds.length);
  const keep = (lanes: readonly number[], kept: number) => {
    // Most cuts make what another makes: those are told before one is put together.
    const key = made.join();
    if (found.has(key)) return;
    const cut = cutOf(
      board,
      lanes.map((lane) => fills.pieces(lane)),
      fills.pieces(kept),
      problem,
    );
    if (cut === null || cut.pieces.length === 0) return;
    found.set(key, cut);
  };
  const add = (fill: number, sign: number) => {
    for (let at = fill; at > 0; at = fills.before[at]!) made[fills.kind[at]!]! += sign * fills.added[at]!;
  };
  const fits = (fill: number) => {
    for (let at = fill; at > 0; at = fills.before[at]!)
      if (made[fills.kind[at]!]! + fills.added[at]! > demand[fills.kind[at]!]!) return false;
    return true;
  };
  for (const kept of wholes) {
    if (found.size > MOST_CUTS) return null;
    const along = room - fills.room[kept]!;
    const at = stretchAt(along);
    step(1 + sets.length / 4);
    add(kept, 1);
    if (worthOf[kept]! >= least) keep([], kept);
    sets.forEach((set, index) => {
      if (worthOf[kept]! + inSet[index]![at]! < least) return;
      const most = set.map((c) => bests.within(c, along));
      const after = set.map((_, from) => most.slice(from + 1).reduce((sum, each) => sum + each, 0));
      step(8 * set.length);
      const lanes: number[] = [];
      /** Lanes of one width are chosen in the order of their list, so that no set of fillings is met twice. */
      const choose = (lane: number, worth: number, first: number) => {
        if (lane === set.length) return keep(lanes, kept);
        const list = lanesOf.get(set[lane]!)!;
        const enough = least - worth - after[lane]!;
        let place = first;
        for (; place < list.length && worthOf[list[place]!]! >= enough; place++) {
          const each = list[place]!;
          if (fills.room[each]! > along || !fits(each)) continue;
          lanes.push(each);
          add(each, 1);
          choose(lane + 1, worth + worthOf[each]!, set[lane + 1] === set[lane] ? place : 0);
          add(each, -1);
          lanes.pop();
        }
        step(place - first + 1);
      };
      choose(0, worthOf[kept]!, 0);
    });
    add(kept, -1);
  }
  return [...found.values()];
}
