import { ok, refuse, type Result } from '../result';
import type { Effort } from '../stock/effort';
import { randomNumbers } from '../stock/random';
import { boundOf, proofOf, type Proof } from './bound';
import { Filler } from './filling';
import { generateCuts, masterOf, questionOf, WORTHS_PER_CENT } from './fractions';
import { layOut } from './layOut';
import type { WoodOrder, WoodPlan } from './order';
import { problemOf, withDemand, type Cut, type Problem } from './problem';
import { boardByBoard, costOf, dive, improve, Pool, type Tools } from './search';
import { wholeBoards } from './wholeBoards';

export interface PlanControl {
  /** What the search may do. The same effort gives the same plan, unless it is interrupted. */
  readonly effort: Effort;
  /** Told of each cheaper plan: what it costs, and what no plan costs less than. */
  readonly better?: (cost: number, lowerBound: number) => void;
}

/**
 * The cheapest boards for all parts of one wood, and how to cut them, under these rules of sawing:
 *
 * 1. A board less both end trims is cut across at most once before it is ripped. One section keeps the board's width, the other is
 *    ripped into two or more lanes; either may be missing.
 * 2. A lane holds parts no wider than it; a narrower part is ripped to its width afterwards.
 * 3. Segments of one width and one angle lie in a lane as one row, every second one flipped, whatever their lengths.
 * 4. There is one saw cut between pieces, rows, lanes and sections. What is left over is waste.
 *
 * Column generation over whole boards (Gilmore and Gomory 1965), a bound proven in whole numbers, raised by whole boards (Benders),
 * and dives into the fractional plan. Refused: figures that are no lengths, counts or prices.
 */
export function planWood(order: WoodOrder, control: PlanControl): Result<WoodPlan> {
  const refusal = refusalOf(order);
  if (refusal !== null) return refuse(refusal);
  const { problem, tooLarge } = problemOf(order);
  const nothing = { boards: [], cost: 0, lowerBound: 0, proven: true, interrupted: false, tooLarge, short: [] };
  if (problem.kinds.length === 0) return ok(nothing);
  const { cuts, bound, short } = search(problem, control);
  const cost = costOf(cuts, problem);
  const proven = short.every((count) => count === 0) && cost <= bound;
  return ok({
    boards: layOut(cuts, problem, order),
    cost: cost / 100,
    lowerBound: Math.min(bound, cost) / 100,
    proven,
    interrupted: !proven && control.effort.interrupted,
    tooLarge,
    short: shortParts(short, problem, order),
  });
}

/** Shares of the effort: for raising the bound by whole boards, and for the first plan at most. */
const FOR_WHOLE_BOARDS = 0.4;
const FOR_FIRST = 0.6;
/** Dives for the plan of whole boards that may be the cheapest. */
const TRIES = 3;
/** Pieces of one part, and cents for one board, at most. */
const MOST_PIECES = 1_000_000;
const DEAREST = 1e7;
/** Every so many improvements a plan is made from the start. */
const AFRESH = 12;

interface Found {
  readonly cuts: readonly Cut[];
  /** In cents. */
  readonly bound: number;
  /** Pieces of each kind left unmade for want of boards. */
  readonly short: readonly number[];
}

function search(whole: Problem, { effort, better }: PlanControl): Found {
  const filler = new Filler(whole, 'plan');
  const pool = new Pool();
  const tools: Tools = { filler, pool, effort, random: randomNumbers(1) };
  const master = masterOf(whole, effort);
  generateCuts(master, filler, effort.part(FOR_FIRST * effort.left));
  for (const cut of master.patterns) pool.add(cut as Cut);

  const { cuts: first, short } = firstPlan(whole, tools);
  const problem = short.some((count) => count > 0)
    ? withDemand(
        whole,
        whole.demand.map((wanted, at) => wanted - short[at]!),
      )
    : whole;
  let best = first;
  let cost = costOf(best, problem);

  const question = { ...questionOf(master, whole), wanted: problem.demand };
  const bounding = new Filler(whole, 'bound');
  const proof = proofOf(question, bounding, effort);
  let bound = boundOf(proof, problem, effort);
  const keep = (cuts: readonly Cut[]) => {
    const costs = costOf(cuts, problem);
    if (costs >= cost) return;
    best = cuts;
    cost = costs;
    better?.(cost / 100, bound / 100);
  };
  better?.(cost / 100, bound / 100);

  if (cost > bound && !effort.ended) {
    const part = { ...tools, effort: effort.part(FOR_WHOLE_BOARDS * effort.left) };
    const raised = wholeBoards(problem, [proof], cost, pricingOf(proof, problem), bounding, part, TRIES);
    bound = Math.max(bound, raised.bound);
    if (raised.plan !== null) keep(raised.plan);
  }
  for (let turn = 1; cost > bound && !effort.ended; turn++) {
    const found =
      turn % AFRESH === 0 ? dive(problem, cost - 1, tools, 0.5) : improve(problem, best, question.worths, tools);
    if (found !== null) keep(found);
  }
  return { cuts: best, bound, short };
}

