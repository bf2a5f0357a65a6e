import { insideOffset } from '../insideOffset';
import { figure, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import { circularHead, exactArc } from './circular';
import type { Head } from './head';
import { sameLength } from './sameLength';

/**
 * A full circle of diameter span, standing on the spring line: length π·(span + 2·offset); it has no ends, so that `ends`
 * changes nothing. The rise may be left out; where given it must be the span.
 *
 * Example: span 24: 24·π = 75.3982.
 */
export function roundHead(span: number, rise: number | null): Result<Head> {
  const radius = span / 2;
  const refusal = positive('span', span) ?? (rise === null ? null : positive('rise', rise));
  if (refusal) return refusal;
  if (rise !== null && !sameLength(rise, span)) {
    return refuse(`rise of a round must be the span, ${figure(span)}, or left out; got ${figure(rise)}`);
  }
  return ok(
    circularHead(
      { shape: 'round', span, rise: span, radius },
      (offset) =>
        insideOffset(offset, radius, "where the circle's center is") ??
        ok([exactArc(radius + offset, 2 * Math.PI, { x: 0, y: radius }, (3 * Math.PI) / 2)]),
    ),
  );
}
