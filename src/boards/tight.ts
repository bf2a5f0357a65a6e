import type { Effort } from '../stock/effort';
import { cutOf, roomOf, type Cut, type LaneFill, type Problem } from './problem';
import { laneSets } from './sections';

/** More cuts, or more steps, than this are not looked through. */
const MOST_CUTS = 30_000;
const MOST_STEPS = 1_000_000;
const MOST_STATES = 150_000;
/** Work of one step. */
const A_STEP = 20;

/** Too many to look through. */
class TooMany extends Error {}

/** Pieces whole worths, no board worth more than its price: the rest of a plan is loss, and there is only so much to lose. */
export interface Pricing {
  readonly worths: readonly number[];
  /** Of each kind of board, in the same worths. */
  readonly prices: readonly number[];
}

/**
 * Looks through all plans of just these boards, so many of each kind. What the boards cost over the worth of all pieces is all that
 * the cuts may lose together, so only cuts that lose no more come into question; a plan takes one of them for the piece that is
 * hardest to place of those still wanted, then goes on with what is left. `'none'`: there is no such plan. Null: too many to tell.
 */
export function tightPlan(
  problem: Problem,
  counts: readonly number[],
  { worths, prices }: Pricing,
  effort: Effort,
): Cut[] | 'none' | null {
  const { kinds, demand, boards } = problem;
  const total = demand.reduce((sum, wanted, at) => sum + wanted * worths[at]!, 0);
  const budget = counts.reduce((sum, count, at) => sum + count * prices[at]!, 0) - total;
  if (budget < 0) return 'none';
  let steps = 0;
  const step = () => {
    if (++steps > MOST_STEPS) throw new TooMany();
    if ((steps & 1023) === 0) {
      effort.spend(1024 * A_STEP);
      if (effort.ended) throw new TooMany();
    }
  };
  try {
    const cuts = boards.flatMap((_, board) =>
      counts[board] === 0 ? [] : allCuts(problem, board, worths, prices[board]! - budget, step),
    );
    if (cuts.length > MOST_CUTS) return null;
    const losses = new Map(cuts.map((cut) => [cut, prices[cut.board]! - worthIn(cut, worths)]));
    cuts.sort((a, b) => losses.get(a)! - losses.get(b)!);
    const having = kinds.map((_, kind) => cuts.filter(({ pieces }) => pieces.includes(kind)));
    // The kind with the fewest cuts is the hardest to place.
    const order = kinds.map((_, kind) => kind).sort((a, b) => having[a]!.length - having[b]!.length);
    const left = [...demand];
    const had = [...counts];
    const chosen: Cut[] = [];
    const failed = new Set<string>();
    const place = (lose: number): boolean => {
      const kind = order.find((each) => left[each]! > 0);
      if (kind === undefined) return true;
      const key = `${left.join()}|${had.join()}`;
      if (failed.has(key)) return false;
      for (const cut of having[kind]!) {
        step();
        const loss = losses.get(cut)!;
        if (loss > lose) break;
        if (had[cut.board] === 0 || cut.pieces.some((piece, at) => cut.counts[at]! > left[piece]!)) continue;
        had[cut.board]!--;
        cut.pieces.forEach((piece, at) => (left[piece]! -= cut.counts[at]!));
        chosen.push(cut);
        if (place(lose - loss)) return true;
        chosen.pop();
        cut.pieces.forEach((piece, at) => (left[piece]! += cut.counts[at]!));
        had[cut.board]!++;
      }
      if (failed.size >= MOST_STATES) throw new TooMany();
      failed.add(key);
      return false;
    };
    return place(budget) ? chosen : 'none';
  } catch (fault) {
    if (fault instanceof TooMany) return null;
    throw fault;
  }
}

function worthIn({ pieces, counts }: Cut, worths: ArrayLike<number>): number {
  return pieces.reduce((sum, piece, at) => sum + counts[at]! * worths[piece]!, 0);
}

interface Filled {
  readonly fill: LaneFill;
  readonly room: number;
  readonly worth: number;
}

