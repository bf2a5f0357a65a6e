import type { Part, WoodOrder } from '../../src/boards/order';

/**
 * The fullest board, worked out from the printed rules of sawing and nothing of the planner's: lists of what a lane can hold by its length,
 * all ways to lay lanes side by side, and the crosscut found by halving. Lengths are exact but for `NEAR`, which lets more fit, never less.
 */

const NEAR = 1e-7;
/** More sets of lanes, or cases of too many pieces, than this: not told. */
const MOST_SETS = 60_000;
const MOST_CASES = 4_000;
const STRETCHES = 64;
/** Longer lists are thinned so that more fits, never less: first to the shortest, and to longer ones where that lets too much fit. */
const MOST_ENTRIES = [1_500, 8_000, 30_000];
/** Lists kept at hand. */
const MOST_KNOWN = 12;

/** Parts of one row: widths and angles alike. In a row of the class n pieces take over + Σ step, a saw cut behind the row included. */
export interface RowClass {
  readonly width: number;
  readonly over: number;
  readonly parts: readonly { readonly part: number; readonly step: number }[];
}

export function rowClasses({ parts, kerf }: WoodOrder): RowClass[] {
  const classes = new Map<string, { width: number; over: number; parts: { part: number; step: number }[] }>();
  parts.forEach((part, at) => {
    const { width, step, over, key } = rowOf(part, kerf);
    const known = classes.get(key);
    if (known === undefined) classes.set(key, { width, over, parts: [{ part: at, step }] });
    else known.parts.push({ part: at, step });
  });
  return [...classes.values()].sort((a, b) => a.width - b.width);
}

function rowOf(part: Part, kerf: number) {
  const alone = (length: number, width: number) => {
    return { width, step: length + kerf, over: 0, key: `${width.toFixed(6)} square` };
  };
  if (part.kind === 'straight') return alone(part.length, part.width);
  const { inside, outside, half } = part;
  const long = 2 * outside * Math.tan(half);
  const width = outside - inside * Math.cos(half);
  // A row of flipped trapezoids: each takes its middle length and the slanted saw cut beside it; the first and last slant are lost.
  const step = (long + 2 * inside * Math.sin(half)) / 2 + kerf / Math.cos(half);
  const over = long + kerf - step;
  return over <= 0 ? alone(long, width) : { width, step, over, key: `${width.toFixed(6)} ${half.toFixed(9)}` };
}

/** Undominated fillings, shortest first, and how each came about: from an entry of the first list or, with pieces added, of the second. */
export interface List {
  readonly length: Float64Array;
  readonly worth: Float64Array;
  readonly from: Int32Array;
  readonly one: List | null;
  readonly other: List | null;
  readonly part: number;
  readonly count: number;
}

/** The room there is, and how many entries a list may have. */
interface Fine {
  readonly room: number;
  readonly entries: number;
}

function merged(
  one: List,
  other: List,
  longer: number,
  more: number,
  part: number,
  count: number,
  { room, entries }: Fine,
): List {
  const lengths: number[] = [];
  const worths: number[] = [];
  const from: number[] = [];
  const thin = one.length.length + other.length.length > entries ? entries / room : 0;
  let a = 0;
  let b = 0;
  let best = -1;
  while (a < one.length.length || b < other.length.length) {
    const lengthA = a < one.length.length ? one.length[a]! : Infinity;
    const lengthB = b < other.length.length ? other.length[b]! + longer : Infinity;
    const first = lengthA <= lengthB;
    const length = first ? lengthA : lengthB;
    if (length > room) break;
    const worth = first ? one.worth[a]! : other.worth[b]! + more;
    const way = first ? a++ : -1 - b++;
    if (worth <= best) continue;
    best = worth;
    const last = lengths.length - 1;
    if (thin > 0 && last > 0 && Math.floor(lengths[last]! * thin) === Math.floor(length * thin)) {
      [worths[last], from[last]] = [worth, way];
      continue;
    }
    lengths.push(length);
    worths.push(worth);
    from.push(way);
  }
  return {
    length: Float64Array.from(lengths),
    worth: Float64Array.from(worths),
    from: Int32Array.from(from),
    ...{ one, other, part, count },
  };
}

