/**
 * A knife or a pair of guide boards that the shop owns and doesn't charge again, or a new knife whose charge is known. Lengths in
 * the workbook's unit; what is null or left out follows from the shop's settings.
 */
export interface OnHand {
  readonly kind: OnHandKind;
  readonly profile: string;
  /** Casing width. */
  readonly face: number;
  readonly thickness: number;
  /** Inside radius of the molding that the guides hold; null for a knife. */
  readonly insideRadius: number | null;
  /** Of a knife: the deepest wood it takes off. */
  readonly depth?: number | null;
  /** Of a knife: passes, where they don't follow from the depth. */
  readonly passes?: number | null;
  /** Of a new knife: what grinding it costs. */
  readonly charge?: number | null;
}
export const ON_HAND_KINDS = ['knife', 'new knife', 'guides'] as const;
export type OnHandKind = (typeof ON_HAND_KINDS)[number];

/** What tells knives apart. */
export interface KnifeSize {
  readonly profile: string;
  readonly face: number;
  readonly thickness: number;
}

/** Sizes this close are the same knife or the same guides: what names tell apart, to a thousandth. */
export const SAME_SIZE = 0.0005;

function isFor(each: OnHand, { profile, face, thickness }: KnifeSize): boolean {
  return (
    each.profile.toLowerCase() === profile.toLowerCase() &&
    Math.abs(each.face - face) <= SAME_SIZE &&
    Math.abs(each.thickness - thickness) <= SAME_SIZE
  );
}

/** What the list says of one knife. */
export interface KnifeListed {
  readonly owned: boolean;
  /** The deepest that is listed; null: none is. */
  readonly depth: number | null;
  /** The most that are listed. */
  readonly passes: number | null;
  /** The greatest that is listed. */
  readonly charge: number | null;
}

/** A knife as the list has it, whatever the order of its rows. */
export function knifeListed(size: KnifeSize, onHand: readonly OnHand[]): KnifeListed {
  const rows = onHand.filter((each) => each.kind !== 'guides' && isFor(each, size));
  const greatest = (of: (each: OnHand) => number | null | undefined) => {
    const given = rows.map(of).filter((figure): figure is number => typeof figure === 'number');
    return given.length === 0 ? null : Math.max(...given);
  };
  return {
    owned: rows.some(({ kind }) => kind === 'knife'),
    depth: greatest(({ depth }) => depth),
    passes: greatest(({ passes }) => passes),
    charge: greatest(({ charge }) => charge),
  };
}

/** Inside radii of the guides that the shop owns for this profile, width and thickness. */
export function guidesOwned(size: KnifeSize, onHand: readonly OnHand[]): number[] {
  return onHand.flatMap((each) =>
    each.kind === 'guides' && each.insideRadius !== null && isFor(each, size) ? [each.insideRadius] : [],
  );
}
