import type { Layer } from './scene';

/** How each layer is drawn. Weight in pixels on a screen, in fifths of a millimeter on paper. */
export interface LayerLook {
  readonly layer: Layer;
  readonly weight: number;
  /** Below 1 the line steps back; text keeps its full strength. */
  readonly strength: number;
  /** Dash lengths in line weights of 1; none: continuous. */
  readonly dash?: readonly number[];
  /** Tint of filled outlines: a wood tone that reads on light and dark paper, or the line's own color. */
  readonly tint?: { readonly color: string; readonly strength: number };
  /** DXF color number and line type; layers to cut stand out from those to read. */
  readonly color: number;
  readonly lineType: 'CONTINUOUS' | 'DASHED' | 'CENTER';
}

const WOOD = '#b9793a';

/** In drawing order: what comes first lies underneath. */
export const LAYERS: readonly LayerLook[] = [
  {
    layer: 'board',
    weight: 1,
    strength: 0.75,
    tint: { color: WOOD, strength: 0.12 },
    color: 8,
    lineType: 'CONTINUOUS',
  },
  { layer: 'bed', weight: 1, strength: 0.75, dash: [10, 3, 2, 3], color: 5, lineType: 'DASHED' },
  {
    layer: 'guide',
    weight: 1.75,
    strength: 1,
    tint: { color: 'currentColor', strength: 0.07 },
    color: 7,
    lineType: 'CONTINUOUS',
  },
  { layer: 'blank', weight: 1, strength: 0.8, dash: [5, 3], color: 8, lineType: 'DASHED' },
  { layer: 'leg', weight: 1.5, strength: 1, tint: { color: WOOD, strength: 0.16 }, color: 30, lineType: 'CONTINUOUS' },
  {
    layer: 'casing',
    weight: 1.75,
    strength: 1,
    tint: { color: WOOD, strength: 0.3 },
    color: 30,
    lineType: 'CONTINUOUS',
  },
  { layer: 'grain', weight: 0.75, strength: 0.4, color: 9, lineType: 'CONTINUOUS' },
  { layer: 'joint', weight: 1.25, strength: 1, color: 1, lineType: 'CONTINUOUS' },
  { layer: 'opening', weight: 1.25, strength: 0.9, color: 7, lineType: 'CONTINUOUS' },
  { layer: 'fit', weight: 1.25, strength: 0.9, dash: [6, 4], color: 6, lineType: 'DASHED' },
  { layer: 'spring', weight: 0.9, strength: 0.7, dash: [6, 4], color: 4, lineType: 'DASHED' },
  { layer: 'center', weight: 0.9, strength: 0.8, dash: [14, 3, 3, 3], color: 1, lineType: 'CENTER' },
  { layer: 'screw', weight: 1.25, strength: 1, color: 3, lineType: 'CONTINUOUS' },
  {
    layer: 'dimension',
    weight: 0.8,
    strength: 0.75,
    tint: { color: 'currentColor', strength: 1 },
    color: 2,
    lineType: 'CONTINUOUS',
  },
  { layer: 'label', weight: 0.8, strength: 1, color: 2, lineType: 'CONTINUOUS' },
];