const EMPTY: List = {
  length: Float64Array.of(0),
  worth: Float64Array.of(0),
  from: Int32Array.of(0),
  ...{ one: null, other: null, part: -1, count: 0 },
};

/** By class, the fillings with pieces no wider, at most `caps` of each part. */
export function listsOf(
  classes: readonly RowClass[],
  worths: readonly number[],
  caps: readonly number[],
  fine: Fine,
): List[] {
  let top = EMPTY;
  return classes.map(({ over, parts }) => {
    const worthwhile = parts.filter(({ part }) => worths[part]! > 0 && caps[part]! > 0);
    if (worthwhile.length === 0) return top;
    let inside = merged(top, top, Infinity, 0, -1, 0, fine);
    inside = { ...inside, length: inside.length.map((length) => length + over) };
    for (const { part, step } of worthwhile) {
      let left = Math.min(caps[part]!, Math.floor((fine.room - over) / step));
      for (let lot = 1; left > 0; lot *= 2) {
        const count = Math.min(lot, left);
        inside = merged(inside, inside, count * step, count * worths[part]!, part, count, fine);
        left -= count;
      }
    }
    return (top = merged(top, inside, 0, 0, -1, 0, fine));
  });
}

export function within(list: List, length: number): number {
  let low = 0;
  let high = list.length.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (list.length[middle]! <= length) low = middle;
    else high = middle;
  }
  return low;
}

function piecesOf(list: List, length: number, parts: number): number[] {
  const made = new Array<number>(parts).fill(0);
  let here: List | null = list;
  let at = within(list, length);
  while (here !== null && here.one !== null) {
    const from: number = here.from[at]!;
    if (from < 0 && here.part >= 0) made[here.part]! += here.count;
    [here, at] = from >= 0 ? [here.one, from] : [here.other, -1 - from];
  }
  return made;
}

/** All ways to lay two or more lanes side by side that leave no room for another or a wider one; null: too many. */
function laneSets(classes: readonly RowClass[], width: number, kerf: number): number[][] | null {
  const widths = classes.flatMap((each, at) => (each.width <= width + NEAR ? [at] : []));
  const sets: number[][] = [];
  const choose = (chosen: number[], widest: number, left: number): boolean => {
    let room = false;
    for (let at = widest; at >= 0; at--) {
      if (classes[widths[at]!]!.width + kerf > left + NEAR) continue;
      room = true;
      if (!choose([...chosen, widths[at]!], at, left - classes[widths[at]!]!.width - kerf)) return false;
    }
    const narrowest = classes[widths[0] ?? 0];
    if (room || chosen.length < 2 || narrowest === undefined || narrowest.width + kerf <= left + NEAR) return true;
    const wider = chosen.some(
      (c) => widths.includes(c + 1) && classes[c + 1]!.width - classes[c]!.width <= left + NEAR / 2,
    );
    if (!wider) sets.push(chosen);
    return sets.length <= MOST_SETS;
  };
  return widths.length === 0 || choose([], widths.length - 1, width + kerf) ? sets : null;
}

/**
 * Whether some board of this size, with no more of each part than wanted, holds more than `most`: true, false, or null where there are too
 * many cases to tell. Lanes that together make too many of a part are parted into cases, as lists of caps by position.
 */
export function holdsMore(...asked: Asked): boolean | null {
  for (const entries of MOST_ENTRIES) {
    const answer = holdsMoreBy(entries, ...asked);
    if (answer !== true) return answer;
  }
  return true;
}

type Asked = [
  order: WoodOrder,
  classes: readonly RowClass[],
  board: { readonly width: number; readonly length: number },
  worths: readonly number[],
  wanted: readonly number[],
  most: number,
];

