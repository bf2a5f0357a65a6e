import type { Effort } from '../stock/effort';
import { LaneTable, MOST_STATES, STRETCHES, type Steps } from './lanes';
import type { Cut, LaneFill, Problem } from './problem';
import { mostOver, parted, proper, worthOf, type Layout, type Question } from './proper';
import { laneSets, type Lanes } from './sections';

/** Work of making a cut proper, and of each kind in it. */
const A_CUT = 400;
const A_KIND = 30;

/** The fullest boards: those that hold the most worth for their price. */
export class Filler {
  private readonly setsOf: readonly (readonly Lanes[])[];
  private readonly mostLanes: number;
  private readonly stretch: number;
  /** That of the question being answered. */
  private effort!: Effort;
  /** For as many states as a table had so far, a new one has places from the start. */
  private places = 0;

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
    const table = this.idle.pop() ?? new LaneTable(this.places);
    table.fill(this.problem, this, worths, caps, this.effort);
    this.places = Math.max(this.places, table.size);
    return table;
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
        const cut = this.proper(this.fills(layout, tables), layout, question);
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
    // Tables are large: one that no open case has any more is filled again first.
    const uses = new Map<LaneTable, number>();
    const count = (tables: readonly LaneTable[], more: number) => {
      for (const table of tables) {
        const left = (uses.get(table) ?? 0) + more;
        uses.set(table, left);
        if (left > 0) continue;
        uses.delete(table);
        this.idle.push(table);
      }
    };
    count([root], 1);
    const first = weigh(Array(positions).fill(root), Array(positions).fill(base), 0);
    if (first !== null) {
      count(first.tables, 1);
      open.push(first);
    }
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
      const fills = this.fills(next.layout, next.tables);
      const over = mostOver(fills, wanted);
      const tried = this.proper(fills, next.layout, question);
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
        const fresh: LaneTable[] = [];
        for (const [position, cap] of change) {
          if (cap >= caps[position]![over]!) continue;
          const lower = [...caps[position]!];
          lower[over] = cap;
          caps[position] = lower;
          fresh.push((tables[position] = this.table(worths, lower)));
        }
        const child = weigh(tables, caps, found);
        if (child === null) this.idle.push(...fresh);
        else {
          count(child.tables, 1);
          open.push({ ...child, ratio: Math.min(child.ratio, next.ratio) });
        }
      }
      open.splice(at, 1);
      count(next.tables, -1);
    }
    for (const { tables } of open) count(tables, -1);
    count([root], -1);
    return { ratio, found, cut };
  }

  private proper(fills: readonly LaneFill[], layout: Layout, question: Question): Cut | null {
    this.effort.spend(A_CUT + A_KIND * this.problem.kinds.length);
    return proper(fills, layout, question, this.problem);
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
