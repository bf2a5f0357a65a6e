import { COMPLETE_E } from '../../published';
import { WORKED, type Case, type RefusedCase } from '../case';

const A_AND_S = 'Abramowitz and Stegun, table 17.1: E(m) to 9 places; half an ellipse is 2·a·E(m)';
const STEINER = `Steiner: an open curve turning through π grows by π·d; ${WORKED}`;
const GOTHIC =
  'M. H. Bloxam, Principles of Gothic Ecclesiastical Architecture: an equilateral arch is struck from its span';
const BISECTOR = `bisector construction of the three-centered arch; ${WORKED}`;

const EQUILATERAL = 18 * Math.sqrt(3);

/** Half of what a slope of 1 in 3 turns from its upright leg. */
const LOW = 45 - ((Math.atan(1 / 3) / 2) * 180) / Math.PI;
const OURS = 'worked out independently here';
const BRICK_AND_TILE =
  'The Practical Brick and Tile Book, figure 29, "Ellipse Gothic": haunch radius a quarter of the span, haunch chord equal to it; figures worked out independently here';

/** Lengths to ten or more places, and the arguments that give them. */
function lengths(source: string, rows: readonly (readonly [number, ...(string | number | null)[]])[]): Case[] {
  return rows.map(([answer, ...args]) => ({ name: 'HEADLENGTH', args, answer, within: 1e-11, source }));
}

