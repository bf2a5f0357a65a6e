import { insideOffset } from '../insideOffset';
import { figure, positive, finite } from '../require';
import { ok, refuse, type Result } from '../result';
import type { Head } from './head';

/**
 * A level head: the span long, and with mitered legs 2·offset longer. It has no rise (leave it out, or 0) and no arcs.
 *
 * Example: span 36, 3-11/16 outside: 36 radial or level, 43.375 with legs.
 */
export function straightHead(span: number, rise: number | null): Result<Head> {
  const refusal = positive('span', span);
  if (refusal) return refusal;
  if (rise !== null && rise !== 0) {
    return refuse(`rise of a straight head must be 0 or left out; got ${figure(rise)}`);
  }
  return ok({
    shape: 'straight',
    span,
    rise: 0,
    radius: null,
    length: (offset, ends) =>
      finite('offset', offset) ??
      (ends === 'legs'
        ? (insideOffset(offset, span / 2, 'where the legs would meet') ?? ok(span + 2 * offset))
        : ok(span)),
    arcs: (offset) => finite('offset', offset) ?? ok([]),
  });
}
