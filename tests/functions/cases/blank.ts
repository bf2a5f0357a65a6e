import { WORKED, type Case, type RefusedCase } from '../case';

const GRAIN = 'ANSI/AWI 0622-2024, 3.3.2: grain at the face no more than 30°';
const NDS = 'National Design Specification for Wood Construction, curvature factor: t/R of 1/100 and 1/125';
const MARGIN = 'by the formula: radius less margin, face plus two margins';

/** Inside radius, face, angle, segments; width of the board; its length mitered and sawn. */
const TABLE = [
  [18, 3.5, 180, 3, 5.9115427318801, 24.8260615751539, 21.5],
  [18, 3.5, 180, 4, 4.87016841479684, 17.8111831820431, 16.4553875916989],
  [18, 3.5, 180, 5, 4.38098270668724, 13.971546938015, 13.2877307581227],
  [18, 3.5, 180, 6, 4.11333512679677, 11.5218152745383, 11.1292189394084],
] as const;

export const BLANK_CASES: readonly Case[] = [
  ...TABLE.flatMap(([radius, face, angle, segments, width, miter, sawn]): Case[] => [
    { name: 'BLANKWIDTH', args: [radius, face, angle, segments], answer: width, source: WORKED },
    { name: 'BLANKLENGTH', args: [radius, face, angle, segments], answer: miter, source: WORKED },
    { name: 'BLANKLENGTH', args: [radius, face, angle, segments, null, 'sawn'], answer: sawn, source: WORKED },
    { name: 'SEGMENTS', args: [radius, face, angle, width + 1e-9], answer: segments, source: WORKED },
  ]),
  { name: 'BLANKWIDTH', args: [18, 3.5, 180, 3, 0.25], answer: 21.75 - 17.75 * Math.cos(Math.PI / 6), source: MARGIN },
  { name: 'BLANKLENGTH', args: [18, 3.5, 180, 3, 0.25, ' Sawn '], answer: 21.75, source: MARGIN },
  { name: 'BLANKWIDTH', args: [18, 3.5, 360, 1], answer: 43, source: 'a whole ring is as wide as its diameter' },
  {
    name: 'BLANKLENGTH',
    args: [18, 3.5, 360, 1, 0, 'sawn'],
    answer: 43,
    source: 'a whole ring is as long as its diameter',
  },
  { name: 'SEGMENTS', args: [18, 3.5, 180, 1000], answer: 3, source: GRAIN },
  { name: 'SEGMENTS', args: [18, 3.5, 74, 1000], answer: 2, source: GRAIN },
  { name: 'SEGMENTS', args: [18, 3.5, 60, 1000], answer: 1, source: GRAIN },
  {
    name: 'SEGMENTS',
    args: [18, 3.5, 60, 1000, 0, 0],
    answer: 1,
    source: 'a blank cell that arrives as 0 is the default',
  },
  { name: 'SEGMENTS', args: [18, 3.5, 180, 1000, null, 15], answer: 6, source: '180/(2·15)' },
  {
    name: 'NEST',
    args: [18, 3.5, 180, 4, 11, 0, 0.125],
    answer: 2,
    source: 'sampled distances, tests/blank/nest.test.ts',
  },
  { name: 'NEST', args: [18, 3.5, 180, 4, 4], answer: 0, source: 'a board narrower than one blank' },
  { name: 'GUIDES', args: [18, 3.5], answer: [[17.96875, 21.53125]], source: 'radius ∓ 1/32' },
  { name: 'GUIDES', args: [18, 3.5, 0.25, 0.0625], answer: [[17.6875, 21.8125]], source: MARGIN },
  { name: 'PLIES', args: [30, 0.75], answer: [[3, 0.25]], source: NDS },
  { name: 'PLIES', args: [30, 0.75, 125], answer: [[4, 0.1875]], source: NDS },
];

export const BLANK_REFUSALS: readonly RefusedCase[] = [
  {
    name: 'SEGMENTS',
    args: [18, 3.5, 180, 3.5],
    message: 'board_width must be more than face + 2·margin, here 3.5; got 3.5',
  },
  { name: 'SEGMENTS', args: [18, 3.5, 361, 6], message: 'angle must be no more than 360; got 361' },
  { name: 'SEGMENTS', args: [18, 3.5, '73 deg', 6], message: 'angle must be a number; got "73 deg"' },
  {
    name: 'BLANKWIDTH',
    args: [18, 3.5, 180, 2.5],
    message: 'segments must be a whole number from 1 to 10000; got 2.5',
  },
  {
    name: 'BLANKLENGTH',
    args: [18, 3.5, 180, 1],
    message: 'segments must be more than angle/180 where boards are mitered, here more than 1; got 1',
  },
  { name: 'BLANKLENGTH', args: [18, 3.5, 180, 3, 0, 'ripped'], message: 'cut must be "miter" or "sawn"; got "ripped"' },
  { name: 'NEST', args: [18, 3.5, 180, 4, 11, 0, -1], message: 'kerf must be 0 or more; got -1' },
  { name: 'GUIDES', args: [2, 3.5, 2], message: 'margin must be less than radius, here 2; got 2' },
  { name: 'PLIES', args: [30, false], message: 'thickness must be a number or dimension text; got FALSE' },
];
