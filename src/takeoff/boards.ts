import { ok, refuse, type Result } from '../result';
import type { Standards } from '../standards';
import { Effort } from '../stock/effort';
import { MOST_LENGTHS, MOST_PIECES } from '../stock/order';
import { GUARD_MS } from '../stock/plan';
import type { StockBoard } from '../stockList';
import { planKindTogether, priceOf, type BoardKind, type BoardPlan, type Placed, type PricedPlan } from './boardPlan';
import { FIT, woodFor } from './wood';
import { layouts, partLength, partWidth, type Layout, type WoodPart } from './woodParts';

export interface BoardNeeds {
  readonly plans: readonly BoardPlan[];
  /** Parts that no board in the stock list can hold, or that the boards on hand don't suffice for: a sentence each. */
  readonly problems: readonly string[];
}

export interface BoardControl {
  /** For all plans together, counted as `Effort` does; left out: `BOARD_WORK`. */
  readonly work?: number | undefined;
  /** The clock, in milliseconds; left out: `Date.now`. It only ends a search that takes longer than `GUARD_MS`. */
  readonly now?: (() => number) | undefined;
}

/** Half a second for usual jobs, some seconds at most. */
export const BOARD_WORK = 1e9;

/**
 * The boards to buy for these parts, one plan for each species, thickness and board width. Every part is laid on the width and
 * in the way that takes least wood for its price: segments nested across the board or in half-turn rows, mitered ones flipped.
 * Parts that interlock get boards of their own where that is cheaper than sharing boards with the others piece by piece.
 */
export function planBoards(parts: readonly WoodPart[], standards: Standards, control: BoardControl = {}): BoardNeeds {
  const now = control.now ?? Date.now;
  const end = now() + GUARD_MS;
  const effort = new Effort(control.work ?? BOARD_WORK, () => now() >= end);
  const problems: string[] = [];
  const groups = new Map<string, { kind: BoardKind; placed: Placed[] }>();
  for (const part of parts) {
    const choice = choose(part, standards);
    if (!choice.ok) {
      problems.push(choice.message);
      continue;
    }
    const { kind, layout } = choice.value;
    const key = `${kind.species.toLowerCase()}|${kind.thickness}|${kind.width}`;
    const group = groups.get(key) ?? { kind, placed: [] };
    group.placed.push({ part, layout });
    groups.set(key, group);
  }
  const plans: BoardPlan[] = [];
  let waiting = groups.size;
  for (const { kind, placed } of groups.values()) {
    const planned = planKind(kind, placed, standards, effort.part(effort.left / waiting--));
    if (planned.ok) plans.push(...planned.value);
    else problems.push(`${kind.species} ${kind.thickness} × ${kind.width}: ${planned.message}`);
  }
  return { plans, problems };
}

/** The board width and layout that take the least money for one part. */
function choose(part: WoodPart, standards: Standards): Result<{ kind: BoardKind; layout: Layout }> {
  const { kerf, endTrim } = standards;
  const wood = woodFor(part.species, part.thickness, standards);
  if (wood === null)
    return refuse(`${part.for}: no ${part.species} at least ${part.thickness} thick is in the stock list`);
  let best: { kind: BoardKind; layout: Layout } | null = null;
  let least = Infinity;
  for (const width of new Set(wood.boards.map((board) => board.width))) {
    const boards = wood.boards.filter((board) => board.width === width);
    for (const layout of layouts(part, width + FIT, kerf)) {
      for (const board of boards) {
        const usable = board.length - 2 * endTrim;
        if (layout.alone > usable + FIT) continue;
        // In the long run, a board holds so many; a few parts are charged as if others used the rest.
        const along =
          layout.alone <= layout.step ? usable / layout.step : 1 + Math.floor((usable - layout.alone) / layout.step);
        const rate = priceOf(board, standards) / (Math.max(1, along) * layout.across);
        if (rate >= least * (1 - FIT)) continue;
        least = rate;
        const { species, quarters } = board;
        best = { kind: { species, thickness: wood.thickness, quarters, width, boards }, layout };
      }
    }
  }
  if (best !== null) return ok(best);
  const longest = Math.max(...wood.boards.map((board) => board.length));
  return refuse(
    `${part.for}: a piece ${shown(partLength(part.shape))} × ${shown(partWidth(part.shape))} is larger than every ` +
      `${part.species} board ${wood.thickness} thick; the largest are ${longest} long, trimmed ${endTrim} at each end, and ${wood.widest} wide`,
  );
}