export const HEAD_CASES: readonly Case[] = [
  // A span of 2 and a rise of √(1 − m): half an ellipse of the table's half axes.
  ...COMPLETE_E.map(([m, e]): Case => ({
    name: 'HEADLENGTH',
    args: ['elliptical', 2, Math.sqrt(1 - m)],
    answer: 2 * e,
    within: 1e-9,
    source: A_AND_S,
  })),
  { name: 'HEADLENGTH', args: ['elliptical', 72, 24], answer: 95.1926375357435, source: WORKED },
  { name: 'HEADLENGTH', args: ['elliptical', 72, 12], answer: 80.1893593233315, source: WORKED },
  { name: 'HEADLENGTH', args: ['elliptical', 36, 12], answer: 47.5963187678718, source: WORKED },
  { name: 'HEADLENGTH', args: ['elliptical', 72, 24, 3.5], answer: 106.188211823308, source: STEINER },
  { name: 'HEADLENGTH', args: ['elliptical', 72, 12, 3.5], answer: 91.1849336108958, source: STEINER },
  { name: 'HEADLENGTH', args: ['elliptical', 36, 12, 3.5], answer: 58.591893055436, source: STEINER },
  { name: 'HEADLENGTH', args: ['elliptical', 96, 16, 4.5], answer: 121.056312705596, source: STEINER },
  { name: 'HEADLENGTH', args: ['round', 30], answer: 30 * Math.PI, source: 'circumference of a circle, π·d' },
  { name: 'HEADLENGTH', args: ['three-centered', 72, 24], answer: 95.5158652592642, source: BISECTOR },
  { name: 'HEADLENGTH', args: ['three-centered', 72, 12], answer: 81.3924112504322, source: BISECTOR },
  { name: 'HEADLENGTH', args: ['three-centered', 72, 18], answer: 87.9304952470616, source: BISECTOR },
  { name: 'HEADLENGTH', args: ['segmental', 36, 6, 3.6875], answer: 43.3558872049475, source: WORKED },
  { name: 'HEADLENGTH', args: ['segmental', 36, 6, 0.1875, 'level'], answer: 39.3486545631571, source: WORKED },
  { name: 'HEADLENGTH', args: ['segmental', 36, 6, 1.9375, 'level'], answer: 46.0227345246197, source: WORKED },
  { name: 'HEADLENGTH', args: ['segmental', 36, 6, 3.6875, 'level'], answer: 52.4070213891136, source: WORKED },
  {
    name: 'HEADLENGTH',
    args: ['segmental', 36, 6, 3.6875, 'legs'],
    answer: 2 * 33.6875 * Math.asin(21.6875 / 33.6875),
    source: '2(R+d)·asin((span/2+d)/(R+d))',
  },
  { name: 'HEADLENGTH', args: ['half round', 36, 18, 3.6875], answer: 68.1332906747286, source: WORKED },
  { name: 'HEADLENGTH', args: ['HR', 36], answer: 18 * Math.PI, source: 'half the circumference' },
  { name: 'HEADLENGTH', args: ['Half-Round', 36, 0], answer: 18 * Math.PI, source: 'a blank rise that arrives as 0' },
  { name: 'HEADLENGTH', args: ['full circle', 36, null, 2], answer: 40 * Math.PI, source: 'the circumference' },
  {
    name: 'HEADLENGTH',
    args: ['quarter round', 24],
    answer: 12 * Math.PI,
    source: 'a quarter of the circumference of radius 24',
  },
  { name: 'HEADLENGTH', args: ['pointed', 36, EQUILATERAL], answer: 75.398223686155, source: GOTHIC },
  {
    name: 'HEADLENGTH',
    args: ['gothic', 36, EQUILATERAL, 3.5],
    answer: 86.713728904577,
    source: `${GOTHIC}; ${WORKED}`,
  },
  {
    name: 'HEADLENGTH',
    args: ['straight', 36, null],
    answer: 36,
    source: 'a straight head is as long as it spans, at the opening',
  },
  ...lengths(OURS, [
    [36, 'straight', 36, null, 0, 'square'],
    [43.375, 'straight', 36, null, 3.6875],
    [43.375, 'straight', 36, null, 3.6875, 'over legs'],
    [36.375, 'straight', 36, null, 0.1875, 'between legs'],
    [62.3409792197, 'quarter round', 36, null, 3.6875],
    [66.0338055723, 'quarter round', 36, null, 3.6875, 'legs'],
    [43.4914232981, 'quarter round', 24, null, 3.6875],
    [47.1899125179, 'quarter round', 24, null, 3.6875, 'legs'],
    [42.8495559215, 'radius corners', 36, 6],
    [43.4386045441, 'radius corners', 36, 6, 0.1875],
    [54.4341788317, 'flat top with radius corners', 36, 6, 3.6875, 'legs'],
    [97.2837347532, 'radius corners', 72, 12, 3.6875],
    [95.1926375357, 'full ellipse', 36, 24],
    [96.3707347808, 'full ellipse', 36, 24, 0.1875],
    [118.361883356, 'oval', 36, 24, 3.6875],
    [91.7360922395, 'full ellipse', 24, 16, 4.5],
    [21.6779436025, 'half segmental', 18, 6, 3.6875],
    [23.5621874204 + 3.69490388025, 'half segmental', 18, 6, 3.6875, 'legs'],
    [26.2035106946, 'half segmental', 18, 6, 3.6875, 'level'],
    [43.5980169925, 'quarter ellipse', 36, 18],
    [49.3903284475, 'quarter ellipse', 36, 18, 3.6875],
    [49.3903284475 + 3.68896633508, 'quarter ellipse', 36, 18, 3.6875, 'legs'],
    [37.5231906336, 'quarter ellipse', 24, 16, 3.6875],
    [67.1339394186, 'segmental', 24, 24, 0.1875, 'legs'],
    [87.5524351286, 'segmental', 24, 24, 5.6875, 'legs'],
    [66.9790004881, 'segmental', 24, 24, 0.1875, 'level'],
    [83.6141140852, 'horseshoe at spring', 24, 24, 5.6875, 'level'],
    [83.6141140852, 'horseshoe at widest', 30, 24, 5.6875, 'level'],
    [43.2666153056, 'gable', 36, 12],
    [52.1302621911, 'gable', 36, 12, 3.6875, 'legs'],
    [59.2457819722, 'gable', 36, 12, 3.6875, 'level'],
    [2 * 15.7827470839 + 21.0548250225, 'clipped corners', 36, 9, 3.6875, 'legs'],
    [45.7212645033, 'shed', 36, 12, 3.6875, 'legs'],
    [8 * 8.2842712475, 'octagon', 20],
  ]),
  ...lengths(BRICK_AND_TILE, [
    [47.3622457771, 'four-centered', 36, 12],
    [58.9479589545, 'Tudor', 36, 12, 3.6875, 'radial', 9],
    [49.4606495126, 'four-centered', 36, 15],
    [61.2944219744, 'four-centered', 36, 15, 3.6875],
    [64.3159743191, 'four-centered', 48, 18],
    [75.9503342649, 'four-centered', 48, 18, 3.6875],
  ]),
  {
    name: 'HEADLENGTH',
    args: ['equilateral', 36],
    answer: 75.398223686155,
    source: GOTHIC,
  },
  {
    name: 'HEADLENGTH',
    args: ['eyebrow on legs', 36, 6, 3.6875],
    answer: 2 * 33.6875 * Math.asin(21.6875 / 33.6875),
    source: '2(R+d)·asin((span/2+d)/(R+d))',
  },
  { name: 'HEADRADIUS', args: ['segmental', 36, 6], answer: 30, source: "Machinery's Handbook, Segments of a Circle" },
  { name: 'HEADRADIUS', args: ['half segmental', 18, 6], answer: 30, source: OURS },
  { name: 'HEADRADIUS', args: ['quarter round', 24], answer: 24, source: OURS },
  { name: 'HEADRADIUS', args: ['three-centered', 72, 24], answer: 49.816653826392, source: BISECTOR },
  { name: 'HEADRADIUS', args: ['pointed', 36, EQUILATERAL], answer: 36, source: GOTHIC },
  { name: 'HEADRADIUS', args: ['four-centered', 36, 12], answer: 32.1682956077, within: 1e-11, source: BRICK_AND_TILE },
  {
    name: 'HEADRADIUS',
    args: ['four-centered', 36, 15, null, 9],
    answer: 229.753175473,
    within: 1e-11,
    source: BRICK_AND_TILE,
  },
  { name: 'HEADRADIUS', args: ['four-centered', 48, 18], answer: 79.1769145362, within: 1e-11, source: BRICK_AND_TILE },
  {
    name: 'HEADRADIUS',
    args: ['four-centered', 72, 24, null, 12],
    answer: 168.746133917893,
    within: 1e-12,
    source: OURS,
  },
  { name: 'HEADRADIUS', args: ['radius corners', 36, 6], answer: 6, source: OURS },
  ...[
    ['segmental', 36, 6, 3.5, 25.6985864973, 27.2533706567, 24.2267895238],
    ['segmental', 36, 12, 5.5, 10.5553874053, 11.9550920601, 9.3179113552],
    ['segmental', 24, 24, 5.5, -16.8648934754, -19.7685679492, -14.3770405176],
  ].map(([head, span, rise, face, ...angles]): Case => {
    const gap = rise === 6 ? 0.0128 : rise === 12 ? 0.016 : 0.0336;
    return {
      name: 'HEADMITER',
      args: [head, span, rise, face, 0.1875],
      answer: [[...(angles as number[]), gap]],
      within: 5e-3, // the gap has three digits there; the angles are compared closer in tests/head/joints.test.ts
      source: OURS,
    };
  }),
  {
    name: 'HEADMITER',
    args: ['half round', 36, null, 3.5, 0.1875],
    answer: [[0, 0, 0, 0]],
    source: 'a half round meets its legs square',
  },
  {
    name: 'HEADMITER',
    args: ['straight', 36, null, 3.5, 0.1875],
    answer: [[45, 45, 45, 0]],
    source: 'two pieces at a right angle, common practice',
  },
  {
    name: 'HEADMITER',
    args: ['shed', 36, 12, 3.5, 0.1875],
    answer: [
      [LOW, LOW, LOW, 0],
      [90 - LOW, 90 - LOW, 90 - LOW, 0],
    ],
    within: 1e-10,
    source: OURS,
  },
  {
    name: 'HEADARCS',
    args: ['segmental', 36, 6, 3.6875],
    answer: [[33.6875, 73.739795291688, 43.3558872049475, 0]],
    source: WORKED,
  },
  {
    name: 'HEADARCS',
    args: ['three-centered', 72, 24],
    answer: [
      [18.788897449072, 56.309932474020213, 18.4656104796857353, 0],
      [49.816653826392, 67.380135051959574, 58.5846442998927407, 0],
      [18.788897449072, 56.309932474020213, 18.4656104796857353, 0],
    ],
    within: 1e-12,
    source: BISECTOR,
  },
  {
    name: 'HEADARCS',
    args: ['elliptical', 72, 24],
    answer: [
      [18.242, 54.07, 17.215, 0.2497],
      [48.504, 71.86, 60.833, 0.2497],
      [18.242, 54.07, 17.215, 0.2497],
    ],
    within: 3e-3, // a flat optimum, searched in coarse steps
    source: 'search apart from this program for the three arcs of least greatest deviation',
  },
  { name: 'MITER', args: [36, 18, 3.5], answer: 0, source: 'a half round meets its legs square' },
  {
    name: 'MITER',
    args: [36, 6, 3.5, 0.1875],
    answer:
      (Math.atan((Math.sqrt(33.6875 ** 2 - 21.6875 ** 2) - Math.sqrt(30.1875 ** 2 - 18.1875 ** 2)) / 3.5) * 180) /
      Math.PI,
    source: 'corner heights by Pythagoras from the center, 24 below the spring line',
  },
];

