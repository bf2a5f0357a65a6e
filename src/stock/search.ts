import { quickProof } from './bounds';
import { boundOf, priceUnit, stepUp, type Proof } from './certificate';
import { coverTightly, pricingOf } from './cover';
import { costOf, type Cutting, type Run } from './cutting';
import { firstFitDecreasing } from './decreasing';
import { dive, Pool } from './dive';
import { Filler } from './filler';
import { generatePatterns } from './generate';
import { Master } from './master';
import { proofFrom } from './proof';
import { randomNumbers } from './random';

export interface SearchControl {
  /** True once the time is up or the user stopped. */
  readonly ended: () => boolean;
  readonly better: (runs: readonly Run[], bound: number) => void;
}

export interface Found {
  /** Null: no plan was found with the boards that can be had. */
  readonly runs: readonly Run[] | null;
  readonly bound: number;
  readonly proof: Proof;
  /** The proof alone falls short of the bound: plans below it were all looked through. */
  readonly searched: boolean;
}

/** Patterns tried in the first look through all tight plans; each later look may try twice as many. */
const FIRST_PATIENCE = 5_000;

/** Least cost: first fit and quick bounds, then generated patterns and dives, until plan and bound meet or the time is up. */
export function search(cutting: Cutting, control: SearchControl): Found {
  const { sizes, demand, boards } = cutting;
  const unit = priceUnit(boards);
  let proof = quickProof(cutting);
  let bound = stepUp(boundOf(proof, cutting), cutting);
  let runs: readonly Run[] | null = null;
  let cost = Infinity;
  let searched = false;
  const keep = (plan: readonly Run[] | null) => {
    if (plan === null || costOf(plan, boards) >= cost) return;
    runs = plan;
    cost = costOf(plan, boards);
    control.better(plan, Math.min(bound, cost));
  };
  const raise = (candidate: Proof) => {
    const reached = stepUp(boundOf(candidate, cutting), cutting);
    if (reached > bound) [proof, bound] = [candidate, reached];
  };
  const answer = (): Found => ({ runs, bound: Math.min(bound, cost), proof, searched });
  keep(firstFitDecreasing(cutting));
  if (cost <= bound || control.ended()) return answer();

  const prices = boards.map((board) => board.price);
  const master = new Master(
    demand,
    boards.map((board) => board.limit),
    prices,
    1000 * Math.max(...prices),
  );
  const filler = new Filler(
    sizes,
    demand,
    boards.map((board) => board.room),
  );
  for (const run of runs ?? []) master.add((run as Run).pattern);
  const root = generatePatterns(master, cutting, filler, { ended: control.ended, unit });
  raise(proofFrom(root.worths, cutting, filler));
  const pool = new Pool();
  for (const pattern of master.patterns) pool.add(pattern);
  // A board for each piece, of the dearest kind.
  const dearestPlan = demand.reduce((sum, count) => sum + count, 0) * Math.max(...prices);
  const pricing = pricingOf(root, cutting);
  let patience = FIRST_PATIENCE;
  const tools = { ended: control.ended, random: randomNumbers(1), unit };
  for (let attempt = 0; cost > bound && !control.ended(); attempt++) {
    const aim = boards.length === 1 && attempt % 4 !== 3 ? bound : Math.min(cost - unit, dearestPlan);
    let found = dive(cutting, aim, pool, tools, attempt);
    if (found === null && attempt > 0) found = coverTightly(cutting, aim, pricing, (patience *= 2), control.ended);
    if (found === 'none' && aim === dearestPlan) break;
    if (found === 'none') {
      bound = Math.min(cost, aim + unit);
      searched = true;
    } else if (found !== null) {
      keep(found);
      attempt = -1;
    }
  }
  return answer();
}
