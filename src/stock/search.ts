import { quickProof } from './bounds';
import { coverTightly } from './cover';
import { costOf, isSimple, type Cutting, type Run } from './cutting';
import { firstFitDecreasing } from './decreasing';
import { dive, Pool } from './dive';
import type { Effort } from './effort';
import { Filler } from './filler';
import { generatePatterns, type Generated } from './generate';
import { Master, SHORT_PRICES } from './master';
import { sizesAsWorths, tightestPricing, type Pricing } from './pricing';
import { proofFrom, type Proof, type ScaledProof } from './proof';
import { priceUnit, steppedBoundOf } from './proved';
import { randomNumbers } from './random';
import { replanBoards, type ReplanControl } from './replan';
import { wholeBoundOf } from './wholeBound';

export interface SearchControl {
  readonly effort: Effort;
  /** Told each better plan, with the bound so far. */
  readonly better: (found: Found) => void;
}

export interface Found {
  /** Null: no plan was found with the boards that can be had. */
  readonly runs: readonly Run[] | null;
  /** The boards that can be had don't hold the pieces, however they are cut. */
  readonly impossible: boolean;
  readonly bound: number;
  readonly proof: Proof;
  /** What the proof alone proves: where it falls short of the bound, plans below that were all looked through. */
  readonly proved: number;
}

/** Patterns tried in the first look through all tight plans; each later look may try twice as many. */
const FIRST_PATIENCE = 5_000;
/** Share of one board that all boards together may leave. */
const LITTLE_WASTE = 0.02;
/** With more boards than this, dives get there sooner. */
const COVERED_BOARDS = 60;

/** A plan of several kinds of board is left alone once so many changes in a row of a few boards bettered nothing. */
const MOST_FAILED = 50;

/** The best plan and the best bound so far. */
class Standing {
  readonly unit: number;
  runs: readonly Run[] | null = null;
  cost = Infinity;
  impossible = false;
  bound: number;
  /** What `proof` proves. */
  private proved: number;

  constructor(
    readonly cutting: Cutting,
    private proof: Proof,
    private readonly control: SearchControl,
  ) {
    this.unit = priceUnit(cutting.boards);
    this.bound = this.proved = steppedBoundOf(proof, cutting);
  }

  get open(): boolean {
    return this.cost > this.bound && !this.control.effort.ended;
  }

  /** Takes in the answer to whether there is a plan that costs at most `aim`. True: there was a better one. */
  take(found: readonly Run[] | 'none' | null, aim: number): boolean {
    if (found === 'none') this.bound = Math.max(this.bound, Math.min(this.cost, aim + this.unit));
    if (found === 'none' || found === null) return false;
    const cost = costOf(found, this.cutting.boards);
    if (cost >= this.cost) return false;
    [this.runs, this.cost] = [found, cost];
    this.control.better(this.answer());
    return true;
  }

  /** Takes in what a proof proves, boards counted whole. */
  raise(proof = this.proof): void {
    const proved = wholeBoundOf(proof, this.cutting, this.control.effort);
    if (proved > this.proved) [this.proof, this.proved] = [proof, proved];
    this.bound = Math.max(this.bound, proved);
  }

  answer(): Found {
    const bound = Math.min(this.bound, this.cost);
    return { runs: this.runs, impossible: this.impossible, bound, proof: this.proof, proved: this.proved };
  }
}

/** Least cost: first fit and quick bounds, then generated patterns and dives, until plan and bound meet or the time is up. */
export function search(cutting: Cutting, control: SearchControl): Found {
  const { demand, boards } = cutting;
  const { effort } = control;
  const standing = new Standing(cutting, quickProof(cutting, effort), control);
  standing.take(firstFitDecreasing(cutting, effort), Infinity);
  if (standing.open) standing.raise();
  if (standing.open) standing.take(coverWithoutWaste(cutting, standing.bound, effort), standing.bound);
  if (!standing.open) return standing.answer();

  const pool = new Pool();
  for (const { pattern } of standing.runs ?? []) pool.add(pattern);
  const { generated, proof } = rootPatterns(cutting, pool, standing.unit, effort);
  standing.raise(proof);
  const pricing = tightestPricing(generated.bound, proof, cutting);
  // A board for each piece, of the dearest kind: a plan costs no more, or there is none.
  const dearest = demand.reduce((sum, count) => sum + count, 0) * Math.max(...boards.map((board) => board.price));
  const tools = { effort, random: randomNumbers(1), unit: standing.unit };
  let patience = FIRST_PATIENCE;
  for (let attempt = 0; standing.open; attempt++) {
    const better = Math.min(standing.cost - standing.unit, dearest);
    // One kind of board: the bound is nearly always reached, so dives aim at it, but now and then at anything better.
    const aim = boards.length === 1 && attempt % 4 !== 3 ? Math.min(standing.bound, better) : better;
    let found = dive(cutting, aim, pool, tools, attempt);
    if (found === null && attempt > 0) found = coverTightly(cutting, aim, pricing, (patience *= 2), effort);
    standing.impossible = found === 'none' && standing.runs === null && aim === dearest;
    if (standing.impossible) break;
    if (standing.take(found, aim)) attempt = -1;
    if (boards.length > 1) replan(standing, pricing, tools);
  }
  return standing.answer();
}

/** Changes a few boards at a time for the better, as long as that goes well. */
function replan(standing: Standing, pricing: Pricing, tools: ReplanControl): void {
  for (let failed = 0; standing.runs !== null && standing.open && failed < MOST_FAILED; failed++) {
    if (standing.take(replanBoards(standing.cutting, standing.runs, pricing, tools), Infinity)) failed = -1;
  }
}

/** The fractional plan of the whole problem: its patterns go to the pool, its duals make the proof. */
function rootPatterns(
  cutting: Cutting,
  pool: Pool,
  unit: number,
  effort: Effort,
): { generated: Generated; proof: ScaledProof } {
  const { sizes, demand, boards } = cutting;
  const prices = boards.map((board) => board.price);
  const limits = boards.map((board) => board.limit);
  const rooms = boards.map((board) => board.room);
  const master = new Master(demand, limits, prices, SHORT_PRICES * Math.max(...prices), effort);
  const filler = new Filler(sizes, demand, rooms, effort);
  for (const pattern of pool.patterns) master.add(pattern);
  const generated = generatePatterns(master, cutting, filler, { effort, unit });
  for (const pattern of master.patterns) pool.add(pattern);
  return { generated, proof: proofFrom(generated.worths, cutting, filler) };
}

/** Boards that must all be filled almost wholly leave so few patterns that plans are best looked through at once. */
function coverWithoutWaste(cutting: Cutting, aim: number, effort: Effort): Run[] | 'none' | null {
  if (!isSimple(cutting)) return null;
  const { sizes, demand, boards } = cutting;
  const { room } = boards[0]!;
  const waste = aim * room - sizes.reduce((sum, size, at) => sum + size * demand[at]!, 0);
  if (aim > COVERED_BOARDS || waste > LITTLE_WASTE * room) return null;
  return coverTightly(cutting, aim, sizesAsWorths(cutting), FIRST_PATIENCE, effort);
}
