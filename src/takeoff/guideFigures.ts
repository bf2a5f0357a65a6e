import { guides } from '../blank/guides';
import type { Standards } from '../standards';
import type { RowFigures } from './computeRow';
import { byGuides, type Explain, type FigureMeasure } from './explained';

/** One of the two guides a blank runs between. */
export interface GuideFigure {
  readonly heading: string;
  readonly measure: FigureMeasure;
  /** Of the guides for a ring's own radius; null where it has none. Set-ups of near radii share: see `guideSets.ts`. */
  readonly value: (row: RowFigures, standards: Standards, ring: number) => number | null;
  readonly explain: (ring: number) => Explain;
}

const guide = (side: 'inside' | 'outside', heading: string): GuideFigure => ({
  ...{ heading, measure: 'length' },
  value: ({ own, inputs }, { margin, clearance }, ring) => {
    const plan = own?.rings[ring];
    if (!plan || inputs === null) return null;
    const pair = guides(plan.ring.inside, inputs.face, margin, clearance);
    return pair.ok ? pair.value[side] : null;
  },
  explain: (ring) => byGuides(ring, side),
});

/** Both guides, under the headings that the sheet Setups has. */
export const GUIDE_FIGURES = {
  inside: guide('inside', 'Inside guide'),
  outside: guide('outside', 'Outside guide'),
} as const;
