import { insideOffset } from '../insideOffset';
import { positive } from '../require';
import { ok, type Result } from '../result';
import { circularHead, exactArc } from './circular';
import { fixedRise } from './fixedRise';
import type { Head } from './head';

/**
 * A full circle of diameter span, standing on the spring line: length π·(span + 2·offset); it has no ends, so that `ends`
 * changes nothing. The rise may be left out; where given it must be the span.
 *
 * Example: span 24: 24·π = 75.3982.
 */
export function roundHead(span: number, rise: number | null): Result<Head> {
  const radius = span / 2;
  const refusal = positive('span', span) ?? fixedRise('round', rise, span, 'the span');
  if (refusal) return refusal;
  return ok(
    circularHead(
      { shape: 'round', span, rise: span, radius },
      (offset) =>
        insideOffset(offset, radius, "where the circle's center is") ??
        ok([exactArc(radius + offset, 2 * Math.PI, { x: 0, y: radius }, (3 * Math.PI) / 2)]),
    ),
  );
}
