import type { Part, WoodOrder } from './order';

/**
 * The order as the saw sees it. A lane of a board is filled from the left with rows; n pieces of a class of parts in one row take
 * over + Σ step, a saw cut behind the row included, where a piece's own `step` depends on its length and `over` on its class alone:
 * it is what a flipped row's slanted ends cost. Straight pieces have no `over`. So a lane as long as `room` (with a saw cut more
 * than the wood) holds exactly what adds up to no more.
 */
export interface Problem {
  /** Narrowest first. */
  readonly classes: readonly PartClass[];
  /** In the order of their classes. */
  readonly kinds: readonly Kind[];
  readonly demand: readonly number[];
  readonly boards: readonly Board[];
  readonly kerf: number;
  readonly trim: number;
  /** Lengths and widths this little over still fit: it absorbs rounding, never a real difference. */
  readonly hair: number;
}

/** Parts that lie in one row: straight ones of one width, or segments of one width and angle. */
export interface PartClass {
  readonly width: number;
  readonly over: number;
  /** The kinds of the class are those from `first` up to `end`. */
  readonly first: number;
  readonly end: number;
}

/** Pieces alike to the saw: a length in a class. */
export interface Kind {
  readonly class: number;
  readonly step: number;
  /** Parts of the order, by their place in it. */
  readonly parts: readonly number[];
}

export interface Board {
  /** Place in the order's list. */
  readonly place: number;
  readonly width: number;
  /** Between the trims, and a saw cut more. */
  readonly room: number;
  /** In cents. */
  readonly price: number;
  readonly limit: number;
  /** Lanes may be as wide as the classes before this one: those that fit the board. 0: none does. */
  readonly classes: number;
}

/** A part's outline. */
export interface Outline {
  readonly width: number;
  /** Length of board it takes by itself. */
  readonly long: number;
  /** Of a segment, at its inside corners; of a straight piece, its length. */
  readonly short: number;
  /** Angle of its ends off square, radians. */
  readonly half: number;
}

export function outlineOf(part: Part): Outline {
  if (part.kind === 'straight') return { width: part.width, long: part.length, short: part.length, half: 0 };
  const { inside, outside, half } = part;
  const sine = Math.sin(half / 2);
  return {
    // Written so that no digits cancel: outside − inside·cos(half).
    width: outside - inside + 2 * inside * sine * sine,
    long: 2 * outside * Math.tan(half),
    short: 2 * inside * Math.sin(half),
    half,
  };
}

/** Two parts whose widths and angles differ by less than a billionth of the longest board lie in one row. */
const ALIKE = 1e-9;
const HAIR = 1e-8;

/** The problem, and the parts that no board holds, by their place in the order. */
export function problemOf(order: WoodOrder): { problem: Problem; tooLarge: number[] } {
  const { parts, kerf, trim } = order;
  const longest = Math.max(0, ...order.boards.map(({ length }) => length));
  const hair = HAIR * longest;
  const alike = ALIKE * longest;
  const usable = order.boards.map(({ width, length }) => ({ width, room: length - 2 * trim + kerf }));
  const tooLarge: number[] = [];
  const placed = parts.flatMap((part, place) => {
    const outline = outlineOf(part);
    const { width, long, short, half } = outline;
    if (!usable.some((board) => width <= board.width + hair && long + kerf <= board.room + hair)) {
      tooLarge.push(place);
      return [];
    }
    const step = (long + short) / 2 + kerf / Math.cos(half);
    const over = long + kerf - step;
    // Ends so steep that flipping gains nothing are cut square, like a straight piece as long as the long edge.
    if (half === 0 || over <= 0) return [{ place, width, half: 0, step: long + kerf, over: 0, count: part.count }];
    return [{ place, width, half, step, over, count: part.count }];
  });
  placed.sort((a, b) => a.width - b.width || a.half - b.half || b.step - a.step || a.place - b.place);

  const classes: { width: number; over: number; first: number; end: number; half: number }[] = [];
  const kinds: { class: number; step: number; parts: number[] }[] = [];
  const demand: number[] = [];
  // Widths a rounding apart must not part a class: groups of such widths are put in order of angle and length again.
  for (const group of groupsBy(placed, (a, b) => b.width - a.width <= alike)) {
    group.sort((a, b) => a.half - b.half || b.step - a.step || a.place - b.place);
    for (const row of groupsBy(group, (a, b) => Math.abs(b.half - a.half) <= ALIKE)) {
      row.sort((a, b) => b.step - a.step || a.place - b.place);
      const first = kinds.length;
      for (const same of groupsBy(row, (a, b) => a.step - b.step <= alike)) {
        kinds.push({
          class: classes.length,
          step: Math.max(...same.map(({ step }) => step)),
          parts: same.map(({ place }) => place),
        });
        demand.push(same.reduce((sum, { count }) => sum + count, 0));
      }
      const widest = Math.max(...row.map(({ width }) => width));
      const over = Math.max(...row.map((one) => one.over));
      classes.push({ width: widest, over, first, end: kinds.length, half: row[0]!.half });
    }
  }
  const boards = order.boards.flatMap(({ width, price, limit }, place) => {
    const { room } = usable[place]!;
    const fitting = classes.filter((each) => each.width <= width + hair).length;
    if (room <= kerf + hair || fitting === 0 || limit === 0) return [];
    return [{ place, width, room, price: Math.round(price * 100), limit: limit ?? Infinity, classes: fitting }];
  });
  return { problem: { classes, kinds, demand, boards, kerf, trim, hair }, tooLarge };
}

