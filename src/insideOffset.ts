import { figure } from './require';
import { refuse, type Refusal } from './result';

/**
 * A curve can be followed on its inside only up to its tightest radius. `reach` is that radius (or the distance to the
 * point where the parallel curve no longer meets its end); null when the offset stays clear of it.
 */
export function insideOffset(offset: number, reach: number, because: string, name = 'offset'): Refusal | null {
  if (offset > -reach) return null;
  return refuse(`${name} must be more than -${figure(reach)}, ${because}; got ${figure(offset)}`);
}
