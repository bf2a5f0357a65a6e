import { CIRCLE_SEGMENTS } from '../../published';
import { WORKED, type Case, type RefusedCase } from '../case';

const CARPENTER = 'published carpentry tip: span 96, rise 12, "centre 96 in above floor, 84 in sides"';
const SECTIONS = 'published worked example of circular sections: chord 21, height 6';
const ARC_45 = 'published worked example of circular sections: arc 1, angle 45°';
/** Entries of the table of segments for radius 1, from memory; each is also the rounding of its formula. */
const HANDBOOK = "Machinery's Handbook, table of segments for radius 1 (entries from memory)";
const POCKETBOOK = 'The Building Trades Pocketbook (c. 1899): r = (c² + 4h²)/8h';

const roundFigures = CIRCLE_SEGMENTS.flatMap(([span, rise, radius]): Case[] => [
  { name: 'RADIUS', args: [span, rise], answer: radius, source: POCKETBOOK },
  { name: 'SPAN', args: [rise, radius], answer: span, source: POCKETBOOK },
  ...(rise <= span / 2 ? [{ name: 'RISE', args: [span, radius], answer: rise, source: POCKETBOOK }] : []),
]);

const handbook: Case[] = [
  { degrees: 60, length: 1.0472, height: 0.13397, chord: 1 },
  { degrees: 90, length: 1.5708, height: 0.29289, chord: 1.41421 },
  { degrees: 120, length: 2.0944, height: 0.5, chord: 1.73205 },
].flatMap(({ degrees, length, height, chord }): Case[] => [
  { name: 'ANGLE', args: [chord, height], answer: degrees, within: 5e-5, source: HANDBOOK },
  { name: 'ARCLENGTH', args: [chord, height], answer: length, within: 3e-5, source: HANDBOOK },
  { name: 'RADIUS', args: [chord, height], answer: 1, within: 3e-5, source: HANDBOOK },
  { name: 'RISE', args: [chord, 1], answer: height, within: 5e-5, source: HANDBOOK },
  { name: 'SPAN', args: [height, 1], answer: chord, within: 3e-5, source: HANDBOOK },
]);

export const ARC_CASES: readonly Case[] = [
  ...roundFigures,
  ...handbook,
  { name: 'RADIUS', args: [96, 12], answer: 102, source: CARPENTER },
  { name: 'RADIUS', args: [21, 6], answer: 12.1875, source: SECTIONS },
  { name: 'ANGLE', args: [21, 6], answer: 118.97953, within: 5e-8, source: SECTIONS },
  { name: 'ARCLENGTH', args: [21, 6], answer: 25.308373, within: 5e-8, source: SECTIONS },
  { name: 'RADIUS', args: [0.97449536, 0.096919589], answer: 1.2732395, within: 5e-8, source: ARC_45 },
  { name: 'ANGLE', args: [0.97449536, 0.096919589], answer: 45, within: 5e-8, source: ARC_45 },
  { name: 'RISE', args: [0.97449536, 1.2732395], answer: 0.096919589, within: 5e-7, source: ARC_45 },
  { name: 'ANGLE', args: [36, 24], answer: 212.520409416624, source: WORKED },
  { name: 'ARCLENGTH', args: [36, 24], answer: 69.5471413501209, source: WORKED },
  { name: 'ANGLE', args: [36, 18], answer: 180, source: 'a half round turns through 180°' },
  { name: 'ANGLE', args: [36, 6], answer: 73.739795291688, source: WORKED },
  { name: 'ARCLENGTH', args: [36, 6, 3 / 16], answer: 38.8513794433945, source: WORKED },
  { name: 'ARCLENGTH', args: [36, 6, 3 / 16 + 1.75], answer: 41.103633324171, source: WORKED },
  { name: 'ARCLENGTH', args: [36, 6, 3 / 16 + 3.5], answer: 43.3558872049475, source: WORKED },
  { name: 'ARCLENGTH', args: [36, 18, 3 / 16], answer: 57.1377163871644, source: WORKED },
  { name: 'ARCLENGTH', args: [36, 18, 3 / 16 + 3.5], answer: 68.1332906747286, source: WORKED },
  { name: 'ARCLENGTH', args: [36, 18], answer: 18 * Math.PI, source: 'half the circumference of radius 18' },
  { name: 'SPAN', args: [60, 30], answer: 0, source: 'the full circle has no span left' },
  { name: 'RADIUS', args: ['3\'-0"', '6"'], answer: 30, source: 'the same as 36 and 6, as dimension text' },
  { name: 'RADIUS', args: ['914.4 mm', '152.4 mm'], answer: 30, source: 'the same, 25.4 mm to the inch by definition' },
  { name: 'RADIUS', args: [914.4, 152.4], answer: 762, source: 'the same in millimeters, by scale' },
  { name: 'RADIUS', args: [[[36]], [[6]]], answer: 30, source: 'cells that arrive as ranges of one cell' },
  {
    name: 'ORDINATES',
    args: [36, 6, 9],
    answer: [
      [0, 6],
      [9, Math.sqrt(819) - 24],
      [18, 0],
    ],
    source: 'height √(30² − x²) − 24',
  },
  {
    name: 'ORDINATES',
    args: [36, 18, 9],
    answer: [
      [0, 18],
      [9, Math.sqrt(243)],
      [18, 0],
    ],
    source: 'a half round: height √(18² − x²), down to the spring line',
  },
  {
    name: 'ORDINATES',
    args: [36, 24, 18],
    answer: [
      [0, 24],
      [18, 10.5],
    ],
    source: 'above a half round, the upper crossing: radius 18.75 about 5.25 above the spring line',
  },
  {
    name: 'ORDINATES',
    args: [36, 6, 10],
    answer: [
      [0, 6],
      [10, Math.sqrt(800) - 24],
      [18, 0],
    ],
    source: 'the last row is exactly at span/2, whatever the step',
  },
];

export const ARC_REFUSALS: readonly RefusedCase[] = [
  { name: 'RADIUS', args: [36, 0], message: 'rise must be more than 0; got 0 (a blank cell counts as 0)' },
  { name: 'RADIUS', args: [36, -3], message: 'rise must be more than 0; got -3' },
  { name: 'RADIUS', args: [36, null], message: 'rise is missing: give a number or dimension text' },
  { name: 'RADIUS', args: [36], message: 'rise is missing: give a number or dimension text' },
  { name: 'RADIUS', args: [36, ''], message: 'rise is missing: give a number or dimension text' },
  { name: 'RADIUS', args: [true, 6], message: 'span must be a number or dimension text; got TRUE' },
  {
    name: 'RADIUS',
    args: [
      [
        [36, 40],
        [44, 48],
      ],
      6,
    ],
    message: 'span must be one cell with a number or dimension text; got a range of 2 × 2 cells',
  },
  { name: 'RADIUS', args: [36, NaN], message: 'rise must be a number or dimension text; got NaN' },
  { name: 'RADIUS', args: [36, Infinity], message: 'rise must be a number or dimension text; got Infinity' },
  {
    name: 'RADIUS',
    args: [36, 1e300],
    message: 'rise must be no more than 1,000,000,000,000,000 either way; got 1e+300',
  },
  { name: 'RISE', args: [36, 17], message: 'radius must be at least half the span, 18; got 17' },
  { name: 'SPAN', args: [61, 30], message: 'rise must be at most twice the radius, 60; got 61' },
  { name: 'RADIUS', args: [36, 6, 1], message: 'RADIUS takes at most 2 arguments; got 3' },
];
