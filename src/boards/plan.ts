import { ok, refuse, type Result } from '../result';
import type { Effort } from '../stock/effort';
import type { Master } from '../stock/master';
import { randomNumbers } from '../stock/random';
import { boundOf, proofOf, type Proof } from './bound';
import { Filler } from './filling';
import { generateCuts, masterOf, questionOf } from './fractions';
import { groundsOf, NO_GROUNDS, type Reasons } from './grounds';
import type { WoodOrder, WoodPlan } from './order';
import { FEW_STATES, MOST_STATES } from './lanes';
import { layOut } from './layOut';
import { portionOf, problemOf, withDemand, type Cut, type Problem } from './problem';
import { areasOf, boardByBoard, costOf, dive, improve, Pool, type Tools } from './search';
import { WholeBoards } from './wholeBoards';

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
 * Column generation over whole boards (Gilmore and Gomory 1965), a bound proven in whole numbers, raised by whole boards (Benders)
 * and by looking through all plans of those that come into question, and dives into the fractional plan. Refused: figures that are no lengths, counts or prices.
 */
export function planWood(order: WoodOrder, control: PlanControl): Result<WoodPlan> {
  const planning = planningOf(order, control);
  return planning.ok ? ok(planning.value()) : planning;
}

/** Each call gives the plan so far: the first with the effort there is, further ones with what it was given since. */
export function planningOf(order: WoodOrder, control: PlanControl): Result<() => WoodPlan> {
  const refusal = refusalOf(order);
  if (refusal !== null) return refuse(refusal);
  const { problem, tooLarge } = problemOf(order);
  if (problem.kinds.length === 0) return ok(() => ({ ...NOTHING, tooLarge }));
  const steps = search(problem, control);
  let last: Found | null = null;
  return ok(() => {
    const step = steps.next();
    // Past its end a search has nothing more to say.
    last = (step.value as Found | undefined) ?? last!;
    const { cuts, bound, short, reasons } = last;
    const cost = costOf(cuts, problem);
    const proven = short.every((count) => count === 0) && cost <= bound;
    return {
      boards: layOut(cuts, problem, order),
      cost: cost / 100,
      lowerBound: Math.min(bound, cost) / 100,
      proven,
      interrupted: !proven && control.effort.interrupted,
      tooLarge,
      short: shortParts(short, problem, order),
      grounds: groundsOf(reasons, problem, order),
    };
  });
}

const NOTHING: WoodPlan = {
  ...{ boards: [], cost: 0, lowerBound: 0, proven: true, interrupted: false },
  ...{ tooLarge: [], short: [], grounds: NO_GROUNDS },
};

/** Shares of the effort: for raising the bound by whole boards, and for the first plan at most. */
const FOR_WHOLE_BOARDS = 0.85;
/** Of more kinds than this whole boards hardly raise the bound: they get this share. */
const FEW_KINDS = 40;
const FOR_WHOLE_BOARDS_OF_MANY = 0.1;
const FOR_FIRST = 0.6;
/** Dives for the plan of whole boards that may be the cheapest. */
const TRIES = 3;
/** Pieces of one part, and cents for one board, at most. */
const MOST_PIECES = 1_000_000;
const DEAREST = 1e7;

/** States of a lane table over all kinds, so that many kinds don't take too long. */
const STATES_FOR_PLAN = 150_000;
const STATES_FOR_BOUND = 500_000;
/** More kinds than this are planned in portions. */
const MOST_KINDS = 400;

interface Found {
  readonly cuts: readonly Cut[];
  /** In cents. */
  readonly bound: number;
  /** Pieces of each kind left unmade for want of boards. */
  readonly short: readonly number[];
  readonly reasons: Reasons;
}

/** What was found, whenever the effort is at its end. */
type Search = Generator<Found, Found | undefined, void>;

function* search(whole: Problem, control: PlanControl): Search {
  if (whole.kinds.length <= MOST_KINDS) return yield* searchAll(whole, control);
  return searchInPortions(whole, control);
}