function holdsMoreBy(entries: number, ...[order, classes, board, worths, wanted, most]: Asked): boolean | null {
  const { kerf, trim } = order;
  const room = board.length - 2 * trim + kerf + NEAR;
  const fitting = classes.filter(({ width }) => width <= board.width + NEAR);
  if (room <= kerf || fitting.length === 0) return false;
  const sets = laneSets(fitting, board.width, kerf);
  if (sets === null) return null;
  const ways = [[], ...sets];
  const lanes = Math.max(...ways.map((set) => set.length)) + 1;
  const known = new Map<string, List[]>();
  const listsFor = (caps: readonly number[]) => {
    const key = caps.join();
    const lists = known.get(key) ?? listsOf(fitting, worths, caps, { room, entries });
    known.set(key, lists);
    if (known.size > MOST_KNOWN) known.delete([...known.keys()][0]!);
    return lists;
  };
  const open: number[][][] = [Array.from({ length: lanes }, () => [...wanted])];
  for (let cases = 0; open.length > 0; cases++) {
    if (cases > MOST_CASES) return null;
    const caps = open.pop()!;
    const lists = caps.map(listsFor);
    const found = fullerThan(ways, lists, fitting.length - 1, room, most);
    if (found === null) continue;
    const fills = [
      piecesOf(lists[0]!.at(-1)!, room - found.from, wanted.length),
      ...found.set.map((c, at) => piecesOf(lists[at + 1]![c]!, found.to, wanted.length)),
    ];
    const over = wanted.findIndex((count, part) => fills.reduce((sum, made) => sum + made[part]!, 0) > count);
    if (over < 0) return true;
    const capped = (changes: readonly (readonly [position: number, cap: number])[]) =>
      caps.map((its, position) => {
        const change = changes.find(([at]) => at === position);
        return change === undefined ? its : its.map((cap, part) => (part === over ? Math.min(cap, change[1]) : cap));
      });
    const made = Array.from({ length: lanes }, (_, at) => fills[at]?.[over] ?? 0);
    const main = made.indexOf(Math.max(...made));
    const few = Math.min(made[main]! - 1, Math.floor(wanted[over]! / 2));
    const rest = wanted[over]! - few - 1;
    // Either this lane makes few, or it makes more and each other no more than the rest.
    if (made.some((count, at) => at !== main && count > rest)) {
      open.push(capped([[main, few]]), capped(made.flatMap((_, at) => (at === main ? [] : [[at, rest] as const]))));
    } else open.push(...made.flatMap((count, at) => (count > 0 ? [capped([[at, count - 1]])] : [])));
  }
  return false;
}

/** Lanes and a place for the crosscut that hold more than `most`; null: there are none. */
function fullerThan(
  sets: readonly (readonly number[])[],
  lists: readonly (readonly List[])[],
  widest: number,
  room: number,
  most: number,
): { set: readonly number[]; from: number; to: number } | null {
  const whole = lists[0]![widest]!;
  const at = (list: List, length: number) => list.worth[within(list, length)]!;
  const ends = Array.from({ length: STRETCHES + 1 }, (_, stretch) => (stretch * room) / STRETCHES);
  const wholes = ends.map((end) => at(whole, room - end));
  const samples = lists.map((of) => of.map((list) => Float64Array.from(ends, (end) => at(list, end))));
  for (const set of sets) {
    const lanes = (length: number) => set.reduce((sum, c, lane) => sum + at(lists[lane + 1]![c]!, length), 0);
    /** Between two places the lanes hold no more than at the second, the section that keeps its width no more than at the first. */
    const look = (from: number, to: number): { from: number; to: number } | null => {
      if (lanes(to) + at(whole, room - from) <= most) return null;
      if (lanes(from) + at(whole, room - from) > most) return { from, to: from };
      if (to - from < 1e-9) return { from, to };
      const middle = (from + to) / 2;
      return look(from, middle) ?? look(middle, to);
    };
    for (let stretch = 0; stretch < STRETCHES; stretch++) {
      let bound = wholes[stretch]!;
      for (let lane = 0; lane < set.length; lane++) bound += samples[lane + 1]![set[lane]!]![stretch + 1]!;
      if (bound <= most) continue;
      const place = look(ends[stretch]!, ends[stretch + 1]!);
      if (place !== null) return { set, ...place };
    }
  }
  return null;
}
