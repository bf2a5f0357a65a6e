import type { Effort } from '../stock/effort';
import { LaneTable, MOST_STATES, STRETCHES, type Steps } from './lanes';
import { cutOf, type Cut, type LaneFill, type Problem } from './problem';
import { laneSets, type Lanes } from './sections';

/** A board filled lane by lane, each lane the best by itself; together they may make more of a kind than is wanted. */
interface Layout {
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

/** The fullest boards: those that hold the most worth for their price. */
export class Filler {
  private readonly setsOf: readonly (readonly Lanes[])[];
  private readonly mostLanes: number;
  private readonly stretch: number;
  /** That of the question being answered. */
  private effort!: Effort;

  constructor(
    readonly problem: Problem,
    readonly purpose: 'plan' | 'bound',
    readonly most = MOST_STATES,
    /** Tables that no question uses just now. */
    readonly idle: LaneTable[] = [],
  ) {
    const { boards, hair } = problem;
    const sets = laneSets(problem, purpose);
    this.setsOf = boards.map(({ width }) => sets.find((each) => each.width === width)!.sets);
    this.mostLanes = Math.max(0, ...this.setsOf.flatMap((each) => each.map((lanes) => lanes.length)));
    this.stretch = (Math.max(...boards.map(({ room }) => room)) + hair) / STRETCHES;
  }

  private table(worths: ArrayLike<number>, caps: ArrayLike<number>): LaneTable {
    const table = this.idle.pop() ?? new LaneTable();
    return table.fill(this.problem, this, worths, caps, this.effort);
  }

  /** Quickly: boards that are worth more than their price, `each` different ones of every kind of board. */
  some(question: Question, each: number, effort: Effort): Cut[] {
    this.effort = effort;
    const { boards } = this.problem;
    const table = this.table(question.worths, question.wanted);
    const tables = Array.from({ length: this.mostLanes + 1 }, () => table);
    const cuts: Cut[] = [];
    for (let board = 0; board < boards.length; board++) {
      if (question.prices[board] === Infinity || boards[board]!.classes === 0) continue;
      for (const layout of this.best(board, tables, question.prices[board]!, each)) {
        const cut = proper(this.fills(layout, tables), layout, question, this.problem);
        if (cut !== null && worthOf(cut, question.worths) > question.prices[board]!) cuts.push(cut);
      }
    }
    this.idle.push(table);
    return cuts;
  }

  /**
   * The greatest worth per price that any board can have with no more of a kind than is wanted, and a cut that has it. Lanes that
   * together make too many of a kind are parted into cases, in each of which one lane or the others may make fewer. After `patience`
   * cases, or when the effort ends, `ratio` is what no board exceeds, and the cut the best one found.
   */
  fullest(
    question: Question,
    patience: number,
    effort: Effort,
    enough = Infinity,
  ): { ratio: number; found: number; cut: Cut | null } {
    this.effort = effort;
    const { problem } = this;
    const { worths, wanted, prices } = question;
    const positions = this.mostLanes + 1;
    const root = this.table(worths, wanted);
    const made = [root];
    type Case = { tables: LaneTable[]; caps: (readonly number[])[]; layout: Layout; ratio: number };
    const weigh = (tables: LaneTable[], caps: (readonly number[])[], floor: number): Case | null => {
      let best: Case | null = null;
      for (let board = 0; board < problem.boards.length; board++) {
        const price = prices[board]!;
        if (price === Infinity || problem.boards[board]!.classes === 0) continue;
        const least: number = Math.max(floor, best === null ? 0 : (best as Case).ratio) * price;
        const layout: Layout | undefined = this.best(board, tables, least, 1)[0];
        if (layout !== undefined && layout.worth > least) best = { tables, caps, layout, ratio: layout.worth / price };
      }
      return best;
    };
    const base = Array.from(wanted);
    const open: Case[] = [];
    const first = weigh(Array(positions).fill(root), Array(positions).fill(base), 0);
    if (first !== null) open.push(first);
    let found = 0;
    let cut: Cut | null = null;
    let ratio = 0;
    for (let cases = 0; ; cases++) {
      let at = 0;
      for (let i = 1; i < open.length; i++) if (open[i]!.ratio > open[at]!.ratio) at = i;
      const next = open[at];
      if (next === undefined || next.ratio <= found) {
        ratio = found;
        break;
      }
      open.splice(at, 1);
      const fills = this.fills(next.layout, next.tables);
      const over = mostOver(fills, wanted);
      const tried = proper(fills, next.layout, question, problem);
      const triedRatio = tried === null ? 0 : worthOf(tried, worths) / prices[next.layout.board]!;
      if (tried !== null && triedRatio > found) [found, cut] = [triedRatio, tried];
      // Nothing over: what the ruler has here is the best of all cases, even where the exact lengths don't allow it.
      if (over === null || found >= enough || cases >= patience || this.effort.ended) {
        ratio = Math.max(found, next.ratio);
        break;
      }
      for (const change of parted(fills, over, wanted[over]!)) {
        const tables = [...next.tables];
        const caps = [...next.caps];
        for (const [position, cap] of change) {
          if (cap >= caps[position]![over]!) continue;
          const lower = [...caps[position]!];
          lower[over] = cap;
          caps[position] = lower;
          made.push((tables[position] = this.table(worths, lower)));
        }
        const child = weigh(tables, caps, found);
        if (child !== null) open.push({ ...child, ratio: Math.min(child.ratio, next.ratio) });
      }
    }
    this.idle.push(...made);
    return { ratio, found, cut };
  }

