import type { ElevationFigures } from '../../src/drawing/elevationFigures';
import type { Ends, HeadShape } from '../../src/head/head';
import { makeHead } from '../../src/head/makeHead';
import { valueOf } from '../value';

/** One opening of every head, with the ends that change it; shared by the drawing tests. */
const OPENINGS: readonly (readonly [
  HeadShape,
  span: number,
  rise: number | null,
  ends: Ends,
  leg: number,
  segments: number[],
])[] = [
  ['segmental', 36, 6, 'radial', 0, [2]],
  ['segmental', 36, 6, 'legs', 80, [3]],
  ['segmental', 36, 9, 'level', 0, [3]],
  ['segmental', 36, 24, 'legs', 40, [5]],
  ['segmental', 36, 24, 'radial', 20, [5]],
  ['segmental', 144, 1, 'radial', 0, [1]],
  ['half round', 36, null, 'radial', 12, [4]],
  ['quarter round', 24, null, 'radial', 10, [2]],
  ['round', 24, null, 'radial', 0, [6]],
  ['elliptical', 72, 24, 'radial', 30, [2, 2, 2]],
  ['elliptical', 72, 12, 'legs', 0, [2, 3, 2]],
  ['three-centered', 72, 24, 'radial', 0, [2, 2, 2]],
  ['pointed', 36, 36, 'legs', 40, [3, 3]],
  ['straight', 36, null, 'legs', 80, []],
  ['straight', 36, null, 'radial', 12, []],
];

export const openings: readonly { readonly name: string; readonly figures: ElevationFigures }[] = OPENINGS.map(
  ([shape, span, rise, ends, leg, segments]) => ({
    name: `${shape} ${span}${rise === null ? '' : ` by ${rise}`}, ends ${ends}, leg ${leg}`,
    figures: {
      head: valueOf(makeHead(shape, span, rise)),
      reveal: 3 / 16,
      face: 3.5,
      ends,
      leg,
      segments,
      mark: 'A1',
      unit: 'in',
    },
  }),
);

export function degreesBetween(from: number, to: number): number {
  return (((to - from) % 360) + 360) % 360;
}
