import type { BoardsAlike, Lane, Piece, Row, Section, WoodOrder } from './order';
import { outlineOf, roomOf, type Cut, type LaneFill, type Problem } from './problem';

/** Cuts of kinds given back to the parts of the order and laid out on their boards; boards that come out alike counted together. */
export function layOut(cuts: readonly Cut[], problem: Problem, order: WoodOrder): BoardsAlike[] {
  const wanted = order.parts.map(({ count }) => count);
  /** The next piece of a kind, for the parts in the order they stand. */
  const take = (kind: number): number => {
    const part = problem.kinds[kind]!.parts.find((each) => wanted[each]! > 0)!;
    wanted[part]!--;
    return part;
  };
  const alike = new Map<string, { -readonly [K in keyof BoardsAlike]: BoardsAlike[K] }>();
  const inOrder = [...cuts].sort(
    (a, b) =>
      a.board - b.board ||
      b.pieces.length - a.pieces.length ||
      compare(a.pieces, b.pieces) ||
      compare(a.counts, b.counts),
  );
  for (const cut of inOrder) {
    const laid = layOutOne(cut, problem, order, take);
    const key = JSON.stringify([laid.board, laid.sections]);
    const before = alike.get(key);
    if (before) before.count++;
    else alike.set(key, laid);
  }
  return [...alike.values()];
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (let at = 0; at < a.length && at < b.length; at++) if (a[at] !== b[at]) return a[at]! - b[at]!;
  return a.length - b.length;
}

function layOutOne(cut: Cut, problem: Problem, order: WoodOrder, take: (kind: number) => number): BoardsAlike {
  const { kerf, trim, classes, kinds } = problem;
  const board = problem.boards[cut.board]!;
  const widthOf = ({ pieces }: LaneFill) => classes[kinds[pieces.at(-1)!]!.class]!.width;
  // A section with one lane isn't ripped: it keeps the board's width, like the other one.
  const ripped = cut.lanes.length > 1 ? [...cut.lanes].sort((a, b) => widthOf(b) - widthOf(a)) : [];
  const kept = [...(cut.lanes.length === 1 ? cut.lanes : []), ...(cut.whole === null ? [] : [cut.whole])];
  const sections: Section[] = [];
  let at = trim;
  if (ripped.length > 0) {
    const length = Math.max(...ripped.map((lane) => roomOf(lane, problem))) - kerf;
    let across = 0;
    const lanes = ripped.map((lane): Lane => {
      const width = widthOf(lane);
      const laid = { at: across, width, ...rowsOf([lane], at, length, problem, order, take) };
      across += width + kerf;
      return laid;
    });
    sections.push({ at, length, lanes });
    at += length + kerf;
  }
  if (kept.length > 0) {
    const length = kept.reduce((sum, lane) => sum + roomOf(lane, problem), -kerf);
    sections.push({
      at,
      length,
      lanes: [{ at: 0, width: board.width, ...rowsOf(kept, at, length, problem, order, take) }],
    });
    at += length + kerf;
  }
  const left = Math.max(0, board.room - kerf + trim - (at - kerf));
  return { count: 1, board: board.place, sections, left };
}

/** The rows of a lane, widest parts first: what is ripped narrower lies together at its end. */
function rowsOf(
  fills: readonly LaneFill[],
  start: number,
  length: number,
  problem: Problem,
  order: WoodOrder,
  take: (kind: number) => number,
): Pick<Lane, 'rows' | 'left'> {
  const { classes, kinds, kerf } = problem;
  const byClass = new Map<number, number[]>();
  for (const { pieces, counts } of fills) {
    pieces.forEach((kind, at) => {
      const row = byClass.get(kinds[kind]!.class) ?? [];
      for (let count = 0; count < counts[at]!; count++) row.push(kind);
      byClass.set(kinds[kind]!.class, row);
    });
  }
  const rows: Row[] = [];
  let at = start;
  for (const [c, row] of [...byClass].sort(([a], [b]) => b - a)) {
    const { over, width } = classes[c]!;
    const pieces: Piece[] = [];
    let next = at;
    for (const kind of row) {
      const part = take(kind);
      const straight = over === 0 || outlineOf(order.parts[part]!).half === 0;
      pieces.push({ part, at: next, flipped: !straight && pieces.length % 2 === 1 });
      next += kinds[kind]!.step;
    }
    const end = next + over;
    rows.push({ at, length: end - kerf - at, width, pieces });
    at = end;
  }
  return { rows, left: Math.max(0, start + length - (at - kerf)) };
}
