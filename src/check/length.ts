import type { Ends, HeadShape } from '../head/head';
import { makeHead } from '../head/makeHead';
import { notNegative, positive, finite } from '../require';
import { ok, type Result } from '../result';
import { outsideOf, type Casing } from './casing';
import { judge, TOLERANCE, type Verdict } from './judge';
import { knownLengths } from './lengthMistakes';

export interface LengthQuestion {
  readonly quoted: number;
  readonly head: HeadShape;
  readonly span: number;
  /** Null for heads that have theirs from the span. */
  readonly rise: number | null;
  readonly face: number;
  /** Left out: 0. */
  readonly reveal?: number | null;
  /** Left out: radial. */
  readonly ends?: Ends | null;
  /** Left out: 1/8. */
  readonly tolerance?: number | null;
}

/**
 * Whether a quoted length of casing round one head agrees with the right one, the outside (long-point) length; if not, which
 * known mistake gives it, or by how much it is off. Inches (feet, rounding and the text suppose them). Refused: sizes that
 * make no head, a face or quoted length not more than 0, a tolerance below 0.
 *
 * Example: 38.85 quoted for a 36 × 6 segmental head, face 3-1/2, reveal 3/16: "measured along the inside edge".
 */
export function checkLength(question: LengthQuestion): Result<Verdict> {
  const { quoted, face } = question;
  const reveal = question.reveal ?? 0;
  const tolerance = question.tolerance ?? TOLERANCE;
  const refusal =
    positive('quoted', quoted) ??
    positive('face', face) ??
    finite('reveal', reveal) ??
    notNegative('tolerance', tolerance);
  if (refusal) return refusal;
  const head = makeHead(question.head, question.span, question.rise);
  if (!head.ok) return head;
  const casing: Casing = { head: head.value, face, reveal, ends: question.ends ?? 'radial' };
  const right = head.value.length(outsideOf(casing), casing.ends);
  return right.ok ? ok(judge(quoted, right.value, knownLengths(casing), tolerance)) : right;
}
