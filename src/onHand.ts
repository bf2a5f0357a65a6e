/** A knife or a pair of guide boards that the shop owns: it is not charged again. Lengths in the workbook's unit. */
export interface OnHand {
  readonly kind: OnHandKind;
  readonly profile: string;
  /** Casing width. */
  readonly face: number;
  readonly thickness: number;
  /** Inside radius of the molding that the guides hold; null for a knife. */
  readonly insideRadius: number | null;
}
export const ON_HAND_KINDS = ['knife', 'guides'] as const;
export type OnHandKind = (typeof ON_HAND_KINDS)[number];
