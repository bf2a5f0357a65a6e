import type { BoardsAlike, WoodOrder, WoodPlan } from '../boards/order';
import type { Standards } from '../standards';
import { Effort } from '../stock/effort';
import { GUARD_MS } from '../stock/plan';
import type { StockBoard } from '../stockList';
import { woodFor, type Wood } from './wood';
import { nameOf, sizeOf, WoodPlanning } from './woodPlanning';
import { partLength, partWidth, type WoodPart } from './woodParts';

/** The boards to buy of one wood, a species in one dressed thickness, and how to cut them. */
export interface WoodBoards {
  readonly species: string;
  /** Dressed. */
  readonly thickness: number;
  readonly quarters: number;
  readonly parts: readonly PlannedPart[];
  /** The boards of this wood on sale. */
  readonly sale: readonly StockBoard[];
  /** Boards cut alike. They speak of `parts` and `sale` by their places in these lists. */
  readonly boards: readonly BoardsAlike[];
  /** Money for all boards. */
  readonly cost: number;
  /** No boards under the rules of sawing that hold all parts cost less. */
  readonly lowerBound: number;
  /** The cost is the least possible, over every width and length on sale. */
  readonly proven: boolean;
  /** The clock ended the search: another time, or on another machine, it may come to another plan. */
  readonly interrupted: boolean;
  readonly boardFeet: number;
  /** Share of the boards' face under parts, those for defects among them, 0 to 1. */
  readonly yield: number;
}

export interface PlannedPart {
  /** `count` has the pieces for defects and waste in it. */
  readonly part: WoodPart;
  /** Pieces for defects and waste. */
  readonly extra: number;
}

export interface BoardNeeds {
  readonly plans: readonly WoodBoards[];
  /** Parts that no board in the stock list can hold, or that the boards on hand don't suffice for: a sentence each. */
  readonly problems: readonly string[];
}

export interface BoardControl {
  /** For all plans together, counted as `Effort` does; left out: by the number of parts, see `workFor`. */
  readonly work?: number | undefined;
  /** The clock, in milliseconds; left out: `Date.now`. It only ends a search that takes longer than `GUARD_MS`. */
  readonly now?: (() => number) | undefined;
  /** Asked now and then: true ends the search with the plans found so far. */
  readonly stop?: (() => boolean) | undefined;
  /** Told of each step: the share of the work that is done, 0 to 1, and the wood that is being planned. */
  readonly progress?: ((done: number, wood: string) => void) | undefined;
  /** Told of each wood as the planner has it, its grounds for the bound with it. */
  readonly planned?: ((order: WoodOrder, plan: WoodPlan) => void) | undefined;
}

/** The rules of sawing that a plan keeps to, in the words of the shop. */
export const SAWING_RULES = [
  'Each board is trimmed at both ends and cut across at most once before it is ripped.',
  'One section keeps the full width of the board; the other is ripped into lanes side by side. Either may be missing.',
  'A lane takes pieces of its own width, and narrower ones, which are ripped to width afterwards.',
  'Segments of one width and angle lie in one row, every second one flipped, so that two share each cut; their lengths may differ.',
  'One saw cut is lost between pieces, rows, lanes and sections. What is left over counts as waste.',
] as const;

/** Work by the number of parts, in straight lines between these: a few parts take half a second at most, some dozens two. */
const WORK: readonly (readonly [parts: number, work: number])[] = [
  [0, 5e6],
  [12, 59e6],
  [15, 62e6],
  [30, 142e6],
  [40, 187e6],
  [120, 480e6],
  [460, 1.9e9],
];
/** The share for first plans of all woods, in one go each; the rest goes where most may still be saved. */
const FOR_FIRST = 0.75;
/** The least that a wood goes on with. */
const LEAST = 0.01;
/** A wood gets work by its parts and as much as for so many more: the last proof of a small one takes long, too. */
const A_WOOD = 10;

/** The work that plans of so many parts get: more for more parts, up to some seconds. */
export function workFor(parts: number): number {
  const above = WORK.findIndex(([more]) => parts <= more);
  if (above < 0) return WORK.at(-1)![1];
  const [to, most] = WORK[above]!;
  const [from, least] = WORK[Math.max(0, above - 1)]!;
  return to === from ? most : least + ((most - least) * (parts - from)) / (to - from);
}

