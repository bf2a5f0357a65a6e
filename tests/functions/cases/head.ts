import { COMPLETE_E } from '../../published';
import { WORKED, type Case, type RefusedCase } from '../case';

const A_AND_S = 'Abramowitz and Stegun, table 17.1: E(m) to 9 places; half an ellipse is 2·a·E(m)';
const STEINER = `Steiner: an open curve turning through π grows by π·d; ${WORKED}`;
const GOTHIC =
  'M. H. Bloxam, Principles of Gothic Ecclesiastical Architecture: an equilateral arch is struck from its span';
const BISECTOR = `bisector construction of the three-centered arch; ${WORKED}`;

const EQUILATERAL = 18 * Math.sqrt(3);

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
  { name: 'HEADLENGTH', args: ['straight', 36, null], answer: 36, source: 'a straight head is as long as it spans' },
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
      'head is missing: give "segmental", "half round", "quarter round", "round", "elliptical", "three-centered", "pointed" or "straight"',
  },
  { name: 'MITER', args: [36, 6, 0], message: 'face must be more than 0; got 0 (a blank cell counts as 0)' },
];
