import type { OpeningField } from './opening';

/**
 * What a field of an opening is called, in the pane, over its column of the Takeoff and where two lists are compared, and how a typed text is
 * read for it.
 */
export interface FieldKind {
  readonly label: string;
  readonly kind: 'text' | 'count' | 'length' | 'money' | 'head' | 'ends';
}

export const FIELD_KINDS: Readonly<Record<OpeningField, FieldKind>> = {
  mark: { label: 'Mark', kind: 'text' },
  quantity: { label: 'Quantity', kind: 'count' },
  head: { label: 'Head', kind: 'head' },
  span: { label: 'Span', kind: 'length' },
  rise: { label: 'Rise', kind: 'length' },
  leg: { label: 'Leg, each', kind: 'length' },
  reveal: { label: 'Reveal', kind: 'length' },
  face: { label: 'Casing width', kind: 'length' },
  thickness: { label: 'Thickness', kind: 'length' },
  species: { label: 'Species', kind: 'text' },
  profile: { label: 'Profile', kind: 'text' },
  ends: { label: 'Ends', kind: 'ends' },
  otherLeg: { label: 'Other leg', kind: 'length' },
  haunch: { label: 'Haunch', kind: 'length' },
  arcs: { label: 'Arcs', kind: 'count' },
  segmentsWanted: { label: 'Segments wanted', kind: 'count' },
  sides: { label: 'Sides', kind: 'count' },
  priceAgreed: { label: 'Price agreed', kind: 'money' },
  place: { label: 'Place', kind: 'text' },
  remarks: { label: 'Remarks', kind: 'text' },
};

/** In the order in which they are asked for. */
export const FIELDS = Object.keys(FIELD_KINDS) as OpeningField[];