/** All cuts of one kind of board that are worth at least so much, those that make the same counted once. */
function allCuts(problem: Problem, board: number, worths: readonly number[], least: number, step: () => void): Cut[] {
  const { boards, demand, hair } = problem;
  const { room, classes, width } = boards[board]!;
  const sets = laneSets(problem, 'plan').find((each) => each.width === width)!.sets;
  const found = new Map<string, Cut>();
  const made = problem.kinds.map(() => 0);
  const keep = (lanes: readonly Filled[], whole: Filled) => {
    const cut = cutOf(
      board,
      lanes.map(({ fill }) => fill),
      whole.fill,
      problem,
    );
    if (cut === null || cut.pieces.length === 0) return;
    const key = `${cut.pieces.join()}:${cut.counts.join()}`;
    if (!found.has(key)) found.set(key, cut);
    if (found.size > MOST_CUTS) throw new TooMany();
  };
  const fillsOf = new Map<number, Filled[]>();
  const fills = (c: number) => {
    let all = fillsOf.get(c);
    if (all === undefined) fillsOf.set(c, (all = allFills(problem, c, room, worths, step)));
    return all;
  };
  /** By class, the most a lane is worth at lengths up to each of the fills', in order of length. */
  const bests = new Map<number, { rooms: number[]; worths: number[] }>();
  const bestWithin = (c: number, length: number) => {
    let best = bests.get(c);
    if (best === undefined) {
      best = { rooms: [], worths: [] };
      let most = -1;
      for (const each of [...fills(c)].sort((a, b) => a.room - b.room)) {
        if (each.worth <= most) continue;
        best.rooms.push(each.room);
        best.worths.push((most = each.worth));
      }
      bests.set(c, best);
    }
    let low = 0;
    let high = best.rooms.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (best.rooms[middle]! <= length) low = middle;
      else high = middle;
    }
    return best.worths[low]!;
  };
  const add = ({ pieces, counts }: LaneFill, sign: number) =>
    pieces.forEach((piece, at) => (made[piece]! += sign * counts[at]!));
  const fits = ({ pieces, counts }: LaneFill) =>
    pieces.every((piece, at) => made[piece]! + counts[at]! <= demand[piece]!);
  for (const whole of fills(classes - 1)) {
    step();
    if (whole.worth >= least) keep([], whole);
    for (const set of sets) {
      const along = room + hair - whole.room;
      const lanes: Filled[] = [];
      const choose = (at: number, worth: number) => {
        let rest = 0;
        for (let later = at; later < set.length; later++) rest += bestWithin(set[later]!, along);
        if (worth + rest < least) return;
        if (at === set.length) return keep(lanes, whole);
        const others = rest - bestWithin(set[at]!, along);
        for (const lane of fills(set[at]!)) {
          step();
          if (worth + lane.worth + others < least) break;
          if (lane.room > along || !fits(lane.fill)) continue;
          lanes.push(lane);
          add(lane.fill, 1);
          choose(at + 1, worth + lane.worth);
          add(lane.fill, -1);
          lanes.pop();
        }
      };
      add(whole.fill, 1);
      choose(0, whole.worth);
      add(whole.fill, -1);
    }
  }
  return [...found.values()];
}

/** All fillings of a lane as wide as a class, worth most first; the empty one among them. */
function allFills(problem: Problem, c: number, room: number, worths: readonly number[], step: () => void): Filled[] {
  const { classes, demand, hair } = problem;
  const { end } = classes[c]!;
  const all: Filled[] = [];
  const pieces: number[] = [];
  const counts: number[] = [];
  const choose = (kind: number, worth: number) => {
    step();
    if (kind === end) {
      const fill = { pieces: [...pieces], counts: [...counts] };
      all.push({ fill, room: roomOf(fill, problem), worth });
      return;
    }
    choose(kind + 1, worth);
    pieces.push(kind);
    counts.push(0);
    for (let count = 1; count <= demand[kind]!; count++) {
      counts[counts.length - 1] = count;
      if (roomOf({ pieces, counts }, problem) > room + hair) break;
      choose(kind + 1, worth + count * worths[kind]!);
    }
    pieces.pop();
    counts.pop();
  };
  choose(0, 0);
  return all.sort((a, b) => b.worth - a.worth);
}
