import type { Rule } from './marks';
import { clusters } from './rules';

/** A closed rectangle between rules; columns and rows count the lines of its grid. */
export interface Cell {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
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
    const there = bins.get(bin);
    if (there) there.push(rule);
    else bins.set(bin, [rule]);
  }
  for (const rule of across)
    for (let bin = Math.floor((rule.from - MEETS) / STEP); bin <= Math.floor((rule.to + MEETS) / STEP); bin += 1)
      for (const other of bins.get(bin) ?? []) if (meets(rule, other)) parent.set(root(other), root(rule));
  const found = new Map<Rule, Rule[]>();
  for (const rule of rules) {
    const top = root(rule);
    const there = found.get(top);
    if (there) there.push(rule);
    else found.set(top, [rule]);
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
    const others = rules.filter((rule) => rule.horizontal !== horizontal);
    return (['from', 'to'] as const).flatMap((end) =>
      clusters([...lines], (rule) => rule[end], MEETS).flatMap((together) => {
        const places = together.map(({ at }) => at);
        const [from, to] = [Math.min(...places), Math.max(...places)];
        const at = together[0]![end];
        const isThere = others.some(
          (other) => Math.abs(other.at - at) <= MEETS * 1.5 && other.from <= from + MEETS && other.to >= to - MEETS,
        );
        // Two are enough where the rules between them run from one to the other: a row alone on its page.
        const between = others.filter((other) => other.from <= from + MEETS && other.to >= to - MEETS).length;
        const areMany = together.length >= 3 || (together.length === 2 && between >= 3);
        return !areMany || isThere ? [] : [{ horizontal: !horizontal, at, from, to }];
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
      if (!above[row]![column]) join(here, row === 0 ? outside : here - columns);
      if (row === rows - 1 && !above[rows]![column]) join(here, outside);
      if (!before[column]![row]) join(here, column === 0 ? outside : here - 1);
      if (column === columns - 1 && !before[columns]![row]) join(here, outside);
    }
  const boxes = new Map<number, { c0: number; c1: number; r0: number; r1: number; count: number }>();
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const top = root(row * columns + column);
      const box = boxes.get(top) ?? { c0: column, c1: column, r0: row, r1: row, count: 0 };
      box.c0 = Math.min(box.c0, column);
      box.c1 = Math.max(box.c1, column);
      box.r1 = row;
      box.count += 1;
      boxes.set(top, box);
    }
  boxes.delete(root(outside));
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

/** For each line of the grid and each step along it: whether a rule covers the step. */
function covered(rules: readonly Rule[], places: readonly number[], steps: readonly number[]): boolean[][] {
  const grid = places.map(() => Array.from({ length: Math.max(0, steps.length - 1) }, () => false));
  for (const { at, from, to } of rules) {
    const line = nearest(places, at);
    for (let step = 0; step + 1 < steps.length; step += 1) {
      const [start, end] = [steps[step]!, steps[step + 1]!];
      const slack = Math.min(MEETS, (end - start) / 4);
      if (from <= start + slack && to >= end - slack) grid[line]![step] = true;
    }
  }
  return grid;
}

function nearest(places: readonly number[], at: number): number {
  let best = 0;
  places.forEach((place, index) => {
    if (Math.abs(place - at) < Math.abs(places[best]! - at)) best = index;
  });
  return best;
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
    const there = found.get(root(index));
    if (there) there.push(cell);
    else found.set(root(index), [cell]);
  });
  return [...found.values()];
}
