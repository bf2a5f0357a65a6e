import { patternKey } from '../stock/cutting';
import type { Effort } from '../stock/effort';
import { Simplex } from '../stock/simplex';
import { proofOf } from './bound';
import type { Filler } from './filling';
import type { Pool, Tools } from './search';
import type { Cut, Problem } from './problem';
import type { Pricing } from './tight';
import { worthOf, type Question } from './proper';

/** All boards together are worth so much, in whole worths. */
const ALL_BOARDS = 2 ** 28;
/** A piece left unmade costs so many times all boards. */
const UNMADE = 10;
/** Cuts of each kind of board added at a time, cases looked at for one more, and how near is near enough. */
const CUTS_EACH = 4;
const PATIENCE = 300;
const CLOSE = 1e-6;

/**
 * Worths by which just these boards, so many of each kind, hold hardly more than all pieces: the duals of the least share of each
 * kind of board that makes all pieces in fractions. What they hold over is all that a plan of these boards may lose. Null: the effort
 * ended before.
 */
export function evenPricing(
  problem: Problem,
  counts: readonly number[],
  rounding: Filler,
  { filler, pool, effort }: Pick<Tools, 'filler' | 'pool' | 'effort'>,
): Pricing | null {
  const question = evenQuestion(problem, counts, filler, pool, effort);
  if (question === null) return null;
  const { worths, most } = proofOf(question, rounding, effort);
  return { worths, prices: most };
}

function evenQuestion(
  { demand, kinds, boards }: Problem,
  counts: readonly number[],
  filler: Filler,
  pool: Pool,
  effort: Effort,
): Question | null {
  const simplex = new Simplex(Float64Array.from([...demand, ...boards.map(() => 0)]), effort);
  const shorts = kinds.map((_, kind) => simplex.append(UNMADE, [kind], [1]));
  kinds.forEach((_, kind) => simplex.append(0, [kind], [-1]));
  const spares = boards.map((_, board) => simplex.append(0, [kinds.length + board], [1]));
  simplex.begin([...shorts, ...spares]);
  const had = boards.flatMap((_, board) => (counts[board]! > 0 ? [board] : []));
  simplex.append(
    1,
    had.map((board) => kinds.length + board),
    had.map((board) => -counts[board]!),
  );
  const known = new Set<string>();
  const add = (cut: Cut): boolean => {
    const key = patternKey(cut);
    if (counts[cut.board] === 0 || known.has(key)) return false;
    known.add(key);
    simplex.append(0, [...cut.pieces, kinds.length + cut.board], [...cut.counts, 1]);
    return true;
  };
  for (const cut of pool.cuts) add(cut);
  for (;;) {
    if (!simplex.primal() || effort.ended) return null;
    const question: Question = {
      worths: kinds.map((_, kind) => Math.round(Math.max(0, simplex.dual[kind]!) * ALL_BOARDS)),
      wanted: demand,
      prices: boards.map((_, board) =>
        counts[board] === 0 ? Infinity : Math.max(1, -simplex.dual[kinds.length + board]! * ALL_BOARDS),
      ),
    };
    const tooFull = (cut: Cut) => worthOf(cut, question.worths) > question.prices[cut.board]! * (1 + CLOSE);
    let added = false;
    const offer = (cut: Cut) => {
      if (!tooFull(cut) || !add(cut)) return;
      pool.add(cut);
      added = true;
    };
    filler.some(question, CUTS_EACH, effort).forEach(offer);
    if (!added) {
      const { cut } = filler.fullest(question, PATIENCE, effort, 1 + 10 * CLOSE);
      if (cut !== null) offer(cut);
    }
    if (!added) return question;
  }
}
