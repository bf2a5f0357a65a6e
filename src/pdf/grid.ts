import type { Box, Rule } from './marks';
import { clusters } from './rules';
import { pushTo } from '../pushTo';

/** A closed rectangle between rules. */
export type Cell = Box;

/** The smallest rectangle round all. */
export function boxAround(boxes: readonly Box[]): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const box of boxes) {
    left = Math.min(left, box.left);
    top = Math.min(top, box.top);
    right = Math.max(right, box.right);
    bottom = Math.max(bottom, box.bottom);
  }
  return { left, top, right, bottom };
}

/** Rules meet where their ends lie this near. */
const MEETS = 2;
/** Lines of a grid this near are one. */
const SAME = 1.6;
/** A drawing with more lines than this in one piece is no table. */
const MOST_CELLS = 400_000;

/** The tables that rules draw: of each, its smallest closed rectangles. */
export function ruledCells(rules: readonly Rule[]): Cell[][] {
  return components(rules.filter(({ from, to }) => to - from >= 3)).flatMap((component) => {
    const closed = withClosing(component);
    const across = closed.filter(({ horizontal }) => horizontal);
    const down = closed.filter(({ horizontal }) => !horizontal);
    if (across.length < 2 || down.length < 2) return [];
    return groups(closedRectangles(across, down));
  });
}

/** Rules that touch one another, as pieces of one drawing. */
function components(rules: readonly Rule[]): Rule[][] {
  const across = rules.filter(({ horizontal }) => horizontal);
  const down = rules.filter(({ horizontal }) => !horizontal);
  const parent = new Map<Rule, Rule>(rules.map((rule) => [rule, rule]));
  const root = (rule: Rule): Rule => {
    let at = rule;
    while (parent.get(at)! !== at) at = parent.get(at)!;
    let back = rule;
    while (back !== at) [back] = [parent.get(back)!, parent.set(back, at)];
    return at;
  };
  const STEP = 24;
  const bins = new Map<number, Rule[]>();
  for (const rule of down) {
    const bin = Math.floor(rule.at / STEP);
    pushTo(bins, bin, rule);
  }
  for (const rule of across)
    for (let bin = Math.floor((rule.from - MEETS) / STEP); bin <= Math.floor((rule.to + MEETS) / STEP); bin += 1)
      for (const other of bins.get(bin) ?? []) if (meets(rule, other)) parent.set(root(other), root(rule));
  const found = new Map<Rule, Rule[]>();
  for (const rule of rules) {
    const top = root(rule);
    pushTo(found, top, rule);
  }
  return [...found.values()].filter((component) => component.length >= 4);
}

function meets(across: Rule, down: Rule): boolean {
  return (
    down.at >= across.from - MEETS &&
    down.at <= across.to + MEETS &&
    across.at >= down.from - MEETS &&
    across.at <= down.to + MEETS
  );
}

/** Shorter ones are the bars of fractions. */
const SHORTEST_ENDING = 10;

/** Where three or more rules end together with nothing across their ends, the page or the writer left the line out. */
function withClosing(rules: readonly Rule[]): Rule[] {
  const closing = [true, false].flatMap((horizontal) => {
    const lines = rules.filter((rule) => rule.horizontal === horizontal && rule.to - rule.from >= SHORTEST_ENDING);
    const others = rules.filter((rule) => rule.horizontal !== horizontal).sort((one, other) => one.at - other.at);
    const levels = others.map(({ at }) => at);
    return (['from', 'to'] as const).flatMap((end) =>
      clusters([...lines], (rule) => rule[end], MEETS).flatMap((together) => {
        const places = together.map(({ at }) => at);
        const [from, to] = [Math.min(...places), Math.max(...places)];
        const at = together[0]![end];
        if (together.length < 2) return [];
        const runs = (other: Rule) => other.from <= from + MEETS && other.to >= to - MEETS;
        // Two are enough where the rules between them run from one to the other: a row alone on its page.
        if (together.length === 2 && others.filter(runs).length < 3) return [];
        for (let there = firstFrom(levels, at - MEETS * 1.5); there < levels.length; there += 1) {
          if (levels[there]! > at + MEETS * 1.5) break;
          if (runs(others[there]!)) return [];
        }
        return [{ horizontal: !horizontal, at, from, to }];
      }),
    );
  });
  return [...rules, ...closing];
}

interface Block {
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
}

interface Closed {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly blocks: readonly Block[];
}