function groupsBy<T>(sorted: readonly T[], together: (before: T, after: T) => boolean): T[][] {
  const groups: T[][] = [];
  for (const one of sorted) {
    const group = groups.at(-1);
    if (group !== undefined && together(group.at(-1)!, one)) group.push(one);
    else groups.push([one]);
  }
  return groups;
}

/** The same boards with another demand of the same kinds. */
export function withDemand(problem: Problem, demand: readonly number[], limits?: readonly number[]): Problem {
  if (limits === undefined) return { ...problem, demand };
  return { ...problem, demand, boards: problem.boards.map((board, at) => ({ ...board, limit: limits[at]! })) };
}

/** Some kinds of a problem as a problem of its own. */
export interface Portion {
  readonly problem: Problem;
  /** A cut of the whole problem, where it makes none but these kinds; else null. */
  readonly toHere: (cut: Cut) => Cut | null;
  readonly toWhole: (cut: Cut) => Cut;
}

/** The kinds that `demand` wants any of. */
export function portionOf(problem: Problem, demand: readonly number[], limits: readonly number[]): Portion {
  const kinds: Kind[] = [];
  const wanted: number[] = [];
  const here = new Int32Array(problem.kinds.length).fill(-1);
  const whole: number[] = [];
  const classes: PartClass[] = [];
  for (const { first, end, width, over } of problem.classes) {
    const from = kinds.length;
    for (let kind = first; kind < end; kind++) {
      if (demand[kind]! <= 0) continue;
      here[kind] = kinds.length;
      whole.push(kind);
      kinds.push({ ...problem.kinds[kind]!, class: classes.length });
      wanted.push(demand[kind]!);
    }
    if (kinds.length > from) classes.push({ width, over, first: from, end: kinds.length });
  }
  const boards = problem.boards.map((board, at) => ({
    ...board,
    limit: limits[at]!,
    classes: classes.filter(({ width }) => width <= board.width + problem.hair).length,
  }));
  const mapped = (cut: Cut, to: ArrayLike<number>): Cut => {
    const fill = (lane: LaneFill): LaneFill => ({ ...lane, pieces: lane.pieces.map((piece) => to[piece]!) });
    return { ...cut, ...fill(cut), lanes: cut.lanes.map(fill), whole: cut.whole && fill(cut.whole) };
  };
  return {
    problem: { ...problem, classes, kinds, demand: wanted, boards },
    toHere: (cut) => (cut.pieces.every((piece) => here[piece]! >= 0) ? mapped(cut, here) : null),
    toWhole: (cut) => mapped(cut, whole),
  };
}

/** What is in one lane: kinds and how many of each. */
export interface LaneFill {
  readonly pieces: readonly number[];
  readonly counts: readonly number[];
}

/** One board cut: what it makes altogether, and in which lanes. A `Pattern` of the master problem. */
export interface Cut {
  readonly board: number;
  readonly pieces: readonly number[];
  readonly counts: readonly number[];
  /** Of the section that is ripped. */
  readonly lanes: readonly LaneFill[];
  /** Of the section that keeps the board's width. */
  readonly whole: LaneFill | null;
}

/** Room that a lane's rows take, saw cuts behind them included. */
export function roomOf({ pieces, counts }: LaneFill, { kinds, classes }: Problem): number {
  let room = 0;
  let last = -1;
  for (let at = 0; at < pieces.length; at++) {
    const kind = kinds[pieces[at]!]!;
    if (kind.class !== last) room += classes[(last = kind.class)]!.over;
    room += counts[at]! * kind.step;
  }
  return room;
}

/** The cut that these lanes make, where they truly fit the board; else null. Pieces are in the order of their kinds. */
export function cutOf(board: number, lanes: readonly LaneFill[], whole: LaneFill | null, problem: Problem): Cut | null {
  const { room, width } = problem.boards[board]!;
  const { classes, kinds, kerf, hair } = problem;
  const filled = lanes.filter(({ pieces }) => pieces.length > 0);
  const kept = whole === null || whole.pieces.length === 0 ? null : whole;
  const widthOf = (lane: LaneFill) => classes[kinds[lane.pieces.at(-1)!]!.class]!.width;
  const across = filled.reduce((sum, lane) => sum + widthOf(lane) + kerf, -kerf);
  if (across > width + hair || (kept !== null && widthOf(kept) > width + hair)) return null;
  const along = Math.max(0, ...filled.map((lane) => roomOf(lane, problem)));
  if (along + (kept === null ? 0 : roomOf(kept, problem)) > room + hair) return null;
  const total = new Map<number, number>();
  for (const { pieces, counts } of kept === null ? filled : [...filled, kept]) {
    pieces.forEach((piece, at) => total.set(piece, (total.get(piece) ?? 0) + counts[at]!));
  }
  const pieces = [...total.keys()].sort((a, b) => a - b);
  return { board, pieces, counts: pieces.map((piece) => total.get(piece)!), lanes: filled, whole: kept };
}
