import { refuse, type Result } from '../result';
import { figure } from '../require';
import type { Head, HeadShape } from './head';
import { SHAPES } from './shapes';

/**
 * The head of an opening. The rise may be null for half round, quarter round, round, straight and octagon heads, which have it
 * from the span; `haunch` is the haunch radius of a four-centered head or the length of clipped corners along the span, null for
 * every other. Refused: a span or rise that is not a length more than 0, and a rise or haunch the shape can't have.
 *
 * Example: `makeHead('segmental', 36, 6)` has radius 30.
 */
export function makeHead(
  shape: HeadShape,
  span: number,
  rise: number | null,
  haunch: number | null = null,
): Result<Head> {
  const known = SHAPES[shape];
  if (haunch !== null && known.haunch === null) {
    return refuse(`haunch must be left out for a ${shape} head; got ${figure(haunch)}`);
  }
  return known.make(span, rise, haunch);
}
