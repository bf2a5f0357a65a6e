/**
 * What one wood is planned from and what the plan is: plain values, lengths in any one unit. A wood is a species in one dressed
 * thickness; everything cut from it is planned together, over every width and length of board on sale.
 */
export interface WoodOrder {
  readonly parts: readonly Part[];
  readonly boards: readonly BoardOnSale[];
  /** Wood lost to one saw cut. */
  readonly kerf: number;
  /** Cut off each end of a board before use. */
  readonly trim: number;
}

/** Pieces alike in everything: `count` of them are wanted, at least 1. */
export type Part = SegmentPart | StraightPart;

/** A leg, a straight head, a test piece. */
export interface StraightPart {
  readonly kind: 'straight';
  readonly length: number;
  readonly width: number;
  readonly count: number;
}

/**
 * A mitered segment of a glued-up ring, a trapezoid of board: `inside` and `outside` are the ring's radii with the margins in
 * them, `half` is half of the segment's angle in radians, less than a right angle. Along its outside edge it is
 * 2·outside·tan(half) long, at its inside corners 2·inside·sin(half), and outside − inside·cos(half) wide.
 */
export interface SegmentPart {
  readonly kind: 'segment';
  readonly inside: number;
  readonly outside: number;
  readonly half: number;
  readonly count: number;
}

export interface BoardOnSale {
  readonly width: number;
  readonly length: number;
  /** Money for one, in whole cents at least 1. */
  readonly price: number;
  /** Boards that can be had; null: as many as wanted. */
  readonly limit: number | null;
}

export interface WoodPlan {
  readonly boards: readonly BoardsAlike[];
  readonly cost: number;
  /** No plan under the rules of sawing costs less. */
  readonly lowerBound: number;
  /** The cost is the lower bound. */
  readonly proven: boolean;
  /** The user or the clock ended the search: at another time it may come to another plan. */
  readonly interrupted: boolean;
  /** Parts, by their place in the order, that no board on sale holds. They are not in the plan. */
  readonly tooLarge: readonly number[];
  /** Pieces of each part, by its place in the order, that the boards on hand leave unmade. Empty where they suffice. */
  readonly short: readonly { readonly part: number; readonly count: number }[];
  readonly grounds: Grounds;
}

/** Why no plan costs less than `lowerBound`, so that it can be looked into by others: boards that keep to all of this cost no less. */
export interface Grounds {
  /** Whatever is bought holds the worth of all pieces, by each of these. */
  readonly pricings: readonly PartPricing[];
  /** Boards, so many of each place in the order's list, of which all plans were looked through: no plan is made of these or fewer. */
  readonly lookedThrough: readonly { readonly counts: readonly number[]; readonly pricing: PartPricing }[];
}

/** A piece of each part, by its place, is worth so much, and no board of a place, cut by the rules and with no more pieces than wanted, holds more than `most`. */
export interface PartPricing {
  readonly worths: readonly number[];
  readonly most: readonly number[];
}

/** Boards cut alike. */
export interface BoardsAlike {
  readonly count: number;
  /** Place in the order's list of boards. */
  readonly board: number;
  /** From the left end, what is between the trims: a section that keeps the board's width last, one ripped into lanes first. */
  readonly sections: readonly Section[];
  /** Length left over at the right end, before its trim. */
  readonly left: number;
}

/** A length of board, cut across at both ends, and the lanes it is ripped into; one lane: it keeps the board's width. */
export interface Section {
  /** From the board's left end. */
  readonly at: number;
  readonly length: number;
  readonly lanes: readonly Lane[];
}

export interface Lane {
  /** From the board's lower edge. */
  readonly at: number;
  readonly width: number;
  /** Along the lane from the left, a saw cut between each two. */
  readonly rows: readonly Row[];
  /** Length left over at its right end. */
  readonly left: number;
}

/** Pieces of one width, ripped to it together; segments of one angle, every second one flipped, so that two share each cut. */
export interface Row {
  /** From the board's left end. */
  readonly at: number;
  readonly length: number;
  readonly width: number;
  readonly pieces: readonly Piece[];
}

export interface Piece {
  /** Place in the order's list of parts. */
  readonly part: number;
  /** Its leftmost point, from the board's left end. */
  readonly at: number;
  /** A segment with its long edge up. */
  readonly flipped: boolean;
}
