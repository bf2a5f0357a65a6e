import type { Effort } from '../stock/effort';
import { Master, SHORT_PRICES } from '../stock/master';
import type { Filler } from './filling';
import type { Question } from './proper';
import type { Cut, Problem } from './problem';

/** Worths are counted in this part of a cent, whole. */
export const WORTHS_PER_CENT = 4096;

/** Cuts of each kind of board added at a time. */
const CUTS_EACH = 4;
/** Share of the worths before in those asked for. */
const CALM = 0.6;
/** Cases looked at for one more cut, where the quick ones are worth no more than their boards. */
const PATIENCE = 100;
/** More kinds than this are many. */
const FEW_KINDS = 30;

/** Each case takes the longer the more kinds there are: of many kinds fewer cases are looked at. */
function patienceFor({ kinds }: Problem): number {
  return Math.ceil(PATIENCE * Math.min(1, (FEW_KINDS / kinds.length) ** 2));
}

export function masterOf(problem: Problem, effort: Effort): Master {
  const { demand, boards } = problem;
  const prices = boards.map(({ price }) => price);
  return new Master(
    demand,
    boards.map(({ limit }) => limit),
    prices,
    SHORT_PRICES * Math.max(...prices),
    effort,
    false,
  );
}

/** What the master's duals ask for: pieces at these worths, boards at their price and what their scarcity adds to it. */
export function questionOf(master: Master, problem: Problem): Question {
  const { kinds, boards } = problem;
  return {
    worths: Float64Array.from(kinds, (_, at) => Math.round(Math.max(0, master.dual[at]!) * WORTHS_PER_CENT)),
    wanted: kinds.map((_, at) => Math.round(master.wanted[at]!)),
    prices: boards.map((_, at) =>
      master.hadOf(at) < 1 ? Infinity : Math.max(1, WORTHS_PER_CENT * (master.priceOf(at) - master.limitDual(at))),
    ),
  };
}

/**
 * Adds cuts until none is worth more than its board by the share `close` (column generation: Gilmore and Gomory 1961), or the
 * fractional plan costs no more than `goal`, or the effort or the rounds allowed end. True: it went to the end.
 */
export function generateCuts(
  master: Master,
  filler: Filler,
  effort: Effort,
  { close = 1e-4, goal = -Infinity, rounds = Infinity }: { close?: number; goal?: number; rounds?: number } = {},
): boolean {
  const { problem } = filler;
  const patience = patienceFor(problem);
  let calm: Float64Array | null = null;
  for (let round = 0; ; round++) {
    if (!master.primal()) return false;
    if (effort.ended) return false;
    if (master.value() <= goal) return true;
    if (round >= rounds) return false;
    const question = questionOf(master, problem);
    let added = 0;
    // Worths swing from round to round; cuts for what they were on the way are as good, and there are fewer rounds.
    const now = question.worths;
    calm =
      calm === null
        ? Float64Array.from(now)
        : calm.map((worth, at) => Math.round(CALM * worth + (1 - CALM) * now[at]!));
    for (const worths of [calm, now]) {
      for (const cut of filler.some({ ...question, worths }, CUTS_EACH, effort)) {
        if (isWorth(cut, question, close) && master.add(cut)) added++;
      }
      if (added > 0) break;
      calm.set(Array.from(now));
    }
    if (added > 0) continue;
    const { cut } = filler.fullest(question, patience, effort, 1 + 10 * close);
    if (cut === null || !isWorth(cut, question, close) || !master.add(cut)) return true;
  }
}

function isWorth({ board, pieces, counts }: Cut, { worths, prices }: Question, close: number): boolean {
  let worth = 0;
  for (let at = 0; at < pieces.length; at++) worth += counts[at]! * worths[pieces[at]!]!;
  return worth > prices[board]! * (1 + close);
}
