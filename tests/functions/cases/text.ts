import { WORKED, type Case, type RefusedCase } from '../case';

const ACCEPTED = `accepted are 36, 36.5, 36 1/2, 36-1/2, 36", 3', 3'-6 1/2", 3ft 6in, 914 mm, 91.4 cm or 0.914 m`;
const NOTATION = 'notation in use on shop drawings and schedules (common practice)';

const read: [text: unknown, inches: number][] = [
  ['36', 36],
  ['36.5', 36.5],
  ['36 1/2', 36.5],
  ['36-1/2', 36.5],
  ['36½', 36.5],
  ['36"', 36],
  ["3'", 36],
  ['3\'-0"', 36],
  ['3\' 6 1/2"', 42.5],
  ['3\'-6-1/2"', 42.5],
  ['3ft 6in', 42],
  ['7\' - 0"', 84],
  ['80-1/2', 80.5],
  ['914 mm', 914 / 25.4],
  ['91.4 cm', 914 / 25.4],
  ['0.914 m', 914 / 25.4],
  ['914,4 mm', 36],
  ['3′-6 1⁄2″', 42.5],
  [42.25, 42.25],
];

/** Half the angle the 36 × 6 arc turns through. */
const HALF_ANGLE = 2 * Math.atan(1 / 3);

const quotes: [quoted: number, answer: string][] = [
  [2 * HALF_ANGLE * 33.6875, 'agrees'],
  [43 + 5 / 16, 'agrees'],
  [2 * HALF_ANGLE * 30.1875, 'measured along the inside edge'],
  [2 * HALF_ANGLE * 33.5, 'reveal left out'],
  [2 * HALF_ANGLE * 31.9375, 'measured along the center'],
  [18 * Math.PI, 'half circle of this span'],
  [2 * HALF_ANGLE * 33.6875 - 12.25, 'unexplained: 12 1/4 short'],
];

export const TEXT_CASES: readonly Case[] = [
  ...read.map(([text, answer]): Case => ({ name: 'INCHES', args: [text], answer, source: NOTATION })),
  { name: 'FEETINCHES', args: [42.5], answer: '3\'-6 1/2"', source: NOTATION },
  { name: 'FEETINCHES', args: [35.99], answer: '3\'-0"', source: 'carried: 35.99 is nearest 36' },
  { name: 'FEETINCHES', args: [42.5, 1], answer: '3\'-7"', source: 'half a unit goes up' },
  { name: 'FEETINCHES', args: [42.515625, 64], answer: '3\'-6 33/64"', source: WORKED },
  { name: 'FEETINCHES', args: ['1 m', 32], answer: '3\'-3 3/8"', source: WORKED },
  ...quotes.map(([quoted, answer]): Case => ({
    name: 'LENGTHCHECK',
    args: [quoted, 'segmental', 36, 6, 3.5, 3 / 16],
    answer,
    source: 'the mistake made by hand: span 36, rise 6, radius 30, face 3-1/2, reveal 3/16',
  })),
];

export const TEXT_REFUSALS: readonly RefusedCase[] = [
  {
    name: 'LENGTHCHECK',
    args: [40, 'segmental', 36, 6, null],
    message: 'face is missing: give a number or dimension text',
  },
  {
    name: 'LENGTHCHECK',
    args: [40, 'HR', 36, null, 3.5, 0, 'radial', -1],
    message: 'tolerance must be 0 or more; got -1',
  },
  { name: 'INCHES', args: ['three feet'], message: `text: "three feet" is not a dimension; ${ACCEPTED}` },
  { name: 'INCHES', args: [null], message: 'text is missing: give a number or dimension text' },
  { name: 'FEETINCHES', args: [true], message: 'inches must be a number or dimension text; got TRUE' },
];
