import type { PartPricing, WoodOrder } from '../../src/boards/order';
import type { Highs } from './bounds';
import { listsOf, rowClasses, within, type List, type RowClass } from './fullest';

const NEAR = 1e-7;
/** More fillings of a lane, steps or ways to cut than this: not told. */
const MOST_FILLS = 1_000_000;
const MOST_STEPS = 400_000_000;
const MOST_CUTS = 15_000;

interface Fill {
  readonly length: number;
  /** Place of its widest class; −1: empty. */
  readonly widest: number;
  readonly worth: number;
  readonly made: readonly (readonly [part: number, count: number])[];
}

/**
 * Whether no plan is made of just these boards: all ways to cut them that lose no more than all may lose together, piece by piece, and of these
 * a mixed-integer solver looks for a plan. True: there is none; false: there is one; null: too many to tell.
 */
export function noPlanOf(
  order: WoodOrder,
  wanted: readonly number[],
  counts: readonly number[],
  { worths, most }: PartPricing,
  highs: Highs,
): boolean | null {
  const total = worths.reduce((sum, worth, part) => sum + worth * wanted[part]!, 0);
  const budget = counts.reduce((sum, count, board) => sum + (count === 0 ? 0 : count * most[board]!), 0) - total;
  if (budget < 0) return true;
  const classes = rowClasses(order);
  const rows: string[][] = wanted.map(() => []);
  const used: string[][] = counts.map(() => []);
  const names: string[] = [];
  for (const [board, count] of counts.entries()) {
    if (count === 0) continue;
    const cuts = cutsOf(order, classes, board, wanted, worths, most[board]! - budget);
    if (cuts === null) return null;
    for (const cut of cuts) {
      const name = `x${names.length}`;
      names.push(name);
      used[board]!.push(name);
      cut.forEach((made, part) => made > 0 && rows[part]!.push(`${made} ${name}`));
    }
  }
  if (names.length > MOST_CUTS) return null;
  if (wanted.some((count, part) => count > 0 && rows[part]!.length === 0)) return true;
  const model = [
    `Minimize\n obj: 0 ${names[0]!}\nSubject To`,
    ...rows.flatMap((terms, part) =>
      wanted[part]! > 0 ? [` d${part}: ${terms.join('\n + ')} >= ${wanted[part]}`] : [],
    ),
    ...used.flatMap((terms, board) =>
      terms.length > 0 ? [` l${board}: ${terms.join('\n + ')} <= ${counts[board]}`] : [],
    ),
    `General\n ${names.join('\n ')}\nEnd`,
  ].join('\n');
  const { Status: status } = highs.solve(model, { output_flag: false, time_limit: 60 });
  return status === 'Infeasible' ? true : status === 'Optimal' ? false : null;
}

/** What each way to cut this board makes that is worth at least so much, by part; null: too many. */
function cutsOf(
  order: WoodOrder,
  classes: readonly RowClass[],
  board: number,
  wanted: readonly number[],
  worths: readonly number[],
  least: number,
): number[][] | null {
  const { width, length } = order.boards[board]!;
  const { kerf, trim } = order;
  const room = length - 2 * trim + kerf + NEAR;
  const fits = classes.filter((each) => each.width <= width + NEAR);
  if (fits.length === 0) return [];
  const rest = new Rest(fits, wanted, worths, room, width + kerf, kerf);
  const fills = fillsOf(fits, wanted, worths, room, least, rest);
  if (fills === null) return null;
  const wholes = fills.filter((fill) => fill.worth + rest.besideWhole(fill.length) >= least);
  const inLanes = fills.filter((fill) => fill.widest >= 0 && fill.worth + rest.besideLane(fill) >= least);
  const made = wanted.map(() => 0);
  const found = new Map<string, number[]>();
  let steps = 0;
  const add = (fill: Fill, sign: number) => fill.made.forEach(([part, count]) => (made[part]! += sign * count));
  const tooMany = (fill: Fill) => fill.made.some(([part, count]) => made[part]! + count > wanted[part]!);
  /** Lanes beside one another, from the fillings worth most on, each no longer than `along`. */
  const beside = (from: number, across: number, along: number, worth: number): boolean => {
    if (worth >= least) found.set(made.join(), [...made]);
    if (found.size > MOST_CUTS) return false;
    const lanes = Math.floor((across + NEAR) / rest.narrowest);
    if (lanes === 0 || worth + rest.lanes(across, along) < least) return true;
    for (let at = from; at < inLanes.length; at++) {
      const fill = inLanes[at]!;
      if (++steps > MOST_STEPS) return false;
      if (worth + lanes * fill.worth < least) break;
      const left = across - fits[fill.widest]!.width - kerf;
      if (fill.length > along || left < -NEAR) continue;
      if (worth + fill.worth + rest.lanes(left, along) < least || tooMany(fill)) continue;
      add(fill, 1);
      const goOn = beside(at, left, along, worth + fill.worth);
      add(fill, -1);
      if (!goOn) return false;
    }
    return true;
  };
  for (const whole of wholes) {
    add(whole, 1);
    const goOn = beside(0, width + kerf, room - whole.length, whole.worth);
    add(whole, -1);
    if (!goOn) return null;
  }
  return [...found.values()];
}

