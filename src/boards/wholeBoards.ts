import { Master } from '../stock/master';
import { cheapestBoards, proofOf, type Proof } from './bound';
import { evenPricing } from './evenPricing';
import type { Filler } from './filling';
import { generateCuts, questionOf } from './fractions';
import type { Cut, Problem } from './problem';
import type { Reasons } from './grounds';
import { diveFor, type Tools } from './search';
import { tightPlan, type Fillings, type Looking, type Pricing } from './tight';

/** A piece left unmade, in cents that no board costs here. */
const UNMADE = 10_000;

/**
 * Raises a bound by looking at whole boards. The cheapest numbers of boards that no proof rules out are tried: if not all pieces
 * come out of them even in fractions, the duals of "fewest pieces unmade" are a proof that rules them out, and others with them;
 * else no bound of this kind goes higher, and a plan of just these boards is looked for (Benders 1962, with the boards as the first
 * stage).
 */
export class WholeBoards {
  /** Numbers of boards of which there is no plan, and why. */
  readonly through: Reasons['lookedThrough'][number][] = [];
  /** There is more to look through than there ever will be effort for. */
  stuck = false;
  private readonly fillings: Fillings = {};
  /** Boards that hold all pieces in fractions, while a plan of just these is looked for. */
  private open: { readonly counts: readonly number[]; pricing: Pricing | null; readonly looking: Looking } | null =
    null;

  /** No plan costs less than `bound`; one that costs just that, where it was found. Called again, it goes on where the effort ended. */
  raise(
    problem: Problem,
    proofs: Proof[],
    upper: number,
    rounding: Filler,
    tools: Tools,
    tries: number,
  ): { readonly bound: number; readonly plan: Cut[] | null } {
    const { effort } = tools;
    let bound = 0;
    while (!effort.ended) {
      const excluded = this.through.map(({ counts }) => counts);
      const counts = cheapestBoards(proofs, problem, upper, excluded, effort);
      if (counts === 'none') return { bound: upper, plan: null };
      if (counts === null) {
        this.stuck = true;
        break;
      }
      bound = problem.boards.reduce((sum, { price }, at) => sum + counts[at]! * price, 0);
      if (this.open?.counts.join() !== counts.join()) {
        const ruledOut = unmadeProof(problem, counts, rounding, tools);
        if (ruledOut !== null) {
          proofs.push(ruledOut);
          continue;
        }
        if (effort.ended) break;
        this.open = { counts, pricing: null, looking: { ends: new Set() } };
      }
      const { open } = this;
      const pricing = (open.pricing ??= evenPricing(problem, counts, rounding, tools));
      const tight = pricing === null ? null : tightPlan(problem, counts, pricing, this.fillings, open.looking, effort);
      if (tight === 'none') {
        this.through.push({ counts, proof: { worths: pricing!.worths, most: pricing!.prices } });
        continue;
      }
      if (tight !== null) return { bound, plan: tight };
      for (let attempt = 0; attempt < tries && !effort.ended; attempt++) {
        const plan = diveFor(problem, problem.demand, counts, bound, tools, attempt === 0 ? 0 : 0.5);
        if (plan !== null) return { bound, plan };
      }
      this.stuck ||= !effort.ended;
      break;
    }
    return { bound, plan: null };
  }
}

/** A proof that these boards don't hold all pieces, if fractions of cuts don't make them all; else null. */
function unmadeProof(problem: Problem, counts: readonly number[], rounding: Filler, tools: Tools): Proof | null {
  const { effort, pool, filler } = tools;
  const { demand, boards } = problem;
  const master = new Master(
    demand,
    counts,
    boards.map(() => 0),
    UNMADE,
    effort,
    false,
  );
  for (const cut of pool.cuts) if (counts[cut.board]! > 0) master.add(cut);
  const known = master.patterns.length;
  generateCuts(master, filler, effort, { goal: 1e-4 });
  for (let at = known; at < master.patterns.length; at++) pool.add(master.patterns[at] as Cut);
  if (master.value() <= 1e-3) return null;
  const question = questionOf(master, problem);
  const proof = proofOf(question, rounding, effort);
  const total = proof.worths.reduce((sum, worth, at) => sum + worth * demand[at]!, 0);
  const held = counts.reduce((sum, count, at) => sum + (count === 0 ? 0 : count * proof.most[at]!), 0);
  return held < total ? proof : null;
}