/** Worths scaled so that no board is worth more than its price. */
function pricingOf({ worths, most }: Proof, { boards }: Problem) {
  const prices = boards.map(({ price }) => price * WORTHS_PER_CENT);
  const over = Math.max(1, ...most.map((each, at) => each / prices[at]!));
  return { worths: worths.map((worth) => Math.floor((worth / over) * (1 - 1e-12))), prices };
}

/** A first plan: by a dive, or where that comes to no end, board by board. */
function firstPlan(problem: Problem, tools: Tools): { cuts: readonly Cut[]; short: readonly number[] } {
  const { effort } = tools;
  const none = problem.kinds.map(() => 0);
  const dived = dive(problem, Infinity, { ...tools, effort: effort.part(FOR_FIRST * effort.left) }, 0);
  if (dived !== null) return { cuts: dived, short: none };
  const made = boardByBoard(problem, tools);
  for (let attempt = 0; attempt < TRIES && made.short.some((count) => count > 0) && !effort.ended; attempt++) {
    const again = dive(problem, Infinity, tools, 0.5);
    if (again !== null) return { cuts: again, short: none };
  }
  return made;
}

/** The missing pieces of each kind given to its parts, the last ones of the order first. */
function shortParts(short: readonly number[], { kinds }: Problem, { parts }: WoodOrder): WoodPlan['short'] {
  const missing = new Map<number, number>();
  short.forEach((count, kind) => {
    let left = count;
    for (const part of [...kinds[kind]!.parts].reverse()) {
      const its = Math.min(left, parts[part]!.count);
      if (its > 0) missing.set(part, its);
      left -= its;
    }
  });
  return [...missing].sort(([a], [b]) => a - b).map(([part, count]) => ({ part, count }));
}

function refusalOf({ parts, boards, kerf, trim }: WoodOrder): string | null {
  const length = (value: number) => Number.isFinite(value) && value > 0;
  if (!(Number.isFinite(kerf) && kerf >= 0)) return `kerf must be a length of 0 or more; got ${kerf}`;
  if (!(Number.isFinite(trim) && trim >= 0)) return `end trim must be a length of 0 or more; got ${trim}`;
  for (const [at, part] of parts.entries()) {
    const which = `part ${at + 1}`;
    if (!Number.isInteger(part.count) || part.count < 1 || part.count > MOST_PIECES) {
      return `${which}: count must be a whole number from 1 to ${MOST_PIECES}; got ${part.count}`;
    }
    if (part.kind === 'straight') {
      if (!length(part.length)) return `${which}: length must be more than 0; got ${part.length}`;
      if (!length(part.width)) return `${which}: width must be more than 0; got ${part.width}`;
    } else {
      if (!(Number.isFinite(part.inside) && part.inside >= 0))
        return `${which}: inside radius must be 0 or more; got ${part.inside}`;
      if (!(Number.isFinite(part.outside) && part.outside > part.inside)) {
        return `${which}: outside radius must be more than the inside radius, here ${part.inside}; got ${part.outside}`;
      }
      if (!(part.half > 0 && part.half < Math.PI / 2)) {
        return `${which}: half of the angle must be between 0 and a right angle; got ${part.half} radians`;
      }
    }
  }
  for (const [at, { width, length: long, price, limit }] of boards.entries()) {
    const which = `board ${at + 1}`;
    if (!length(width)) return `${which}: width must be more than 0; got ${width}`;
    if (!length(long)) return `${which}: length must be more than 0; got ${long}`;
    const cents = Math.round(price * 100);
    if (!(cents >= 1 && cents <= DEAREST && Math.abs(price * 100 - cents) < 1e-6)) {
      return `${which}: price must be whole cents from 0.01 to ${DEAREST / 100}; got ${price}`;
    }
    if (limit !== null && !(Number.isInteger(limit) && limit >= 0)) {
      return `${which}: the number on hand must be a whole number of 0 or more; got ${limit}`;
    }
  }
  return null;
}