function shown(length: number): string {
  return String(Number(length.toFixed(3)));
}

/** Parts that interlock with one another in one row; null: cut square, they share boards with anything. */
function rowKey({ part: { shape }, layout }: Placed): string | null {
  if (shape.kind === 'straight' || layout.way === 'nested') return null;
  const { ring, half } = shape;
  return layout.way === 'flipped'
    ? `flipped|${layout.across}|${partWidth(shape)}|${half}`
    : `half-turn|${layout.across}|${ring.inside}|${ring.outside}|${half}`;
}

/** Plans one kind of board: everything piece by piece on shared boards, then each interlocking row on its own where cheaper. */
function planKind(
  kind: BoardKind,
  placed: readonly Placed[],
  standards: Standards,
  effort: Effort,
): Result<BoardPlan[]> {
  const rows = new Map<string, Placed[]>();
  const shared: Placed[] = [];
  for (const each of placed) {
    const key = rowKey(each);
    if (key === null) shared.push(each);
    else rows.set(key, [...(rows.get(key) ?? []), each]);
  }
  const share = effort.left / (1 + 3 * rows.size);
  const plan = (together: readonly Placed[], row: boolean) =>
    planKindTogether(kind, together, row, used, { standards, effort: effort.part(share) });
  const plans: BoardPlan[] = [];
  const used = new Map<StockBoard, number>();
  const keep = (priced: PricedPlan) => {
    const kept = priced.laidOut();
    plans.push(kept);
    for (const board of kind.boards) {
      const bought = kept.buys.find((buy) => buy.length === board.length)?.count ?? 0;
      used.set(board, (used.get(board) ?? 0) + bought);
    }
  };
  for (const row of rows.values()) {
    const apart = plan(row, true);
    // Weighing a row against shared boards plans all of those anew; once the work is done it keeps boards of its own.
    if (apart.ok && effort.ended) {
      keep(apart.value);
      continue;
    }
    const without = shared.length === 0 ? null : plan(shared, false);
    const withRow = plan([...shared, ...row.map((one) => pieceByPiece(one, kind, standards))], false);
    const costApart =
      apart.ok && (without === null || without.ok)
        ? apart.value.cost + (without?.ok ? without.value.cost : 0)
        : Infinity;
    if (withRow.ok && withRow.value.cost < costApart)
      shared.push(...row.map((one) => pieceByPiece(one, kind, standards)));
    else if (!apart.ok) return apart;
    else keep(apart.value);
  }
  for (const portion of portions(shared)) {
    const rest = plan(portion, false);
    if (!rest.ok) return rest;
    keep(rest.value);
  }
  return ok(plans);
}

/** As many parts together as one cutting plan takes. */
function portions(placed: readonly Placed[]): Placed[][] {
  const all: Placed[][] = [];
  let pieces = Infinity;
  for (const each of placed) {
    const count = Math.ceil(each.part.count / each.layout.across);
    if (all.length === 0 || all.at(-1)!.length === MOST_LENGTHS || pieces + count > MOST_PIECES) {
      all.push([]);
      pieces = 0;
    }
    all.at(-1)!.push(each);
    pieces += count;
  }
  return all;
}

/** The same part cut square, piece by piece, in whichever such way puts most of them abreast. */
function pieceByPiece({ part, layout }: Placed, kind: BoardKind, { kerf }: Standards): Placed {
  const nested = layouts(part, kind.width + FIT, kerf).find((other) => other.way === 'nested');
  return { part, layout: nested ?? { ...layout, step: layout.alone + kerf } };
}
