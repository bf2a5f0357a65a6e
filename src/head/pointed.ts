import { insideOffset } from '../insideOffset';
import { figure, positive } from '../require';
import { ok, refuse, type Result } from '../result';
import { circularHead, exactArc } from './circular';
import type { Head } from './head';
import { sameLength } from './sameLength';

/**
 * Two arcs that meet in a point on the center line, their centers on the spring line (so that all three ends give one
 * length). Each side of the curve at an offset runs on to the center line: with a = span/2 and R = (a² + rise²)/span the
 * length is 2·(R+d)·acos((R−a)/(R+d)), more than the opening's own angle would give. The rise is at least half the span.
 *
 * Example: span 36, rise 18·√3 (equilateral), 3-1/2 outside: 86.7137.
 */
export function pointedHead(span: number, rise: number): Result<Head> {
  const refusal = positive('span', span) ?? positive('rise', rise);
  if (refusal) return refusal;
  const half = span / 2;
  if (rise < half && !sameLength(rise, half)) {
    return refuse(`rise of a pointed head must be at least half the span, ${figure(half)}; got ${figure(rise)}`);
  }
  const radius = half / 2 + (rise * rise) / span;
  /** Of each center beyond the center line; the far side of the circle stands rise²/a from the spring point. */
  const beyond = Math.max(0, ((rise - half) * (rise + half)) / span);
  const far = (rise * rise) / half;
  return ok(
    circularHead({ shape: 'pointed', span, rise, radius }, (offset) => {
      const tooFarIn = insideOffset(offset, half, 'where the sides meet on the spring line');
      if (tooFarIn) return tooFarIn;
      const angle = Math.atan2(Math.sqrt((half + offset) * (far + offset)), beyond);
      return ok([
        exactArc(radius + offset, angle, { x: beyond, y: 0 }, Math.PI),
        exactArc(radius + offset, angle, { x: -beyond, y: 0 }, angle),
      ]);
    }),
  );
}