/** Equal stretches of a board's length and of its width. */
const ALONG = 256;
const ACROSS = 200;

/** What the rest of a board can hold at the most, by its length and width in stretches: too much rather than too little. */
class Rest {
  readonly narrowest: number;
  private readonly stretch: number;
  private readonly cell: number;
  /** By stretches along, then cells across. */
  private readonly sideBySide: Float64Array[];
  /** By class, then the stretch that a lane ends in: what lies beside it and in the section that keeps its width. */
  private readonly withLane: Float64Array[];
  /** By class from which on pieces are added, then the stretch a filling reaches to: what it gains and all beside it. */
  private readonly toCome: Float64Array[];

  constructor(
    classes: readonly RowClass[],
    wanted: readonly number[],
    worths: readonly number[],
    private readonly room: number,
    private readonly width: number,
    kerf: number,
  ) {
    this.narrowest = classes[0]!.width + kerf;
    this.stretch = room / ALONG;
    this.cell = width / ACROSS;
    const places = Array.from({ length: ALONG + 1 }, (_, at) => at);
    const held = (list: List) => Float64Array.from(places, (at) => list.worth[within(list, at * this.stretch)]!);
    const fine = { room, entries: 8_000 };
    const lane = listsOf(classes, worths, wanted, fine).map(held);
    const cells = classes.map((each) => Math.floor((each.width + kerf) / this.cell - 1e-6));
    this.sideBySide = places.map((at) => {
      const most = new Float64Array(ACROSS + 1);
      for (let across = 1; across <= ACROSS; across++) {
        most[across] = most[across - 1]!;
        cells.forEach((its, c) => {
          if (its <= across) most[across] = Math.max(most[across]!, most[across - its]! + lane[c]![at]!);
        });
      }
      return most;
    });
    const whole = lane.at(-1)!;
    this.withLane = classes.map((each) => {
      const most = new Float64Array(ALONG + 1);
      const across = this.across(width - each.width - kerf);
      for (let at = ALONG; at >= 0; at--) {
        const here = this.sideBySide[at]![across]! + whole[Math.min(ALONG, ALONG - at + 1)]!;
        most[at] = Math.max(here, at < ALONG ? most[at + 1]! : 0);
      }
      return most;
    });
    const any = places.map((at) =>
      Math.max(this.sideBySide[ALONG - at]![ACROSS]!, ...this.withLane.map((its) => its[at]!)),
    );
    this.toCome = [...classes.keys(), classes.length].map((from) => {
      const free = classes.slice(from).map((each) => ({ ...each, over: 0 }));
      const more = from === classes.length ? null : held(listsOf(free, worths, wanted, fine).at(-1)!);
      return Float64Array.from(places, (at) => {
        let most = any[at]!;
        for (let to = at; more !== null && to <= ALONG; to++)
          most = Math.max(most, any[to]! + more[Math.min(ALONG, to + 1 - at)]!);
        return most;
      });
    });
  }

  private across(width: number): number {
    return Math.max(0, Math.min(ACROSS, Math.ceil((width + NEAR) / this.cell)));
  }

  lanes(across: number, along: number): number {
    return this.sideBySide[Math.min(ALONG, Math.ceil(along / this.stretch))]![this.across(across)]!;
  }

  besideWhole(length: number): number {
    return this.lanes(this.width, this.room - length);
  }

  besideLane({ widest, length }: Fill): number {
    return this.withLane[widest]![Math.min(ALONG, Math.ceil(length / this.stretch - 1e-9))]!;
  }

  afterClass(from: number, length: number): number {
    return this.toCome[from]![Math.min(ALONG, Math.floor(length / this.stretch))]!;
  }
}

/** The fillings of a lane that a board worth so much can have, those worth most first; null: too many. */
function fillsOf(
  classes: readonly RowClass[],
  wanted: readonly number[],
  worths: readonly number[],
  room: number,
  least: number,
  rest: Rest,
): Fill[] | null {
  const inOrder = classes.flatMap(({ over, parts }, c) => parts.map((part) => ({ ...part, class: c, over })));
  const fills: Fill[] = [];
  const made: [part: number, count: number][] = [];
  let steps = 0;
  const fill = (at: number, length: number, widest: number, worth: number): boolean => {
    const next = inOrder[at];
    if (++steps > MOST_STEPS || fills.length > MOST_FILLS) return false;
    if (worth + rest.afterClass(next?.class ?? classes.length, length) < least) return true;
    if (next === undefined) {
      fills.push({ length, widest, worth, made: [...made] });
      return true;
    }
    if (!fill(at + 1, length, widest, worth)) return false;
    const opened = length + (widest === next.class ? 0 : next.over);
    for (let count = 1; count <= wanted[next.part]! && opened + count * next.step <= room; count++) {
      made.push([next.part, count]);
      const goOn = fill(at + 1, opened + count * next.step, next.class, worth + count * worths[next.part]!);
      made.pop();
      if (!goOn) return false;
    }
    return true;
  };
  return fill(0, 0, -1, 0) ? fills.sort((a, b) => b.worth - a.worth) : null;
}
