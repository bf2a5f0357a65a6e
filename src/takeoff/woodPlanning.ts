import type { Part, WoodOrder, WoodPlan } from '../boards/order';
import { planningOf } from '../boards/plan';
import { boardFeet } from '../lumber';
import { ok, type Result } from '../result';
import { toCents } from '../rounding';
import type { Standards } from '../standards';
import type { Effort } from '../stock/effort';
import type { StockBoard } from '../stockList';
import { inches, type Unit } from '../unit';
import type { PlannedPart, WoodBoards } from './boards';
import type { Wood } from './wood';
import { partArea, partLength, partWidth, type WoodPart } from './woodParts';

/** One wood, being planned. */
export class WoodPlanning {
  static of(
    wood: Wood,
    parts: readonly WoodPart[],
    standards: Standards,
    effort: Effort,
    work: number,
  ): Result<WoodPlanning> {
    const extra = partsForWaste(parts, standards.waste);
    const planned = parts.map((part, at): PlannedPart => ({
      part: { ...part, count: part.count + extra[at]! },
      extra: extra[at]!,
    }));
    const order: WoodOrder = {
      parts: planned.map(({ part }) => asPart(part)),
      boards: wood.boards.map((board) => ({
        width: board.width,
        length: board.length,
        price: priceOf(board, standards),
        limit: board.onHand,
      })),
      kerf: standards.kerf,
      trim: standards.endTrim,
    };
    const next = planningOf(order, { effort });
    return next.ok ? ok(new WoodPlanning(wood, order, planned, standards.unit, effort, next.value, work)) : next;
  }

  plan: WoodPlan;
  /** There is nothing more that work could be spent on. */
  exhausted = false;

  private constructor(
    readonly wood: Wood,
    readonly order: WoodOrder,
    private readonly parts: readonly PlannedPart[],
    private readonly unit: Unit,
    private readonly effort: Effort,
    private readonly next: () => WoodPlan,
    /** Work it was given so far. */
    public had: number,
  ) {
    this.plan = next();
  }

  goOn(work: number): void {
    this.had += work;
    this.effort.more(work);
    const { left } = this.effort;
    this.plan = this.next();
    this.exhausted = left > 0 && this.effort.left === left;
  }

  boards(): WoodBoards {
    const { parts, wood, plan, unit } = this;
    const { boards, short, cost, lowerBound, proven, interrupted } = plan;
    const sale = wood.boards;
    const sum = (of: (board: StockBoard) => number) =>
      boards.reduce((total, { board, count }) => total + count * of(sale[board]!), 0);
    const missing = new Map(short.map(({ part, count }) => [part, count]));
    const under = parts.reduce(
      (total, { part }, at) => total + (part.count - (missing.get(at) ?? 0)) * partArea(part.shape),
      0,
    );
    return {
      ...nameOf(wood),
      quarters: wood.quarters,
      ...{ parts, sale, boards, cost, lowerBound, proven, interrupted },
      boardFeet: sum((board) => feetOf(board, unit)),
      yield: under / sum((board) => board.width * board.length),
    };
  }

  problems(): string[] {
    return this.plan.short.map(({ part: at, count }) => {
      const { part } = this.parts[at]!;
      return `${part.for}: the ${part.species} boards on hand leave ${count} of ${part.count} pieces ${sizeOf(part)} unmade`;
    });
  }
}

/** The species as the stock list spells it, and the dressed thickness. */
export function nameOf({ boards, thickness }: Wood): { species: string; thickness: number } {
  return { species: boards[0]!.species, thickness };
}

function asPart({ shape, count }: WoodPart): Part {
  if (shape.kind === 'straight') return { kind: 'straight', length: shape.length, width: shape.width, count };
  return { kind: 'segment', inside: shape.ring.inside, outside: shape.ring.outside, half: shape.half, count };
}

/**
 * The allowance for defects and waste as pieces that are planned with the rest: the share of the wood that is allowed for is counted
 * up piece by piece, the largest first, and whenever some is owed one more of that piece is planned, which pays its own face back.
 * Gives how many more of each part.
 */
export function partsForWaste(parts: readonly WoodPart[], waste: number): number[] {
  const extra = parts.map(() => 0);
  const areas = parts.map(({ shape }) => partArea(shape));
  const order = parts.map((_, at) => at).sort((a, b) => areas[b]! - areas[a]! || a - b);
  let owed = 0;
  for (const at of order) {
    const area = areas[at]!;
    for (let piece = 0; piece < parts[at]!.count; piece++) {
      owed += waste * area;
      while (owed > 1e-9 * area) {
        extra[at]!++;
        owed -= area;
      }
    }
  }
  return extra;
}

/** What one board costs, to the cent. */
export function priceOf(board: StockBoard, { unit }: Standards): number {
  return toCents(feetOf(board, unit) * board.pricePerBoardFoot);
}

/** Board feet of one board. */
export function feetOf(board: Pick<StockBoard, 'quarters' | 'width' | 'length'>, unit: Unit): number {
  const feet = boardFeet(inches(board.quarters / 4, 'in'), inches(board.width, unit), inches(board.length, unit));
  return feet.ok ? feet.value : 0;
}

/** How large a part is, in words. */
export function sizeOf({ shape }: WoodPart): string {
  const shown = (length: number) => String(Number(length.toFixed(3)));
  return `${shown(partLength(shape))} × ${shown(partWidth(shape))}`;
}