function closedRectangles(across: readonly Rule[], down: readonly Rule[]): Closed {
  const xs = lines(down);
  const ys = lines(across);
  const [columns, rows] = [xs.length - 1, ys.length - 1];
  if (columns < 1 || rows < 1 || columns * rows > MOST_CELLS) return { xs, ys, blocks: [] };
  // Whether a rule runs above a square of the grid, and left of it.
  const above = covered(across, ys, xs);
  const before = covered(down, xs, ys);
  const parent = Int32Array.from({ length: columns * rows + 1 }, (_, index) => index);
  const outside = columns * rows;
  const root = (index: number): number => {
    let at = index;
    while (parent[at] !== at) at = parent[at] = parent[parent[at]!]!;
    return at;
  };
  const join = (one: number, other: number) => void (parent[root(one)] = root(other));
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const here = row * columns + column;
      if (above[row * columns + column] === 0) join(here, row === 0 ? outside : here - columns);
      if (row === rows - 1 && above[rows * columns + column] === 0) join(here, outside);
      if (before[column * rows + row] === 0) join(here, column === 0 ? outside : here - 1);
      if (column === columns - 1 && before[columns * rows + row] === 0) join(here, outside);
    }
  // A plan's lines make a grid of hundreds of thousands of squares, nearly all of them outside every rectangle.
  const boxes = new Map<number, { c0: number; c1: number; r0: number; r1: number; count: number }>();
  const without = root(outside);
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const top = root(row * columns + column);
      if (top === without) continue;
      const box = boxes.get(top);
      if (box === undefined) {
        boxes.set(top, { c0: column, c1: column, r0: row, r1: row, count: 1 });
        continue;
      }
      if (column < box.c0) box.c0 = column;
      if (column > box.c1) box.c1 = column;
      box.r1 = row;
      box.count += 1;
    }
  const blocks = [...boxes.values()]
    .filter(({ c0, c1, r0, r1, count }) => (c1 - c0 + 1) * (r1 - r0 + 1) === count)
    .map(({ c0, c1, r0, r1 }) => ({ column: c0, row: r0, columns: c1 - c0 + 1, rows: r1 - r0 + 1 }));
  return { xs, ys, blocks };
}

function lines(rules: readonly Rule[]): number[] {
  return clusters([...rules], ({ at }) => at, SAME).map(
    (line) =>
      line.reduce((sum, { at, from, to }) => sum + at * (to - from), 0) /
      line.reduce((sum, { from, to }) => sum + to - from, 0),
  );
}

/** For each line of the grid, and each step along it one after another: 1 where a rule covers the step. */
function covered(rules: readonly Rule[], places: readonly number[], steps: readonly number[]): Uint8Array {
  const count = steps.length - 1;
  const grid = new Uint8Array(places.length * count);
  for (const { at, from, to } of rules) {
    const line = nearest(places, at) * count;
    for (let step = firstFrom(steps, from - MEETS); step < count && steps[step]! <= to; step += 1) {
      const [start, end] = [steps[step]!, steps[step + 1]!];
      const slack = Math.min(MEETS, (end - start) / 4);
      if (from <= start + slack && to >= end - slack) grid[line + step] = 1;
    }
  }
  return grid;
}

/** The first place, of some in order, that is not before `at`. */
export function firstFrom(places: readonly number[], at: number): number {
  let [low, high] = [0, places.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (places[middle]! < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

function nearest(places: readonly number[], at: number): number {
  const next = firstFrom(places, at);
  if (next === 0) return 0;
  return next < places.length && places[next]! - at < at - places[next - 1]! ? next : next - 1;
}

/** Rectangles that share a corner belong to one table. */
function groups({ xs, ys, blocks }: Closed): Cell[][] {
  const parent = blocks.map((_, index) => index);
  const root = (index: number): number => {
    let at = index;
    while (parent[at] !== at) at = parent[at]!;
    return at;
  };
  const corners = new Map<number, number>();
  blocks.forEach(({ column, row, columns, rows }, index) => {
    for (const x of [column, column + columns])
      for (const y of [row, row + rows]) {
        const corner = y * xs.length + x;
        const there = corners.get(corner);
        if (there === undefined) corners.set(corner, index);
        else parent[root(index)] = root(there);
      }
  });
  const found = new Map<number, Cell[]>();
  blocks.forEach(({ column, row, columns, rows }, index) => {
    const cell = { left: xs[column]!, right: xs[column + columns]!, top: ys[row]!, bottom: ys[row + rows]! };
    pushTo(found, root(index), cell);
  });
  return [...found.values()];
}
