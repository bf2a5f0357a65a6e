import { isNear } from '../rules/lineRules';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import type { QuoteLine } from '../../quote/quote';

/**
 * Of the openings on `places` those whose length and radius a line has, as far as it gives them: a line whose mark says
 * nothing, or names no opening, may be for one of these. Empty where it gives neither.
 */
export function akinTo(
  line: QuoteLine,
  places: readonly number[],
  openings: readonly OpeningTakeoff[],
  tolerance: number,
): readonly number[] {
  const { length, radius } = line;
  if (length === null && radius === null) return [];
  const near = (quoted: number, rights: readonly number[]) => rights.some((right) => isNear(quoted, right, tolerance));
  return places.filter((place) => {
    const { own, known } = openings[place]!;
    if (own === null) return false;
    const { curve, crown } = own;
    const lengths = [curve.length, curve.insideLength, (known.quantity ?? 1) * curve.length];
    const radii = crown === null ? [] : [crown.ring.inside, crown.ring.radius, crown.ring.outside];
    return (length === null || near(length, lengths)) && (radius === null || near(radius, radii));
  });
}