/** The boards to buy for these parts: one plan for each wood, over every width and length on sale. */
export function planBoards(parts: readonly WoodPart[], standards: Standards, control: BoardControl = {}): BoardNeeds {
  const { now = Date.now, stop, progress, planned: told } = control;
  const end = now() + GUARD_MS;
  const work = control.work ?? workFor(parts.length);
  const effort = new Effort(work, () => now() >= end || (stop?.() ?? false));
  const problems: string[] = [];
  const groups = new Map<string, { wood: Wood; parts: WoodPart[] }>();
  for (const part of parts) {
    const wood = woodFor(part.species, part.thickness, standards);
    if (wood === null) {
      problems.push(`${part.for}: no ${part.species} at least ${part.thickness} thick is in the stock list`);
      continue;
    }
    if (!holds(wood, part, standards)) {
      problems.push(tooLarge(part, wood, standards));
      continue;
    }
    const key = `${part.species.toLowerCase()}|${wood.thickness}`;
    const group = groups.get(key) ?? { wood, parts: [] };
    group.parts.push(part);
    groups.set(key, group);
  }
  const made = new Map<string, WoodPlanning>();
  const weight = (group: { readonly parts: readonly WoodPart[] }) => group.parts.length + A_WOOD;
  let left = [...groups.values()].reduce((sum, group) => sum + weight(group), 0);
  const kept = (1 - FOR_FIRST) * work;
  const planning = (wood: Wood) => {
    const { species, thickness } = nameOf(wood);
    progress?.(1 - effort.left / work, `${species} ${thickness}`);
    return `${species} ${thickness}`;
  };
  // The smallest first: what they don't need is left for the others.
  for (const [key, group] of [...groups].sort(([, a], [, b]) => a.parts.length - b.parts.length)) {
    const name = planning(group.wood);
    const share = (Math.max(0, effort.left - kept) * weight(group)) / left;
    left -= weight(group);
    const begun = WoodPlanning.of(group.wood, group.parts, standards, effort.part(share), share);
    if (begun.ok) made.set(key, begun.value);
    else problems.push(`${name}: ${begun.message}`);
  }
  for (;;) {
    const next = mostPromising([...made.values()]);
    if (next === null || effort.ended) break;
    planning(next.wood);
    next.goOn(Math.max(next.had, LEAST * work));
  }
  progress?.(1, '');
  const plans: WoodBoards[] = [];
  for (const planned of [...groups.keys()].flatMap((key) => made.get(key) ?? [])) {
    told?.(planned.order, planned.plan);
    if (planned.plan.boards.length > 0) plans.push(planned.boards());
    problems.push(...planned.problems());
  }
  return { plans, problems };
}

/** The plan that may still get cheaper by most for the work it has had; null: all are proven. */
function mostPromising(plans: readonly WoodPlanning[]): WoodPlanning | null {
  const promise = ({ plan, had, exhausted }: WoodPlanning) =>
    plan.proven || exhausted ? 0 : (1 - plan.lowerBound / plan.cost) / had;
  let most: WoodPlanning | null = null;
  for (const each of plans) if (promise(each) > (most === null ? 0 : promise(most))) most = each;
  return most;
}

/** As the planner sees it: what is a rounding too long still fits. */
function holds(wood: Wood, { shape }: WoodPart, { endTrim }: Standards): boolean {
  const hair = 1e-8 * Math.max(...wood.boards.map(({ length }) => length));
  return wood.boards.some(
    ({ width, length }) => partWidth(shape) <= width + hair && partLength(shape) <= length - 2 * endTrim + hair,
  );
}

function tooLarge(part: WoodPart, wood: Wood, { endTrim }: Standards): string {
  const longest = Math.max(...wood.boards.map((board) => board.length));
  return (
    `${part.for}: a piece ${sizeOf(part)} is larger than every ${part.species} board ${wood.thickness} thick; ` +
    `the largest are ${longest} long, trimmed ${endTrim} at each end, and ${wood.widest} wide`
  );
}
