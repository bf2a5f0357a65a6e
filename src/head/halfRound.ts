import { insideOffset } from '../insideOffset';
import { positive } from '../require';
import { ok, type Result } from '../result';
import { circularHead, exactArc } from './circular';
import { fixedRise } from './fixedRise';
import type { Head } from './head';

/**
 * Half a circle on the span: length π·(span/2 + offset), the same for all three ends. The rise may be left out; where it is
 * given it must be half the span but for rounding, for any other rise makes the head a segmental one.
 *
 * Example: span 36: 18·π = 56.5487.
 */
export function halfRoundHead(span: number, rise: number | null): Result<Head> {
  const radius = span / 2;
  const refusal = positive('span', span) ?? fixedRise('half round', rise, radius, 'half the span');
  if (refusal) return refusal;
  return ok(
    circularHead(
      { shape: 'half round', span, rise: radius, radius },
      (offset) =>
        insideOffset(offset, radius, "where the arc's center is") ??
        ok([exactArc(radius + offset, Math.PI, { x: 0, y: 0 }, Math.PI)]),
    ),
  );
}
