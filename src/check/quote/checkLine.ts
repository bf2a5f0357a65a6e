import type { Standards } from '../../standards';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { amountOf, type QuoteLine } from '../../quote/quote';
import type { Beside } from './curveFindings';
import { correctedAmount } from './corrected';
import type { CountedBy } from '../rules/lineRules';
import { lineVerdict, type VerdictWord } from '../rules/verdict';
import { given } from '../rules/expression';
import { agreesIn, is, type Finding } from './finding';
import { findingsOf } from './lineFindings';
import type { LineMatch } from './match';
import type { SameOpening } from './sameOpening';

export interface LineCheck {
  readonly line: QuoteLine;
  /** Places in the takeoff of the openings the line is for. */
  readonly places: readonly number[];
  readonly how: LineMatch['how'];
  readonly part: LineMatch['part'];
  /** How its pieces are counted against those of its one opening; null: they aren't. */
  readonly count: LineCount | null;
  readonly verdict: VerdictWord;
  /** What was compared with the takeoff and agrees: "quantity", "length", "price". */
  readonly agreesIn: readonly string[];
  /** In the order of the figures on the line. */
  readonly findings: readonly Finding[];
  /**
   * What the line comes to once its count, its own arithmetic and feet it is priced by are right, at the prices it quotes: 0 where it is
   * quoted already. Null where that can't be told, and for an alternate.
   */
  readonly corrected: number | null;
  /** Money that hangs on what differs, or on the whole line where it can't be told what it is for. */
  readonly stake: number;
}

export interface LineCount {
  readonly by: CountedBy;
  /** Of this line, or the sum; null where the line gives none. */
  readonly pieces: number | null;
}

/** Judges one line against its openings. `same` are all lines of its opening, this one among them. */
export function checkLine(
  match: LineMatch,
  same: SameOpening,
  openings: readonly OpeningTakeoff[],
  standards: Standards,
  beside: Beside,
): LineCheck {
  return checkedLine(match, findingsOf(match, same, openings, standards, beside), lineCount(match, same));
}

/** A line with what was found of it. */
export function checkedLine(match: LineMatch, findings: readonly Finding[], count: LineCount | null): LineCheck {
  const amount = Math.abs(amountOf(match.line) ?? 0);
  const staked = findings.map((one) =>
    one.verdict === 'differs' && is(one.about, 'losesAll') ? { ...one, stake: Math.max(one.stake, amount) } : one,
  );
  return {
    line: match.line,
    places: match.places,
    how: match.how,
    part: match.part,
    count,
    verdict: overall(staked),
    agreesIn: agreesIn(staked),
    findings: staked,
    corrected: correctedAmount(match, staked),
    stake: staked.reduce((most, { stake }) => Math.max(most, stake), 0),
  };
}

function lineCount(match: LineMatch, { heads, others, total, sharing }: SameOpening): LineCount | null {
  if (match.line.by !== 'piece' || match.part !== 'head' || others.length > 0) return null;
  const first = match === heads[0];
  if (first && (heads.length === 1 || sharing === 'surplus')) return { by: 'itself', pieces: match.line.quantity };
  return sharing === 'together' ? { by: first ? 'the sum' : 'with the first', pieces: total } : null;
}

function overall(findings: readonly Finding[]): VerdictWord {
  const said = findings.map(({ about, words, notGiven }) => ({ about, text: given(notGiven ? '' : words) }));
  const judged = said.filter(({ about }) => is(about, 'judged'));
  return lineVerdict(
    said.map(({ text }) => text),
    judged.map(({ text }) => text),
  ).of({});
}
