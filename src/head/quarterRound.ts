import { insideOffset } from '../insideOffset';
import { positive } from '../require';
import { ok, type Result } from '../result';
import { circularHead, exactArc } from './circular';
import { fixedRise } from './fixedRise';
import type { Head } from './head';

/**
 * A quarter of a circle whose radius is the span, rising from the spring point at the left to the top of the straight side
 * at the right, where its center stands on the spring line. Both ends stand square to what they meet, so that the three
 * ends give one length, π/2·(span + offset). The rise may be left out; where given it must be the span.
 *
 * Example: span 24: 12·π = 37.6991.
 */
export function quarterRoundHead(span: number, rise: number | null): Result<Head> {
  const refusal = positive('span', span) ?? fixedRise('quarter round', rise, span, 'the span');
  if (refusal) return refusal;
  return ok(
    circularHead(
      { shape: 'quarter round', span, rise: span, radius: span },
      (offset) =>
        insideOffset(offset, span, "where the arc's center is") ??
        ok([exactArc(span + offset, Math.PI / 2, { x: span / 2, y: 0 }, Math.PI)]),
    ),
  );
}