function* searchAll(whole: Problem, { effort, better }: PlanControl): Search {
  const states = (all: number) => Math.max(FEW_STATES, Math.min(MOST_STATES, Math.floor(all / whole.kinds.length)));
  const filler = new Filler(whole, 'plan', states(STATES_FOR_PLAN));
  const pool = new Pool();
  const tools: Tools = { filler, pool, effort, random: randomNumbers(1) };
  const master = masterOf(whole, effort);
  generateCuts(master, filler, effort.part(FOR_FIRST * effort.left));
  for (const cut of master.patterns) pool.add(cut as Cut);

  const before = effort.left;
  const { cuts: first, short } = firstPlan(whole, tools, master);
  let dived = before - effort.left;
  const problem = short.some((count) => count > 0)
    ? withDemand(
        whole,
        whole.demand.map((wanted, at) => wanted - short[at]!),
      )
    : whole;
  let best = first;
  let cost = costOf(best, problem);

  const question = { ...questionOf(master, whole), wanted: problem.demand };
  const bounding = new Filler(whole, 'bound', states(STATES_FOR_BOUND), filler.idle);
  const proof = proofOf(question, bounding, effort);
  const proofs = [proof, proofByArea(problem, bounding, effort)];
  let bound = Math.max(...proofs.map((each) => boundOf(each, problem, effort)));
  const keep = (cuts: readonly Cut[]) => {
    const costs = costOf(cuts, problem);
    if (costs >= cost) return;
    best = cuts;
    cost = costs;
    better?.(cost / 100, bound / 100);
  };
  better?.(cost / 100, bound / 100);

  const looked = new WholeBoards();
  // The fractional plan is one of all pieces, also of those that stay unmade.
  const from = problem === whole ? master : undefined;
  // A plan is made from the start again whenever improving has taken as long as that took last.
  let improving = 0;
  for (;;) {
    if (cost > bound && !effort.ended && !looked.stuck) {
      const share = whole.kinds.length > FEW_KINDS ? FOR_WHOLE_BOARDS_OF_MANY : FOR_WHOLE_BOARDS;
      const part = { ...tools, effort: effort.part(share * effort.left) };
      const raised = looked.raise(problem, proofs, cost, bounding, part, TRIES);
      bound = Math.max(bound, raised.bound);
      if (raised.plan !== null) keep(raised.plan);
    }
    while (cost > bound && !effort.ended) {
      const before = effort.left;
      const afresh = improving > dived;
      const found = afresh ? dive(problem, cost - 1, tools, 0.5, from) : improve(problem, best, question.worths, tools);
      const took = before - effort.left;
      if (afresh) [dived, improving] = [took, 0];
      else improving += took;
      if (found !== null) keep(found);
    }
    yield { cuts: best, bound, short, reasons: { proofs, lookedThrough: looked.through } };
    if (cost <= bound) return undefined;
  }
}

/**
 * So many kinds that they are planned in portions, neighbors in width and angle together. The bound is still one of the whole:
 * whatever a piece is worth in its portion, no board can hold more worth for its price than the fullest over all kinds.
 */
function searchInPortions(whole: Problem, { effort, better }: PlanControl): Found {
  const portions = Math.ceil(whole.kinds.length / MOST_KINDS);
  const had = whole.boards.map(({ limit }) => limit);
  const cuts: Cut[] = [];
  const short = whole.kinds.map(() => 0);
  const worths = new Float64Array(whole.kinds.length);
  for (let at = 0; at < portions; at++) {
    const from = Math.floor((at * whole.kinds.length) / portions);
    const end = Math.floor(((at + 1) * whole.kinds.length) / portions);
    const demand = whole.demand.map((wanted, kind) => (kind >= from && kind < end ? wanted : 0));
    const portion = portionOf(whole, demand, had);
    const part = effort.part(effort.left / (portions - at));
    const master = masterOf(portion.problem, part);
    const filler = new Filler(portion.problem, 'plan', FEW_STATES);
    generateCuts(master, filler, part.part(FOR_FIRST * part.left));
    worths.set(Array.from(questionOf(master, portion.problem).worths), from);
    const pool = new Pool();
    for (const cut of master.patterns) pool.add(cut as Cut);
    const made = firstPlan(portion.problem, { filler, pool, effort: part, random: randomNumbers(1) }, master);
    for (const cut of made.cuts) {
      had[cut.board]!--;
      cuts.push(portion.toWhole(cut));
    }
    made.short.forEach((count, kind) => (short[from + kind] = count));
  }
  const wanted = whole.demand.map((count, kind) => count - short[kind]!);
  const question = { worths, wanted, prices: whole.boards.map(({ price }) => price) };
  const bounding = new Filler(whole, 'bound', FEW_STATES);
  const problem = withDemand(whole, wanted);
  const proofs = [proofOf(question, bounding, effort.part(0)), proofByArea(problem, bounding, effort)];
  const bound = Math.max(...proofs.map((each) => boundOf(each, problem, effort)));
  better?.(costOf(cuts, whole) / 100, bound / 100);
  return { cuts, bound, short, reasons: { proofs, lookedThrough: [] } };
}

/** That the wood in the pieces fits in the boards: a bound even where the fractional plan isn't at its end. */
function proofByArea(problem: Problem, bounding: Filler, effort: Effort): Proof {
  const prices = problem.boards.map(({ price }) => price);
  return proofOf({ worths: areasOf(problem), wanted: problem.demand, prices }, bounding, effort.part(0));
}

/** A first plan: by a dive, or where that comes to no end, board by board. */
function firstPlan(problem: Problem, tools: Tools, master: Master): { cuts: readonly Cut[]; short: readonly number[] } {
  const { effort } = tools;
  const none = problem.kinds.map(() => 0);
  const dived = dive(problem, Infinity, { ...tools, effort: effort.part(FOR_FIRST * effort.left) }, 0, master);
  if (dived !== null) return { cuts: dived, short: none };
  const made = boardByBoard(problem, effort);
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
