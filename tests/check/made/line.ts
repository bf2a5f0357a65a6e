import type { MadeOpening } from './openings';

/** A line of a made quote, before it is written: right until a mistake is made in it. Inches and dollars. */
export interface Line {
  readonly of: readonly MadeOpening[];
  mark: string;
  quantity: number;
  /** Priced by the pair. */
  readonly pair: boolean;
  /** Its words or columns give legs: the length may be of head and legs together. */
  readonly withLegs: boolean;
  head: string;
  span: number;
  rise: number | null;
  radius: number | null;
  face: number;
  thickness: number;
  /** Of one head, at the long point. */
  length: number;
  leg: number;
  /** By the foot. */
  rate: number;
  unitPrice: number;
  extension: number;
  planted: Planted | null;
}

export interface Planted {
  readonly kind: string;
  readonly named: RegExp;
}
