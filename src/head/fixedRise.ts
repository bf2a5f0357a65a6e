import { figure, positive } from '../require';
import { refuse, type Refusal } from '../result';
import type { HeadShape } from './head';
import { sameLength } from './sameLength';

/**
 * Of a head that has its rise from its span: null where the given rise is left out or is that one but for rounding, else the
 * refusal. `own` says in words what its rise is.
 */
export function fixedRise(shape: HeadShape, given: number | null, rise: number, own: string): Refusal | null {
  if (given === null) return null;
  const refusal = positive('rise', given);
  if (refusal !== null || sameLength(given, rise)) return refusal;
  return refuse(`rise of a ${shape} must be ${own}, ${figure(rise)}, or left out; got ${figure(given)}`);
}
