import type { Dot } from './drawn';
import type { Rule } from './marks';

/** Rules this near one another are one. */
const SAME_LINE = 0.8;
/** Pieces this near one another along a line are one rule. */
const GAP = 2;
/** The same for short pieces, which are dashes. */
const DASH_GAP = 4.5;
const LONGEST_DASH = 8;
const FEWEST_DOTS = 4;

/** Dots in a row with even steps, as dotted lines are drawn. A dot where two lines cross belongs to both. */
export function chains(dots: readonly Dot[]): Rule[] {
  return [...chained(dots, true), ...chained(dots, false)];
}

function chained(dots: readonly Dot[], horizontal: boolean): Rule[] {
  const along = (dot: Dot) => (horizontal ? dot.x : dot.y);
  const level = (dot: Dot) => (horizontal ? dot.y : dot.x);
  const rows = clusters([...dots], level, 0.4);
  return rows.flatMap((row) => {
    const sorted = row.sort((one, other) => along(one) - along(other));
    const found: Rule[] = [];
    let chain: Dot[] = [];
    const close = () => {
      if (chain.length >= FEWEST_DOTS) {
        const [first, last] = [chain[0]!, chain.at(-1)!];
        const rule = {
          horizontal,
          at: level(first),
          from: along(first) - first.size / 2,
          to: along(last) + last.size / 2,
        };
        found.push(rule);
      }
      chain = [];
    };
    for (const dot of sorted) {
      const before = chain.at(-1);
      if (before && along(dot) - along(before) > Math.max(2.5, before.size * 3.2)) close();
      chain.push(dot);
    }
    close();
    return found;
  });
}

/** Things in groups whose places lie within `reach` of the group's first. */
export function clusters<T>(things: T[], place: (thing: T) => number, reach: number): T[][] {
  const sorted = things.sort((one, other) => place(one) - place(other));
  const groups: T[][] = [];
  let group: T[] = [];
  let start = -Infinity;
  for (const thing of sorted) {
    const at = place(thing);
    if (at - start > reach) {
      groups.push((group = []));
      start = at;
    }
    group.push(thing);
  }
  return groups;
}

/** Pieces of one line as one rule. */
export function merged(rules: readonly Rule[]): Rule[] {
  return [true, false].flatMap((horizontal) => {
    const lines = clusters(
      rules.filter((rule) => rule.horizontal === horizontal),
      ({ at }) => at,
      SAME_LINE,
    );
    return lines.flatMap((line) => mergedAlong(line, horizontal));
  });
}

function mergedAlong(line: Rule[], horizontal: boolean): Rule[] {
  const whole: { at: number; from: number; to: number; weight: number; piece: number }[] = [];
  for (const { at, from, to } of line.sort((one, other) => one.from - other.from)) {
    const last = whole.at(-1);
    const piece = to - from;
    const isDash = last !== undefined && piece <= LONGEST_DASH && last.piece <= LONGEST_DASH;
    if (last && from - last.to <= (isDash ? DASH_GAP : GAP)) {
      last.at = (last.at * last.weight + at * piece) / (last.weight + piece);
      last.weight += piece;
      last.to = Math.max(last.to, to);
      last.piece = Math.max(last.piece, piece);
    } else whole.push({ at, from, to, weight: piece, piece });
  }
  return whole.map(({ at, from, to }) => ({ horizontal, at, from, to }));
}
