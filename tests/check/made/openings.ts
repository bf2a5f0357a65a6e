import type { Random } from '../../random';
import { lengthOf, radiusOf, type Arch, type Shape } from './geometry';

/** Casing of every opening here, inches. */
export const FACE = 3.5;
export const REVEAL = 3 / 16;
export const THICKNESS = 0.75;
export const OUTSIDE = FACE + REVEAL;
export const LEG = 60;

/** An opening of a made schedule and its figures, worked out apart from the program. Inches. */
export interface MadeOpening {
  readonly mark: string;
  readonly quantity: number;
  readonly arch: Arch;
  /** As a schedule has it: null where the shape gives it. */
  readonly rise: number | null;
  readonly radius: number | null;
  readonly legs: boolean;
  /** Outside (long-point) length of one head. */
  readonly length: number;
}

const SHAPES: readonly Shape[] = [
  'segmental',
  'segmental',
  'segmental',
  'half round',
  'half round',
  'quarter round',
  'round',
  'elliptical',
  'three-centered',
  'pointed',
];
const MARKS: readonly ((at: number) => string)[] = [
  (at) => (at % 5 === 2 ? `${'ABCDEFGHJKLMNP'[at - 1]}1` : 'ABCDEFGHJKLMNPQRSTUVWXYZ'[at]!),
  (at) => `W${at + 1}`,
  (at) => String(101 + at),
  (at) => `${at < 7 ? 'A' : 'B'}-${at + 1}`,
];

/** A schedule of 14 openings. With `legs` the heads are half rounds and segments mitered to legs. */
export function madeOpenings(random: Random, legs: boolean): readonly MadeOpening[] {
  const mark = random.pick(MARKS);
  const all: MadeOpening[] = [];
  // No two alike: a line without a mark, or rows that changed places, must be for one opening only.
  while (all.length < 14) {
    const shape = legs ? random.pick(['segmental', 'half round'] as const) : random.pick(SHAPES);
    const span = random.whole(shape === 'round' || shape === 'quarter round' ? 20 : 28, shape === 'round' ? 40 : 76);
    const part = (least: number, most: number) => Math.round(span * random.between(least, most) * 2) / 2;
    const rise = {
      segmental: part(0.12, 0.35),
      elliptical: part(0.22, 0.35),
      'three-centered': part(0.22, 0.35),
      pointed: part(0.9, 1.2),
      'half round': null,
      'quarter round': null,
      round: null,
    }[shape];
    const arch = { shape, span, rise: rise ?? (shape === 'half round' ? span / 2 : span) };
    const length = lengthOf(arch, OUTSIDE, legs && shape === 'segmental' ? 'legs' : 'radial');
    if (all.some((one) => Math.abs(one.length - length) < 0.5 || one.arch.span === span)) continue;
    all.push({
      mark: mark(all.length),
      quantity: random.pick([1, 1, 1, 2, 2, 3, 4]),
      arch,
      rise,
      radius: radiusOf(arch),
      legs,
      length,
    });
  }
  return all;
}