export const HEAD_REFUSALS: readonly RefusedCase[] = [
  { name: 'HEADLENGTH', args: ['segmental', 36], message: 'rise is missing; a segmental head needs it' },
  {
    name: 'HEADLENGTH',
    args: [null, 36, 6],
    message:
      'head is missing: give "segmental", "half round", "quarter round", "round", "elliptical", "three-centered", "pointed", "straight", "radius corners", "full ellipse", "half segmental", "quarter ellipse", "four-centered", "gable", "clipped corners", "shed" or "octagon"',
  },
  {
    name: 'HEADLENGTH',
    args: ['four-centered', 36, 10],
    message:
      'haunch is missing; a four-centered head 36 wide and 10 high needs its haunch radius, more than 0 and less than 7.07179676972',
  },
  { name: 'HEADRADIUS', args: ['gable', 36, 12], message: 'head must be one with a curve; a gable head has no radius' },
  {
    name: 'HEADMITER',
    args: ['round', 36, null, 3.5],
    message: 'head must be one with ends; a round head goes all round',
  },
  {
    name: 'HEADLENGTH',
    args: ['ogee', 36, 12],
    message:
      'head "ogee" can\'t be taken as it is: an ogee is a reversed curve whose centers are free: give a full-size drawing of it',
  },
  {
    name: 'HEADLENGTH',
    args: ['half round', 36, null, 3.6875, 'between legs'],
    message: 'ends of an arched or sloping head must be radial, level or legs; got between legs',
  },
  { name: 'MITER', args: [36, 6, 0], message: 'face must be more than 0; got 0 (a blank cell counts as 0)' },
];
