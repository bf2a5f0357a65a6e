import { ARC_COUNTS, type HeadShape } from './head';
import { makeHead } from './makeHead';
import { SHAPES } from './shapes';

export type ArcCount = (typeof ARC_COUNTS)[number];

/** The greatest distance of so many arcs from the opening's own ellipse; null where there are no such arcs. */
export function deviationOf(head: HeadShape, span: number, rise: number | null, arcs: ArcCount): number | null {
  const made = makeHead(head, span, rise, null);
  const found = made.ok ? made.value.arcs(0, 'radial', { arcs }) : made;
  return found.ok ? Math.max(...found.value.map(({ deviation }) => deviation)) : null;
}

/**
 * The least number of arcs that comes as near to the ellipse as is allowed; 7 where none does. Null for heads whose arcs stand for
 * nothing. Example: 72 × 24 within 1/4: 3 (0.2497 off); 72 × 12 within 1/4: 5.
 */
export function leastArcs(head: HeadShape, span: number, rise: number | null, allowed: number): ArcCount | null {
  if (SHAPES[head].rings !== 'fitted') return null;
  const near = ARC_COUNTS.find((arcs) => {
    const deviation = deviationOf(head, span, rise, arcs);
    return deviation !== null && deviation <= allowed;
  });
  return near ?? 7;
}