  /** The `count` best layouts of one board worth more than `least`, best first, each with other lanes. */
  private best(board: number, tables: readonly LaneTable[], least: number, count: number): Layout[] {
    const { classes } = this.problem.boards[board]!;
    const room = this.problem.boards[board]!.room + this.problem.hair;
    const keeping = tables[0]!;
    const whole = keeping.best(classes - 1);
    const found: Layout[] = [];
    const floor = () => (found.length < count ? least : found.at(-1)!.worth);
    const keep = (layout: Layout) => {
      found.push(layout);
      found.sort((a, b) => b.worth - a.worth);
      if (found.length > count) found.pop();
    };
    const alone = keeping.worth[keeping.at(whole, room)]!;
    if (alone > least) keep({ board, lanes: [], along: 0, worth: alone });
    const stretches = Math.min(STRETCHES, Math.ceil(room / this.stretch));
    const rest = new Float64Array(stretches);
    for (let at = 0; at < stretches; at++) rest[at] = keeping.worth[keeping.at(whole, room - at * this.stretch)]!;
    for (const lanes of this.setsOf[board]!) {
      this.effort.spend(2 * stretches * (lanes.length + 1));
      let most = floor();
      let along = -1;
      for (let at = 0; at < stretches; at++) {
        let bound = rest[at]!;
        for (let lane = 0; lane < lanes.length; lane++) bound += tables[lane + 1]!.sampled(lanes[lane]!, at + 1);
        if (bound <= most) continue;
        const better = this.crosscut(lanes, tables, whole, room, at * this.stretch, most);
        if (better !== null) [most, along] = [better.worth, better.along];
      }
      if (along >= 0) keep({ board, lanes, along, worth: most });
    }
    return found;
  }

  /** The best place for the crosscut in one stretch, where it gives more than `most`. */
  private crosscut(
    lanes: Lanes,
    tables: readonly LaneTable[],
    whole: Steps,
    room: number,
    from: number,
    most: number,
  ): { along: number; worth: number } | null {
    const to = Math.min(room, from + this.stretch);
    const n = lanes.length;
    const ends: number[] = [];
    const states: number[] = [];
    let worth = 0;
    let steps = 1;
    for (let lane = 0; lane < n; lane++) {
      const table = tables[lane + 1]!;
      const best = table.best(lanes[lane]!);
      ends.push(best.end);
      states.push(table.at(best, from));
      worth += table.worth[states[lane]!]!;
    }
    const keeping = tables[0]!;
    let kept = keeping.at(whole, room - from);
    let found: { along: number; worth: number } | null = null;
    let along = from;
    for (;;) {
      const sum = worth + keeping.worth[kept]!;
      if (sum > most) found = { along, worth: (most = sum) };
      // The next length at which some lane holds more.
      let next = Infinity;
      for (let lane = 0; lane < n; lane++) {
        const state = states[lane]! + 1;
        if (state < ends[lane]!) next = Math.min(next, tables[lane + 1]!.length[state]!);
      }
      if (next > to) break;
      along = next;
      steps++;
      for (let lane = 0; lane < n; lane++) {
        const table = tables[lane + 1]!;
        const state = states[lane]! + 1;
        if (state >= ends[lane]! || table.length[state]! > along) continue;
        worth += table.worth[state]! - table.worth[state - 1]!;
        states[lane] = state;
      }
      while (keeping.length[kept]! > room - along) {
        kept--;
        steps++;
      }
    }
    this.effort.spend(4 * steps * n);
    return found;
  }

  /** The section that keeps its width first, then the lanes. */
  private fills({ board, lanes, along }: Layout, tables: readonly LaneTable[]): LaneFill[] {
    const { classes, room } = this.problem.boards[board]!;
    const filled = (table: LaneTable, c: number, length: number) => table.pieces(table.at(table.best(c), length));
    const whole = filled(tables[0]!, classes - 1, room + this.problem.hair - along);
    return [whole, ...lanes.map((c, at) => filled(tables[at + 1]!, c, along))];
  }
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
function mostOver(fills: readonly LaneFill[], wanted: ArrayLike<number>): number | null {
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
function parted(fills: readonly LaneFill[], kind: number, wanted: number): [position: number, cap: number][][] {
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
function proper(fills: readonly LaneFill[], layout: Layout, question: Question, problem: Problem): Cut | null {
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
