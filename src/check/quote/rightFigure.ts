import type { QuoteLine } from '../../quote/quote';
import type { OpeningTakeoff } from '../../takeoff/takeoff';

export type RightOf = 'quantity' | 'radius' | 'length';

/** Our figure for what a line quotes, at the edge that its heading names; null where the opening has none. */
export function rightFigure(
  { radiusOf, lengthOf }: Pick<QuoteLine, 'radiusOf' | 'lengthOf'>,
  about: RightOf,
  { known, own }: OpeningTakeoff,
): number | null {
  if (about === 'quantity') return known.quantity;
  if (own === null) return null;
  if (about === 'radius') {
    const ring = own.crown && !own.haunch ? own.crown.ring : null;
    if (ring === null) return null;
    return radiusOf === 'outside' ? ring.outside : radiusOf === 'opening' ? ring.radius : ring.inside;
  }
  const { curve } = own;
  return lengthOf === 'inside' ? curve.insideLength : lengthOf === 'center' ? curve.centerLength : curve.length;
}
